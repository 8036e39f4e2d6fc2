"""The first lay plan, checked by code of its own."""

import pytest
from briefs import any_brief, brief
from cuttable import check
from hypothesis import given, settings
from hypothesis import strategies as st

from studio.brief import Held, PrintBand
from studio.cloth.better import plans
from studio.geometry import Point
from studio.styles import rack
from studio.units import shop_length
from studio.workroom import make_up


@settings(max_examples=200)
@given(st.sampled_from(tuple(rack.RACK)).flatmap(any_brief))
def test_every_plan_is_sound(one):
    """Whatever the brief, the plan can be cut."""
    made = make_up(one)
    if len(made.lay.placed) < 40:
        check(made.lay, one.cloth)


BORDER = PrintBand(30, 160)
BORDERED = {"skirt__cut": "along", "seams__hem": 30.0, "cloth__selvedge": 0.0, "cloth__width": 1400.0}


def lines(docket, piece: str, edge: str) -> set[float]:
    """How far across the cloth an edge of every copy of a piece lies, mm."""
    return {round(p.on_cloth(p.piece.edge(edge).path.at(1)).y, 6) for p in docket.lay.placed if p.piece.id == piece}


@pytest.mark.parametrize(
    ("band", "edge", "lies"),
    [
        (PrintBand(60, 200), "hem", 60),
        (PrintBand(1240, 1340), "hem", 1340),
        (PrintBand(60, 200, tops="first"), "hem", None),  # the hem would point inwards, and the skirt off the cloth
        (PrintBand(800, 900, tops="first"), "hem", 900),
        (PrintBand(700, 760, by="top"), "waist", 760),
        (PrintBand(640, 690, by="top"), "waist", 640),
    ],
)
def test_a_border_falls_where_it_is_wanted(band: PrintBand, edge: str, lies: float | None):
    """The hem line lies on the band's outer edge, or the top on its inner one, and the motif stands as it should."""
    made = make_up(brief(**BORDERED, cloth__bands=(band,)))
    if lies is None:
        assert ["skirt"] == [a.piece.id for a in made.lay.adrift]
        assert "border-on-cloth" in {f.rule for f in made.findings}
    else:
        assert {lies} == lines(made, "skirt", edge)
        assert made.lay.adrift == ()
        check(made.lay, made.brief.cloth)


def test_the_face_of_the_band_shows_its_border():
    """A waistband laid by its face has the middle between fold and seam on the band's middle; by its fold, the fold
    lies on the band's edge and the face on the band.
    """
    for by in ("face centre", "fold"):
        band = PrintBand(1200, 1230, "waistband", by)
        made = make_up(brief(**BORDERED, waistband__width=30.0, cloth__bands=(BORDER, band)))
        laid = next(p for p in made.lay.placed if p.piece.id == "waistband")
        seam, fold = laid.piece.edge("waist").path.start, next(m for m in laid.piece.lines if m.role == "fold").path
        at = sorted((laid.on_cloth(seam).y, laid.on_cloth(fold.start).y))
        assert [1200, 1230] == pytest.approx(at)
        assert laid.on_cloth(fold.start).y == pytest.approx(1200)
        check(made.lay, made.brief.cloth)


def test_two_borders_take_the_panels_side_by_side():
    """With a border along both selvedges, two panels share the length, each with its hem on one of them."""
    bands = (PrintBand(30, 150), PrintBand(1450, 1570))
    made = make_up(brief(**BORDERED | {"cloth__width": 1600.0}, skirt__panels=2, cloth__bands=bands))
    assert {30, 1570} == lines(made, "skirt", "hem")
    assert made.lay.length < 1.6 * made.draft.piece("skirt").cut_line.box.width
    check(made.lay, made.brief.cloth)


def test_panels_start_at_the_same_phase():
    """Matched, every panel starts where a motif does: its seam where it is cut along, its hem line where across."""
    for cut, edge in (("along", "left"), ("across", "hem")):
        made = make_up(
            brief(skirt__cut=cut, skirt__panels=3, cloth__repeat=170.0, cloth__offset=40.0, cloth__match=True)
        )
        panels = [p for p in made.lay.placed if p.piece.id.startswith("skirt")]
        assert len(panels) == 3
        for p in panels:
            path = next(e for e in p.piece.edges if e.name.split(" ")[0] == edge).path
            at = (p.on_cloth(path.at(path.length / 2)).x - 40.0) / 170.0
            assert at == pytest.approx(round(at), abs=1e-6)
        check(made.lay, made.brief.cloth)


def test_folded_cloth_gives_pairs_and_takes_the_fold():
    """On folded cloth a pair is cut once through both layers, and a piece on the fold lies with its fold there."""
    made = make_up(brief(style="straight", cloth__lies="folded"))
    back, front = ([p for p in made.lay.placed if p.piece.id == name] for name in ("back", "front"))
    assert [(2, False)] == [(p.layers, p.half) for p in back]
    assert [(2, True)] == [(p.layers, p.half) for p in front]
    fold = next(e for e in front[0].piece.edges if e.fold).path
    assert {0.0} == {round(front[0].on_cloth(p).y, 6) for p in (fold.start, fold.end)}
    check(made.lay, made.brief.cloth)


def test_one_way_cloth_has_one_top():
    """Every panel lies the same way up on a one-way print."""
    for style in rack.RACK:
        made = make_up(brief(style=style, cloth__one_way=True))
        for cut in (0, 90):
            assert len({p.turn for p in made.lay.placed if p.turn % 180 == cut}) <= 1


def test_a_turned_piece_is_turned_and_not_mirrored():
    """Going round a piece on the cloth one goes the same way as on paper, unless the copy is the mirrored one."""
    for cut in ("along", "across"):
        for p in make_up(brief(skirt__cut=cut)).lay.placed:
            a, b, c = (p.on_cloth(q) for q in (Point(0, 0), Point(10, 0), Point(10, 10)))
            clockwise = (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x) > 0
            assert clockwise != p.mirrored


def test_the_hem_lies_towards_a_selvedge():
    """Cut along, a panel's hem lies nearer a selvedge than its waist, so that a border falls on the hem."""
    made = make_up(brief(cloth__on_hand=900.0))
    panels = [p for p in made.lay.placed if p.piece.id == "skirt"]
    assert 2 == len(panels)
    for p in panels:
        hem, waist = (p.on_cloth(p.piece.edge(name).path.start).y for name in ("hem", "waist"))
        assert min(hem, 1400 - hem) < min(waist, 1400 - waist)


def test_grain_lies_along_the_cloth():
    """Every piece is laid with its grain along the selvedge."""
    for cut in ("along", "across"):
        for p in make_up(brief(skirt__cut=cut)).lay.placed:
            start, end = (p.on_cloth(q) for q in p.piece.grain)
            assert abs(end.x - start.x) > abs(end.y - start.y)


def test_too_wide_is_named():
    """A piece that cannot lie between the selvedges is named, and cutting across is the way out."""
    made = make_up(brief(cloth__width=600.0))
    assert ["skirt"] == [p.id for p in made.lay.misfits]
    finding = next(f for f in made.findings if f.rule == "pieces-fit-cloth")
    assert ("stop", {"skirt.cut": "across"}) == (finding.weight, finding.remedy)


@pytest.mark.parametrize(
    ("length", "shrinkage", "buy"), [(1330, 0.05, 1400), (1401, 0, 1500), (1400, 0, 1400), (650, 0.05, 700)]
)
def test_buying_rounds_up_and_does_not_climb(length: float, shrinkage: float, buy: float):
    """Cloth is bought by the 10 cm; an exact multiple stays (133 / 0.95 = 140.0)."""
    assert buy == shop_length(length / (1 - shrinkage), "cm")


def test_what_is_held_stays_and_the_rest_goes_round_it():
    """A piece put down by hand stays there, turned as it was; the others lie clear of it."""
    held = (Held("waistband", 0, 300.0, 900.0, 180), Held("skirt", 0, 55.0, 20.0, 180))
    made = make_up(brief(skirt__cut="along", cloth__held=held))
    for h in held:
        p = next(p for p in made.lay.placed if (p.piece.id, p.copy) == (h.piece, h.copy))
        assert (h.x, h.y, h.turn, h.over) == (p.at.x, p.at.y, p.turn, p.mirrored)
    check(made.lay, made.brief.cloth)
    assert not {"held-on-cloth"} & {f.rule for f in made.findings}


def test_what_is_held_badly_is_told():
    """Off the cloth, or on top of another held piece: a stop, and one press lets it go."""
    for held in (
        (Held("waistband", 0, 0.0, 1380.0),),
        (Held("waistband", 0, 0.0, 500.0), Held("skirt", 0, 100.0, 480.0)),
    ):
        made = make_up(brief(skirt__cut="along", cloth__held=held))
        (found,) = [f for f in made.findings if f.rule == "held-on-cloth"]
        assert "held-on-cloth" not in {f.rule for f in make_up(rack.edit(made.brief, found.remedy)).findings}


def test_pieces_held_on_top_of_each_other_are_no_best_plan():
    """Two panels held at one place take less cloth than there can be: that is not called the best possible."""
    both = (Held("skirt", 0, 0.0, 15.0), Held("skirt", 1, 0.0, 15.0))
    made = make_up(brief(skirt__cut="along", skirt__panels=2, cloth__width=715.0, cloth__held=both))
    assert "held-on-cloth" in {f.rule for f in made.findings}
    assert not made.lay.proven
    assert made.lay.bound <= made.lay.length


def test_the_bound_is_true_for_shapes():
    """Gores nest, so the plan at a glance must not claim a length that their true shapes could better."""
    for style in ("gored", "godet", "circle"):
        made = make_up(brief(style))
        best = None
        for plan in plans(made.pieces, made.brief.cloth, 2.0):
            best = plan
        assert best is not None
        assert made.lay.bound <= best.length + 0.01
        assert best.bound <= best.length + 1e-9
        check(best, made.brief.cloth, slack=0.01)


def test_each_tier_lies_on_its_own_band():
    """A band for a tier is shown by that tier and no other; the last tier's hem shows the skirt's."""
    bands = (PrintBand(30, 90, "tier 1", "top"), PrintBand(400, 470, "tier 2", "top"), PrintBand(900, 1000, "skirt"))
    made = make_up(brief("tiered", skirt__cut="along", cloth__bands=bands, cloth__width=1500.0))
    tops = {
        p.piece.row: p.on_cloth(p.piece.edge("waist" if p.piece.row == 1 else "top").path.start).y
        for p in made.lay.placed
        if 0 < p.piece.row < 3
    }
    assert {1: 30.0, 2: 400.0} == pytest.approx(tops)
    hem = next(p for p in made.lay.placed if p.piece.row == 3)
    assert 1000 == pytest.approx(hem.on_cloth(hem.piece.edge("hem").path.start).y)
    check(made.lay, made.brief.cloth)


def test_better_plans_keep_the_match_of_what_lies_on_the_fold():
    """On folded, matched cloth a piece on the fold starts where a motif does, in a better plan too; on one-way cloth it
    keeps its top.
    """
    changes = {"cloth__lies": "folded", "cloth__match": True, "cloth__repeat": 200.0, "cloth__one_way": True}
    made = make_up(brief("straight", **changes))
    for lay in plans(made.pieces, made.brief.cloth, 1.0):
        for p in lay.placed:
            if p.piece.id == "front":
                at = p.on_cloth(p.piece.edge("hem").path.start).x / 200.0
                assert at == pytest.approx(round(at), abs=1e-5)
        assert 1 == len({p.turn for p in lay.placed if p.turn % 180})


def test_a_held_pair_stays_a_pair():
    """Held without a word on it, the second of a mirrored pair is turned over all the same."""
    held = (Held("back", 0, 0.0, 15.0, 90), Held("back", 1, 0.0, 500.0, 90))
    made = make_up(brief("straight", cloth__held=held))
    assert [False, True] == [p.mirrored for p in made.lay.placed if p.piece.id == "back"]


def test_cloth_that_shrinks_across_is_narrower():
    """Lost in the wash, 10 per cent of the width are not there to be laid on, open or folded."""
    for lies, width in (("open", 1260.0), ("folded", 630.0)):
        made = make_up(brief("straight", cloth__width=1400.0, cloth__shrinkage_across=0.1, cloth__lies=lies))
        assert width == pytest.approx(made.lay.width)
        check(made.lay, made.brief.cloth)
    wide = make_up(brief(skirt__cut="along", skirt__length=1300.0, cloth__width=1400.0, cloth__shrinkage_across=0.05))
    assert ["skirt"] == [p.id for p in wide.lay.misfits]


def test_matched_panels_lie_one_way():
    """A motif turned end for end does not run on, so panels whose print is matched all lie the same way up."""
    docket = make_up(brief(skirt__cut="across", skirt__fullness=3.0, cloth__width=1100.0, cloth__repeat=320.0,
                           cloth__match=True))  # fmt: skip
    panels = [p for p in docket.lay.placed if p.piece.row > 0]
    assert len(panels) > 2
    assert 1 == len({p.turn for p in panels})
    assert 1 == len({round(p.at.x % 320.0, 6) for p in panels})
