"""The cut line: corners as a cutter would make them."""

import math

import pytest
from shapely.geometry import Polygon

from studio.draft import Edge
from studio.draft.cut_line import cut_line
from studio.geometry import Arc, Path, Point, line


def sides(*points: tuple[float, float], allowances: tuple[float, ...], hem: int = -1) -> list[Edge]:
    """Edges from point to point and back to the first."""
    ends = [*points[1:], points[0]]
    return [
        Edge(str(k), line(*p, *q), a, hem=k == hem)
        for k, (p, q, a) in enumerate(zip(points, ends, allowances, strict=True))
    ]


def corners(edges: list[Edge]) -> list[Point]:
    """Corners of the cut line, each once."""
    return cut_line(edges).flat()[:-1]


def test_rectangle_is_mitred():
    """Each corner lies where the two parallels cross."""
    edges = sides((0, 0), (100, 0), (100, 50), (0, 50), allowances=(15, 10, 40, 10))
    assert {(-10, -15), (110, -15), (110, 90), (-10, 90)} == {(round(p.x), round(p.y)) for p in corners(edges)}


def test_plain_allowance_is_the_buffer_of_shapely():
    """With one allowance all round the cut line is shapely's mitred buffer."""
    points = ((0, 0), (120, 10), (150, 90), (-20, 80))
    edges = sides(*points, allowances=(15, 15, 15, 15))
    other = Polygon(points).buffer(15, join_style="mitre", mitre_limit=5)
    assert other.symmetric_difference(Polygon(corners(edges))).area == pytest.approx(0, abs=1e-6)


def test_hem_of_a_slanted_side_is_its_mirror():
    """Turned up along the hem line, the allowance of a flared side lies on the skirt, edge on edge."""
    edges = sides((0, 0), (100, 0), (140, 200), (-40, 200), allowances=(15, 15, 30, 15), hem=2)
    outline = corners(edges)
    below = sorted((p for p in outline if p.y > 200 + 1e-6), key=lambda p: p.x)
    at_line = sorted((p for p in outline if abs(p.y - 200) < 1e-6), key=lambda p: p.x)
    assert [230, 230] == pytest.approx([p.y for p in below])
    polygon = Polygon(outline)
    for low, on in zip(below, at_line, strict=True):
        turned = Point(low.x, 2 * 200 - low.y)
        assert polygon.exterior.distance(Polygon(outline).exterior.interpolate(0)) >= 0
        way = on.to(turned)
        side = Point(40, 200) if on.x > 0 else Point(-40, 200)
        assert 0 == pytest.approx(way.unit().cross(side.unit()), abs=1e-9)


def test_sharp_corner_is_blunted():
    """A corner of 10 degrees does not run away: its tip stays within a few allowances."""
    edges = sides((0, 0), (500, 0), (0, 500 * math.tan(math.radians(10))), allowances=(15, 15, 15))
    tip = max(corners(edges), key=lambda p: p.x)
    assert tip.distance(Point(500, 0)) < 3 * 15
    assert Polygon(corners(edges)).covers(Polygon([(0, 0), (500, 0), (0, 500 * math.tan(math.radians(10)))]))


def test_fold_has_no_allowance():
    """An edge on the fold is cut on its own line."""
    edges = sides((0, 0), (100, 0), (100, 50), (0, 50), allowances=(15, 15, 15, 0))
    assert 0 == min(p.x for p in corners(edges))


def test_arcs_stay_arcs():
    """The cut line of a curved waist is an arc about the same centre, one allowance nearer."""
    waist = Edge("waist", Path((Arc(Point(0, 0), 111.41, 180, -180),)), 15.0)
    hem = Edge("hem", Path((Arc(Point(0, 0), 711.41, 0, 180),)), 15.0)
    right = Edge("right", line(111.41, 0, 711.41, 0), 15.0)
    left = Edge("left", line(-711.41, 0, -111.41, 0), 15.0)
    outline = cut_line([waist, right, hem, left])
    arcs = [c for c in outline.curves if isinstance(c, Arc)]
    assert [111.41 - 15, 711.41 + 15] == pytest.approx(sorted(a.radius for a in arcs))
    assert outline.closed
