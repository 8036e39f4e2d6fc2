"""The godet skirt: gores that are parted at the foot, and the sectors set into them."""

import math

import pytest
from briefs import any_brief, brief
from hypothesis import given, settings

from studio.brief import Brief
from studio.draft import Piece, notches, walked
from studio.geometry import Arc, Path
from studio.styles import rack
from studio.workroom import Docket, make_up


def godet(**changes: object) -> Docket:
    """The usual godet skirt with other values."""
    return make_up(brief("godet", **changes))


def part(docket: Docket, *edges: tuple[str, str]) -> float:
    """Length of some edges together, mm."""
    return sum(docket.draft.piece(piece).edge(edge).path.length for piece, edge in edges)


def test_godet_is_a_sector():
    """A godet 30 high and 25 wide at the hem is a sector of that radius: 25/30 radians, its hem an arc of 25, its box
    2·30·sin(25/60) wide between seams (plain geometry).
    """
    piece = godet().draft.piece("godet")
    assert ([Arc], 250.0) == ([type(c) for c in piece.edge("hem").path.curves], pytest.approx(250.0))
    assert (300.0, 300.0) == pytest.approx((piece.edge("left").path.length, piece.edge("right").path.length))
    assert 2 * 300 * math.sin(250 / 600) == pytest.approx(piece.seam_line.box.width)
    assert 250.0 == pytest.approx(piece.edge("hem").path.length)


def test_godets_of_a_quarter_circle_make_whole_circles():
    """Godets as wide as their radius times pi/2 are quarter circles: six add one and a half circles to the hem."""
    made = godet(skirt__godet_height=300.0, skirt__godet_width=150 * math.pi)
    assert 1400 + 1.5 * 2 * math.pi * 300 == pytest.approx(made.fact("hem_sweep"))


@pytest.mark.parametrize("gores", range(4, 13))
@pytest.mark.parametrize(("opening", "fewer"), [("invisible", 0), ("wrap", 1)])
def test_one_godet_in_every_seam(gores: int, opening: str, fewer: int):
    """Each seam between gores gets a godet; a wrap has no seam at its opening."""
    made = godet(skirt__gores=gores, opening__kind=opening)
    assert gores - fewer == made.draft.piece("godet").cut
    sides = [s for s in made.draft.seams if s.name == "godet"]
    assert 2 * (gores - fewer) == len([p for s in sides for p in s.one])


def test_sides_of_gore_and_godet_are_alike():
    """Below its point a gore's side is as long as the godet's, above it the gores are sewn to each other."""
    made = godet()
    pieces = {p.id: p for p in made.pieces}
    for seam in made.draft.seams:
        if seam.name in ("godet", "join"):
            assert walked(seam.one, pieces) == pytest.approx(walked(seam.other, pieces), abs=1e-6)
            assert notches(seam.one, pieces) == pytest.approx(notches(seam.other, pieces), abs=1e-3)
    whole = part(made, ("gore", "left"), ("gore", "left godet"))
    assert 300.0 == pytest.approx(part(made, ("gore", "left godet")))
    assert whole == pytest.approx(part(made, ("skirt", "left opening"), ("skirt", "left"), ("skirt", "left godet")))


def test_a_seam_is_left_above_the_godets():
    """However high they are asked, godets end at least 2 cm below the opening."""
    made = godet(skirt__godet_height=900.0, opening__zip_stop=200.0)
    assert 20.0 == pytest.approx(part(made, ("skirt", "left")))


def test_no_notch_where_a_godet_comes_between():
    """Where godets reach above the hips, gores are matched at the waist and at the godets' points alone."""
    made = godet(skirt__godet_height=900.0, opening__zip_stop=100.0)
    for piece in (made.draft.piece(p) for p in ("skirt", "gore")):
        assert not [s for s in piece.spots if s.on.endswith("godet")]
        assert 1 == len([s for s in piece.spots if s.on == "right"])


def test_the_godets_widen_the_foot_only():
    """Down to a godet's point the skirt is its gores; at the hem every godet adds its width."""
    one, plain = brief("godet"), brief("gored", skirt__sweep=1400.0)
    assert rack.girth(plain, 300.0) == pytest.approx(rack.girth(one, 300.0))
    assert rack.girth(plain, 620.0) + 6 * 250 == pytest.approx(rack.girth(one, 620.0))
    assert make_up(one).fact("hem_sweep") == pytest.approx(rack.girth(one, 620.0))


def test_hem_of_the_godet_is_turned_as_the_gores_are():
    """Hem fold and first turn are marked on the godet too: the turn lies its own depth above the raw edge."""
    made = godet(seams__hem=40.0, seams__hem_kind="turned twice", seams__first_turn=10.0)
    lines = {m.role: m.path for m in made.draft.piece("godet").lines}
    assert {"hem", "first turn"} == set(lines)
    assert 330.0 == pytest.approx(radius(lines["first turn"]))


def radius(path: Path) -> float:
    """Radius of a path that is one arc, mm."""
    (arc,) = path.curves
    assert isinstance(arc, Arc)
    return arc.radius


@settings(max_examples=40)
@given(any_brief("godet"))
def test_every_godet_has_its_seam(one: Brief):
    """Over the whole declared range there are as many godets as parted seams, and the hem is all their hems."""
    made = make_up(one)
    piece: Piece = made.draft.piece("godet")
    seams = [p for s in made.draft.seams if s.name == "godet" for p in s.one]
    assert 2 * piece.cut == len(seams)
    hems = sum(p.cut * p.edge("hem").path.length for p in made.pieces if p.row in (1, 2) and p.cloth == "main"
               and "hem" in {e.name for e in p.edges} and (p.id.startswith(("skirt", "gore")) or p.id == "godet"))  # fmt: skip
    assert hems == pytest.approx(made.fact("hem_sweep"), abs=0.05)
