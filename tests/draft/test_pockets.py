"""Pockets and faced hems: they lie where they can be sewn, and are as large as what they are sewn to."""

from typing import Any

import pytest
from briefs import any_brief, brief
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import LineString, Polygon

from studio.brief import Brief
from studio.draft import Piece
from studio.draft.pocket import down
from studio.styles import rack
from studio.units import spell
from studio.workroom import Docket, make_up

STYLES = tuple(rack.RACK)
HOLDS = {"gathered": {"skirt__panels": 4, "skirt__cut": "across"}, "pleated": {"skirt__panels": 4}, "circle": {"skirt__panels": 4},
         "gored": {"skirt__gores": 8}, "godet": {"skirt__gores": 8}, "straight": {}}  # fmt: skip


def pocketed(style: str, **changes: Any) -> Docket:
    """A skirt with pockets in its side seams."""
    return make_up(brief(style, pockets__kind="in seam", **(HOLDS[style] | changes)))


def side_marks(piece: Piece) -> list[float]:
    """How far down the seam the bars of a pocket lie, per side."""
    found = []
    for side in ("left", "right"):
        seam = down(piece, side) if any(e.name.startswith(side) for e in piece.edges) else None
        for mark in piece.lines:
            if mark.role == "pocket" and seam is not None:
                along, off = seam.nearest(mark.path.at(mark.path.length / 2))
                found += [along] if off < 0.01 else []
    return sorted(found)


@pytest.mark.parametrize("style", HOLDS)
def test_pocket_lies_in_the_side_seam(style: str):
    """The hand goes in from 6 to 22 cm below the waist (opening 15 to 17, top 5 to 8: common practice, no source), on
    both pieces that meet at the side.
    """
    made = pocketed(style)
    marked = [p for p in made.pieces if side_marks(p)]
    assert marked
    for piece in marked:
        assert [60.0, 220.0] == pytest.approx(sorted(set(round(m, 3) for m in side_marks(piece))))
    bag = made.draft.piece("pocket-bag")
    assert 4 == bag.cut
    assert bag.cut_line.box.height > 280 - 40


@pytest.mark.parametrize("style", HOLDS)
def test_bag_is_as_long_as_the_seam_it_is_sewn_to(style: str):
    """The notches on the bag are as far apart along its edge as the pocket's bars along the seam."""
    bag = pocketed(style).draft.piece("pocket-bag")
    edge = bag.edge("seam").path
    places = sorted(edge.nearest(s.at)[0] for s in bag.spots)
    assert 160.0 == pytest.approx(places[1] - places[0], abs=0.05)


def test_no_seam_at_the_side_is_said():
    """A skirt of one panel has no side seam; the remedy makes one and puts the pocket into it."""
    made = make_up(brief(pockets__kind="in seam"))
    finding = next(f for f in made.findings if f.rule == "pocket-at-side-seam")
    assert "There is no side seam that holds a pocket of 16.0 cm from 6.0 cm down." == spell(finding.says, "cm")
    assert finding.remedy is not None
    mended = make_up(rack.edit(made.brief, finding.remedy))
    assert "pocket-at-side-seam" not in {f.rule for f in mended.findings}
    assert any(p.id == "pocket-bag" for p in mended.pieces)


def test_pocket_beside_the_zip_is_said():
    """With the zip at the side a pocket that crosses it is named."""
    rules = {f.rule for f in pocketed("straight", opening__place="side").findings}
    assert "pocket-clear-of-opening" in rules


def test_patch_keeps_clear_of_darts():
    """On a straight front a patch under the waist would lie across the darts; the remedy puts it below them."""
    made = make_up(brief("straight", pockets__kind="patch"))
    finding = next(f for f in made.findings if f.rule == "patch-fits")
    assert finding.remedy is not None
    lower = make_up(rack.edit(made.brief, finding.remedy))
    assert "patch-fits" not in {f.rule for f in lower.findings}
    front = lower.draft.piece("front")
    patch = next(m.path for m in front.lines if m.role == "pocket")
    darts = [LineString(m.path.flat(0.1)) for m in front.lines if m.role == "dart"]
    whole = Polygon(front.seam_line.flat(0.1))
    assert whole.covers(Polygon(patch.flat(0.1)))
    assert not any(Polygon(patch.flat(0.1)).intersects(dart) for dart in darts)
    assert (150.0, 170.0) == pytest.approx((patch.curves[0].length, patch.curves[1].length))


def test_patch_on_both_sides_of_the_front():
    """One panel all round bears two patches, half way from the centre front to each side."""
    skirt = make_up(brief(pockets__kind="patch")).draft.piece("skirt")
    middles = sorted(m.path.box.centre.x for m in skirt.lines if m.role == "pocket")
    assert [1420 * 3 / 8, 1420 * 5 / 8] == pytest.approx(middles)


@settings(max_examples=60)
@given(st.sampled_from(STYLES).flatmap(any_brief))
def test_facing_follows_the_hem(one: Brief):
    """Every faced hem has a facing whose edge is the hem's own length, as deep as asked where the skirt is long enough."""
    one = rack.edit(one, {"seams.hem_kind": "faced"})
    made = make_up(one)
    for piece in made.pieces:
        if any(e.name == "hem" for e in piece.edges) and not piece.id.startswith(("hem-facing", "lining")):
            facing = made.draft.piece(f"hem-facing-{piece.id}")
            assert piece.edge("hem").path.length == pytest.approx(facing.edge("hem").path.length, abs=1e-6)
            assert (piece.cut, piece.mirrored, piece.on_fold) == (facing.cut, facing.mirrored, facing.on_fold)
            deep = facing.edge("left").path.length
            sides = [sum(e.path.length for e in piece.edges if e.name.startswith(s)) for s in ("left", "right")]
            assert deep == pytest.approx(min(one.seams.hem_facing, 0.6 * min(sides)), abs=1e-6)
