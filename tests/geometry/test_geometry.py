"""Lines, arcs and cubics against libraries that are not ours."""

import math

import pytest
from hypothesis import assume, example, given
from hypothesis import strategies as st
from shapely.geometry import LineString
from shapely.geometry import Point as ShapelyPoint
from svgpathtools import Arc as SvgArc
from svgpathtools import CubicBezier

from studio.geometry import Arc, Box, Cubic, Line, Path, Point, circle, crossing, offset, polyline, rectangle

near = st.floats(-500, 500)
points = st.builds(Point, near, near)
CURVE = Cubic(Point(0, 0), Point(100, -40), Point(200, 160), Point(300, 20))
ARC = Arc(Point(10, 20), 120, -30, 200)


def bezier(c: Cubic) -> CubicBezier:
    """The same cubic as svgpathtools has it."""
    return CubicBezier(*(complex(*p) for p in (c.start, c.leave, c.arrive, c.end)))


@given(points, points, points, points)
def test_cubic_length(a: Point, b: Point, c: Point, d: Point):
    """A cubic's length is that of a very fine run of chords (shapely), from below and to 0.001 mm."""
    curve = Cubic(a, b, c, d)
    chords = LineString([curve.at(k / 4000) for k in range(4001)]).length
    assert curve.length == pytest.approx(chords, abs=0.005, rel=1e-6)


def test_cubic_length_of_svgpathtools():
    """The length of a cubic agrees with svgpathtools."""
    assert CURVE.length == pytest.approx(bezier(CURVE).length(), abs=1e-5)


@pytest.mark.parametrize("share", [0.0, 0.2, 0.5, 0.9, 1.0])
def test_places_on_curves(share: float):
    """Places on a cubic and on an arc are those of svgpathtools."""
    there = bezier(CURVE).point(share)
    assert (there.real, there.imag) == pytest.approx(tuple(CURVE.at(share)))
    other = SvgArc(complex(*ARC.start), complex(120, 120), 0, True, True, complex(*ARC.end)).point(share)
    assert (other.real, other.imag) == pytest.approx(tuple(ARC.at(share)))


def test_arc_length():
    """An arc of 200 degrees is 200/360 of its circle."""
    assert 2 * math.pi * 120 * 200 / 360 == pytest.approx(ARC.length)


def test_chords_of_a_waist():
    """A full circle of radius 11.141 cm drawn as chords of 90, 45 and 22.5 degrees: 63.02, 68.21, 69.55 (true 70).

    Derived (example E12 of the check values): curves must stay curves.
    """
    r = 700 / (2 * math.pi)
    for n, wrong in ((4, 630.2), (8, 682.1), (16, 695.5)):
        assert wrong == pytest.approx(2 * n * r * math.sin(math.pi / n), abs=0.06)
    assert 700 == pytest.approx(circle(Point(0, 0), r).length)


@example(Point(0, 0), Point(0, 14), Point(0, 0), Point(0, 90), 0.5)  # it turns back on itself
@given(points, points, points, points, st.floats(0.01, 0.99))
def test_split_keeps_the_whole(a: Point, b: Point, c: Point, d: Point, share: float):
    """A path cut in two is as long as it was, and meets where it was cut."""
    assume(a.distance(b) > 1 and b.distance(d) > 1)
    path = Path((Line(a, b), Cubic(b, c, c, d)))
    at = path.length * share
    first, rest = path.split(at)
    assert path.length == pytest.approx(first.length + rest.length, abs=1e-4)
    assert at == pytest.approx(first.length, abs=1e-3)
    assert first.end.distance(rest.start) < 1e-6


def test_split_outside_is_refused():
    """A path cannot be cut beyond its ends."""
    with pytest.raises(ValueError, match="cannot be split"):
        polyline([Point(0, 0), Point(10, 0)]).split(11)


@given(points)
def test_nearest(p: Point):
    """The nearest place on a path is as near as shapely finds it on a fine run of chords."""
    path = Path((Line(Point(-100, 0), CURVE.start), CURVE))
    along, far = path.nearest(p)
    assert far == pytest.approx(LineString(path.flat(0.0005)).distance(ShapelyPoint(p)), abs=0.01)
    assert path.at(along).distance(p) == pytest.approx(far, abs=1e-3)


@pytest.mark.parametrize("distance", [15.0, -10.0, 40.0])
@pytest.mark.parametrize("curve", [CURVE, ARC, Line(Point(0, 0), Point(30, 40))])
def test_offset_lies_at_the_distance(curve: Line | Arc | Cubic, distance: float):
    """Every place on a parallel lies at the distance from the line, to 0.02 mm (shapely measures)."""
    line = LineString(Path((curve,)).flat(0.001))
    for p in offset(Path((curve,)), distance).flat(0.5):
        assert abs(distance) == pytest.approx(line.distance(ShapelyPoint(p)), abs=0.02)


def test_offset_goes_outward():
    """The parallel of a clockwise rectangle's top lies above it."""
    top = Path((rectangle(0, 0, 100, 50).curves[0],))
    assert -15 == offset(top, 15).start.y


@pytest.mark.parametrize("tolerance", [1.0, 0.05, 0.005])
@pytest.mark.parametrize("curve", [CURVE, ARC])
def test_chords_stay_within_the_tolerance(curve: Arc | Cubic, tolerance: float):
    """Chords stay as near the curve as was asked."""
    line = LineString([curve.start, *curve.flat(tolerance)])
    assert max(line.distance(ShapelyPoint(curve.at(k / 777))) for k in range(778)) <= tolerance * 1.001


def test_reversed_runs_back():
    """A path walked the other way starts at its end and is as long."""
    path = Path((Line(Point(0, 0), Point(0, 50)), Arc(Point(50, 50), 50, 180, 90)))
    back = path.reversed()
    assert path.end.distance(back.start) < 1e-9
    assert path.start.distance(back.end) < 1e-9
    assert path.length == pytest.approx(back.length)


def test_crossing_of_parallels_is_none():
    """Parallel lines do not cross."""
    assert crossing(Point(0, 0), Point(1, 0), Point(0, 5), Point(1, 0)) is None
    assert Point(3, 0) == crossing(Point(0, 0), Point(1, 0), Point(3, 5), Point(0, 1))


def test_box_of_an_arc_holds_its_bulge():
    """The box of a half circle reaches its bulge and not only its ends."""
    box = Path((Arc(Point(0, 0), 50, -90, 180),)).box
    assert (0, -50, 50, 50) == pytest.approx(box, abs=0.02)
    assert box.meets(Box(49, 0, 60, 1))


def flat_box(path: Path) -> Box:
    """The box of very many chords."""
    xs, ys = zip(*path.flat(1e-4), strict=True)
    return Box(min(xs), min(ys), max(xs), max(ys))


@given(points, points, points, points)
def test_box_of_a_cubic(a: Point, b: Point, c: Point, d: Point):
    """The box of a cubic just holds it: no more and no less than very many chords do."""
    path = Path((Cubic(a, b, c, d),))
    assert tuple(flat_box(path)) == pytest.approx(tuple(path.box), abs=0.01)


@given(points, st.floats(1, 900), st.floats(-360, 360), st.floats(-360, 360))
def test_box_of_an_arc(centre: Point, radius: float, first: float, sweep: float):
    """The box of an arc reaches the quarters it passes, and only those."""
    path = Path((Arc(centre, radius, first, sweep),))
    assert tuple(flat_box(path)) == pytest.approx(tuple(path.box), abs=0.01)


@given(st.sampled_from([CURVE, ARC, Line(Point(3, 4), Point(50, -9))]), st.floats(-400, 400), points)
def test_turned_and_back(curve, degrees: float, about: Point):
    """What is turned keeps its length, and turned back it is where it was."""
    there = Path((curve,)).turned(degrees, about)
    assert there.length == pytest.approx(curve.length)
    assert there.turned(-degrees, about).at(30).distance(Path((curve,)).at(30)) < 1e-6


@given(st.sampled_from([CURVE, ARC]), st.floats(-400, 400))
def test_flipped(curve, x: float):
    """A mirror image lies as far to the other side of the line."""
    for share in (0.0, 0.3, 1.0):
        one, other = curve.at(share), curve.flipped(x).at(share)
        assert (2 * x - one.x, one.y) == pytest.approx(tuple(other))


def test_runs_part_at_corners():
    """A path is parted where it bends, and not where it runs on smoothly from one curve into the next."""
    arc = Arc(Point(0, 0), 100, -90, 90)
    smooth = Path((Line(Point(-50, -100), Point(0, -100)), arc, Line(Point(100, 0), Point(100, 70))))
    assert (smooth,) == smooth.runs
    bent = Path((*smooth.curves, Line(Point(100, 70), Point(0, 70))))
    assert [3, 1] == [len(run.curves) for run in bent.runs]


@given(st.floats(0, 1), st.floats(-80, 80))
def test_nearest_on_an_arc(share: float, aside: float):
    """The nearest place on an arc to a point beside it is where it stands off square."""
    path = Path((ARC,))
    at = ARC.at(share).along(ARC.direction(share).outward(), aside)
    along, far = path.nearest(at)
    assert (share * ARC.length, abs(aside)) == pytest.approx((along, far), abs=1e-6)
