"""Waist and hem meet every seam square, so that the line runs on across it; what does not is named."""

import math
from collections.abc import Iterator
from typing import Any

import pytest
from briefs import brief

from studio.draft import Edge
from studio.geometry import Point
from studio.workroom import Docket, make_up

SKIRTS: list[tuple[str, dict[str, Any]]] = [
    ("gathered", {}), ("gathered", {"skirt__cut": "across"}), ("pleated", {}), ("tiered", {}),
    ("circle", {"skirt__fraction": 0.5}), ("circle", {"skirt__panels": 2}), ("circle", {"skirt__panels": 4}),
    ("circle", {"skirt__fraction": 1.5}), ("circle", {"skirt__fraction": 0.75, "cloth__width": 1600.0}),
    ("gored", {}), ("gored", {"skirt__balance": 0.2, "skirt__gores": 5}), ("godet", {}),
    ("straight", {}), ("straight", {"skirt__shape": "A-line"}), ("straight", {"skirt__slit": "vent"}),
    ("straight", {"opening__kind": "wrap"}), ("straight", {"opening__place": "side", "skirt__back_darts": 3}),
]  # fmt: skip


LAST = 6
"""The skirt's own pieces lie in rows of their own: one, or one for each tier."""


def off_square(docket: Docket) -> Iterator[tuple[str, float]]:
    """How far from square waist and hem meet the sides of each panel, degrees, with the side's name."""
    for piece in docket.pieces:
        for k, edge in enumerate(piece.edges):
            if edge.name in ("waist", "top", "hem", "foot") and 1 <= piece.row <= LAST:
                before, after = piece.edges[k - 1], piece.edges[(k + 1) % len(piece.edges)]
                yield before.name, corner(before, edge)
                yield after.name, corner(edge, after)


def corner(one: Edge, other: Edge) -> float:
    """How far from square two edges meet, degrees."""
    before: Point = one.path.direction(one.path.length)
    return abs(math.degrees(math.asin(max(-1.0, min(1.0, before.dot(other.path.direction(0)))))))


@pytest.mark.parametrize(("style", "changes"), SKIRTS)
def test_waist_and_hem_are_square_at_every_seam(style: str, changes: dict[str, Any]):
    """Across a seam two right angles make a line that runs on (common practice, no source): half a degree at most."""
    found = list(off_square(make_up(brief(style, **changes))))
    assert found
    assert [] == [(name, off) for name, off in found if off > 0.5]


def test_the_slit_of_a_circle_in_one_piece_is_the_exception():
    """Cut in one, a full circle gives the slit its allowance from the circle: beside it the corner is asin(a / r) off
    (derived), 7.5 degrees at a usual waist, and r (1 - cos) is a peak of 1 mm; every other corner is square.
    """
    made = make_up(brief("circle", cloth__width=1600.0))
    assert 1 == made.fact("panels")
    a, r = made.brief.seams.allowance, made.fact("cut_radius") + made.brief.seams.allowance
    waist = max(off for _, off in off_square(made))
    assert math.degrees(math.asin(a / r)) == pytest.approx(waist, abs=0.01)
    assert r * (1 - math.cos(math.radians(waist))) < 1.0
    assert {"left", "left opening"} >= {name for name, off in off_square(made) if off > 0.5}
