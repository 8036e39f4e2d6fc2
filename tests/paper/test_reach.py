"""What a mark covers, against shapely."""

import shapely
from hypothesis import assume, given
from hypothesis import strategies as st
from shapely import LineString, Polygon, box

from studio.drawing import Group, Stroke, Words
from studio.geometry import Arc, Box, Line, Path, Point, line, polyline
from studio.paper.reach import boxed, seen, surrounds, trace, traces

POINTS = st.tuples(st.floats(0, 100), st.floats(0, 100)).map(lambda p: Point(*p))


@given(st.lists(POINTS, min_size=3, max_size=8, unique=True), POINTS, st.floats(1, 40), st.booleans())
def test_a_sheet_is_touched_when_shapely_says_so(points, corner, size, solid):
    """A sheet is printed when, and only when, something lies on it."""
    path = polyline((*points, points[0]))
    assume(len(path.curves) >= 3)
    shape = Polygon(points) if solid else LineString((*points, points[0]))
    assume(shape.is_valid)
    there = Box(*corner, corner.x + size, corner.y + size)
    other = box(*there)
    assume(shape.distance(other) > 1e-6 or shape.intersection(other).length > 1e-6)
    assert shape.intersects(other) == trace(path, solid=solid).touches(there)


@given(st.lists(POINTS, min_size=3, max_size=8, unique=True), POINTS)
def test_inside_is_inside(points, place):
    """The title block stands in its piece."""
    shape = Polygon(points)
    spot = shapely.Point(place)
    assume(shape.is_valid and shape.exterior.distance(spot) > 1e-6)
    assert shape.contains(spot) == surrounds((*points, points[0]), place)


def test_an_arc_is_touched_where_it_runs():
    """The corner that a quarter circle leaves free is free, though the box round it is not."""
    quarter = Path((Line(Point(0, 0), Point(100, 0)), Arc(Point(0, 0), 100, 0, 90), Line(Point(0, 100), Point(0, 0))))
    assert not trace(quarter, solid=True).touches(Box(75, 75, 100, 100))
    assert trace(quarter, solid=True).touches(Box(65, 65, 100, 100))
    assert trace(quarter, solid=True).touches(Box(20, 20, 30, 30))
    assert not trace(quarter).touches(Box(20, 20, 30, 30))


def test_words_take_room():
    """Words hold a sheet as lines do."""
    (room,) = traces((Words("hem fold", Point(50, 50), 4),))
    assert room.touches(Box(52, 40, 53, 60))
    assert not room.touches(Box(52, 52, 53, 60))


def test_what_is_not_seen_is_left_out():
    """A group keeps its name and loses the marks that lie elsewhere."""
    near, far = Stroke(line(0, 0, 10, 0), "cut"), Stroke(line(500, 0, 510, 0), "cut")
    group = Group("piece", (near, Group("inner", (far,)), far))
    assert (Group("piece", (near,)),) == seen(boxed((group, far)), Box(0, 0, 100, 100))
