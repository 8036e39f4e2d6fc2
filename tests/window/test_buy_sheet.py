"""The sheet "What to buy"."""

import csv
from collections.abc import Callable
from pathlib import Path

import pytest
from opening import settle
from pypdf import PdfReader
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLabel, QWidget

from studio.check.makes import cuts_out, makes
from studio.shopping import buy_text, to_buy
from studio.window.buy_sheet import BuySheet
from studio.window.shop import Shop


def laid(shop: Shop) -> BuySheet:
    """The sheet, opened by its action."""
    shop.window.do.buy.trigger()
    settle(shop)
    assert isinstance(shop.leaf, BuySheet)
    return shop.leaf


def into(path: Path | None) -> Callable[[QWidget, Path], Path | None]:
    """A maker who chooses this file."""
    return lambda parent, start: path


def test_it_lists_what_the_pages_list(shop: Shop):
    """The sheet says what the printed pages say, line by line."""
    sheet = laid(shop)
    assert to_buy(shop.desk.docket, "cm") == [label.text() for label in sheet.lines]
    sheet.reject()


def test_the_figure_opens_it(shop: Shop):
    """A press on the cloth to buy opens the sheet, as Ctrl+B does."""
    QTest.mouseClick(shop.window.table.strip.cloth, Qt.MouseButton.LeftButton)
    settle(shop)
    assert isinstance(shop.leaf, BuySheet)
    shop.leaf.reject()
    assert "Ctrl+B" == shop.window.do.buy.shortcut().toString()


def test_copied_as_text(shop: Shop):
    """Copy puts the whole list on the clipboard."""
    sheet = laid(shop)
    sheet.copy.click()
    assert "\n".join(buy_text(shop.desk.docket, "cm")) == QApplication.clipboard().text()
    sheet.reject()


def test_saved_as_a_table(shop: Shop, tmp_path: Path):
    """The table has a row for each thing, and is read back as it is."""
    sheet = laid(shop)
    sheet.choose_table = into(tmp_path / "list.csv")
    sheet.table.click()
    with (tmp_path / "list.csv").open(newline="", encoding="utf-8") as file:
        rows = list(csv.DictReader(file))
    assert [n.what for n in shop.desk.docket.notions] == [row["what"] for row in rows]
    assert "list.csv" in sheet.says.text()
    sheet.reject()


def test_printed_on_one_page(shop: Shop, tmp_path: Path):
    """The list prints on one page."""
    sheet = laid(shop)
    sheet.choose_page = into(tmp_path / "list.pdf")
    sheet.page.click()
    pages = PdfReader(tmp_path / "list.pdf").pages
    assert 1 == len(pages)
    assert "What to buy" in pages[0].extract_text()
    sheet.reject()


@pytest.mark.parametrize("button", ["table", "page"])
def test_a_place_that_cannot_be_written(shop: Shop, tmp_path: Path, button: str):
    """A folder that is gone is said in a sentence; thinking better of it changes nothing."""
    sheet = laid(shop)
    sheet.choose_table = sheet.choose_page = into(None)
    getattr(sheet, button).click()
    assert "" == sheet.says.text()
    sheet.choose_table = sheet.choose_page = into(tmp_path / "gone" / "list")
    getattr(sheet, button).click()
    assert "cannot be found" in sheet.says.text()
    sheet.reject()


def test_a_choice_is_one_step(shop: Shop):
    """Taking what the cloth on hand makes is one step, and one undo takes it back."""
    shop.desk.edit("cloth.on_hand", 1300.0)
    shop.desk.finish()
    settle(shop)
    before = shop.desk.brief
    sheet = laid(shop)
    assert len(makes(before)) == len(sheet.choices)
    sheet.choices[0].click()
    settle(shop)
    assert not cuts_out(before)
    assert cuts_out(shop.desk.brief)
    assert "cloth-on-hand-suffices" not in {f.rule for f in shop.desk.docket.findings}
    shop.desk.undo()
    assert before == shop.desk.brief


def test_without_a_length_nothing_is_offered(shop: Shop):
    """Where no length is on hand, there is nothing to choose from."""
    sheet = laid(shop)
    assert [] == sheet.choices
    assert "What this cloth makes" not in [label.text() for label in sheet.findChildren(QLabel)]
    sheet.reject()


def test_the_finding_leads_to_it(shop: Shop):
    """Where the cloth on hand is too short, a button beside the remedy shows what it makes."""
    rows = shop.window.table.strip.findings.rows
    assert all(row.more.isHidden() for row in rows.values())
    shop.desk.edit("cloth.on_hand", 1300.0)
    settle(shop)
    row = next(row for (rule, *_), row in rows.items() if rule == "cloth-on-hand-suffices")
    assert "Buy what it needs" == row.remedy.text()
    row.more.click()
    settle(shop)
    assert isinstance(shop.leaf, BuySheet)
    assert shop.leaf.choices
    shop.leaf.reject()
