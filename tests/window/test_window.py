"""The window's own ways: its title, the first sheet over a skirt, what may be dropped on it, its keys."""

import re
from pathlib import Path

from opening import field, settle, type_in
from PySide6.QtCore import QMimeData, QPointF, Qt, QUrl
from PySide6.QtGui import QDragEnterEvent, QDropEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

from studio.brief.skirt_file import save
from studio.styles import rack
from studio.window.shop import Shop

CTRL = Qt.KeyboardModifier.ControlModifier
NO_KEYS = Qt.KeyboardModifier.NoModifier


def press(shop: Shop, key: Qt.Key, keys: Qt.KeyboardModifier = NO_KEYS) -> None:
    """Press a key wherever the focus is."""
    QTest.keyClick(in_focus(), key, keys)
    settle(shop)


def in_focus() -> QWidget:
    """Where the next key goes."""
    widget = QApplication.focusWidget()
    assert widget is not None
    return widget


def drop(shop: Shop, *paths: Path) -> bool:
    """Drag files over the window and drop them; whether it took them."""
    carried = QMimeData()
    carried.setUrls([QUrl.fromLocalFile(str(path)) for path in paths])
    at, how = QPointF(600, 400), (Qt.DropAction.CopyAction, carried, Qt.MouseButton.LeftButton, NO_KEYS)
    over = QDragEnterEvent(at.toPoint(), *how)
    over.ignore()
    shop.window.dragEnterEvent(over)
    shop.window.dropEvent(QDropEvent(at, *how))
    settle(shop)
    return over.isAccepted()


def test_the_title_says_what_is_on_the_table(shop: Shop):
    """The skirt's name stands in the title whatever is in it, with a mark only while something is unsaved."""
    assert not shop.window.isWindowModified()
    shop.desk.edit("title", "A [*] skirt")
    settle(shop)
    assert "A [*][*] skirt[*] – Skirtwright" == shop.window.windowTitle()  # doubled: Qt's way to mean itself
    assert shop.window.isWindowModified()


def test_new_twice_still_leads_back(shop: Shop):
    """However often New is asked for, the way back to the skirt on the table stays."""
    shop.window.do.new.trigger()
    shop.window.do.new.trigger()
    assert shop.window.start.back.isVisible()
    QTest.mouseClick(shop.window.start.back, Qt.MouseButton.LeftButton)
    assert shop.window.at_table


def test_the_first_sheet_undoes_nothing_unseen(shop: Shop):
    """While the first sheet lies over the skirt, undo does not change it; back at the table it does."""
    type_in(shop, "body.waist", "74")
    shop.window.do.new.trigger()
    settle(shop)
    assert not shop.window.do.undo.isEnabled()
    QTest.mouseClick(shop.window.start.back, Qt.MouseButton.LeftButton)
    settle(shop)
    assert shop.window.do.undo.isEnabled()


def test_new_takes_a_value_still_being_typed(shop: Shop):
    """What is being typed when New is asked for belongs to the skirt on the table, and the sheet stays."""
    type_in(shop, "body.waist", "74", enter=False)
    shop.window.do.new.trigger()
    settle(shop)
    assert not shop.window.at_table
    assert 740.0 == shop.desk.brief.body.waist


def test_undo_by_key_while_typing(shop: Shop):
    """In a box, undo takes back the number as a whole; where it cannot be read, only that is taken back."""
    type_in(shop, "body.waist", "72")
    type_in(shop, "body.waist", "sixty", enter=False)
    press(shop, Qt.Key.Key_Z, CTRL)
    assert ("72.0", "") == (field(shop, "body.waist").box.text(), field(shop, "body.waist").fault)
    press(shop, Qt.Key.Key_Z, CTRL)
    assert "70.0" == field(shop, "body.waist").box.text()
    assert rack.usual() == shop.desk.brief


def test_l_shows_the_lines_and_is_a_letter_elsewhere(shop: Shop):
    """L on the board shows and hides what the lines mean; in a list of choices it chooses."""
    board, do = shop.window.table.canvas.board, shop.window.do
    board.setFocus()
    press(shop, Qt.Key.Key_L)
    assert (False, False) == (do.lines.isChecked(), board.legend)
    shop.window.table.reveal("opening.kind")
    press(shop, Qt.Key.Key_L)
    assert (False, "lapped") == (do.lines.isChecked(), shop.desk.brief.opening.kind)


def test_another_skirt_comes_without_the_last_ones_faults(shop: Shop, tmp_path: Path):
    """Words that could not be read go with the skirt they were typed for; the next is seen whole."""
    there = tmp_path / "next.skirt"
    save(there, rack.usual())
    type_in(shop, "body.waist", "wide")
    shop.window.do.larger.trigger()
    closer = shop.window.table.canvas.board.view
    shop.files.open_path(there)
    settle(shop)
    assert ("70.0", "") == (field(shop, "body.waist").box.text(), field(shop, "body.waist").fault)
    assert shop.window.table.canvas.board.view.scale < closer.scale


def test_a_skirt_can_be_dropped_anywhere(shop: Shop, tmp_path: Path):
    """One skirt dropped opens; a picture, or two files at once, are left alone."""
    one, other, picture = tmp_path / "a.skirt", tmp_path / "b.skirt", tmp_path / "c.png"
    save(one, rack.edit(rack.usual(), {"body.waist": 666.0}))
    save(other, rack.usual())
    picture.write_bytes(b"\x89PNG")
    assert not drop(shop, one, other)
    assert not drop(shop, picture)
    assert (None, "") == (shop.desk.file, shop.window.notice.text)
    assert drop(shop, one)
    assert (one, 666.0) == (shop.desk.file, shop.desk.brief.body.waist)
    assert not field(shop, "body.waist").box.acceptDrops()


def test_the_window_can_be_made_small(shop: Shop):
    """1100 by 700 px is room enough, on any screen that is larger."""
    shop.window.resize(100, 100)
    assert (1100, 700) == (shop.window.width(), shop.window.height())


def said(shop: Shop) -> list[str]:
    """Everything the window says in words, but for the hints, which are the same in every unit."""
    names = ("text", "accessibleName", "accessibleDescription", "toolTip", "placeholderText")
    names += ("unit", "figure", "caption", "summary")
    found = [getattr(widget, name, "") for widget in shop.window.findChildren(QWidget) for name in names]
    words = [one() if callable(one) else one for one in found]
    hints = [e.declared.hint for form in shop.window.table.forms for e in form.fields.values()]
    return [w for w in words if isinstance(w, str) and w and not any(hint in w for hint in hints)]


def test_in_inches_nothing_is_in_centimetres(shop: Shop):
    """Boxes, faults, summaries, findings, remedies, numbers, notions and what is read aloud: all in inches."""
    metric = re.compile(r"\d ?(cm|mm|m)\b|^(cm|mm|m)$|centimetre")
    for path, value in {"cloth.width": 600.0, "waistband.extension": 20.0, "opening.zip_on_hand": 100.0}.items():
        shop.desk.edit(path, value)
    type_in(shop, "body.waist", "7000")
    assert len([words for words in said(shop) if metric.search(words)]) > 40
    next(a for a in shop.window.do.units.actions() if a.data() == "in").trigger()
    settle(shop)
    type_in(shop, "body.waist", "7000")
    assert [] == [words for words in said(shop) if metric.search(words)]
    assert len([words for words in said(shop) if re.search(r"\d ?in\b|^in$|inches", words)]) > 40
