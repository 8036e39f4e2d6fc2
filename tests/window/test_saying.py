"""What the window says about files and for how long, what it asks before it replaces one, and how often it draws."""

from pathlib import Path

import pytest
from opening import field, open_shop, settle, shut, type_in
from PySide6.QtCore import Qt, QTimer
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QFileDialog, QLabel
from pytestqt.qtbot import QtBot

from studio.brief.skirt_file import open_file, save
from studio.styles import rack
from studio.window import choosing
from studio.window.question import Replacing
from studio.window.running import bare, furnished
from studio.window.settings import Settings
from studio.window.shop import Shop
from studio.window.worktable import Worktable

ESCAPE = Qt.Key.Key_Escape


def broken(folder: Path) -> Path:
    """A file that is no skirt."""
    there = folder / "broken.skirt"
    there.write_bytes(b"no skirt")
    return there


def note(shop: Shop) -> str:
    """What the foot says has been done."""
    label = shop.window.table.canvas.foot.note
    return label.text() if label.isVisible() else ""


def press_in(window: type[Replacing], button: str) -> list[str]:
    """Press a button of the question as soon as it lies there; what it said."""
    said = list[str]()

    def press() -> None:
        leaf = QApplication.activeModalWidget()
        assert isinstance(leaf, window)
        said.extend(label.text() for label in leaf.findChildren(QLabel))
        QTest.mouseClick(getattr(leaf, button), Qt.MouseButton.LeftButton)

    QTimer.singleShot(0, press)
    return said


def test_a_notice_stays_until_its_own_deed_is_done(shop: Shop, tmp_path: Path):
    """A file that would not open is spoken of until one opens; a save in between leaves that as it is."""
    shop.files.open_path(broken(tmp_path))
    assert "“broken.skirt” was not opened" in shop.window.notice.text
    shop.files.choose_save = lambda parent, start: tmp_path / "mine.skirt"
    shop.window.do.save.trigger()
    settle(shop)
    assert "“broken.skirt”" in shop.window.notice.text
    shop.files.open_path(tmp_path / "mine.skirt")
    assert "" == shop.window.notice.text


def test_a_save_that_works_ends_what_was_said_of_one_that_did_not(shop: Shop, tmp_path: Path):
    """Once saved, nothing speaks of the save that failed."""
    shop.files.choose_save = lambda parent, start: tmp_path / "missing" / "mine.skirt"
    shop.window.do.save.trigger()
    assert "“mine.skirt”" in shop.window.notice.text
    shop.files.choose_save = lambda parent, start: tmp_path / "mine.skirt"
    shop.window.do.save.trigger()
    assert "" == shop.window.notice.text


def test_escape_puts_a_notice_away(shop: Shop, tmp_path: Path):
    """From the board or from a field; with something half typed the first Escape is for that."""
    shop.files.open_path(broken(tmp_path))
    shop.window.table.canvas.board.setFocus()
    QTest.keyClick(shop.window.table.canvas.board, ESCAPE)
    assert "" == shop.window.notice.text
    shop.files.open_path(tmp_path / "broken.skirt")
    type_in(shop, "body.waist", "74", enter=False)
    QTest.keyClick(field(shop, "body.waist").box, ESCAPE)
    settle(shop)
    assert (700.0, True) == (shop.desk.brief.body.waist, bool(shop.window.notice.text))
    QTest.keyClick(field(shop, "body.waist").box, ESCAPE)
    assert "" == shop.window.notice.text


def test_a_save_says_so_until_the_next_edit(shop: Shop, tmp_path: Path):
    """The foot names the file that was saved; with the next change it no longer holds, and another skirt has none."""
    there = tmp_path / "marigold.skirt"
    shop.files.choose_save = lambda parent, start: there
    shop.window.do.save.trigger()
    settle(shop)
    assert "Saved “marigold.skirt”" == note(shop)
    field(shop, "skirt.length").take_in_hand()
    settle(shop)
    assert "Saved “marigold.skirt”" == note(shop)
    type_in(shop, "skirt.length", "70")
    assert "" == note(shop)
    shop.window.do.save.trigger()
    settle(shop)
    assert "Saved “marigold.skirt”" == note(shop)
    shop.files.open_path(there)
    settle(shop)
    assert "" == note(shop)


def test_a_long_name_takes_no_room_from_the_tools(shop: Shop, tmp_path: Path):
    """However long the name of what was saved, the foot keeps its place in the smallest window."""
    shop.window.resize(1100, 700)
    shop.files.choose_save = lambda parent, start: tmp_path / f"{'marigold' * 12}.skirt"
    before = shop.window.table.canvas.width()
    shop.window.do.save.trigger()
    settle(shop)
    assert note(shop).startswith("Saved “marigold")
    assert before == shop.window.table.canvas.width()
    assert 0 < shop.window.table.canvas.foot.note.width() < 210
    assert shop.window.table.canvas.foot.hint.width() > 0


@pytest.mark.parametrize(("button", "waist"), [("replace", 740.0), ("keep", 666.0)])
def test_another_file_is_not_replaced_unasked(shop: Shop, tmp_path: Path, button: str, waist: float):
    """Saving as a name that is taken asks first, and says where the version before is kept."""
    there = tmp_path / "other.skirt"
    save(there, rack.edit(rack.usual(), {"body.waist": 666.0}))
    shop.files.choose_save = lambda parent, start: there
    type_in(shop, "body.waist", "74")
    said = press_in(Replacing, button)
    shop.window.do.save_as.trigger()
    assert "“other.skirt” is there already. Its present version is kept beside it as “other.skirt~”." in said
    assert waist == open_file(there, rack.RECORDS).body.waist
    assert (button == "replace") == there.with_name("other.skirt~").exists()
    assert (there if button == "replace" else None) == shop.desk.file


def test_its_own_file_is_saved_without_a_question(shop: Shop, tmp_path: Path):
    """Save as, with the name it has, asks nothing."""
    there = tmp_path / "mine.skirt"
    shop.files.choose_save = lambda parent, start: there
    shop.window.do.save_as.trigger()
    type_in(shop, "body.waist", "74")
    shop.window.do.save_as.trigger()
    assert 740.0 == open_file(there, rack.RECORDS).body.waist


def test_the_desktop_does_not_ask_as_well(shop: Shop, tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    """One question is enough: the file dialog leaves it to us."""
    asked = list[bool]()

    def look(dialog: QFileDialog) -> int:
        asked.append(dialog.testOption(QFileDialog.Option.DontConfirmOverwrite))
        return 0

    monkeypatch.setattr(QFileDialog, "exec", look)
    assert choosing.choose_save(shop.window, tmp_path / "mine.skirt") is None
    assert [True] == asked


def test_a_docket_is_shown_once(qtbot: QtBot, settings: Settings, tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    """A skirt opened with the window, opened later, or edited is drawn once; a save draws nothing anew."""
    there = tmp_path / "last.skirt"
    save(there, rack.edit(rack.usual(), {"body.waist": 777.0}))
    shown = list[float]()
    show = Worktable.show_docket

    def count(table: Worktable, docket) -> None:
        shown.append(docket.brief.body.waist)
        show(table, docket)

    monkeypatch.setattr(Worktable, "show_docket", count)
    shop = furnished(settings, bare(settings))
    qtbot.addWidget(shop.window)
    shop.open(there)
    settle(shop)
    assert [777.0] == shown
    save(tmp_path / "next.skirt", rack.usual())
    shop.files.open_path(tmp_path / "next.skirt")
    settle(shop)
    shop.desk.edit("body.waist", 740.0)
    settle(shop)
    assert [777.0, 700.0, 740.0] == shown
    shop.window.do.save.trigger()
    settle(shop)
    assert [777.0, 700.0, 740.0] == shown
    shut(qtbot, shop)


def test_the_last_section_opens_into_view(qtbot: QtBot, settings: Settings):
    """A section unfolded at the foot of Construction is seen: all of it, or from its header as far as there is room."""
    shop = open_shop(qtbot, settings)
    construction = shop.window.table.construction
    for name in ("paper", "cloth"):
        section = construction.sections[name]
        QTest.mouseClick(section.head, Qt.MouseButton.LeftButton)
        top = section.mapTo(construction.viewport(), section.rect().topLeft()).y()
        assert 0 <= top
        assert top + section.height() <= construction.viewport().height() or top == 0
        assert section.height() > section.head.height()
    shut(qtbot, shop)
