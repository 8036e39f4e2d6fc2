"""A number field, with hands on it."""

import gc
import weakref

import pytest
from hands import DECLARED, Heard, put
from PySide6.QtCore import QCoreApplication, QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from studio.units import Unit
from studio.window.widgets.entry_for import entry_for
from studio.window.widgets.field import Field

INCH = 25.4  # mm exactly: the yard agreement of 1959 (yard = 0.9144 m)
LEFT = Qt.MouseButton.LeftButton


def field(qtbot: QtBot, bench: QWidget, path: str, value: float | None = None, unit: Unit = "cm") -> Field:
    """A field on a bench, showing a value."""
    one = Field(DECLARED[path], unit, bench)
    if value is not None:
        one.show_value(value, unit)
    put(qtbot, one)
    return one


def take(qtbot: QtBot, widget: QWidget) -> None:
    """Give a control the focus, as Tab does."""
    widget.setFocus(Qt.FocusReason.TabFocusReason)
    qtbot.waitUntil(widget.hasFocus)


def write(qtbot: QtBot, one: Field, text: str) -> None:
    """Type over what is in the box."""
    take(qtbot, one.box)
    one.box.selectAll()
    qtbot.keyClicks(one.box, text)


def test_pieces_can_follow_each_keystroke(qtbot: QtBot, bench: QWidget) -> None:
    """What reads cleanly takes effect while one types, and the box keeps what was typed."""
    waist = field(qtbot, bench, "body.waist", 700.0)
    heard = Heard(waist)
    write(qtbot, waist, "71.5")
    assert heard.values == [710.0, 715.0]
    assert heard.finished == []
    assert waist.box.text() == "71.5"
    assert waist.slider.amount == 715.0


@pytest.mark.parametrize(
    ("typed", "mm", "words"),
    [("71,5", 715.0, "71.5"), ("28 in", 28 * INCH, "71.1"), ("27 1/2 in", 27.5 * INCH, "69.9")],
)
def test_a_length_is_read_as_it_is_written(qtbot: QtBot, bench: QWidget, typed: str, mm: float, words: str) -> None:
    """Decimal commas, and inches in a field of centimetres, are understood; Enter writes them in the field's unit."""
    waist = field(qtbot, bench, "body.waist", 600.0)
    heard = Heard(waist)
    write(qtbot, waist, typed)
    qtbot.keyClick(waist.box, Qt.Key.Key_Return)
    assert heard.values[-1] == pytest.approx(mm, abs=1e-9)
    assert heard.finished == ["body.waist"]
    assert waist.box.text() == words


def test_untouched_words_keep_the_exact_length(qtbot: QtBot, bench: QWidget) -> None:
    """Going through a field with Tab or Enter, or typing its own words again, never rounds what is behind them."""
    waist = field(qtbot, bench, "body.waist", 692.15)
    heard = Heard(waist)
    take(qtbot, waist.box)
    qtbot.keyClick(waist.box, Qt.Key.Key_Return)
    take(qtbot, waist.slider)
    assert heard.changed == []
    write(qtbot, waist, "69.2")
    take(qtbot, waist.slider)
    assert waist.value == 692.15
    assert heard.finished == ["body.waist"]


def test_a_half_typed_number_is_no_fault(qtbot: QtBot, bench: QWidget) -> None:
    """Nobody is told off while still typing."""
    waist = field(qtbot, bench, "body.waist", 700.0)
    heard = Heard(waist)
    write(qtbot, waist, "6")
    assert waist.fault == ""
    assert heard.values == []


def test_what_cannot_be_read_changes_nothing_and_stays_to_be_mended(qtbot: QtBot, bench: QWidget) -> None:
    """The sentence says what would do, the text stays, and the number is the one from before the edit."""
    waist = field(qtbot, bench, "body.waist", 700.0)
    heard = Heard(waist)
    write(qtbot, waist, "680")
    qtbot.keyClick(waist.box, Qt.Key.Key_Return)
    assert waist.fault == "Waist goes from 40.0 to 200.0 cm."
    assert waist.fault_line.isVisible()
    assert waist.fault in waist.box.accessibleDescription()
    assert waist.box.text() == "680"
    assert heard.values == [680.0, 700.0]
    waist.show_value(700.0, "cm")
    assert waist.box.text() == "680"
    write(qtbot, waist, "68")
    assert waist.fault == ""
    assert not waist.fault_line.isVisible()
    assert waist.value == 680.0


def test_leaving_a_field_shows_its_fault(qtbot: QtBot, bench: QWidget) -> None:
    """A fault cannot be tabbed past unseen; it stays until it is mended, or the number changes from elsewhere."""
    waist = field(qtbot, bench, "body.waist", 700.0)
    write(qtbot, waist, "sixty")
    qtbot.keyClick(waist.box, Qt.Key.Key_Tab)
    assert waist.fault.startswith("“sixty” is not a length")
    assert waist.value == 700.0
    waist.show_value(700.0, "cm")
    assert waist.box.text() == "sixty"
    waist.show_value(680.0, "cm")
    assert (waist.box.text(), waist.fault) == ("68.0", "")


def test_escape_takes_everything_back(qtbot: QtBot, bench: QWidget) -> None:
    """After Escape value, words and fault are as before the edit."""
    waist = field(qtbot, bench, "body.waist", 692.15)
    heard = Heard(waist)
    write(qtbot, waist, "71")
    qtbot.keyClick(waist.box, Qt.Key.Key_Escape)
    assert heard.values == [710.0, 692.15]
    assert waist.box.text() == "69.2"
    write(qtbot, waist, "abc")
    qtbot.keyClick(waist.box, Qt.Key.Key_Return)
    qtbot.keyClick(waist.box, Qt.Key.Key_Escape)
    assert (waist.fault, waist.box.text(), waist.value) == ("", "69.2", 692.15)


def test_nothing_is_written_under_the_makers_hands(qtbot: QtBot, bench: QWidget) -> None:
    """While one types the box is left alone; otherwise it follows."""
    waist = field(qtbot, bench, "body.waist", 700.0)
    write(qtbot, waist, "71")
    waist.show_value(710.0, "cm")
    assert waist.box.text() == "71"
    qtbot.keyClick(waist.box, Qt.Key.Key_Return)
    waist.show_value(800.0, "cm")
    assert waist.box.text() == "80.0"


def test_a_slide_is_one_edit(qtbot: QtBot, bench: QWidget) -> None:
    """Sliding changes the skirt all the way, and is one step to undo."""
    length = field(qtbot, bench, "skirt.length", 620.0)
    heard = Heard(length)
    slider = length.slider
    middle = slider.height() // 2
    qtbot.mousePress(slider, LEFT, pos=QPoint(slider.width() - 40, middle))
    for x in (30, 20, 10):
        qtbot.mouseMove(slider, QPoint(slider.width() - x, middle))
    assert len(heard.changed) == 4
    assert heard.values == sorted(heard.values)
    assert heard.finished == []
    assert length.box.text() == f"{heard.values[-1] / 10:.1f}"
    qtbot.mouseRelease(slider, LEFT, pos=QPoint(slider.width() - 10, middle))
    assert heard.finished == ["skirt.length"]


def test_taking_hold_of_the_slider_moves_nothing(qtbot: QtBot, bench: QWidget) -> None:
    """A press on the knob keeps the exact length, wherever on the knob it falls."""
    length = field(qtbot, bench, "skirt.length", 621.7)
    heard = Heard(length)
    knob = round(length.slider._thumb()) + 4
    qtbot.mouseClick(length.slider, LEFT, pos=QPoint(knob, length.slider.height() // 2))
    assert heard.changed == []
    assert length.value == 621.7


def test_the_slider_obeys_the_keyboard(qtbot: QtBot, bench: QWidget) -> None:
    """Arrows step, page keys take five steps, Home and End go to the ends; each press is one edit."""
    length = field(qtbot, bench, "skirt.length", 620.0)
    heard = Heard(length)
    take(qtbot, length.slider)
    for key in (Qt.Key.Key_Right, Qt.Key.Key_Left, Qt.Key.Key_PageUp, Qt.Key.Key_Home, Qt.Key.Key_End):
        qtbot.keyClick(length.slider, key)
    assert heard.values == [625.0, 620.0, 645.0, 100.0, 1500.0]
    assert len(heard.finished) == 5


def test_the_wheel_scrolls_the_form_and_changes_nothing(qtbot: QtBot, bench: QWidget) -> None:
    """A number never changes because the pointer happened to pass over it."""
    length = field(qtbot, bench, "skirt.length", 620.0)
    heard = Heard(length)
    here = QPointF(length.slider.rect().center())
    turn = QWheelEvent(
        here, here, QPoint(), QPoint(0, 120), Qt.MouseButton.NoButton, Qt.KeyboardModifier.NoModifier,
        Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QApplication.sendEvent(length.slider, turn)
    assert heard.changed == []


def test_up_and_down_step_the_value(qtbot: QtBot, bench: QWidget) -> None:
    """Up and Down take one step, with Shift five, and stop at the ends; Escape still takes them back."""
    length = field(qtbot, bench, "skirt.length", 620.0)
    heard = Heard(length)
    take(qtbot, length.box)
    qtbot.keyClick(length.box, Qt.Key.Key_Up)
    qtbot.keyClick(length.box, Qt.Key.Key_Down, Qt.KeyboardModifier.ShiftModifier)
    assert heard.values == [625.0, 600.0]
    assert length.box.text() == "60.0"
    qtbot.keyClick(length.box, Qt.Key.Key_Escape)
    assert length.value == 620.0
    length.show_value(1499.0, "cm")
    qtbot.keyClick(length.box, Qt.Key.Key_Up)
    assert length.value == 1500.0


def test_inches_step_by_eighths(qtbot: QtBot, bench: QWidget) -> None:
    """In inches the arrows and the slider stay on the eighths a tape has."""
    waist = field(qtbot, bench, "body.waist", 27.25 * INCH, "in")
    assert (waist.box.text(), waist.box.unit) == ("27 1/4", "in")
    take(qtbot, waist.box)
    qtbot.keyClick(waist.box, Qt.Key.Key_Up)
    assert waist.value == pytest.approx(27.5 * INCH, abs=1e-6)
    take(qtbot, waist.slider)
    qtbot.keyClick(waist.slider, Qt.Key.Key_Left)
    assert waist.value == pytest.approx(27.25 * INCH, abs=1e-6)


def test_another_unit_rewords_the_same_length(qtbot: QtBot, bench: QWidget) -> None:
    """Changing the unit changes words, never the length: 620 mm is 24.41 in, on the tape 24 3/8."""
    length = field(qtbot, bench, "skirt.length", 620.0)
    heard = Heard(length)
    length.set_unit("in")
    assert (length.box.text(), length.box.unit, length.value) == ("24 3/8", "in", 620.0)
    assert length.box.accessibleName() == "Length, inches"
    length.set_unit("cm")
    assert (length.box.text(), length.box.unit) == ("62.0", "cm")
    assert heard.changed == []


def test_a_measurement_may_be_unknown(qtbot: QtBot, bench: QWidget) -> None:
    """An emptied box says what empty means, and the reset gives the usual value back."""
    hip = field(qtbot, bench, "body.hip", 960.0)
    heard = Heard(hip)
    take(qtbot, hip.box)
    hip.box.selectAll()
    qtbot.keyClick(hip.box, Qt.Key.Key_Delete)
    qtbot.keyClick(hip.box, Qt.Key.Key_Return)
    assert heard.values == [None]
    assert (hip.box.text(), hip.box.placeholderText(), hip.fault) == ("", "not known", "")
    qtbot.mouseClick(hip.reset, LEFT)
    assert hip.value == 960.0
    assert heard.finished == ["body.hip", "body.hip"]


def test_a_waist_cannot_be_left_empty(qtbot: QtBot, bench: QWidget) -> None:
    """The one number a skirt cannot do without says so."""
    waist = field(qtbot, bench, "body.waist", 700.0)
    take(qtbot, waist.box)
    waist.box.selectAll()
    qtbot.keyClick(waist.box, Qt.Key.Key_Delete)
    qtbot.keyClick(waist.box, Qt.Key.Key_Return)
    assert waist.fault == "Waist cannot be empty; 70.0 cm is usual."
    assert waist.value == 700.0


def test_nought_stands_for_as_drafted(qtbot: QtBot, bench: QWidget) -> None:
    """A count that lets the draft choose shows no 0; one typed is kept as a whole number."""
    panels = field(qtbot, bench, "skirt.panels")
    heard = Heard(panels)
    assert panels.box.text() == ""
    write(qtbot, panels, "3")
    assert heard.values == [3]
    assert isinstance(panels.value, int)
    take(qtbot, panels.slider)
    qtbot.keyClick(panels.slider, Qt.Key.Key_Left)
    assert isinstance(panels.value, int)


def test_the_way_back_shows_only_when_there_is_one(qtbot: QtBot, bench: QWidget) -> None:
    """The reset appears away from the usual value, is one edit, and leaves the focus in the field."""
    length = field(qtbot, bench, "skirt.length", 700.0)
    heard = Heard(length)
    assert length.reset.isVisible()
    take(qtbot, length.reset)
    qtbot.keyClick(length.reset, Qt.Key.Key_Space)
    assert heard.values == [620.0]
    assert heard.finished == ["skirt.length"]
    assert not length.reset.isVisible()
    assert length.box.hasFocus()


def test_nothing_shifts_when_the_reset_shows(qtbot: QtBot, bench: QWidget) -> None:
    """Box and slider stay where they are."""
    length = field(qtbot, bench, "skirt.length", 620.0)
    before = (length.box.geometry(), length.slider.geometry(), length.height())
    length.show_value(700.0, "cm")
    QApplication.processEvents()
    assert (length.box.geometry(), length.slider.geometry(), length.height()) == before


def test_a_field_in_hand_says_so_once(qtbot: QtBot, bench: QWidget) -> None:
    """Its line lights while box or slider is in hand, and goes out when the hand goes on."""
    waist, hip = (Field(DECLARED[path], "cm", bench) for path in ("body.waist", "body.hip"))
    put(qtbot, waist, hip)
    take(qtbot, hip.box)
    heard = Heard(waist)
    take(qtbot, waist.box)
    take(qtbot, waist.slider)
    take(qtbot, hip.box)
    assert heard.lit == ["body.waist", ""]


def test_tab_goes_box_slider_reset(qtbot: QtBot, bench: QWidget) -> None:
    """The keyboard meets the controls in reading order, and no hidden ones."""
    waist, hip = (Field(DECLARED[path], "cm", bench) for path in ("body.waist", "body.hip"))
    waist.show_value(680.0, "cm")
    put(qtbot, waist, hip)
    take(qtbot, waist.box)
    met = []
    for _ in range(5):
        met.append(QApplication.focusWidget())
        qtbot.keyClick(QApplication.focusWidget(), Qt.Key.Key_Tab)
    assert met == [waist.box, waist.slider, waist.reset, hip.box, hip.slider]


def test_a_disabled_field_offers_no_way_back(qtbot: QtBot, bench: QWidget) -> None:
    """What cannot be changed looks and behaves so."""
    length = field(qtbot, bench, "skirt.length", 700.0)
    length.setEnabled(False)
    assert not length.reset.isVisible()
    length.setEnabled(True)
    assert length.reset.isVisible()


@pytest.mark.parametrize("path", DECLARED)
def test_every_control_has_a_name_and_a_hint(qtbot: QtBot, bench: QWidget, path: str) -> None:
    """A screen reader finds words on whatever can take the focus."""
    entry = entry_for(DECLARED[path], "cm", bench)
    controls = [w for w in entry.findChildren(QWidget) if w.focusPolicy() & Qt.FocusPolicy.TabFocus]
    assert controls
    for control in controls:
        assert control.accessibleName().startswith(DECLARED[path].words)
    assert DECLARED[path].hint in controls[0].accessibleDescription()


def test_a_form_that_is_closed_is_gone(qtbot: QtBot) -> None:
    """No field is kept alive by its own signals."""
    window = QWidget()
    kept = [weakref.ref(entry_for(one, "cm", window)) for one in DECLARED.values()]
    window.deleteLater()
    del window
    QCoreApplication.sendPostedEvents(None, QEvent.Type.DeferredDelete)
    gc.collect()
    assert [one for one in kept if one() is not None] == []


@pytest.mark.parametrize(("value", "unit", "there"), [
    (700.0, "in", False), (27.625 * INCH, "cm", False), (27.625 * INCH, "in", False), (700.03, "cm", False),
    (27.5 * INCH, "in", True), (701.0, "cm", True),
])  # fmt: skip
def test_no_way_back_from_what_is_usual(qtbot: QtBot, bench: QWidget, value: float, unit: Unit, there: bool) -> None:
    """A skirt begun in centimetres and shown in inches, or the other way about, has no arrow at untouched numbers."""
    assert there == field(qtbot, bench, "body.waist", value, unit).reset.isVisible()
