"""The board, with hands on it."""

import pytest
from board_bench import LEFT, RULER, SHIFT, Table
from PySide6.QtCore import QEvent, QPoint, QPointF, Qt
from PySide6.QtGui import QMouseEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget
from pytestqt.qtbot import QtBot

from studio.styles import rack

INCH = 25.4  # mm exactly: the yard agreement of 1959 (yard = 0.9144 m)


@pytest.fixture
def table(qtbot: QtBot, bench: QWidget) -> Table:
    """The usual skirt on a board."""
    return Table(qtbot, bench)


def hold_shift_and_move(table: Table, at: QPoint) -> None:
    """Move the pointer with the button and Shift down."""
    place = QPointF(at)
    event = QMouseEvent(
        QEvent.Type.MouseMove, place, table.board.mapToGlobal(place), Qt.MouseButton.NoButton, LEFT, SHIFT
    )
    QApplication.sendEvent(table.board, event)


def test_a_drag_moves_the_number_by_what_the_hand_moved(table: Table):
    """Dragging the band's fold down by some pixels makes it wider by as many millimetres as they stand for."""
    scale, start = table.board.view.scale, table.brief.waistband.width
    table.drag(table.handle("waistband.width") + QPoint(3, -2), 0, 16)
    assert {"waistband.width"} == {path for path, _ in table.dragged}
    assert table.dragged[-1][1] == round(start + 16 / scale)
    assert table.brief.waistband.width == table.dragged[-1][1]
    assert ["waistband.width"] == table.dropped


def test_the_handle_follows_the_hand(table: Table):
    """While it is dragged, the ring stays under the pointer to half a snap, and nothing else of the view moves."""
    start, view = table.handle("skirt.length"), table.board.view
    table.press(start)
    table.move(start + QPoint(0, 31))
    there = table.handle("skirt.length")
    assert abs(there.y() - start.y() - 31) <= 1
    assert view == table.board.view
    table.release(start + QPoint(0, 31))


def test_a_drag_against_the_gain(table: Table):
    """A distance measured from the far end grows when its handle is dragged away from that end."""
    table.drag(table.handle("fastening.end_inset"), -6, 0)
    assert table.brief.fastening.end_inset > 15


def test_a_dragged_length_snaps(table: Table):
    """A drag gives whole millimetres, and multiples of 5 with Shift."""
    start = table.handle("skirt.length")
    table.press(start)
    table.move(start + QPoint(0, 7))
    fine = table.brief.skirt.length
    assert fine == round(fine) != 620
    hold_shift_and_move(table, start + QPoint(0, 8))
    assert table.brief.skirt.length % 5 == 0
    table.release(start + QPoint(0, 8))


def test_a_dragged_ratio_snaps_by_its_width(table: Table):
    """Dragging the side of the skirt gives a whole number of millimetres of flat width, not of the ratio."""
    scale = table.board.view.scale
    table.drag(table.handle("skirt.fullness"), -37, 0)
    width = table.brief.skirt.fullness * table.brief.closed
    assert width == pytest.approx(round(width), abs=1e-6)
    assert width == pytest.approx(2 * 710 - 37 / scale, abs=0.5)


def test_panels_share_a_dragged_width(qtbot: QtBot, bench: QWidget):
    """On one of two panels the hand moves one panel's width, so the flat width changes twice as much."""
    table = Table(qtbot, bench, skirt__cut="across", skirt__panels=2)
    scale = table.board.view.scale
    table.drag(table.handle("skirt.fullness"), -20, 0)
    panel = table.brief.skirt.fullness * table.brief.closed / 2
    assert panel == pytest.approx(710 - 20 / scale, abs=0.5)


def test_inches_snap_to_the_eighth(table: Table):
    """Where the maker works in inches, a drag gives eighths of an inch, as the form writes them."""
    table.board.set_unit("in")
    table.drag(table.handle("skirt.length"), 0, 9)
    eighths = table.brief.skirt.length / INCH * 8
    assert eighths == pytest.approx(round(eighths), abs=1e-6)
    assert table.brief.skirt.length != 620


@pytest.mark.parametrize(("far", "bound"), [(-2000, "least"), (2000, "most")])
def test_a_drag_stays_within_its_bounds(table: Table, far: int, bound: str):
    """However far the hand goes, the number stays where the form would take it."""
    table.drag(table.handle("waistband.width"), 0, far)
    declared = rack.declarations(table.brief)["waistband.width"]
    assert table.brief.waistband.width == getattr(declared, bound)


def test_escape_gives_the_number_back(table: Table):
    """Escape during a drag puts the number back, and what the hand does afterwards moves nothing."""
    start = table.handle("skirt.length")
    table.press(start)
    table.move(start + QPoint(0, 20))
    assert table.brief.skirt.length > 620
    QTest.keyClick(table.board, Qt.Key.Key_Escape)
    assert table.brief.skirt.length == 620
    said = len(table.dragged)
    table.move(start + QPoint(0, 40))
    table.release(start + QPoint(0, 40))
    assert said == len(table.dragged)
    assert ["skirt.length"] == table.dropped


def test_an_empty_number_can_be_dragged_and_given_back(table: Table):
    """A button whose place is worked out starts from where it is drawn; Escape leaves it worked out."""
    assert table.brief.fastening.button_inset is None
    start = table.handle("fastening.button_inset")
    table.press(start)
    table.move(start + QPoint(5, 0))
    assert table.brief.fastening.button_inset == pytest.approx(25 + 5 / table.board.view.scale, abs=0.5)
    QTest.keyClick(table.board, Qt.Key.Key_Escape)
    assert table.brief.fastening.button_inset is None
    table.release(start)


def test_back_where_it_began(table: Table):
    """A hand that returns to where it took hold gives the very number it started from, snapped or not."""
    table.show(skirt__length=618.37)
    start = table.handle("skirt.length")
    table.press(start)
    table.move(start + QPoint(0, 12))
    table.move(start)
    assert table.brief.skirt.length == 618.37
    table.release(start)


def test_a_click_on_a_handle_or_a_dimension_goes_to_its_field(table: Table):
    """A click on a ring, or on a measured line or its words, asks for the field and changes nothing."""
    table.click(table.handle("skirt.length"))
    table.click(table.words("body.waist"))
    table.click(table.words("seams.hem"))
    assert ["skirt.length", "body.waist", "seams.hem"] == table.chosen
    assert not table.dragged
    assert not table.dropped


def test_hover_lights_the_field(table: Table):
    """The pointer on a ring names its field; off it, that is taken back."""
    table.move(table.handle("skirt.length"))
    table.move(QPoint(table.board.width() - 30, 40))
    assert ["skirt.length", ""] == table.lit


def test_rulers_and_legend_cover_what_lies_under_them(table: Table):
    """A ring that has been moved under a ruler is not caught there."""
    start = table.handle("waistband.width")
    table.press(QPoint(400, 300), Qt.MouseButton.MiddleButton)
    table.move(QPoint(400 - start.x() + 10, 300))
    table.release(QPoint(400 - start.x() + 10, 300), Qt.MouseButton.MiddleButton)
    under = table.handle("waistband.width")
    assert under.x() < RULER
    table.drag(under, 0, 20)
    assert not table.dragged


def test_refit_waits_for_the_drop(table: Table):
    """A piece dragged out of view is followed only when it is let go."""
    start, view = table.handle("skirt.length"), table.board.view
    table.press(start)
    table.move(start + QPoint(0, 250))
    assert view == table.board.view
    table.release(start + QPoint(0, 250))
    assert table.board.view.scale < view.scale


def test_a_hidden_board_lets_go(table: Table):
    """A drag that another view interrupts is given up, and the number is as it was."""
    start = table.handle("skirt.length")
    table.press(start)
    table.move(start + QPoint(0, 20))
    table.board.hide()
    assert table.brief.skirt.length == 620
    assert ["skirt.length"] == table.dropped
