"""Faced hems: each panel has a strip that follows its hem and can be sewn to it."""

from typing import Any

import pytest
from briefs import any_brief, brief
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import Point, Polygon

from studio.brief import Brief
from studio.draft import Piece, walked
from studio.geometry import Arc, Line
from studio.styles import rack
from studio.workroom import Docket, make_up

STYLES = tuple(rack.RACK)


def faced(style: str, **changes: Any) -> Docket:
    """A skirt with a faced hem."""
    return make_up(brief(style, **({"seams__hem_kind": "faced"} | changes)))


def hemmed(docket: Docket) -> list[Piece]:
    """The panels that end in a hem."""
    return [
        p for p in docket.pieces
        if any(e.name == "hem" for e in p.edges) and not p.id.startswith(("hem-facing", "lining"))
    ]  # fmt: skip


def facing_of(docket: Docket, panel: Piece) -> Piece:
    """The strip for a panel."""
    return docket.draft.piece(f"hem-facing-{panel.id}")


@settings(max_examples=60)
@given(st.sampled_from(STYLES).flatmap(any_brief))
def test_facing_follows_the_hem(one: Brief):
    """Every faced hem has a facing whose edge is the hem's own length, as deep as asked where the panel is long enough."""
    one = rack.edit(one, {"seams.hem_kind": "faced"})
    made = make_up(one)
    for piece in hemmed(made):
        facing = facing_of(made, piece)
        assert piece.edge("hem").path.length == pytest.approx(facing.edge("hem").path.length, abs=1e-6)
        assert (piece.cut, piece.mirrored, piece.on_fold) == (facing.cut, facing.mirrored, facing.on_fold)
        deep = facing.edge("left").path.length
        sides = [sum(e.path.length for e in piece.edges if e.name.startswith(s)) for s in ("left", "right")]
        there = [side for side in sides if side]  # a pieced corner has none on one side
        assert deep == pytest.approx(min(one.seams.hem_facing, 0.6 * min(there)), abs=1e-6)


@pytest.mark.parametrize("style", STYLES)
def test_hem_and_facing_are_sewn_to_each_other(style: str):
    """The hem and its facing each name the other, and a seam of equal sides joins them."""
    made = faced(style)
    pieces = {p.id: p for p in made.pieces}
    panels = hemmed(made)
    assert panels
    for panel in panels:
        facing = facing_of(made, panel)
        assert f"{facing.id}/hem" == panel.edge("hem").sews_to
        assert f"{panel.id}/hem" == facing.edge("hem").sews_to
        seam = next(s for s in made.draft.seams if s.name == "hem facing" and s.one[0].piece == panel.id)
        assert walked(seam.one, pieces) == pytest.approx(walked(seam.other, pieces), abs=1e-6)


@pytest.mark.parametrize("style", STYLES)
def test_facing_lies_on_its_panel(style: str):
    """Turned over, a strip lies inside its panel's seam line all round, so that its sides meet the panel's seams."""
    made = faced(style)
    for panel in hemmed(made):
        x = panel.edge("hem").path.box.centre.x
        strip = facing_of(made, panel)
        whole = Polygon(panel.seam_line.flat(0.01)).buffer(0.05)
        assert whole.covers(Polygon(strip.seam_line.flipped(x).flat(0.01))), panel.id


def test_a_circle_is_faced_with_true_arcs():
    """The strip of a circle lies between two arcs about one centre, as far apart as it is deep."""
    made = faced("circle", skirt__panels=4, seams__hem_facing=45.0)
    strip = facing_of(made, hemmed(made)[0])
    outer, inner = strip.edge("hem").path.curves, strip.edge("upper").path.curves
    assert (1, 1) == (len(outer), len(inner))
    assert isinstance(outer[0], Arc)
    assert isinstance(inner[0], Arc)
    assert outer[0].centre.distance(inner[0].centre) == pytest.approx(0.0, abs=1e-9)
    assert 45.0 == pytest.approx(outer[0].radius - inner[0].radius)


def test_a_straight_panel_is_faced_with_a_straight_strip():
    """Gathered panels have a rectangle for their facing, as wide as they are."""
    made = faced("gathered")
    panel = hemmed(made)[0]
    strip = facing_of(made, panel)
    assert all(isinstance(c, Line) for c in strip.seam_line.curves)
    assert panel.seam_line.box.width == pytest.approx(strip.seam_line.box.width)
    assert 50.0 == pytest.approx(strip.seam_line.box.height)


@pytest.mark.parametrize("style", STYLES)
def test_the_strip_is_cut_on_its_panel_s_grain(style: str):
    """A facing gives as its panel does (common practice, no source): the grain runs the same way, and lies on it."""
    made = faced(style)
    for panel in hemmed(made):
        strip = facing_of(made, panel)
        one, other = (p.grain[0].to(p.grain[1]).unit() for p in (panel, strip))
        assert abs(one.cross(other)) == pytest.approx(
            abs(2 * one.x * one.y), abs=1e-9
        )  # one is the mirror of the other
        outline = Polygon(strip.seam_line.flat(0.1))
        assert all(outline.covers(Point(p)) for p in strip.grain), panel.id


@pytest.mark.parametrize("style", STYLES)
def test_a_facing_needs_no_wider_cloth_than_its_panel(style: str):
    """Where the panels fit the cloth, their facings do."""
    made = faced(style, cloth__width=1500.0)
    assert not [p.id for p in made.lay.misfits if p.id.startswith("hem-facing") and p.id[11:] not in
                {q.id for q in made.lay.misfits}]  # fmt: skip


def test_allowances():
    """The hem and the sides have the seam allowance, the upper edge is neatened as it is cut, and nothing is turned up
    at the panel's hem.
    """
    made = faced("straight", seams__allowance=12.0)
    strip = facing_of(made, made.draft.piece("front"))
    fold = next(e.name for e in strip.edges if e.fold)
    seam = "left" if fold == "right" else "right"
    assert {"upper": 0.0, "hem": 12.0, fold: 0.0, seam: 12.0} == {e.name: e.allowance for e in strip.edges}
    assert not any(e.hem for p in hemmed(made) for e in p.edges)


def test_other_hems_have_no_facing():
    """A hem that is turned up has none."""
    for kind in ("turned twice", "single", "narrow"):
        assert not [p.id for p in faced("circle", seams__hem_kind=kind).pieces if p.id.startswith("hem-facing")]
