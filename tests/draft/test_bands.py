"""Every kind of waistband against numbers from outside: handbooks, a magazine's method, and the geometry of a cone."""

import cmath
import math

import pytest
from briefs import INCH, any_brief, brief
from hypothesis import given, settings
from shapely.geometry import LineString, Polygon
from shapely.geometry import Point as ShapelyPoint

from studio.draft import Edge, LineMark, Piece, notches, walked
from studio.draft.cut_line import cut_line
from studio.draft.facing import facing
from studio.geometry import Arc, Line, Path, Point, line, polyline, rectangle
from studio.workroom import Docket, make_up

KINDS = ("folded", "two-piece", "contour", "elastic", "bound", "faced")
HOOKED = {"fastening__kind": "hook and bar"}


def made(kind: str, **changes: object) -> Docket:
    """Waist 70, ease 1, band 3, extension 3, allowance 1.5, with one kind of band."""
    return make_up(brief(waistband__kind=kind, **({"waistband__extension": 30.0} | changes)))


def size(docket: Docket, name: str) -> tuple[float, float]:
    """A piece's box as it is cut, mm."""
    box = docket.draft.piece(name).cut_line.box
    return box.width, box.height


def test_folded_band_is_77_by_9():
    """Waist 70, ease 1, underlap 3, allowance 1.5, width 3 give 77 x 9 (example E35, derived)."""
    assert (770.0, 90.0) == pytest.approx(size(made("folded"), "waistband"))


def test_band_in_two_is_as_long_and_half_as_tall():
    """Band and facing are each B + x + 2a by w + 2a: 77 x 6."""
    docket = made("two-piece")
    assert (770.0, 60.0) == pytest.approx(size(docket, "waistband"))
    assert (770.0, 60.0) == pytest.approx(size(docket, "waistband-facing"))


def test_a_facing_of_lining_takes_no_main_cloth():
    """A border is not wasted inside: a facing of lining cloth is no piece of the lay."""
    docket = made("two-piece", waistband__facing_cloth="lining")
    assert "lining" == docket.draft.piece("waistband-facing").cloth
    assert "waistband-facing" not in {p.piece.id for p in docket.lay.placed}
    assert "waistband-facing" in {p.piece.id for p in made("two-piece").lay.placed}


@pytest.mark.parametrize("kind", ["two-piece", "contour"])
def test_the_facing_is_the_band_from_behind(kind: str):
    """Turned over, the facing lies on the band, edge on edge: its extension is at the other end."""
    docket = made(kind)
    band, facing_ = docket.draft.piece("waistband"), docket.draft.piece("waistband-facing")
    x = docket.brief.band_length / 2
    for name in ("waist", "extension end", "top"):
        there, here = band.edge(name).path, facing_.edge(name).path.flipped(x).reversed()
        assert there.start.distance(here.start) + there.end.distance(here.end) < 1e-6
    assert "main" == facing_.cloth


def test_elastic_casing_of_a_magazine():
    """2 in elastic with 5/8 in allowance takes a casing cut 5 3/4 in tall: 2 x elastic + 2 x allowance + 1/2 in; the
    elastic is cut an inch shorter than the waist (a magazine's method), and longer by what its join takes.
    """
    docket = made(
        "elastic", opening__kind="none", waistband__elastic=2 * INCH, waistband__elastic_less=INCH,
        seams__allowance=0.625 * INCH,
    )  # fmt: skip
    assert 5.75 == pytest.approx(size(docket, "waistband")[1] / INCH)
    bought = next(n for n in docket.notions if n.what == "elastic")
    assert (700 - INCH + 20, 2 * INCH) == pytest.approx((bought.sizes["length"], bought.sizes["width"]))
    assert 700 - INCH == pytest.approx(docket.fact("closed_girth"))


def test_casing_goes_over_the_hips():
    """The casing is a ring of the hips and 4 cm (common practice, no source: 2 to 4); 5 cm of it stay open."""
    docket = made("elastic", opening__kind="none")
    casing = docket.draft.piece("waistband")
    assert 1000.0 == pytest.approx(casing.edge("waist").path.length)
    gap = next(m.path for m in casing.lines if m.role == "slit" and m.words)
    assert 50.0 == pytest.approx(gap.length)
    assert "waistband/extension end" == casing.edge("plain end").sews_to


@pytest.mark.parametrize(("width", "less"), [(60.0, 20.0), (80.0, 60.0), (150.0, 150.0), (30.0, 1.0)])
def test_contour_band_is_part_of_a_cone(width: float, less: float):
    """Laid flat a cone's frustum is a sector: lower edge B, upper edge B − less, w apart about one centre, and the
    lower radius is B w / less (geometry).
    """
    docket = made("contour", waistband__width=width, waistband__upper_less=less, waistband__extension=0.0)
    band = docket.draft.piece("waistband")
    (low,), (high,) = band.edge("waist").path.curves, band.edge("top").path.curves
    assert isinstance(low, Arc)
    assert isinstance(high, Arc)
    assert 710.0 * width / less == pytest.approx(low.radius)
    assert low.centre == high.centre
    assert width == pytest.approx(low.radius - high.radius)
    lengths = [LineString(e.path.flat(1e-6)).length for e in (band.edge("waist"), band.edge("top"))]
    assert [710.0, 710.0 - less] == pytest.approx(lengths, abs=0.01)


def test_a_contour_band_that_is_not_shorter_is_straight():
    """With nothing taken in, the contour band is the band in two."""
    assert size(made("contour", waistband__upper_less=0.0), "waistband") == size(made("two-piece"), "waistband")


def test_a_contour_band_closes_at_b():
    """Along the waist seam, from the hole's outer end to the button, lie 71 cm; the hole keeps its length of 2.1."""
    docket = made("contour", waistband__width=80.0, waistband__upper_less=60.0)
    band = docket.draft.piece("waistband")
    arc = band.edge("waist").path.curves[0]
    assert isinstance(arc, Arc)
    hole = next(m.path for m in band.lines if m.role == "buttonhole")
    button = next(s.at for s in band.spots if s.role == "button")
    turn = arc.centre.to(button).degrees - arc.centre.to(hole.end).degrees
    assert 710.0 == pytest.approx(math.radians(turn) * arc.radius)
    assert 21.0 == pytest.approx(hole.length)


@pytest.mark.parametrize("width", [6.0, 8.0, 20.0])
def test_binding_is_cut_four_times_as_wide(width: float):
    """A double-turned binding: on, over and turned under both edges (common practice, no source)."""
    docket = made("bound", waistband__binding=width, **HOOKED)
    assert (710.0 + 30, 4 * width) == pytest.approx(size(docket, "waistband"))
    says = docket.draft.piece("skirt").edge("waist").words
    assert says is not None
    assert min(width, 15.0) == says.values["b"]


def test_a_circle_is_faced_with_a_ring_of_its_own():
    """The facing of a circular waist has the same radius there, r = B / 2πf, and a parallel arc 6 cm further out."""
    docket = make_up(brief("circle", skirt__fraction=0.5, waistband__kind="faced", **HOOKED))
    cut = [p for p in docket.pieces if p.id.startswith("facing-")]
    assert cut
    for piece in cut:
        waist, lower = piece.edge("waist").path.curves[0], piece.edge("lower").path.curves[0]
        assert isinstance(waist, Arc)
        assert isinstance(lower, Arc)
        assert waist.centre.distance(lower.centre) < 1e-6
        assert 60.0 == pytest.approx(lower.radius - waist.radius)
        skirt = docket.draft.piece(piece.id.removeprefix("facing-")).edge("waist")
        assert skirt.path.length == pytest.approx(piece.edge("waist").path.length)
        assert f"{piece.id}/waist" == skirt.sews_to


def darted() -> Piece:
    """A panel 240 wide and 400 deep with a dart 20 wide and 100 long at its middle."""
    top = polyline([Point(0, 0), Point(110, 0), Point(120, 0), Point(130, 0), Point(240, 0)])
    edges = (
        Edge("waist", top, 15.0, "waistband/waist", closes=((110.0, 130.0),)),
        Edge("right", line(240, 0, 240, 400), 15.0, "skirt/left"),
        Edge("hem", line(240, 400, 0, 400), 40.0, hem=True),
        Edge("left", line(0, 400, 0, 0), 15.0, "skirt/right"),
    )
    legs = LineMark("dart", polyline([Point(110, 0), Point(120, 100), Point(130, 0)]))
    return Piece("skirt", "Skirt", edges, cut_line(edges), (Point(50, 100), Point(50, 300)), lines=(legs,))


def test_a_darted_panel_is_faced_with_its_dart_closed():
    """Closing the dart about its point turns what lies beside it by 2 atan(10/100): worked with complex numbers."""
    faced = facing(darted(), 60.0)
    assert 220.0 == pytest.approx(faced.edge("waist").path.length)
    assert [60.0, 60.0] == pytest.approx([faced.edge(n).path.length for n in ("left", "right")])
    apex, corner = complex(120, 100), complex(240, 0)
    turned = apex + (corner - apex) * cmath.exp(-2j * math.atan(0.1))
    across = abs(turned - complex(0, 0))
    waist = faced.edge("waist").path
    assert across == pytest.approx(waist.start.distance(waist.end))
    for name in ("left", "right"):  # the lower edge leaves both sides square
        side, lower = faced.edge(name).path, faced.edge("lower").path
        at_lower = lower.direction(0) if lower.start.distance(side.end) < 1e-6 else lower.direction(lower.length)
        assert 0 == pytest.approx(side.direction(60.0 if name == "right" else 0.0).dot(at_lower), abs=1e-6)


@pytest.mark.parametrize("style", ["gathered", "circle", "gored", "straight"])
def test_the_grain_lies_on_its_facing(style: str):
    """A waist facing has the mirrored grain of its panel, drawn in full on the facing, as a hem's has."""
    docket = make_up(brief(style, waistband__kind="faced", **HOOKED))
    for piece in (p for p in docket.pieces if p.id.startswith("facing-")):
        panel = docket.draft.piece(piece.id.removeprefix("facing-"))
        one, other = (p.grain[0].to(p.grain[1]).unit() for p in (panel, piece))
        assert (-one.x, one.y) == pytest.approx((other.x, other.y), abs=1e-9)
        outline = Polygon(piece.seam_line.flat(0.1))
        assert all(outline.covers(ShapelyPoint(p)) for p in piece.grain), piece.id


def test_interfacing_of_each_kind():
    """Folded, two-piece and contour bands and facings have interfacing of their own, 3 mm past the seam when trimmed
    (common practice, no source); a casing and a binding have none.
    """
    for kind in KINDS:
        ids = {p.id for p in made(kind, **HOOKED).pieces if p.cloth == "interfacing"}
        wanted = {"faced": {"interfacing-facing-skirt"}, "elastic": set(), "bound": set()}
        assert wanted.get(kind, {"interfacing"}) == ids
    assert (740.0 + 6, 36.0) == pytest.approx(size(made("two-piece"), "interfacing"))
    assert (740.0 + 6, 66.0) == pytest.approx(size(made("folded"), "interfacing"))
    assert (740.0 + 6, 33.0) == pytest.approx(size(made("folded", waistband__interfacing="outer half"), "interfacing"))
    assert (770.0, 90.0) == pytest.approx(size(made("folded", waistband__interfacing="whole"), "interfacing"))


@pytest.mark.parametrize("kind", KINDS)
def test_nothing_sticks_out_of_the_interfaced_piece(kind: str):
    """No interfacing shows beyond what it stiffens, and what does is stopped."""
    for how in ("whole", "outer half", "trimmed"):
        found = made(kind, waistband__interfacing=how, **HOOKED).findings
        assert "interfacing-fits" not in {f.rule for f in found}


@settings(max_examples=60)
@given(any_brief())
def test_bands_walk_with_any_skirt(one):
    """Band and skirt are equally long to 0.1 mm along the waist, and a straight band to the last digit; their notches
    meet.
    """
    docket = make_up(one)
    pieces = {p.id: p for p in docket.pieces}
    waist = next(s for s in docket.draft.seams if s.name == "waist")
    assert one.waist_seam == pytest.approx(walked(waist.other, pieces), abs=0.01)
    assert walked(waist.one, pieces) == pytest.approx(walked(waist.other, pieces), abs=0.1)
    there = notches(waist.other, pieces)
    assert all(min(abs(n - t) for t in there) < 0.1 for n in notches(waist.one, pieces))


@settings(max_examples=60)
@given(any_brief())
def test_every_piece_of_a_band_is_complete(one):
    """Each has a name, edges that close, a grain that lies on it and at least two notches to meet the skirt by."""
    for piece in make_up(one).pieces:
        if not piece.id.startswith(("waistband", "facing-")):
            continue
        assert piece.name
        assert piece.seam_line.closed
        box = piece.cut_line.box
        assert all(box.left < p.x < box.right and box.top < p.y < box.bottom for p in piece.grain)
        assert 2 <= sum(s.role == "notch" for s in piece.spots) or piece.id.startswith("facing-")


def test_a_ring_has_no_ends():
    """With no opening the band's ends are sewn to each other and nothing fastens them."""
    docket = made("folded", opening__kind="none", body__hip=None)
    band = docket.draft.piece("waistband")
    assert "waistband/extension end" == band.edge("plain end").sews_to
    assert not [s for s in band.spots if s.role != "notch"]
    assert 710.0 == docket.fact("closed_girth")
    assert (740.0, 90.0) == pytest.approx(size(docket, "waistband"))


def test_straight_pieces_are_cut_square():
    """A straight band's cut line is a rectangle of four lines."""
    for kind in ("folded", "two-piece", "elastic", "bound"):
        outline = made(kind, **HOOKED).draft.piece("waistband").cut_line
        assert all(isinstance(c, Line) for c in outline.curves)
        assert rectangle(*outline.box).box == outline.box
        assert 4 == len(outline.curves)


def test_a_path_between_two_rounded_ends_still_closes():
    """A curved band's outline ends exactly where it began, as a straight one's does."""
    seam: Path = made("contour", waistband__upper_less=60.0).draft.piece("waistband").seam_line
    assert seam.start == seam.end
