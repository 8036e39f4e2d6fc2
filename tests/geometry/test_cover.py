"""Polygons that cover what is curved, against shapely."""

import math

import pytest
from briefs import any_brief, brief
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely.geometry import Polygon

from studio.geometry import Arc, Path, Point
from studio.geometry.cover import cover
from studio.styles import rack


def test_a_circle_is_covered_by_its_tangents():
    """A circle of 100 lies within a polygon of few corners that reaches hardly past it (a circumscribed polygon of n
    sides has the area n r² tan(π/n): Archimedes).
    """
    corners = cover(Path((Arc(Point(0, 0), 100, 0, 360),)), 1.0)
    shape = Polygon(corners)
    assert shape.is_valid
    n = len([c for c in corners if abs(c.distance(Point(0, 0)) - 100) > 1e-6])
    assert shape.area == pytest.approx(n * 100**2 * math.tan(math.pi / n), rel=1e-9)
    assert n <= 32


@pytest.mark.parametrize("style", tuple(rack.RACK))
@settings(max_examples=40)
@given(st.data())
def test_every_piece_is_covered(style: str, data: st.DataObject):
    """Whatever is drafted, its cover holds all of it, is no tangle, and adds next to nothing."""
    one = data.draw(any_brief(style) | st.just(brief(style)))
    for piece in rack.draft(one).pieces:
        outline = piece.as_cut
        held, true = Polygon(cover(outline, 1.0)), Polygon(outline.flat(0.02))
        if not true.is_valid:  # a whole circle touches itself where it is cut open
            continue
        assert held.is_valid, piece.id
        assert held.buffer(0.025).covers(true), piece.id
        assert held.area - true.area <= 2.2 * outline.length + 1, piece.id
