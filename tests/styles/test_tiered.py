"""The tiered skirt against worked examples from outside, and what its joins and openings keep to."""

import math
from itertools import accumulate
from typing import Any

import pytest
from briefs import INCH, any_brief, bodies
from hypothesis import example, given, settings

from studio.brief import Brief
from studio.check import Worked
from studio.check.as_typed import as_typed
from studio.draft import Piece, notches, walked
from studio.draft.seam import Seam
from studio.draft.straight_panel import MOST
from studio.draft.tiers import growing_depths, spin_ratios, tier_at, tier_widths, typed_depths
from studio.styles import rack
from studio.units import spell
from studio.workroom import Docket, make_up

some = settings(max_examples=60)


def tiered(**changes: Any) -> Brief:
    """The usual tiered skirt with other values; `skirt__tiers=4` stands for the path skirt.tiers."""
    return rack.edit(rack.usual("cm", "tiered"), {path.replace("__", "."): value for path, value in changes.items()})


def sizes(docket: Docket, what: str) -> list[float]:
    """What the facts say of every tier."""
    return [docket.fact(f"tier_{k}_{what}") for k in range(1, docket.brief.skirt.tiers + 1)]


def panels_of(docket: Docket, tier: int) -> list[Piece]:
    """The pieces of a tier, counted from 1."""
    return [p for p in docket.pieces if p.row == tier and p.cloth == "main"]


def joins_of(docket: Docket) -> list[Seam]:
    """The gathered seams between tiers."""
    return [s for s in docket.draft.seams if s.name == "tier"]


def test_the_usual_skirt_has_nothing_to_mend():
    """The usual tiered skirt is a good skirt, in centimetres and in inches."""
    assert () == make_up(tiered()).findings
    assert () == make_up(rack.usual("in", "tiered")).findings


@pytest.mark.parametrize(("ratio", "expected"), [(1.5, [1080.0, 1620.0, 2430.0]), (2.0, [1440.0, 2880.0, 5760.0])])
def test_widths_grow_by_the_ratio(ratio: float, expected: list[float]):
    """A waist of 72 at 1.5 makes tiers of 108, 162 and 243; at 2 of 144, 288 and 576 (example E39, derived)."""
    made = make_up(tiered(body__waist=720.0, waistband__ease=0.0, skirt__ratio=ratio))
    assert expected == pytest.approx(sizes(made, "width"))


def test_tiers_on_an_elastic_casing():
    """Hips of 44 in and 6 in of ease, twice as wide at each join, 30 in in three tiers, allowances of 1/2 in: widths
    50, 100 and 200 in, cut 11 in deep (a sewing school's page, example E38).

    The school cuts the top tier 13 in: 2 in of it are the casing of its 1 in elastic, which here is cut as a band.
    """
    made = make_up(tiered(
        body__hip=44 * INCH, waistband__kind="elastic", opening__kind="none", skirt__length=30 * INCH,
        seams__allowance=0.5 * INCH, seams__hem=0.5 * INCH, skirt__ratios="typed", skirt__ratio_2=2.0,
        skirt__ratio_3=2.0, skirt__ratio_1=50 * INCH / (44 * INCH + 40),
    ))  # fmt: skip
    assert [50.0, 100.0, 200.0] == pytest.approx([w / INCH for w in sizes(made, "width")])
    cut = [panels_of(made, k)[0].cut_line.box.height / INCH for k in (1, 2, 3)]
    assert [13 - 2, 11, 11] == pytest.approx(cut)


def test_tiers_for_a_full_spin():
    """A base of 40 + 2 in and three tiers of 7 in: a radius of 6.685 in, tiers of 85.98, 129.96 and 173.95 in
    (example E41; the rule is a square dancers' sewing guide's, the numbers follow from it).
    """
    made = make_up(tiered(
        body__waist=40 * INCH, waistband__ease=2 * INCH, skirt__length=21 * INCH, skirt__ratios="full spin",
    ))  # fmt: skip
    assert 6.685 == pytest.approx(made.brief.waist_seam / INCH / 2 / math.pi, abs=0.001)
    assert [85.98, 129.96, 173.95] == pytest.approx([w / INCH for w in sizes(made, "width")], abs=0.01)
    assert made.fact("hem_sweep") == pytest.approx(made.fact("full_spin"))
    # The same widths from the ratios by hand.
    ratios = spin_ratios(42.0, (7.0, 7.0, 7.0))
    assert [85.98, 129.96, 173.95] == pytest.approx(tier_widths(42.0, ratios), abs=0.01)


def test_cloth_for_fourteen_widths():
    """36 in in three tiers of 2, 4 and 8 widths of cloth: fourteen cut 13 in deep take 182 in, with a band of 5 in 187,
    which are 5.19 yd (a sewing blog, example E42).

    The blog cuts the band across the cloth; here it lies along the grain, and takes its length.
    """
    cloth, a = 45 * INCH, 0.5 * INCH
    widths = 2 * (cloth - 2 * a)
    made = make_up(tiered(
        body__waist=38 * INCH, waistband__ease=0.0, waistband__width=2 * INCH, waistband__extension=0.0,
        seams__allowance=a, seams__hem=a, seams__first_turn=0.0, skirt__length=36 * INCH, cloth__width=cloth,
        cloth__selvedge=0.0, skirt__ratios="typed", skirt__ratio_1=widths / (38 * INCH), skirt__ratio_2=2.0,
        skirt__ratio_3=2.0,
    ))  # fmt: skip
    counts = [sum(p.cut for p in panels_of(made, k)) for k in (1, 2, 3)]
    assert ([2, 4, 8], 14.0) == (counts, made.fact("panels"))
    assert {13.0} == {round(p.cut_line.box.height / INCH, 9) for k in (1, 2, 3) for p in panels_of(made, k)}
    band = made.draft.piece("waistband").cut_line.box
    assert (5.0, 182.0) == pytest.approx((band.height / INCH, (made.lay.length - band.width) / INCH))
    assert 5.19 == pytest.approx((made.lay.length - band.width + band.height) / INCH / 36, abs=0.005)


def test_depths_are_equal_or_grow():
    """21 in in three: equal they are 7 in each; the 6-7-8 and 5-7-9 of a square dancers' sewing guide lie within
    1/4 in of tiers that grow by a ratio.
    """
    assert [7.0, 7.0, 7.0] == pytest.approx(growing_depths(21.0, 3))
    for guide in ((6.0, 7.0, 8.0), (5.0, 7.0, 9.0)):
        grown = growing_depths(21.0, 3, (guide[2] / guide[0]) ** 0.5)
        assert 21.0 == pytest.approx(sum(grown))
        assert guide == pytest.approx(grown, abs=0.25)


def test_typed_depths_leave_the_rest_to_the_last():
    """6 and 7 typed of 21 in leave 8 for the last; with 9 in the middle the other two share 12."""
    one = tiered(skirt__length=21 * INCH, skirt__depths="typed", skirt__depth_1=6 * INCH, skirt__depth_2=7 * INCH)
    assert [6.0, 7.0, 8.0] == pytest.approx([d / INCH for d in sizes(make_up(one), "depth")])
    other = rack.edit(one, {"skirt.depth_1": None, "skirt.depth_2": 9 * INCH})
    assert [6.0, 9.0, 6.0] == pytest.approx([d / INCH for d in sizes(make_up(other), "depth")])


def test_too_deep_tiers_are_found():
    """Tiers typed deeper than the skirt is long are a finding; its remedy keeps those above that fit."""
    one = tiered(skirt__depths="typed", skirt__tiers=4, skirt__depth_1=200.0, skirt__depth_2=500.0)
    made = make_up(one)
    assert [200.0, 380.0, 20.0, 20.0] == pytest.approx(sizes(made, "depth"))
    found = list(as_typed(Worked(one, made.draft, made.lay)))
    says = "Tier 2 cannot be 50.0 cm deep: a length of 62.0 cm leaves it 38.0 cm."
    assert [(says, "doubt", "skirt.depth_2")] == [(spell(f.says, "cm"), f.weight, f.where) for f in found]
    mended = rack.edit(one, found[0].remedy or {})
    again = make_up(mended)
    assert [200.0, 140.0, 140.0, 140.0] == pytest.approx(sizes(again, "depth"))
    assert [] == list(as_typed(Worked(mended, again.draft, again.lay)))


def test_depths_of_any_kind_fill_the_length():
    """However little is left, no tier is nothing and together they are as long as the skirt."""
    for typed in ((300.0, None, 900.0, None), (20.0, 20.0, None), (1000.0, 1000.0, None), (None, None)):
        for length in (10.0, 100.0, 620.0, 1500.0):
            deep = typed_depths(length, typed)
            assert length == pytest.approx(sum(deep))
            assert min(deep) >= min(20.0, length / len(typed)) - 1e-9


def check_joins(docket: Docket) -> None:
    """Each tier's gathered top walks with the feet above it, and all their notches meet."""
    pieces = {p.id: p for p in docket.pieces}
    widths = [docket.brief.waist_seam, *sizes(docket, "width")]
    seams = joins_of(docket)
    assert docket.brief.skirt.tiers - 1 == len(seams)
    for k, seam in enumerate(seams, 1):
        assert widths[k] == pytest.approx(walked(seam.one, pieces), abs=0.1)
        assert widths[k] == pytest.approx(walked(seam.other, pieces), abs=0.1)
        panel_seams = [walked(side[:n], pieces) for side in (seam.one, seam.other) for n in range(len(side) + 1)]
        above, below = notches(seam.one, pieces), notches(seam.other, pieces)
        for those, others in ((above, below), (below, above)):
            for at in those:
                assert min(abs(at - there) for there in [*others, *panel_seams]) < 0.1
        for quarter in (widths[k] * n / 4 for n in (1, 2, 3)):
            found = min(abs(quarter - at) for at in [*below, *panel_seams])
            assert docket.brief.opening.kind == "wrap" or found < 0.1


def check_levels(docket: Docket) -> None:
    """Allowances between tiers, the hem on the last only, rows of gathers on each, and ids a maker can follow."""
    brief = docket.brief
    last = brief.skirt.tiers
    for k in range(1, last + 1):
        found = panels_of(docket, k)
        assert found
        assert {"skirt" if k == 1 else f"tier-{k}"} == {"-".join(p.id.split("-")[: 1 if k == 1 else 2]) for p in found}
        assert 1 <= sum(p.cut for p in found) <= MOST
        for p in found:
            feet = [e for e in p.edges if e.name in ("foot", "hem")]
            assert (
                [("hem", brief.hem)]
                if k == last
                else [("foot", brief.seams.allowance)] == [(e.name, e.allowance) for e in feet]
            )
            assert (k == last and brief.seams.hem_kind != "faced") == any(m.role == "hem" for m in p.lines)
    if brief.gathers.end_gap < 20:
        assert all(any(m.role == "gather" for m in p.lines) for k in range(1, last + 1) for p in panels_of(docket, k))


def opened(docket: Docket, side: str) -> float:
    """How much of the seam at the opening lies open, mm: on the first panel of each tier, or the last."""
    rings = [panels_of(docket, k) for k in range(1, docket.brief.skirt.tiers + 1)]
    edges = (e for ring in rings for e in ring[0].edges if e.name == f"{side} opening")
    return sum(e.path.length for e in edges)


@some
@given(any_brief("tiered"))
@example(tiered(skirt__length=600.0))
@example(tiered(opening__kind="wrap", opening__place="side", skirt__tiers=6))
@example(tiered(skirt__tiers=6, skirt__ratio=3.0, cloth__width=300.0))
def test_anything_the_form_allows_joins(one: Brief):
    """Over the whole declared range tiers walk, notches meet, and the opening is as deep as it was asked for."""
    docket = make_up(one)
    check_joins(docket)
    check_levels(docket)
    assert one.stop == pytest.approx(opened(docket, "left"), abs=1e-5)
    assert one.finished_length == pytest.approx(sum(sizes(docket, "depth")))


def test_every_body_gets_into_her_tiers():
    """Each of 254 people passes her tiered skirt over the hips, as it is or with the remedy's number."""
    for body in bodies():
        one = rack.edit(tiered(skirt__ratio=1.1, opening__zip_stop=120.0), body)
        for _ in range(2):
            for finding in make_up(one).findings:
                if finding.rule == "opening-passes-hips":
                    assert finding.remedy is not None
                    one = rack.edit(one, finding.remedy)
        assert "opening-passes-hips" not in {f.rule for f in make_up(one).findings}


@pytest.mark.parametrize("stop", [150.0, 200.0, 230.0, 455.0])
def test_the_zip_runs_on_through_the_join(stop: float):
    """A stop deeper than the first tier opens it whole and the next as far as it reaches, with one mark and one handle."""
    made = make_up(tiered(skirt__length=600.0, opening__zip_stop=stop))
    assert stop == pytest.approx(opened(made, "left"))
    marks = [(p.row, m) for p in made.pieces for m in p.lines if m.role == "zip stop"]
    assert {math.ceil(stop / 200)} == {row for row, _ in marks}
    tier, mark = marks[0]
    into = stop - 200 * (tier - 1)
    assert mark.words is not None
    assert (into, into, into + 15) == pytest.approx((mark.path.start.y, mark.words.values["s"], mark.words.values["r"]))
    handles = [(p.row, h.at.y) for p in made.pieces for h in p.handles if h.path == "opening.zip_stop"]
    assert [(tier, pytest.approx(into))] == handles
    flat = [p.row for p in made.pieces if any(m.role == "row stop" for m in p.lines)]
    assert list(range(1, tier + 1)) == flat


def test_girth_is_that_of_the_tier_lying_there():
    """The girth at a depth is the tier's own; at a join it is what both are sewn to."""
    one = tiered(skirt__length=600.0)
    assert [1065.0, 1065.0, 1597.5, 2396.25] == [rack.girth(one, d) for d in (0.0, 200.0, 200.1, 900.0)]
    assert [0, 0, 1, 2, 2] == [tier_at((10.0, 10.0, 10.0), d) for d in (0.0, 10.0, 11.0, 30.0, 99.0)]


def test_the_ratio_that_passes_the_hips():
    """A first tier too narrow for the hips is cured by the least ratio, to a twentieth, that passes them."""
    one = tiered(skirt__ratio=1.2)
    finding = next(f for f in make_up(one).findings if f.rule == "opening-passes-hips")
    assert ({"skirt.ratio": 1.4}, "Ratio 1.40") == (finding.remedy, spell(finding.does, "cm") if finding.does else "")
    assert 710 * 1.35 < 980 <= 710 * 1.4
    second = tiered(skirt__ratio=1.1, skirt__tiers=4)  # the hips lie in the second tier
    assert {"skirt.ratio": 1.2} == rack.cleared(second, 980.0)
    typed = rack.edit(second, {"skirt.ratios": "typed", "skirt.ratio_1": 1.0, "skirt.ratio_2": 1.25})
    assert {"skirt.ratio_1": 1.15} == rack.cleared(typed, 980.0)


def test_the_ratio_that_gives_a_stride():
    """The hem is widened by every join alike, or by the last where ratios are typed."""
    one = tiered(skirt__ratio=1.0)
    assert {"skirt.ratio": 1.3} == rack.widened(one, 1500.0)
    typed = rack.edit(one, {"skirt.ratios": "typed", "skirt.ratio_1": 1.5})
    assert {"skirt.ratio_3": 1.9} == rack.widened(typed, 3000.0)
    assert make_up(rack.edit(one, {"skirt.ratio": 1.3})).fact("hem_sweep") >= 1500


def test_no_remedy_that_the_cloth_is_too_narrow_for():
    """A wider hem is not offered where it would take more panels than are drafted."""
    assert rack.widened(tiered(cloth__width=300.0), 7000.0) is None
    assert rack.widened(tiered(cloth__width=1400.0), 7000.0) is not None


def test_too_wide_a_hem_is_found():
    """Six tiers at three times need more cloth than 24 panels hold: the finding names the first tier that does not fit."""
    found = [f for f in make_up(tiered(skirt__tiers=6, skirt__ratio=3.0)).findings if f.rule == "pieces-fit-cloth"]
    assert [("stop", "tier-4")] == [(f.weight, f.piece) for f in found]


DRAGGED: dict[str, dict[str, Any]] = {
    "equal": {},
    "growing": {"skirt__depths": "growing", "skirt__tiers": 5},
    "typed": {"skirt__depths": "typed", "skirt__tiers": 4, "skirt__depth_2": 200.0, "skirt__ratios": "typed"},
    "spin": {"skirt__ratios": "full spin"},
}


@pytest.mark.parametrize("changes", DRAGGED.values(), ids=DRAGGED)
def test_handles_land_where_they_are_dragged(changes: dict[str, Any]):
    """A handle moves its own number by just so much that it stays under the hand."""
    one = tiered(**changes)
    docket = make_up(one)
    paths = set()
    for piece in docket.pieces:
        for handle in (h for h in piece.handles if h.path.startswith("skirt.")):
            moved = make_up(rack.edit(one, {handle.path: rack.value(one, handle.path) + handle.gain * 2}))
            again = next(h for h in moved.draft.piece(piece.id).handles if h.path == handle.path)
            went = again.at.x - handle.at.x if handle.axis == "x" else again.at.y - handle.at.y
            assert 2.0 == pytest.approx(went)
            paths.add(handle.path)
    assert "skirt.length" in paths
    assert ("skirt.ratio" in paths) == ("skirt__ratios" not in changes)
    assert ("skirt.depth_2" in paths) == ("skirt__depth_2" in changes)


def test_dimensions_say_what_they_measure():
    """Every tier's depth and width is measured, and bound to the number that governs it."""
    made = make_up(tiered(skirt__depths="typed", skirt__depth_1=150.0, skirt__ratios="typed"))
    for k, depth_path in ((1, "skirt.depth_1"), (2, "skirt.depth_2"), (3, "skirt.length")):
        piece = panels_of(made, k)[0]
        depth = next(d for d in piece.dimensions if d.side == "left")
        assert (depth_path, made.fact(f"tier_{k}_depth")) == (
            depth.path,
            pytest.approx(depth.start.distance(depth.end)),
        )
        width = next(d for d in piece.dimensions if d.side == "below")
        wide = made.fact(f"tier_{k}_width") / sum(p.cut for p in panels_of(made, k))
        assert (f"skirt.ratio_{k}", wide) == (width.path, pytest.approx(width.start.distance(width.end)))


def test_each_number_shows_only_where_it_matters():
    """The form asks for depths and ratios of as many tiers as there are, and only where they are typed."""

    def asked(one: Brief) -> list[str]:
        known = rack.declarations(one).values()
        return [d.path.removeprefix("skirt.") for d in known if d.path.startswith("skirt.") and rack.applies(one, d)]

    usual = ["style", "length", "length_includes_band", "tiers", "depths", "ratios", "ratio", "cut"]
    assert usual == asked(tiered())
    typed = asked(tiered(skirt__depths="typed", skirt__ratios="typed"))
    assert ["depth_1", "depth_2"] == [p for p in typed if p.startswith("depth_")]
    assert ["ratio_1", "ratio_2", "ratio_3"] == [p for p in typed if p.startswith("ratio_")]
    every = asked(tiered(skirt__depths="typed", skirt__ratios="typed", skirt__tiers=6))
    assert (5, 6) == (sum(p.startswith("depth_") for p in every), sum(p.startswith("ratio_") for p in every))
    assert "growth" in asked(tiered(skirt__depths="growing"))


def test_thread_is_reckoned_with_the_joins():
    """Every tier's rows and every join are in the thread's length: sides, hem, band twice, rows and joins by hand."""
    made = make_up(tiered())
    sides, hem = 0.0, 2396.25
    for count, tall in ((1, 236.667), (2, 236.667), (2, 261.667)):
        sides += count * tall
    rows, joins = 2 * (1065 + 1597.5 + 2396.25), 1065 + 1597.5
    zip_, lap, ends = 200, 40, 60  # its second edge; the lap closed; both ends of the folded band
    seams = sides + hem + 2 * 710 + rows + joins + zip_ + lap + ends
    thread = next(n for n in made.notions if n.what == "thread")
    assert seams * 2.5 * 1.15 == pytest.approx(thread.sizes["length"], rel=1e-3)


def test_feet_lie_below_each_other():
    """The tiers lie on the table in rows, from the waist down."""
    made = make_up(tiered(skirt__tiers=5))
    assert [1, 2, 3, 4, 5] == sorted({p.row for p in made.pieces if p.id.startswith(("skirt", "tier"))})
    assert list(accumulate(sizes(made, "depth")))[-1] == pytest.approx(620.0)


def test_typed_depths_that_leave_no_room():
    """A first tier of 70 in a skirt of 62 is named, and sharing what is left mends it."""
    one = tiered(skirt__depths="typed", skirt__depth_1=700.0)
    made = make_up(one)
    finding = next(f for f in made.findings if f.rule == "as-typed")
    assert finding.remedy is not None
    assert "as-typed" not in {f.rule for f in make_up(rack.edit(one, finding.remedy)).findings}
