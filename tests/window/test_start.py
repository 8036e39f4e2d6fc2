"""The first sheet."""

from typing import Any

from hands import DECLARED, put
from PySide6.QtCore import Qt
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from studio.styles.rack import RACK
from studio.window.start import Start

LEFT = Qt.MouseButton.LeftButton


def sheet(qtbot: QtBot, bench: QWidget) -> Start:
    """The first sheet in a window of the least size."""
    bench.resize(1100, 628)
    start = Start(tuple(RACK), DECLARED, "cm", bench)
    put(qtbot, start)
    return start


def test_a_skirt_begins_at_the_usual_values(qtbot: QtBot, bench: QWidget) -> None:
    """ "Draft it" is enough: every number has its usual value."""
    start = sheet(qtbot, bench)
    with qtbot.waitSignal(start.drafted) as heard:
        qtbot.mouseClick(start.lead, LEFT)
    assert heard.args == [
        {
            "skirt.style": "gathered",
            "body.waist": 700.0,
            "body.hip": 960.0,
            "skirt.length": 620.0,
            "cloth.width": 1400.0,
        }
    ]


def test_a_typed_waist_goes_into_the_draft(qtbot: QtBot, bench: QWidget) -> None:
    """The keyboard alone is enough: the waist is in hand from the start, and no Enter is needed."""
    start = sheet(qtbot, bench)
    waist = start.fields["body.waist"]
    start.setFocus()
    qtbot.waitUntil(waist.box.hasFocus)
    waist.box.selectAll()
    qtbot.keyClicks(waist.box, "27 1/2 in")
    with qtbot.waitSignal(start.drafted) as heard:
        qtbot.keyClick(start.lead, Qt.Key.Key_Space)
    values: dict[str, Any] = heard.args[0]
    assert values["body.waist"] == 698.5  # 27.5 × 25.4, the international inch


def test_an_unreadable_number_holds_the_draft_back(qtbot: QtBot, bench: QWidget) -> None:
    """Instead of drafting something else, the sheet shows the field that wants mending."""
    start = sheet(qtbot, bench)
    hip = start.fields["body.hip"]
    hip.box.setFocus()
    qtbot.waitUntil(hip.box.hasFocus)
    hip.box.selectAll()
    qtbot.keyClicks(hip.box, "wide")
    with qtbot.assertNotEmitted(start.drafted):
        start.lead.click()  # as where buttons take no focus, so that the box has not been left
    assert hip.fault
    assert hip.box.hasFocus()


def test_the_figure_shows_where_the_tape_goes(qtbot: QtBot, bench: QWidget) -> None:
    """The measurement in hand lights on the figure, and its hint says how to take it."""
    start = sheet(qtbot, bench)
    start.fields["body.hip"].box.setFocus()
    qtbot.waitUntil(start.fields["body.hip"].box.hasFocus)
    assert start.figure.path == "body.hip"
    assert start.hint.text() == DECLARED["body.hip"].hint


def test_only_styles_that_exist_are_offered(qtbot: QtBot, bench: QWidget) -> None:
    """One tile for each style on the rack, the first of them chosen."""
    start = sheet(qtbot, bench)
    assert [tile.style_name for tile in start.styles] == list(RACK)
    assert [tile.isChecked() for tile in start.styles] == [i == 0 for i in range(len(RACK))]


def test_a_saved_skirt_can_be_opened_instead(qtbot: QtBot, bench: QWidget) -> None:
    """The second button asks for a file."""
    start = sheet(qtbot, bench)
    with qtbot.waitSignal(start.wanted_file):
        qtbot.mouseClick(start.other, LEFT)


def test_inches_from_the_start(qtbot: QtBot, bench: QWidget) -> None:
    """The sheet follows the maker's unit: 700 mm is 27.56 in, on the tape 27 1/2."""
    start = sheet(qtbot, bench)
    start.set_unit("in")
    assert start.fields["body.waist"].box.text() == "27 1/2"


def test_the_sheet_fits_the_least_window(qtbot: QtBot, bench: QWidget) -> None:
    """In a window of 1100 x 700, less its bars, nothing has to be scrolled for."""
    start = sheet(qtbot, bench)
    inside = start.viewport().rect()
    for part in (start.lead, start.figure, *start.fields.values()):
        assert isinstance(part, QWidget)
        assert inside.contains(part.mapTo(start.viewport(), part.rect().topLeft()))
        assert inside.contains(part.mapTo(start.viewport(), part.rect().bottomRight()))
