"""The export sheet, driven on the whole window with the real exporter."""

from collections.abc import Iterator
from pathlib import Path

import pypdf
import pytest
from opening import settle, type_in
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from studio.export import Step
from studio.trouble import Trouble
from studio.window.export_sheet import ExportSheet
from studio.window.shop import Shop


def sheet(shop: Shop, folder: Path) -> ExportSheet:
    """The export sheet, laid over the window, writing into a folder."""
    shop.window.do.export.trigger()
    settle(shop)
    leaf = shop.leaf
    assert isinstance(leaf, ExportSheet)
    leaf.folder = folder
    return leaf


def press(leaf: ExportSheet) -> None:
    """Press Export."""
    QTest.mouseClick(leaf.lead, Qt.MouseButton.LeftButton)


def test_export_writes_what_is_ticked(qtbot: QtBot, shop: Shop, tmp_path: Path):
    """Sheets and pieces as PDF and SVG lie in the folder, and the sheet says how many."""
    leaf = sheet(shop, tmp_path / "out")
    leaf.kinds["svg"].setChecked(True)
    press(leaf)
    assert leaf.progress.isVisible()
    qtbot.waitUntil(leaf.show_folder.isVisible, timeout=30000)
    names = {p.suffix for p in (tmp_path / "out").iterdir()}
    assert {".pdf", ".svg"} == names
    assert f"{len(list((tmp_path / 'out').iterdir()))} files are written." == leaf.says.text()
    assert pypdf.PdfReader(next((tmp_path / "out").glob("*-sheets-a4.pdf"))).pages
    leaf.reject()


def test_the_booklet_alone(qtbot: QtBot, shop: Shop, tmp_path: Path):
    """Ticked alone, the booklet is the one file that is written."""
    leaf = sheet(shop, tmp_path / "out")
    leaf.kinds["pdf"].setChecked(False)
    leaf.kinds["booklet"].setChecked(True)
    press(leaf)
    qtbot.waitUntil(leaf.show_folder.isVisible, timeout=30000)
    (there,) = (tmp_path / "out").iterdir()
    assert "Sewing order" in " ".join(page.extract_text() for page in pypdf.PdfReader(there).pages)
    leaf.reject()


def test_cancel_leaves_nothing_half_written(qtbot: QtBot, shop: Shop, tmp_path: Path):
    """Cancel stops before the next page: no file is half-written, and one can export again."""
    leaf = sheet(shop, tmp_path / "out")
    press(leaf)
    assert leaf.work is not None
    qtbot.waitSignal(leaf.work.stepped).wait()
    QTest.mouseClick(leaf.stop, Qt.MouseButton.LeftButton)
    settle(shop)
    assert "Cancelled; nothing was written." == leaf.says.text()
    assert [] == list((tmp_path / "out").iterdir())
    press(leaf)
    qtbot.waitUntil(leaf.show_folder.isVisible, timeout=30000)
    leaf.reject()


def test_a_stop_has_to_be_acknowledged(qtbot: QtBot, shop: Shop, tmp_path: Path):
    """What stops an export is listed; it goes on once that is ticked off."""
    type_in(shop, "cloth.width", "60")
    leaf = sheet(shop, tmp_path)
    assert not leaf.lead.isEnabled()
    assert leaf.anyway is not None
    leaf.anyway.setChecked(True)
    assert leaf.lead.isEnabled()
    leaf.reject()


def test_nothing_ticked_is_nothing_to_export(shop: Shop, tmp_path: Path):
    """Without a format there is nothing to press."""
    leaf = sheet(shop, tmp_path)
    for tick in leaf.kinds.values():
        tick.setChecked(False)
    assert not leaf.lead.isEnabled()
    leaf.reject()


@pytest.mark.parametrize(("number", "words"), [(28, "The disk is full"), (13, "out of bounds")])
def test_a_disk_that_refuses_is_one_sentence(
    qtbot: QtBot, shop: Shop, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, number: int, words: str
):  # fmt: skip
    """A disk that is full or out of bounds is said on the sheet, and the window stays usable."""

    def refuse(*_: object) -> None:
        raise OSError(number, "no")

    leaf = sheet(shop, tmp_path)
    monkeypatch.setattr("os.fsync", refuse)
    press(leaf)
    qtbot.waitUntil(lambda: not leaf.progress.isVisible(), timeout=30000)
    assert words in leaf.says.text()
    assert leaf.lead.isEnabled()
    leaf.reject()
    type_in(shop, "body.waist", "72")
    assert 720.0 == shop.desk.brief.body.waist


def test_trouble_while_writing_is_said(qtbot: QtBot, shop: Shop, tmp_path: Path):
    """What an exporter cannot do stands on the sheet in its own words."""

    def failing(*_: object) -> Iterator[Step]:
        yield Step(0, 2, "page 1")
        raise Trouble("There is not enough memory for this picture.")

    leaf = sheet(shop, tmp_path)
    leaf.exporter = failing
    press(leaf)
    qtbot.waitUntil(lambda: not leaf.progress.isVisible())
    assert "There is not enough memory for this picture." == leaf.says.text()
    leaf.reject()


def test_closing_while_writing_stops_it(qtbot: QtBot, shop: Shop, tmp_path: Path):
    """Escape during an export cancels it first, and only then closes the sheet."""
    leaf = sheet(shop, tmp_path / "out")
    press(leaf)
    work = leaf.work
    assert work is not None
    QTest.keyClick(leaf, Qt.Key.Key_Escape)
    assert not work.running
    assert leaf.isVisible()
    QTest.keyClick(leaf, Qt.Key.Key_Escape)
    settle(shop)
    assert not shop.window.findChildren(ExportSheet) or not leaf.isVisible()


def test_says_how_many_sheets(qtbot: QtBot, shop: Shop, tmp_path: Path):
    """The number of sheets is said before they are printed, and is the number in the file; pleats printed whole take very
    many, and what takes fewer is said."""
    leaf = sheet(shop, tmp_path / "out")
    qtbot.waitUntil(lambda: "sheets of A4" in leaf.kinds["pdf"].text())
    count = int(leaf.kinds["pdf"].text().split()[1])
    press(leaf)
    qtbot.waitUntil(leaf.show_folder.isVisible, timeout=30000)
    pages = pypdf.PdfReader(next((tmp_path / "out").glob("*-sheets-a4.pdf"))).pages
    assert count == sum(f"of {count}, A4" in page.extract_text() for page in pages)
    leaf.reject()
    shop.desk.mend({"skirt.style": "pleated"})
    shop.desk.mend({"paper.panels": "whole"})
    leaf = sheet(shop, tmp_path / "out")
    qtbot.waitUntil(lambda: "are many to glue" in leaf.says.text())
    leaf.reject()
