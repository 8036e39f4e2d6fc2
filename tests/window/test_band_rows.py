"""The bands of a print in the Cloth section: typed, chosen, added, removed."""

import pytest
from band_hands import FACE, HEM, bands, choose, now, row, type_in, undo, words
from opening import open_shop, settle, shut, to_view
from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from studio.brief import PrintBand
from studio.window.settings import Settings
from studio.window.shop import Shop


def test_a_band_is_typed_from_and_to(cloth: Shop):
    """Each end takes effect as it is typed, in the lay plan too, and is a step to undo; the row says how wide it is."""
    to_view(cloth, "lay")
    type_in(cloth, 0, "end", "22")
    assert (PrintBand(60, 220), FACE) == now(cloth)
    assert "16.0 cm wide" == row(cloth, 0).wide.text()
    assert (PrintBand(60, 220), FACE) == cloth.window.table.canvas.lay.table.docket.brief.cloth.bands
    type_in(cloth, 0, "start", "80 mm")
    assert 80 == now(cloth)[0].start
    undo(cloth)
    assert "6.0" == row(cloth, 0).ends["start"].text()
    undo(cloth)
    assert (HEM, FACE) == now(cloth)
    assert ["6.0", "26.0"] == [box.text() for box in row(cloth, 0).ends.values()]


def test_either_end_may_be_typed_first(cloth: Shop):
    """A band is moved past its old end by typing from, Tab, to: nothing is called wrong in between, and it is one band."""
    type_in(cloth, 0, "start", "50", Qt.Key.Key_Tab)
    assert "" == row(cloth, 0).fault
    assert row(cloth, 0).ends["end"].hasFocus()
    assert HEM == now(cloth)[0]
    QTest.keyClicks(row(cloth, 0).ends["end"], "72")
    QTest.keyClick(row(cloth, 0).ends["end"], Qt.Key.Key_Return)
    settle(cloth)
    assert PrintBand(500, 720) == now(cloth)[0]
    undo(cloth)
    assert HEM == now(cloth)[0]


def test_what_is_typed_back_is_as_it_was(cloth: Shop):
    """A slip corrected to what stood there before is no edit at all, however exact the band."""
    cloth.desk.mend({"cloth.bands": (PrintBand(61.23, 259.87),)})
    settle(cloth)
    steps = len(cloth.desk.history.before)
    type_in(cloth, 0, "start", "5", None)
    assert 50 == now(cloth)[0].start
    type_in(cloth, 0, "start", "6.1")
    assert (PrintBand(61.23, 259.87),) == now(cloth)
    assert steps == len(cloth.desk.history.before)


def test_what_is_not_typed_stays_exact(cloth: Shop):
    """A band read from a photograph keeps its fractions of a millimetre while its other end is typed."""
    cloth.desk.mend({"cloth.bands": (PrintBand(61.23, 259.87), FACE)})
    settle(cloth)
    type_in(cloth, 0, "end", "25")
    assert PrintBand(61.23, 250) == now(cloth)[0]


WRONG = [
    (0, "end", "5", "A band goes from less to more, not from 6.0 to 5.0 cm."),
    (1, "end", "150", "The cloth ends at 140.0 cm."),
    (1, "start", "20", "It would lie over the band from 6.0 to 26.0 cm."),
    (0, "start", "abc", "“abc” is not a length; type one such as 68.5 cm."),
    (0, "end", "400", "To goes from 0.0 to 320.0 cm."),
]


@pytest.mark.parametrize(("k", "end", "typed", "says"), WRONG)
def test_what_cannot_be_is_said_at_the_row(cloth: Shop, k: int, end: str, typed: str, says: str):
    """A band that ends before it begins, off the cloth, over another, or unreadable is a fault once one goes on: the
    words stay to be mended, the bands are those from before, and Undo puts the words back.
    """
    type_in(cloth, k, end, typed, None)
    assert "" == row(cloth, k).fault
    assert not row(cloth, k).fault_line.isVisible()
    QTest.keyClick(QApplication.focusWidget(), Qt.Key.Key_Return)
    settle(cloth)
    box = row(cloth, k).ends[end]
    assert says == row(cloth, k).fault_line.text()
    assert row(cloth, k).fault_line.isVisible()
    assert box.fault and says in box.accessibleDescription()
    assert typed == box.text()
    assert (HEM, FACE) == now(cloth)
    undo(cloth)
    assert "" == row(cloth, k).fault_line.text()
    assert (HEM, FACE) == now(cloth)
    assert typed != box.text()


def test_a_fault_is_gone_once_there_is_room(cloth: Shop):
    """What was typed over another band is taken as meant when that band has made room."""
    type_in(cloth, 1, "start", "20")
    assert row(cloth, 1).fault
    type_in(cloth, 0, "end", "18")
    assert "" == row(cloth, 1).fault
    assert [(60, 180), (200, 1330)] == [(b.start, b.end) for b in now(cloth)]


def test_a_cloth_that_has_become_too_narrow_says_so_at_its_bands(cloth: Shop):
    """Bands are not changed in silence: the row tells that its band is off the cloth, until the cloth is wide enough."""
    cloth.desk.edit("cloth.width", 1300.0)
    settle(cloth)
    assert (HEM, FACE) == now(cloth)
    assert ["", "The cloth ends at 130.0 cm."] == [bands(cloth).rows[k].fault_line.text() for k in (0, 1)]
    undo(cloth)
    assert "" == row(cloth, 1).fault_line.text()


def test_for_what_it_is_the_usual_line_is_chosen(cloth: Shop):
    """What a band is for is chosen from what this skirt has, and what is usual there is laid on it; one step each."""
    assert ["Skirt", "Waistband", "Nothing"] == words(row(cloth, 0).picks["holds"])
    choose(cloth, 0, "holds", "W")
    assert PrintBand(60, 260, "waistband", "face centre") == now(cloth)[0]
    assert "Middle of its face" == row(cloth, 0).picks["by"].currentText()
    choose(cloth, 0, "by", "F")
    assert "fold" == now(cloth)[0].by
    choose(cloth, 0, "tops", "H")
    assert "second" == now(cloth)[0].tops
    choose(cloth, 0, "holds", "N")
    assert not row(cloth, 0).picks["by"].isEnabled()
    for _ in range(4):
        undo(cloth)
    assert HEM == now(cloth)[0]


def test_a_tiered_skirt_has_its_tiers_and_no_word_is_lost(cloth: Shop):
    """On a tiered skirt bands can be for its tiers; on another style such a band still says so until it is changed."""
    cloth.desk.mend({"skirt.style": "tiered", "cloth.bands": (PrintBand(60, 260, "tier 2", "top"),)})
    settle(cloth)
    assert ["Skirt", "Waistband", "Tier 1", "Tier 2", "Tier 3", "Nothing"] == words(row(cloth, 0).picks["holds"])
    cloth.desk.mend({"skirt.style": "straight", "waistband.kind": "faced"})
    settle(cloth)
    assert ["Skirt", "Nothing", "Tier 2"] == words(row(cloth, 0).picks["holds"])
    assert "Tier 2" == row(cloth, 0).picks["holds"].currentText()
    assert PrintBand(60, 260, "tier 2", "top") == now(cloth)[0]


def test_bands_are_added_where_there_is_room(cloth: Shop):
    """The first lies along one selvedge for the hem, the next along the other for the waistband, neither with anything
    to mend; each is a step, with the cursor in it and all of it in view.
    """
    cloth.desk.mend({"cloth.bands": ()})
    settle(cloth)
    construction = cloth.window.table.construction
    for n in (1, 2, 3):
        bands(cloth).add.click()
        settle(cloth)
        box = QApplication.focusWidget()
        here = next(r for r in bands(cloth).rows if box is r.ends["start"])
        assert box.selectedText() == box.text()
        seen = here.mapTo(construction.viewport(), here.rect().topLeft()).y()
        assert 0 <= seen <= construction.viewport().height() - here.height()
        assert n == len(now(cloth)) == len(bands(cloth).rows)
        assert () == cloth.desk.docket.findings
    assert ["skirt", "nothing", "waistband"] == [b.holds for b in now(cloth)]
    undo(cloth)
    undo(cloth)
    assert ["skirt"] == [b.holds for b in now(cloth)]


def test_a_cloth_full_of_bands_takes_no_more(cloth: Shop):
    """With twelve bands, or from selvedge to selvedge, the button rests and says why."""
    cloth.desk.mend({"cloth.bands": tuple(PrintBand(100 * k, 100 * k + 50) for k in range(12))})
    settle(cloth)
    assert not bands(cloth).add.isEnabled()
    assert "no room" in bands(cloth).add.toolTip()
    cloth.desk.mend({"cloth.bands": (PrintBand(0, 1400),)})
    settle(cloth)
    assert not bands(cloth).add.isEnabled()
    QTest.mouseClick(row(cloth, 0).remove, Qt.MouseButton.LeftButton)
    settle(cloth)
    assert bands(cloth).add.isEnabled()


def test_a_band_is_removed_and_comes_back(cloth: Shop):
    """The cross takes its own band away, and Undo brings it back as it was."""
    QTest.mouseClick(row(cloth, 0).remove, Qt.MouseButton.LeftButton)
    settle(cloth)
    assert (FACE,) == now(cloth)
    assert "Band 1" == row(cloth, 0).title.text()
    assert "129.0" == row(cloth, 0).ends["start"].text()
    undo(cloth)
    assert (HEM, FACE) == now(cloth)
    assert ["6.0", "129.0"] == [r.ends["start"].text() for r in bands(cloth).rows]


def test_rows_come_into_order_when_the_edit_is_over(cloth: Shop):
    """A band typed past another keeps the cursor where it is while one types; then the rows lie as the bands do."""
    moved = row(cloth, 0)
    type_in(cloth, 0, "start", "134", Qt.Key.Key_Tab)
    type_in(cloth, 0, "end", "139", None)
    assert [1340, 1290] == [b.start for b in now(cloth)]
    assert moved is row(cloth, 0)
    assert moved.ends["end"].hasFocus()
    QTest.keyClick(moved.ends["end"], Qt.Key.Key_Return)
    settle(cloth)
    assert [1290, 1340] == [b.start for b in now(cloth)]
    assert moved is row(cloth, 1)
    assert moved.ends["end"].hasFocus()
    assert "cloth.bands.1" == cloth.window.table.lights.path
    assert moved.y() > row(cloth, 0).y()


def test_inches_are_typed_and_shown(qtbot: QtBot, settings: Settings):
    """In inches a band is written to the eighth and typed as on the tape; bands that touch there do not overlap."""
    settings.unit = "in"
    shop = open_shop(qtbot, settings)
    shop.window.table.construction.open_sections(["cloth"])
    shop.desk.mend({"cloth.bands": (PrintBand(0, 140), PrintBand(200, 300, "nothing"))})
    settle(shop)
    assert ["0", "5 1/2"] == [box.text() for box in row(shop, 0).ends.values()]
    assert "Band 1, From, inches" == row(shop, 0).ends["start"].accessibleName()
    type_in(shop, 1, "start", "5 1/2")
    assert "" == row(shop, 1).fault
    assert pytest.approx(5.5 * 25.4) == now(shop)[1].start
    type_in(shop, 1, "end", "12 cm")
    assert "A band goes from less to more, not from 5 1/2 to 4 3/4 in." == row(shop, 1).fault
    shop.window.do.unit_chosen.emit("cm")
    settle(shop)
    assert ["14.0", "30.0"] == [box.text() for box in row(shop, 1).ends.values()]
    shut(qtbot, shop)


def test_arrow_keys_move_an_end(cloth: Shop):
    """Up and Down move the end the cursor is in by half a centimetre, as far as there is room."""
    box = row(cloth, 0).ends["end"]
    box.setFocus()
    QTest.keyClick(box, Qt.Key.Key_Up)
    QTest.keyClick(box, Qt.Key.Key_Up, Qt.KeyboardModifier.ShiftModifier)
    settle(cloth)
    assert 290 == now(cloth)[0].end
    box.clearFocus()
    undo(cloth)
    assert HEM == now(cloth)[0]
