"""The ground that a closed path encloses."""

import math

import pytest
from shapely.geometry import Polygon

from studio.geometry import Arc, Cubic, Line, Path, Point
from studio.geometry.path import polyline


@pytest.mark.parametrize(
    ("path", "area"),
    [
        (polyline([Point(0, 0), Point(30, 0), Point(30, 20), Point(0, 20), Point(0, 0)]), 600.0),
        (Path((Arc(Point(70, -30), 10, 0, 360),)), 100 * math.pi),
        (
            Path((Line(Point(5, 5), Point(15, 5)), Arc(Point(5, 5), 10, 0, 90), Line(Point(5, 15), Point(5, 5)))),
            25 * math.pi,
        ),
    ],
)
def test_area_of_known_shapes(path: Path, area: float):
    """A rectangle is length by width, a circle π r², a quarter of it a quarter (Euclid, Archimedes)."""
    assert area == pytest.approx(path.area, rel=1e-12)


def test_area_of_cubics_agrees_with_shapely():
    """What cubics enclose is what shapely finds in their chords."""
    a, b, c = Point(0, 0), Point(100, 10), Point(60, 90)
    curves = (Cubic(a, Point(30, -40), Point(70, 50), b), Cubic(b, Point(140, 40), Point(80, 60), c), Line(c, a))
    path = Path(curves)
    assert Polygon(path.flat(0.0005)).area == pytest.approx(path.area, rel=1e-5)
