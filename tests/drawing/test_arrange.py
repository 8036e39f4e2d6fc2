"""How pieces lie on the table: nothing overlaps, the band on top, parts beside or below."""

import itertools

import pytest
from briefs import brief

from studio.drawing.arrange import PARTS, arrange, table
from studio.geometry import Point
from studio.styles import rack
from studio.workroom import make_up

WAYS = [{}, {"lining__kind": "straight", "pockets__kind": "in seam"}, {"waistband__kind": "two-piece"}]


@pytest.mark.parametrize("style", tuple(rack.RACK))
@pytest.mark.parametrize("more", WAYS)
def test_nothing_overlaps(style: str, more: dict):
    """No piece lies on another, and the band starts at the table's origin."""
    laid = arrange(make_up(brief(style=style, **more)).pieces)
    for one, other in itertools.combinations(laid, 2):
        assert not one.box.meets(other.box), (one.piece.id, other.piece.id)
    assert Point(0, 0) == laid[0].at


def test_parts_stand_beside_a_slender_skirt():
    """Linings and pockets stand to the right of a straight skirt, so that all is seen larger; a little interfacing
    stays below.
    """
    lined = arrange(make_up(brief(style="straight", lining__kind="straight", pockets__kind="in seam")).pieces)
    skirt = table(tuple(one for one in lined if one.piece.row < PARTS))
    assert all(one.box.left > skirt.right for one in lined if one.piece.row >= PARTS)
    plain = arrange(make_up(brief()).pieces)
    skirt = table(tuple(one for one in plain if one.piece.row < PARTS))
    assert all(one.box.top > skirt.bottom for one in plain if one.piece.row >= PARTS)


def test_rows_stand_apart_for_words():
    """Where the pieces are many metres wide, the rows stand farther apart, so that their names still fit."""
    near, far = (
        arrange(make_up(brief(style="gathered", skirt__cut="along", skirt__fullness=f, cloth__width=3200.0)).pieces)
        for f in (1.5, 4.0)
    )
    gaps = [laid[1].box.top - laid[0].box.bottom for laid in (near, far)]
    assert gaps[0] < gaps[1]
