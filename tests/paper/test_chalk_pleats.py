"""Pleats in the chalk list, against the drafted lines and against sums done by hand."""

import pytest
from briefs import any_brief, brief
from hypothesis import given, settings
from hypothesis import strategies as st
from looked_over import outside, overlapping, strokes, texts_on

from studio.brief import Brief
from studio.draft import Piece
from studio.paper.chalk_list import chalk_list
from studio.paper.chalk_pleats import is_pleated, pleat_lines
from studio.paper.page import Page
from studio.paper.pattern import Said
from studio.paper.printed import printed
from studio.paper.sizes import paper_size
from studio.paper.stations import stations
from studio.styles import rack
from studio.units import write_length
from studio.workroom import make_up


def pleated(one: Brief) -> list[Piece]:
    """The panels of pleats that can be chalked."""
    return [p for p in make_up(one).pieces if is_pleated(p)]


def sheets(one: Brief) -> list[Page]:
    """All that the printer prints."""
    docket = make_up(one)
    return list(printed(docket.pieces, docket.notions, Said(one, "cm")))


def test_twenty_knife_pleats():
    """The usual pleats by hand: 100 round the hips in 20 faces of 5, folds 5 deep, so a pleat each 15, beginning with a
    hidden fold of 5 after the allowance of 1.5; at the waist, 71 round, a face is 3.55, and its middle stays.
    """
    (panel,) = pleated(brief("pleated"))
    lines = pleat_lines(panel)
    assert [("1", "placement"), ("1", "fold"), ("2", "placement")] == [(one.pleat, one.what) for one in lines[:3]]
    assert 40 == len(lines)
    for k in range(20):
        start, end = 65.0 + 150 * k, 115.0 + 150 * k
        assert (start, end) == pytest.approx((lines[2 * k].below, lines[2 * k + 1].below))
        assert (start + 7.25, end - 7.25) == pytest.approx((lines[2 * k].waist, lines[2 * k + 1].waist))


def test_box_pleats_meet_between_two_faces():
    """Each box pleat has a fold at both ends of its face, and shares with the next the line where they meet."""
    (panel,) = pleated(brief("pleated", skirt__pleat_kind="box"))
    lines = [(one.pleat, one.what) for one in pleat_lines(panel)]
    assert [("1", "fold"), ("1", "fold"), ("1/2", "placement"), ("2", "fold"), ("2", "fold")] == lines[:5]


def test_levels_are_chalked_too():
    """How far down the hip line and the end of the stitching lie stands among the distances down."""
    (panel,) = pleated(brief("pleated"))
    down = {s.what.partition(",")[0]: s.distance for s in stations(panel).down}
    assert (215.0, 195.0) == (down["hip line"], down["pleats stitched down to here"])


def test_pleats_come_as_distances_or_whole():
    """No template carries pleats along: asked for one, or for a chalk list, the panel takes no sheet of its own; whole
    it comes on sheets as well.
    """
    template, distances, whole = (
        sheets(brief("pleated", paper__panels=how)) for how in ("template", "chalk list", "whole")
    )
    assert len(template) == len(distances) < len(whole) - 30
    for pages in (template, distances, whole):
        assert 2 == sum("Skirt, cut 1" in " ".join(texts_on(page)) for page in pages if "Chalk list" in texts_on(page))


@settings(max_examples=60)
@given(any_brief("pleated"), st.sampled_from(("A4", "US Letter", "A3", "roll")), st.sampled_from(("cm", "in")))
def test_every_line_is_listed_with_a_box_to_tick(one: Brief, size: str, unit: str):
    """Each fold and placement that is drafted stands in the list at its own distances; no word lies on another."""
    one = rack.edit(one, {"paper.size": size})
    for panel in pleated(one):
        drafted = [m for m in panel.lines if m.role in ("pleat fold", "placement")]
        lines, left = pleat_lines(panel), panel.cut_line.box.left
        assert sorted(m.path.start.x - left for m in drafted) == pytest.approx(sorted(x.waist for x in lines))
        assert sorted(m.path.end.x - left for m in drafted) == pytest.approx([x.below for x in lines])
        pages = chalk_list(panel, "x", unit, paper_size(one.paper))  # type: ignore[arg-type]
        said = [text for page in pages for text in texts_on(page)]
        assert all(write_length(x.below, unit, bare=True) in said for x in lines)  # type: ignore[arg-type]
        found = stations(panel)
        boxes = [s.path.box for page in pages for s in strokes(page.drawing, "plain") if s.path.closed]
        assert len(lines) + len(found.along) + len(found.down) == sum(abs(b.width - 3.6) < 0.01 for b in boxes)
        for page in pages:
            assert [] == overlapping(page)
            assert [] == outside(page, one.paper.margin)
