"""The godet skirt: sectors set into the foot of its seams."""

import math

import pytest
from briefs import any_brief, brief
from hypothesis import given, settings

from studio.brief import Brief
from studio.draft import Piece
from studio.geometry import Arc
from studio.styles import rack
from studio.workroom import make_up


def godet(**changes: object) -> Piece:
    """The godet of the usual skirt."""
    return make_up(brief("godet", **changes)).draft.piece("godet")


def test_a_godet_is_part_of_a_circle():
    """25 wide and 30 high: an arc of 250/300 of a radian about its point, both sides 30 long (derived)."""
    piece = godet()
    (arc,) = piece.edge("hem").path.curves
    assert isinstance(arc, Arc)
    assert (300.0, math.degrees(250 / 300)) == pytest.approx((arc.radius, arc.sweep))
    assert (300.0, 300.0) == pytest.approx((piece.edge("left").path.length, piece.edge("right").path.length))
    assert 6 == piece.cut


def test_a_wrap_has_one_godet_less():
    """There is no seam where a wrap opens."""
    assert 5 == godet(opening__kind="wrap", opening__place="front").cut


def test_girth_grows_by_the_godets():
    """Above their points the skirt is its gores; at the hem each godet adds its whole width."""
    one, plain = brief("godet"), brief("gored", skirt__sweep=1400.0)
    assert rack.girth(plain, 300.0) == pytest.approx(rack.girth(one, 300.0))
    assert rack.girth(plain, 620.0) + 6 * 250 == pytest.approx(rack.girth(one, 620.0))


@settings(max_examples=60)
@given(any_brief("godet"))
def test_sweep_is_what_is_drawn(one: Brief):
    """The hem sweep is the sum of all hems as drawn, faced or turned."""
    made = make_up(one)
    hems = sum(p.cut * p.edge("hem").path.length for p in made.pieces if p.row in (1, 2))
    assert made.fact("hem_sweep") == pytest.approx(hems, abs=0.02)
