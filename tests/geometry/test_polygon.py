"""Polygons that lie on each other, against shapely."""

from hypothesis import assume, given, settings
from hypothesis import strategies as st
from shapely.geometry import MultiPoint, Polygon

from studio.geometry import Point
from studio.geometry.polygon import meet

corner = st.tuples(st.integers(0, 60), st.integers(0, 60))
hull = st.lists(corner, min_size=3, max_size=8, unique=True).map(lambda p: MultiPoint(p).convex_hull)


@settings(max_examples=300)
@given(hull, hull)
def test_what_shares_ground_meets(one, other):
    """Two convex shapes meet just where shapely finds ground that both hold."""
    assume(isinstance(one, Polygon) and isinstance(other, Polygon))
    shared = one.intersection(other).buffer(-0.7)
    a, b = ([Point(*p) for p in shape.exterior.coords[:-1]] for shape in (one, other))
    if one.intersection(other).area < 1e-9:
        assert not meet(a, b, 0.01)
    elif not shared.is_empty and shared.area > 4:
        assert meet(a, b, 0.01)
    assert meet(a, a, 0.01)


def test_neighbours_on_one_line_do_not_meet():
    """Pieces that share an edge, or overlap by less than is asked, lie beside each other."""
    box = [Point(0, 0), Point(10, 0), Point(10, 10), Point(0, 10)]
    assert not meet(box, [p.moved(10, 0) for p in box], 0.5)
    assert not meet(box, [p.moved(9.7, 0) for p in box], 0.5)
    assert meet(box, [p.moved(8, 3) for p in box], 0.5)
    tall = [Point(4, -20), Point(6, -20), Point(6, 30), Point(4, 30)]
    assert meet(box, tall, 0.5)
