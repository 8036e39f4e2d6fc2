"""Rules about pockets: what cannot be sewn is named, and one edit mends it."""

from itertools import combinations
from typing import Any

import pytest
from briefs import any_brief, brief
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import LineString, Polygon

from studio.check import Finding
from studio.styles import rack
from studio.units import spell
from studio.workroom import Docket, make_up

RULES = ("pocket-at-side-seam", "pocket-clear-of-opening", "patch-fits")
FIT: dict[str, Any] = {"pockets__kind": "patch"}
BAGS: dict[str, Any] = {"pockets__kind": "in seam"}


def found(docket: Docket) -> list[Finding]:
    """What the rules about pockets say."""
    return [f for f in docket.findings if f.rule in RULES]


def mended(docket: Docket) -> Docket:
    """The skirt once the only finding about its pockets is mended."""
    (finding,) = found(docket)
    assert finding.remedy is not None
    assert finding.does is not None
    after = make_up(rack.edit(docket.brief, finding.remedy))
    stops = {(f.rule, f.where, f.piece) for f in docket.findings if f.weight == "stop"}
    assert not found(after)
    assert {(f.rule, f.where, f.piece) for f in after.findings if f.weight == "stop"} <= stops
    return after


def bagged(docket: Docket) -> bool:
    """Whether the skirt has pockets in its seams."""
    return any(p.id == "pocket-bag" for p in docket.pieces)


def test_no_seam_at_the_side_is_said():
    """A skirt of one panel has no side seam: that stops it, and four panels give it one with a pocket in it."""
    made = make_up(brief(**BAGS))
    (finding,) = found(made)
    assert ("stop", "pockets.kind") == (finding.weight, finding.where)
    assert "There is no side seam that holds a pocket of 16.0 cm from 6.0 cm down." == spell(finding.says, "cm")
    assert {"skirt.panels": 4} == finding.remedy
    assert bagged(mended(made))


@pytest.mark.parametrize(("style", "edit"), [
    ("circle", {"skirt.panels": 4}), ("pleated", {"skirt.panels": 4}), ("gored", {"skirt.gores": 8}),
])  # fmt: skip
def test_seams_are_moved_to_the_side(style: str, edit: dict[str, int]):
    """Two panels, three or six gores meet elsewhere; the remedy makes the next number that meets at the side."""
    made = make_up(brief(style, **BAGS))
    assert edit == found(made)[0].remedy
    assert bagged(mended(made))


@pytest.mark.parametrize("panels", [1, 2, 3])
def test_few_panels_have_no_side_seam(panels: int):
    """One, two or three panels from a centre back opening meet nowhere at the side; four do."""
    assert ["pocket-at-side-seam"] == [f.rule for f in found(make_up(brief("circle", skirt__panels=panels, **BAGS)))]
    assert bagged(make_up(brief("circle", skirt__panels=4, **BAGS)))


def test_a_tier_too_short_for_a_pocket_offers_no_more_panels():
    """In a first tier of a hand's length no number of panels helps, so another pocket is offered, or none."""
    made = make_up(brief("tiered", **BAGS))
    (finding,) = found(made)
    assert (finding.remedy or {}).keys() == {"pockets.kind"}
    assert not bagged(mended(made))


def test_a_short_skirt_offers_patches():
    """Where seams are too short for a deep pocket but a patch lies clear, patches are offered."""
    made = make_up(brief(skirt__length=200.0, pockets__depth=100.0, opening__zip_stop=100.0, **BAGS))
    assert {"pockets.kind": "patch"} == found(made)[0].remedy
    assert any(p.id == "pocket" for p in mended(made).pieces)


def test_pocket_beside_the_zip_is_said():
    """With the zip at the side a pocket that crosses it is named; the opening moves to the centre back."""
    made = make_up(brief("straight", opening__place="side", **BAGS))
    (finding,) = found(made)
    assert "pocket-clear-of-opening" == finding.rule
    assert "The pocket begins 6.0 cm down, and the opening beside it ends at 20.0 cm." == spell(finding.says, "cm")
    assert {"opening.place": "centre back"} == finding.remedy
    assert bagged(mended(made))


def test_pocket_begins_below_a_short_zip():
    """A zip of 9 cm leaves room below it: the pocket begins 2 cm further down."""
    made = make_up(brief("straight", opening__place="side", opening__zip_stop=90.0, **BAGS))
    assert {"pockets.top": 110.0} == found(made)[0].remedy
    after = mended(made)
    assert bagged(after)
    assert after.brief.pockets.top >= after.brief.stop + 20.0


@pytest.mark.parametrize(("stop", "clear"), [(100.0, True), (100.5, False)])
def test_clear_by_two_centimetres(stop: float, clear: bool):
    """Two centimetres of sewn seam between zip and pocket are enough (common practice, no source); less is not."""
    made = make_up(brief("straight", opening__place="side", opening__zip_stop=stop, pockets__top=120.0, **BAGS))
    assert clear == (not found(made))


def test_patch_keeps_clear_of_darts():
    """On a straight front a patch under the waist would lie across the darts; the remedy puts it below them."""
    made = make_up(brief("straight", **FIT))
    assert {"pockets.top"} == (found(made)[0].remedy or {}).keys()
    lower = mended(made)
    front = lower.draft.piece("front")
    patch = next(m.path for m in front.lines if m.role == "pocket")
    darts = [LineString(m.path.flat(0.1)) for m in front.lines if m.role == "dart"]
    whole = Polygon(front.seam_line.flat(0.1))
    assert whole.covers(Polygon(patch.flat(0.1)))
    assert darts
    assert not any(Polygon(patch.flat(0.1)).intersects(dart) for dart in darts)
    assert (150.0, 170.0) == pytest.approx((patch.curves[0].length, patch.curves[1].length))


def test_patch_too_wide_for_its_gore_is_made_narrower():
    """Eight gores leave 11 to 12 cm at the hips; the patch becomes as wide as that."""
    made = make_up(brief("gored", skirt__gores=8, **FIT))
    assert {"pockets.width": 100.0} == found(made)[0].remedy
    assert 100.0 == mended(made).draft.piece("pocket").seam_line.box.width


def test_patch_on_a_short_tier_moves_up_or_is_shorter():
    """On a short first tier a patch moves towards the waist; one too deep for any place is made shallower."""
    assert {"pockets.top": 30.0} == found(make_up(brief("tiered", **FIT)))[0].remedy
    deep = make_up(brief("tiered", pockets__depth=350.0, **FIT))
    assert {"pockets.depth"} == (found(deep)[0].remedy or {}).keys()
    mended(deep)


def test_patch_across_pleats_is_left_out():
    """No patch lies clear between the folds of narrow pleats."""
    made = make_up(brief("pleated", **FIT))
    assert {"pockets.kind": "none"} == found(made)[0].remedy
    mended(made)


def test_patches_do_not_lie_over_each_other():
    """On the single panel of a small half circle two wide patches would; the remedy parts them."""
    made = make_up(brief("circle", skirt__panels=1, skirt__fraction=0.5, body__waist=500.0, pockets__width=300.0,
                         pockets__top=20.0, **FIT))  # fmt: skip
    marks = [Polygon(m.path.flat(0.1)) for m in made.draft.piece("skirt").lines if m.role == "pocket"]
    assert 2 == len(marks)
    assert marks[0].intersection(marks[1]).area > 100
    after = mended(made)
    again = [Polygon(m.path.flat(0.1)) for m in after.draft.piece("skirt").lines if m.role == "pocket"]
    assert all(a.intersection(b).area < 1 for a, b in combinations(again, 2))


def says_clear(docket: Docket) -> bool:
    """Whether shapely finds every patch inside its panel, and across no dart, fold or other patch."""
    for piece in docket.pieces:
        marks = [Polygon(m.path.flat(0.1)) for m in piece.lines if m.role == "pocket"]
        if not marks:
            continue
        whole = Polygon(piece.seam_line.flat(0.1)).buffer(0.6)
        lines = [LineString(m.path.flat(0.1)) for m in piece.lines if m.role in ("dart", "pleat fold", "placement")]
        inner = [m.buffer(-0.6) for m in marks]
        if not all(whole.covers(m) for m in marks) or any(m.intersects(n) for m in inner for n in lines):
            return False
        if any(a.intersects(b) for a, b in combinations(inner, 2)):
            return False
    return True


@settings(max_examples=60)
@given(st.sampled_from(tuple(rack.RACK)), st.floats(20, 200), st.floats(80, 300), st.floats(80, 350),
       st.floats(500, 1100))  # fmt: skip
def test_what_is_clear_to_the_rule_is_clear_to_shapely(
    style: str, top: float, width: float, depth: float, waist: float
):
    """Where no finding is made, an independent library too finds every patch lying clear (curves within 0.6 mm)."""
    made = make_up(brief(style, body__waist=waist, body__hip=waist + 230, pockets__top=top, pockets__width=width,
                         pockets__depth=depth, **FIT))  # fmt: skip
    if not found(made):
        assert any(p.id == "pocket" for p in made.pieces)
        assert says_clear(made)


@settings(max_examples=60)
@given(st.sampled_from(tuple(rack.RACK)).flatmap(any_brief), st.sampled_from(["in seam", "patch"]))
def test_every_finding_is_mended(one: Any, kind: str):
    """Over anything the form allows: the remedy ends the finding and brings no new stop, and no number that the form
    would not take.
    """
    made = make_up(rack.edit(one, {"pockets.kind": kind}))
    for finding in found(made):
        assert finding.remedy is not None
        known = rack.declarations(made.brief)
        for path, value in finding.remedy.items():
            if known[path].kind in ("length", "count"):
                assert known[path].least <= value <= known[path].most
        after = make_up(rack.edit(made.brief, finding.remedy))
        stops = {(f.rule, f.where, f.piece) for f in made.findings if f.weight == "stop"}
        assert not found(after)
        assert {(f.rule, f.where, f.piece) for f in after.findings if f.weight == "stop"} <= stops


def test_no_pockets_no_findings():
    """Skirts without pockets hear nothing of them."""
    for style in rack.RACK:
        assert not found(make_up(brief(style)))


def test_a_button_names_what_it_moves():
    """The remedy says that it is the pocket that begins lower, not the zip."""
    (finding,) = found(make_up(brief("straight", opening__place="side", opening__zip_stop=90.0, **BAGS)))
    assert finding.does is not None
    assert "Pocket from 11.0 cm down" == spell(finding.does, "cm")
