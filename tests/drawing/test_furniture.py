"""The small things every sheet is furnished with."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio.drawing import Group, Stroke, Words, flat_marks
from studio.drawing.dimension import dimension
from studio.drawing.furniture import arrow, frame, hatch, head, paragraph, placed, stroke
from studio.drawing.lettering import words_box
from studio.geometry import Arc, Box, Cubic, Line, Path, Point

SHAPE = Path((
    Line(Point(0, 0), Point(30, 5)),
    Arc(Point(30, 15), 10, -90, 120),
    Cubic(Arc(Point(30, 15), 10, -90, 120).end, Point(20, 30), Point(10, 40), Point(0, 10)),
))  # fmt: skip


@given(st.floats(-200, 200), st.floats(-200, 200), st.floats(0.1, 3), st.floats(-360, 360))
def test_a_placed_drawing_keeps_its_shape(x, y, scale, turn):
    """Turned and scaled, every place of a line lies where geometry says."""
    (there,) = placed((Stroke(SHAPE, "cut"),), Point(x, y), scale, turn)
    for before, after in zip(SHAPE.curves, there.path.curves, strict=True):
        for share in (0, 0.4, 1):
            p = before.at(share).turned(turn)
            assert (x + p.x * scale, y + p.y * scale) == pytest.approx(tuple(after.at(share)), abs=1e-6)


def test_a_clip_turns_by_quarters_only():
    """A clipped drawing turns with its clip, or says that it cannot."""
    group = Group("sheet", (stroke("cut", (0, 0), (10, 0)),), Box(0, 0, 10, 4))
    (there,) = placed((group,), Point(100, 100), 2, 90)
    assert (92, 100, 100, 120) == pytest.approx(there.clip)
    with pytest.raises(ValueError, match="quarters"):
        placed((group,), Point(0, 0), 1, 45)


def test_hatching_ends_on_its_box():
    """The hatched strip is what is cut away, and nothing more."""
    lines = [m.path for m in flat_marks((hatch(Box(10, 20, 15, 60), 2.2),))]
    assert len(lines) == math.ceil(45 / 2.2) - 1
    for path in lines:
        box = path.box
        assert box.left >= 10 and box.top >= 20 and box.right <= 15 and box.bottom <= 60
        assert box.width == pytest.approx(box.height)


def test_round_corners_meet_the_sides():
    """A rounded rectangle is closed, smooth and as large as said."""
    path = frame("plain", Box(0, 0, 85.6, 53.98), radius=3.18).path
    assert path.closed
    assert (0, 0, 85.6, 53.98) == pytest.approx(path.box)
    assert 2 * (85.6 + 53.98) - 8 * 3.18 + 2 * math.pi * 3.18 == pytest.approx(path.length)
    for before, after in zip(path.curves, (*path.curves[1:], path.curves[0]), strict=True):
        assert before.end.distance(after.start) < 1e-9
        assert before.direction(1).distance(after.direction(0)) < 1e-9


def test_an_arrow_points_at_its_end():
    """The tip of the head is the end of the line; a grain line has a head at both ends."""
    tip = Point(100, 40)
    assert tip == head(tip, 30, 5, "grain").path.start
    marks = arrow(Point(10, 10), Point(60, 10), "grain", both=True)
    assert {Point(60, 10), Point(10, 10)} == {m.path.start for m in marks if m.fill}
    assert all(m.path.box.right <= 60 and m.path.box.left >= 10 for m in marks)


def test_a_paragraph_says_where_it_ends():
    """What follows a paragraph stands below it."""
    told = paragraph("Glue each row, then lay row 2 on row 1. " * 3, 20, 30, 50)
    boxes = [words_box(m) for m in told.marks]
    assert 30 <= min(b.top for b in boxes)
    assert max(b.bottom for b in boxes) <= told.below
    assert max(b.right for b in boxes) <= 70


@pytest.mark.parametrize("end", [(100, 0), (0, 100), (-100, 0), (0, -100), (60, 60), (-60, 60)])
def test_dimensions_read_from_below_or_the_right(end):
    """No number stands on its head (ISO 129-1)."""
    (words,) = [m for m in dimension(Point(0, 0), Point(*end), "13.0") if isinstance(m, Words)]
    assert -90.01 <= words.turn <= 89.99
    above = words.at.to(Point(end[0] / 2, end[1] / 2))
    assert math.hypot(*above) == pytest.approx(3.2 * 0.32)


def test_a_short_dimension_has_strokes_and_words_beside():
    """Below 7 mm there is no room for heads, and the number stands past the end."""
    marks = dimension(Point(0, 0), Point(5, 0), "12.5", off=4)
    assert not [m for m in marks if isinstance(m, Stroke) and m.fill]
    (words,) = [m for m in marks if isinstance(m, Words)]
    assert words_box(words).left > 5
    assert [m for m in dimension(Point(0, 0), Point(8, 0), "") if m.fill]
