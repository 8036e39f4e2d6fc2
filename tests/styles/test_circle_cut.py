"""How a circle skirt is cut: panels as the cloth demands, corners pieced on, slits, what hangs beside what."""

import itertools
import math

import pytest
from circles import area, circle, panels_of, round_at
from hypothesis import given
from hypothesis import strategies as st
from shapely.geometry import Polygon

from studio.draft import notches, walked
from studio.draft.circle_cut import corner, slit_radius
from studio.geometry import Arc
from studio.styles import rack
from studio.units import spell
from studio.workroom import make_up


@pytest.mark.parametrize(("width", "panels", "pieces"), [(3000, 1, 1), (1600, 1, 1), (1400, 2, 1), (720, 4, 4)])
def test_as_the_cloth_demands(width: float, panels: int, pieces: int):
    """One piece where it fits, then halves, then quarters with a corner pieced on; all between the selvedges."""
    made = make_up(circle(cloth__width=float(width)))
    assert (panels, pieces) == (made.fact("panels"), len(panels_of(made)))
    assert () == made.lay.misfits


def test_quarters_of_half_a_circle_lie_closer():
    """Half a circle too long for the cloth's width is cut in narrow quarters, which need no piecing."""
    made = make_up(circle(skirt__fraction=0.5, cloth__width=800.0))
    assert 4 == made.fact("panels")
    assert ["skirt", "skirt-across"] == [p.id for p in panels_of(made)]
    assert () == made.lay.misfits


def test_a_number_by_hand_is_kept():
    """Panels set by hand are cut so, and a finding stops what does not fit."""
    made = make_up(circle(skirt__panels=2, cloth__width=720.0))
    assert 2 == made.fact("panels")
    assert ["skirt"] == [f.piece for f in made.findings if f.rule == "pieces-fit-cloth"]


def test_what_fits_no_cloth_is_stopped():
    """A cloth too narrow even for a corner pieced on is refused with the width that would do."""
    made = make_up(circle(cloth__width=400.0))
    (stop,) = (f for f in made.findings if f.rule == "pieces-fit-cloth" and f.piece == "skirt")
    assert spell(stop.says, "cm").startswith("Skirt back lies 76.0 cm across")


CORNERS = [(720.0, 1.0, 4), (760.0, 1.0, 4), (700.0, 2.0, 8), (400.0, 0.6, 4)]


@pytest.mark.parametrize(("width", "fraction", "panels"), CORNERS)
@pytest.mark.parametrize("place", ["centre back", "side", "front"])
def test_corners_make_the_panel_whole(width: float, fraction: float, panels: int, place: str):
    """Panel and corner are together the sector, their piecing seam walks, lies along the grain, and each corner meets
    its neighbour's.
    """
    length, stop = (500.0, 150.0) if fraction == 0.6 else (620.0, 200.0)
    usual = {"skirt__fraction": fraction, "skirt__length": length, "opening__zip_stop": stop}
    made = make_up(circle(cloth__width=width, opening__place=place, **usual))
    whole = make_up(circle(cloth__width=3000.0, skirt__panels=panels, **usual))
    assert panels == made.fact("panels")
    assert 2 * len(panels_of(whole)) == len(panels_of(made))
    assert area(whole) == pytest.approx(area(made), rel=1e-6)
    assert round_at(whole, "hem") == pytest.approx(round_at(made, "hem"))
    assert () == made.lay.misfits
    pieces = {p.id: p for p in made.pieces}
    piecing = [s for s in made.draft.seams if s.name == "piecing"]
    assert panels // 2 == len(piecing)
    for seam in made.draft.seams:
        assert walked(seam.one, pieces) == pytest.approx(walked(seam.other, pieces), abs=0.1)
        if seam.name == "piecing":
            assert notches(seam.one, pieces) == pytest.approx(notches(seam.other, pieces))
    sewn = {(part.piece, part.edge) for s in made.draft.seams for part in (*s.one, *s.other)}
    for piece in panels_of(made):
        edge = piece.edge("piecing").path
        assert edge.start.x == pytest.approx(edge.end.x)
        assert piece.grain[0].x == pytest.approx(piece.grain[1].x)
        for e in piece.edges:
            assert (piece.id, e.name) in sewn or e.hem or e.name == "left opening", (piece.id, e.name)


@pytest.mark.parametrize("place", ["centre back", "side", "front"])
@pytest.mark.parametrize("panels", [4, 8])
def test_no_corner_at_the_front(place: str, panels: int):
    """Corners are pieced away from the centre front (looked up: "keep off centre front"), both panels at a seam alike."""
    front = {"centre back": 0.5, "front": 0.0, "side": 0.75}[place]
    seams: dict[float, int] = {}
    for k in range(panels // 2):
        at = (k + (corner(k, panels, place) == "right")) / panels
        for seam in (at % 1, (1 - at) % 1):
            seams[seam] = seams.get(seam, 0) + 1
    assert front not in seams
    assert set(seams.values()) == {2}


def test_a_slit_takes_its_allowance_out_of_the_circle():
    """In one piece the slit's sides are sewn an allowance from it, parallel to it, and the circle is so much larger
    (equivalent to r = (W + 2a)/2πf of the handbooks, within the curve's own 0.1 mm).
    """
    made = make_up(circle(cloth__width=1600.0, skirt__bias_relief=0.0))
    piece = made.draft.piece("skirt")
    assert piece.on_fold
    assert made.fact("radius") == pytest.approx((710 + 30) / (2 * math.pi), abs=0.1)
    for name in ("left", "left opening"):
        edge = piece.edge(name).path
        assert (15.0, 15.0) == pytest.approx((edge.start.x, edge.end.x))
    assert 0.0 == pytest.approx(min(x for x, _ in piece.cut_line.flat()), abs=1e-6)
    box = piece.as_cut.box
    assert 2 * (made.fact("radius") + 620 + 12) == pytest.approx(box.width)
    assert 2 * (made.fact("radius") + 620 + 12) == pytest.approx(box.height, abs=0.2)  # the slit ends a hair higher
    assert 200.0 == pytest.approx(piece.edge("left opening").path.length)


@pytest.mark.parametrize("fraction", [0.9, 0.95, 0.98, 0.999, 1.0])
def test_nearly_a_circle_keeps_its_sides_apart(fraction: float):
    """Where the gap of a nearly full circle is too narrow for both allowances, only what is missing is taken out of
    the cloth: sides never overlap, and the waist is as long as its seam.
    """
    made = make_up(circle(skirt__fraction=fraction, skirt__panels=1, cloth__width=3000.0, skirt__bias_relief=0.0))
    assert 710.0 == pytest.approx(round_at(made, "waist"), abs=0.01)
    piece = made.draft.piece("skirt")
    half = Polygon(piece.cut_line.flat())
    assert half.is_valid
    fold = piece.edge("right").path.start.x if piece.on_fold else -math.inf
    assert min(x for x, _ in half.exterior.coords) > fold - 1e-6 or not piece.on_fold
    assert made.fact("hem_sweep") == pytest.approx(round_at(made, "hem"))


def test_a_slit_grows_smoothly():
    """A little more of a circle is a little more cloth, up to the full circle: no jump where the slit begins."""
    radii = [make_up(circle(skirt__fraction=f / 1000, skirt__panels=1)).fact("radius") for f in range(880, 1001, 2)]
    assert max(abs(b - a) for a, b in itertools.pairwise(radii)) < 0.5


@given(st.floats(400, 2900), st.floats(0.75, 1), st.floats(0, 40))
def test_slit_radius_solves_its_rule(seam: float, fraction: float, taken: float):
    """r (2πf − 2 asin(taken/r)) is the seam."""
    r = slit_radius(seam, fraction, taken)
    assert seam == pytest.approx(r * (2 * math.pi * fraction - 2 * math.asin(taken / r)), abs=1e-8)


@pytest.mark.parametrize(("fraction", "panels"), [(1.25, 3), (1.5, 3), (2.0, 4)])
def test_above_a_circle_it_is_gathered(fraction: float, panels: int):
    """Above a full circle the cloth at the waist is f times the seam, gathered f to 1, on the radius of a full circle;
    no panel is wider than a half.
    """
    made = make_up(circle(skirt__fraction=fraction))
    assert panels == made.fact("panels")
    assert 710 / (2 * math.pi) == pytest.approx(made.fact("radius"))
    assert fraction * 710 == pytest.approx(made.fact("flat_width")) == pytest.approx(round_at(made, "waist"))
    assert fraction * (710 + 2 * math.pi * 620) == pytest.approx(made.fact("hem_sweep"))
    assert ("gathers",) == rack.uses(made.brief)
    for piece in panels_of(made):
        rows = [m for m in piece.lines if m.role == "gather"]
        heights = {round(made.fact("radius") - c.radius, 6) for m in rows for c in m.path.curves if isinstance(c, Arc)}
        assert {5.0, -5.0} == heights
        assert all(e.ratio == pytest.approx(fraction) for e in piece.edges if e.name == "waist")
    drawn = sum(m.path.length * p.cut for p in panels_of(made) for m in p.lines if m.role == "gather")
    stops = 4 * 20 + 2 * 3 * 2 * (panels + 2)  # flat beside the opening, and 3 at most either side of a break
    assert 2 * fraction * 710 - stops <= drawn <= 2 * fraction * 710 - 80


def test_below_a_circle_nothing_is_gathered():
    """A circle that fits its band has no rows and no section of gathers in the form."""
    made = make_up(circle())
    assert () == rack.uses(made.brief)
    assert not made.draft.has("gather_ratio")
    assert not [m for p in made.pieces for m in p.lines if m.role == "gather"]


@pytest.mark.parametrize("fraction", [0.25, 0.4, 0.5, 0.75, 1.0])
@pytest.mark.parametrize("place", ["centre back", "side", "front"])
@pytest.mark.parametrize("panels", [0, 1, 2, 3, 4, 6])
def test_neighbours_hang_alike(fraction: float, place: str, panels: int):
    """The two sides of every seam slant alike against the grain of their panels, so that neither pulls the other."""
    made = make_up(circle(skirt__fraction=fraction, opening__place=place, skirt__panels=panels, cloth__width=3000.0))
    pieces = {p.id: p for p in made.pieces}

    def slant(piece: str, edge: str) -> float:
        """Degrees between a side and the nearer grain of its cloth."""
        line = pieces[piece].edge(edge).path
        return round(abs((line.direction(0).degrees + 45) % 90 - 45), 4)

    for seam in made.draft.seams:
        if seam.name == "join":
            (one, other) = ({slant(p.piece, p.edge) for p in side} for side in (seam.one, seam.other))
            assert one == other
    tilt = {p.grain[0].to(p.grain[1]).degrees % 90 for p in panels_of(made)}
    assert {0.0} == tilt
