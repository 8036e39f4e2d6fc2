"""The gauges that match two sheets."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio.drawing import Words, flat_marks
from studio.drawing.furniture import frame, stroke
from studio.geometry import Box, Point
from studio.paper.gauge import gauge, gauge_on, gauge_places
from studio.paper.grid import Join
from studio.paper.reach import traces

UPRIGHT = Join("upright", 260.0, 0.0, 173.0)
LYING = Join("lying", 173.0, 260.0, 520.0)


def test_rungs_stand_ten_millimetres_apart():
    """Matched across, the two rungs are a centimetre apart; along, the two bars are one line."""
    lower, upper = gauge("lower"), gauge("upper")
    bars = [g[0].path.box for g in (lower, upper)]
    rungs = [g[1].path.box for g in (lower, upper)]
    assert 10 == rungs[1].left - rungs[0].left
    assert 0 == bars[0].top == bars[1].top
    assert bars[0].right > bars[1].left


def test_teeth_are_a_millimetre_apart():
    """A slip is read in teeth: one tooth, one millimetre."""
    teeth = sorted(m.path.start.y for m in gauge("lower") if m.ink == "sheet")
    assert [-3, -2, -1, 1, 2, 3] == teeth


def test_only_the_middle_one_has_a_dot():
    """The middle gauge is glued first, so it can be told from the others."""
    assert not [m for m in gauge("lower") if m.fill]
    assert 2 == len([m for half in ("lower", "upper") for m in gauge(half, middle=True) if m.fill])


def test_they_stand_near_the_ends_and_in_the_middle():
    """Three on each join: the middle, and 22 or 30 mm from the ends."""
    assert (22, 86.5, 151) == gauge_places(UPRIGHT, ())
    assert (290, 390, 490) == gauge_places(LYING, ())


@given(st.lists(st.floats(5, 168), max_size=8))
def test_they_slide_off_lines(heights):
    """No gauge stands within 6 mm of a line that crosses the join, as long as there is room."""
    lines = tuple(stroke("seam", (200, y), (400, y)) for y in heights)
    first, middle, last = places = gauge_places(UPRIGHT, tuple(traces(lines)))
    assert 0 < first < middle < last < 173
    assert middle - first >= 18 and last - middle >= 18
    if len(heights) <= 2:
        assert all(abs(p - y) >= 6 for p in places for y in heights)


def test_they_slide_off_words():
    """No gauge stands on words beside the join."""
    words = Words("closed band 70.0", Point(255, 86.5), 3.2, align="right")
    _, middle, _ = gauge_places(UPRIGHT, tuple(traces((words,))))
    assert abs(middle - 86.5) > 6


def test_they_slide_off_what_is_filled():
    """No gauge stands on a black square across the join."""
    square = frame("plain", Box(240, 65, 300, 108), fill="black")
    _, middle, _ = gauge_places(UPRIGHT, tuple(traces((square,))))
    assert not 65 - 6 < middle < 108 + 6


def test_lines_along_the_join_do_not_drive_them_off():
    """A fold that runs beside the join cannot be helped, and the gauges stay."""
    fold = stroke("fold", (264, 0), (264, 173))
    assert (22, 86.5, 151) == gauge_places(UPRIGHT, tuple(traces((fold,))))


@pytest.mark.parametrize("join", [UPRIGHT, LYING])
def test_both_halves_lie_on_their_side_of_the_join(join: Join):
    """The comb lies on the sheet with the tab, the other half on the sheet that is laid over it."""
    for half in ("lower", "upper"):
        for mark in flat_marks(gauge_on(join, 100, half, middle=True, dx=7, dy=9)):
            box = mark.path.box.moved(-7, -9)
            low, high = (box.left, box.right) if join.way == "upright" else (box.top, box.bottom)
            assert (high <= join.place + 3 + 1e-9) if half == "lower" else (low >= join.place - 1e-9)
