"""Better plans, as they come back from the planner: everything the maker asked of her cloth still holds."""

import math

import pytest
from briefs import brief
from cuttable import check
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from studio.brief import Brief, Held, PrintBand
from studio.cloth.better import plans
from studio.cloth.lay import lay_out
from studio.cloth.outlines import laid, spots, task
from studio.cloth.placed import Lay, Placed
from studio.cloth.plan.improve import first_plan
from studio.cloth.ways import Ways, phase_point, ways
from studio.styles import rack
from studio.workroom import Docket, make_up

NEAR = 0.01
"""A place that is out by less (mm) is chalked the same."""
BORDERS = (
    PrintBand(60, 200), PrintBand(1300, 1460), PrintBand(1200, 1230, "waistband", "face centre"),
    PrintBand(250, 330, "waistband", "fold"), PrintBand(600, 660, "skirt", "top", "second"),
    PrintBand(700, 760, "tier 1", "top"), PrintBand(500, 560, "nothing"),
)  # fmt: skip


@st.composite
def some_cloth(draw: st.DrawFn) -> Brief:
    """A skirt on a cloth with room for the shears, bands, a repeat to match, one way up, folded, pieces held: any of
    them.
    """
    style = draw(st.sampled_from(tuple(rack.RACK)))
    known = rack.declarations(rack.usual("cm", style))
    asked = {
        "skirt.cut": draw(st.sampled_from(("along", "across"))),
        "skirt.panels": draw(st.sampled_from((0, 2, 4, 5))),
        "seams.hem": 30.0,
        "cloth.width": draw(st.sampled_from((1500.0, 1600.0))),
        "cloth.selvedge": draw(st.sampled_from((0.0, 15.0))),
        "cloth.lies": draw(st.sampled_from(("open", "open", "folded"))),
        "cloth.gap": draw(st.sampled_from((0.0, 8.0, 25.5))),
        "cloth.one_way": draw(st.booleans()),
        "cloth.bands": tuple(draw(st.lists(st.sampled_from(BORDERS), max_size=3, unique=True))),
        "cloth.repeat": draw(st.sampled_from((None, 64.0, 170.0))),
        "cloth.offset": draw(st.sampled_from((0.0, 37.5))),
        "cloth.match": draw(st.booleans()),
    }
    one = rack.edit(rack.usual("cm", style), {path: value for path, value in asked.items() if path in known})
    there = make_up(one).lay.placed
    chosen = draw(st.lists(st.integers(0, max(0, len(there) - 1)), max_size=2, unique=True)) if there else []
    on = draw(st.sampled_from((0.0, 11.3, 240.0)))
    held = (Held(p.piece.id, p.copy, p.at.x + on, p.at.y, p.turn, p.mirrored) for p in (there[k] for k in chosen))
    return rack.edit(one, {"cloth.held": tuple(held)})


def asked_of(one: Brief, lay: Lay) -> None:
    """What is held lies where it was put; all else as it may: this way up, on its band, on the fold, on its motif."""
    by_hand = {(h.piece, h.copy): h for h in one.cloth.held}
    found = {(p.piece.id, p.copy): p for p in lay.placed}
    for name, h in by_hand.items():
        p = found[name]
        assert (h.x, h.y, h.turn, h.over) == (pytest.approx(p.at.x), pytest.approx(p.at.y), p.turn, p.mirrored)
    for p in (p for name, p in found.items() if name not in by_hand):
        as_it_may(p, ways(p.piece, one.cloth), one)
        at, cloth = phase_point(p.piece, one.cloth), one.cloth
        if at is not None:
            motifs = (p.on_cloth(at).x - cloth.offset) / (cloth.repeat or math.nan)
            assert motifs == pytest.approx(round(motifs), abs=1e-4), p.piece.id


def as_it_may(p: Placed, lies: Ways, one: Brief) -> None:
    """A copy lies in a way of its own, and one of a pair is the other's mirror image."""
    cloth = one.cloth
    assert p.half == lies.half
    if p.half:
        turns = {lies.ways[0].turn, lies.ways[0].turn if cloth.one_way else (lies.ways[0].turn + 180) % 360}
        assert p.turn in turns
        fold = next(e for e in p.piece.edges if e.fold).path
        assert [0.0, 0.0] == pytest.approx([p.on_cloth(q).y for q in (fold.start, fold.end)], abs=NEAR)
        return
    first = 0.0 if cloth.lies == "folded" else cloth.selvedge
    assert any(w.turn == p.turn and (w.across is None or abs(w.across + first - p.at.y) < NEAR) for w in lies.ways)
    assert p.mirrored == (p.piece.mirrored and p.layers == 1 and p.copy % 2 == 1)


@settings(max_examples=60)
@given(some_cloth())
def test_what_was_asked_of_the_cloth_is_asked_of_better_plans(one: Brief):
    """Room for the shears, the bands, the motif, the fold, one way up, what is held: a plan by true shapes keeps them
    all, and never says that none can be shorter than one that is there.
    """
    made = make_up(one)
    whole = task(made.pieces, one.cloth)
    if whole.whole and len(made.lay.placed) < 30:
        plan = first_plan(whole.problem)
        lay = laid(plan, whole, made.lay.bound)
        check(lay, one.cloth, slack=NEAR)
        asked_of(one, lay)
        assert lay.bound <= made.lay.length + NEAR
        again = {(s.part, s.copy): (s.x, s.y, s.turn, s.mirrored) for s in spots(lay, whole)}
        assert again == {(s.part, s.copy): pytest.approx((s.x, s.y, s.turn, s.mirrored)) for s in plan.spots}


@pytest.mark.parametrize("style", ["circle", "straight", "gored"])
def test_what_is_proven_of_larger_outlines_is_not_proven_of_the_pieces(style: str):
    """A curved piece alone takes just its own length, though a larger outline was laid in its place: no better plan
    says that more is needed.
    """
    made = make_up(brief(style))
    curved = [replace(p, cut=1) for p in made.pieces if p.cloth == "main" and not task((p,), made.brief.cloth).exact]
    assert curved
    for piece in curved:
        whole = task((piece,), made.brief.cloth)
        plan = first_plan(whole.problem)
        lay = laid(replace(plan, bound=plan.length, proven=True), whole)
        assert lay.bound <= lay_out((piece,), made.brief.cloth).length
        assert not lay.proven


@pytest.mark.parametrize("cut", [3, 4, 5])
def test_each_place_of_a_pair_gives_the_next_two(cut: int):
    """Cut through both layers, a piece that is wanted three times or more lies once for two, each copy named once; one
    that is held by a number that there is stays, and by no other.
    """
    made = make_up(brief("straight", cloth__lies="folded"))
    back = replace(made.draft.piece("back"), cut=cut)
    for held in ((), (Held("back", 2, 500.0, 12.0, 90),), (Held("back", 3, 500.0, 12.0, 90),)):
        cloth = replace(made.brief.cloth, held=held)
        whole = task((back,), cloth)
        plan = first_plan(whole.problem)
        glance = lay_out((back,), cloth)
        for lay in (glance, laid(plan, whole, glance.bound)):
            assert [0, 2, 4][: (cut + 1) // 2] == sorted(p.copy for p in lay.placed)
            assert {2} == {p.layers for p in lay.placed}
            there = [tuple(p.at) for p in lay.placed if p.copy == 2]
            assert ((500.0, 12.0) in there) == (held != () and held[0].copy < cut)
            check(lay, cloth, slack=NEAR)
        assert {(s.part, s.copy) for s in plan.spots} == {(s.part, s.copy) for s in spots(laid(plan, whole), whole)}


def test_a_search_keeps_what_was_asked():
    """Looked for in earnest, with a border, a motif, room for the shears, one way up and a waistband held."""
    one = brief(
        "gathered", skirt__cut="along", skirt__panels=3, seams__hem=30.0, cloth__width=1600.0, cloth__gap=8.0,
        cloth__one_way=True, cloth__match=True, cloth__repeat=170.0, cloth__offset=40.0,
        cloth__bands=(PrintBand(60, 200),), cloth__held=(Held("waistband", 0, 300.0, 1200.0, 180),),
    )  # fmt: skip
    made: Docket = make_up(one)
    found = list(plans(made.pieces, one.cloth, 1.0))
    assert found
    for lay in found:
        check(lay, one.cloth, slack=NEAR)
        asked_of(one, lay)
