"""The board, looked at: zoom, pan, fit, keys, and what it does without a skirt."""

from typing import Any

import pytest
from board_bench import LEFT, NONE, RULER, SHIFT, Table, whole
from hands import put
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QKeyEvent, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QLineEdit, QWidget
from pytestqt.qtbot import QtBot

from studio.geometry import Box, Point
from studio.styles import rack
from studio.workroom import make_up

INCH = 25.4  # mm exactly: the yard agreement of 1959 (yard = 0.9144 m)


@pytest.fixture
def table(qtbot: QtBot, bench: QWidget) -> Table:
    """The usual skirt on a board."""
    return Table(qtbot, bench)


def wheel(table: Table, at: QPoint, turn: int, keys: Qt.KeyboardModifier = NONE, glide: QPoint | None = None) -> None:
    """Turn the wheel, or slide two fingers."""
    phase = Qt.ScrollPhase.ScrollUpdate if glide else Qt.ScrollPhase.NoScrollPhase
    place = QPointF(at)
    event = QWheelEvent(
        place, table.board.mapToGlobal(place), glide or QPoint(), QPoint(0, turn), Qt.MouseButton.NoButton, keys, phase,
        False,
    )  # fmt: skip
    QApplication.sendEvent(table.board, event)


@pytest.mark.parametrize("turn", [120, -120, 15])
def test_the_wheel_zooms_at_the_pointer(table: Table, turn: int):
    """What lies under the pointer stays there while the wheel turns."""
    at = QPoint(333, 222)
    before, scale = table.board.view.mm(Point(333, 222)), table.board.view.scale
    wheel(table, at, turn)
    after = table.board.view.mm(Point(333, 222))
    assert before.distance(after) < 1e-9
    assert (turn > 0) == (table.board.view.scale > scale)


def test_zoom_has_bounds(table: Table):
    """However long the wheel turns, something can still be seen."""
    for turn in (120, -120):
        for _ in range(100):
            wheel(table, QPoint(300, 300), turn)
        assert 0.001 < table.board.view.scale < 40
    table.picture()


def test_shift_and_wheel_pan_sideways(table: Table):
    """Shift and the wheel move the table sideways, and not up or down."""
    view = table.board.view
    wheel(table, QPoint(300, 300), 120, SHIFT)
    assert (view.scale, view.y) == (table.board.view.scale, table.board.view.y)
    assert view.x != table.board.view.x


def test_two_fingers_pan(table: Table):
    """Two fingers on a touch pad carry the table along; with Ctrl they zoom."""
    view = table.board.view
    wheel(table, QPoint(300, 300), 40, glide=QPoint(7, -5))
    assert view.panned(7, -5) == table.board.view
    wheel(table, QPoint(300, 300), 40, Qt.KeyboardModifier.ControlModifier, QPoint(7, -5))
    assert table.board.view.scale > view.scale


@pytest.mark.parametrize("button", [LEFT, Qt.MouseButton.MiddleButton])
def test_a_drag_on_the_ground_pans(table: Table, button: Qt.MouseButton):
    """Dragging the bare table carries it along."""
    view, start = table.board.view, QPoint(600, 60)
    table.press(start, button)
    table.move(start + QPoint(-40, 30))
    table.release(start + QPoint(-40, 30), button)
    assert view.panned(-40, 30) == table.board.view
    assert not table.chosen


def test_space_pans_from_a_handle(table: Table):
    """With Space held, even a press on a ring only carries the table along."""
    view, start = table.board.view, table.handle("skirt.length")
    QTest.keyPress(table.board, Qt.Key.Key_Space)
    table.drag(start, 20, 12)
    QTest.keyRelease(table.board, Qt.Key.Key_Space)
    assert view.panned(20, 12) == table.board.view
    assert not table.dragged


def test_keys(table: Table):
    """Plus, minus, 0, 1 and the arrows do what the mouse does."""
    board, fit = table.board, table.board.view
    QTest.keyClick(board, Qt.Key.Key_Plus)
    assert board.view.scale > fit.scale
    QTest.keyClick(board, Qt.Key.Key_Minus)
    assert board.view.scale == pytest.approx(fit.scale)
    QTest.keyClick(board, Qt.Key.Key_Right)
    assert board.view.x < fit.x
    QTest.keyClick(board, Qt.Key.Key_1)
    assert board.scale_words == "1:1"
    QTest.keyClick(board, Qt.Key.Key_0)
    assert fit == board.view


def test_letters_of_any_alphabet_do_no_harm(table: Table):
    """A key that means nothing here changes nothing, whatever keyboard it is on."""
    view = table.board.view
    for letter in "aжא中ß":
        key = QKeyEvent(QEvent.Type.KeyPress, ord(letter.upper()[0]), NONE, letter)
        QApplication.sendEvent(table.board, key)
        assert not key.isAccepted()
    assert view == table.board.view


def test_tab_goes_past(qtbot: QtBot, bench: QWidget, table: Table):
    """Tab reaches the board, draws its ring, and leaves it again."""
    after = QLineEdit(bench)
    put(qtbot, after)
    qtbot.waitUntil(after.isVisible)
    QWidget.setTabOrder(table.board, after)
    after.setFocus()
    qtbot.waitUntil(after.hasFocus)
    QTest.keyClick(after, Qt.Key.Key_Tab, SHIFT)
    qtbot.waitUntil(table.board.hasFocus)
    ringed = table.picture()
    QTest.keyClick(table.board, Qt.Key.Key_Tab)
    qtbot.waitUntil(after.hasFocus)
    assert ringed.pixel(1, 300) != table.picture().pixel(1, 300)


def test_the_board_can_be_read_aloud(table: Table):
    """Those who cannot see the board are told the pieces, their sizes and how many to cut."""
    says = table.board.accessibleDescription()
    assert table.board.accessibleName()
    assert "Waistband: 78.0 cm × 9.0 cm, cut 1." in says
    assert "Skirt: 145.0 cm × 67.5 cm, cut 1." in says


def test_pieces_stay_still_while_a_number_changes(table: Table):
    """Small edits leave the view alone; a piece that would leave the board brings all of them back into view."""
    view = table.board.view
    table.show(skirt__length=640.0)
    assert view == table.board.view
    table.show(skirt__length=1400.0)
    assert table.board.view.scale < view.scale
    table.show(skirt__length=300.0, skirt__fullness=1.0)
    assert table.board.view.scale > view.scale


SKIRTS = [
    {},
    {"body__waist": 685.0, "skirt__fullness": 2.2},
    {"body__waist": 1100.0},
    {"skirt__length": 900.0},
    {"waistband__width": 80.0, "seams__hem": 80.0},
    {"skirt__cut": "across", "skirt__panels": 7, "fastening__kind": "hook and bar"},
]


@pytest.mark.parametrize("size", [(690, 550), (1250, 880)], ids=str)
@pytest.mark.parametrize("skirt", SKIRTS, ids=str)
def test_fit_shows_everything(qtbot: QtBot, bench: QWidget, skirt: dict[str, Any], size: tuple[int, int]):
    """Fitted, every piece, name and measured line can be seen whole, and none lies under the legend."""
    assert [] == unseen(Table(qtbot, bench, size, **skirt))


@pytest.mark.parametrize("skirt", SKIRTS, ids=str)
def test_no_edit_hides_a_number(table: Table, skirt: dict[str, Any]):
    """An edit that would push words under the legend or out of view brings all of them back."""
    table.show(**skirt)
    assert [] == unseen(table)


def unseen(table: Table) -> list[Box]:
    """What is not seen whole: boxes beyond the rulers and edges, or that the legend lies over, px."""
    board = table.board
    assert board.scene is not None
    corner = board._legend_box()
    assert corner is not None
    legend = Box(corner.left(), corner.top(), corner.right() + 1, corner.bottom() + 1)
    room = Box(RULER, RULER, board.width(), board.height())
    pieces = [board.scene.box(k) for k in range(len(board.scene.shapes))]
    boxes = [b.moved(board.view.x, board.view.y) for b in (*pieces, *board.scene.written)]
    return [b for b in boxes if b.meets(legend) or b.joined(room) != room]


def test_a_view_of_the_makers_own_stays(table: Table):
    """Once the maker has zoomed, no edit changes the view."""
    table.board.zoom_in()
    view = table.board.view
    table.show(skirt__length=1400.0)
    assert view == table.board.view


def test_pieces_that_come_to_fill_little_are_fitted_again(table: Table):
    """Cut across, the panels are narrow: they lie where a fit puts them, also when the table was carried before."""
    table.show(skirt__cut="across")
    assert is_fitted(table)
    table.show(skirt__cut="along")
    start = QPoint(600, 60)
    table.drag(start, -30, 20)
    carried = table.board.view
    table.show(skirt__length=630.0)
    assert carried == table.board.view
    table.show(skirt__cut="across")
    assert is_fitted(table)


def test_pieces_too_large_to_be_seen_whole_are_fitted_again(table: Table):
    """However the table was carried, pieces that have outgrown the view are brought back into it."""
    table.drag(QPoint(600, 60), -30, 20)
    table.show(skirt__length=1400.0)
    assert is_fitted(table)


def test_a_drag_elsewhere_moves_nothing_until_it_is_over(table: Table):
    """While a number is dragged by its slider the view stays; let go, all is in view again."""
    view = table.board.view
    table.board.hold(True)
    table.show(skirt__length=1400.0)
    assert view == table.board.view
    table.board.hold(False)
    assert is_fitted(table)


def is_fitted(table: Table) -> bool:
    """Whether a fit would change nothing."""
    view = table.board.view
    table.board.fit()
    return bool(view == table.board.view)


def test_fitted_again_when_the_board_changes_its_size(table: Table):
    """A larger board shows larger pieces, until the maker has chosen a view."""
    scale = table.board.view.scale
    table.board.setFixedSize(1200, 900)
    QApplication.processEvents()
    assert table.board.view.scale > scale


def test_life_size_is_life_size(table: Table):
    """At 1:1 a hundred millimetres take as many pixels as the screen says they should."""
    table.board.life_size()
    dots = table.board.screen().physicalDotsPerInch()
    a, b = (table.board.view.px(Point(x, 0)).x for x in (0, 100))
    assert b - a == pytest.approx(100 / INCH * dots)
    assert table.board.scale_words == "1:1"


def test_the_scale_is_told(table: Table, qtbot: QtBot):
    """The foot hears of every other scale, and not of a pan."""
    with qtbot.waitSignal(table.board.scale_changed):
        table.board.zoom_out()
    with qtbot.assertNotEmitted(table.board.scale_changed):
        QTest.keyClick(table.board, Qt.Key.Key_Left)


def test_a_board_without_a_skirt(qtbot: QtBot, bench: QWidget, table: Table):
    """Before there is a skirt the board is bare: it paints, and takes every gesture without harm."""
    board = type(table.board)(bench)
    board.resize(500, 400)
    board.grab()
    QTest.mouseClick(board, LEFT, NONE, whole(Point(100, 100)))
    board.fit()
    board.zoom_in()
    board.set_unit("in")
    board.grab()
    board.show_docket(make_up(rack.usual()))
    assert board.scene is not None
