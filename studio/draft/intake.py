"""How much a quarter of a skirt is taken in from hip to waist, and how that is shared among its side and its darts."""

import math

from msgspec import Struct

SIDE = 38.0
"""A side seam takes in up to 40 a piece (common practice, no source); the hollow of the waist adds up to 2 to what is
shared out here (mm)."""
MOST = 3
"""More darts than this in a quarter are never drafted."""
ABOVE_HIP = 25.0
"""A dart ends at least this far (mm) above the hip line (common practice, no source)."""
SHORTEST = 40.0
"""A dart shorter than this (mm) would be a tuck: the side takes it all."""
BLUNT = 0.35
"""A dart is no wider than this share of its length, so that its point lies flat (common practice, no source)."""
BETWEEN = 25.0
"""Least waist between two darts, or between a dart and a seam (mm)."""


class Kind(Struct, frozen=True):
    """The darts of a back or a front: how wide and how long (mm, least and most), how long as a share of the hip depth,
    and how much shorter the next one towards the side is.
    """

    width: tuple[float, float]
    length: tuple[float, float]
    reach: float
    shorter: float


BACK = Kind((20.0, 30.0), (120.0, 150.0), 0.7, 15.0)
FRONT = Kind((15.0, 25.0), (80.0, 110.0), 0.5, 10.0)
"""Usual limits (common practice, no source). Of a hip depth of 20 cm they make back darts of 14 and 12.5 and a front
dart of 10, those of a British metric block (from memory of Aldrich, Metric Pattern Cutting)."""


def dart_lengths(kind: Kind, n: int, hip_depth: float, length: float) -> tuple[float, ...]:
    """Lengths of `n` darts from the centre to the side, mm, for a hip so deep in a skirt so long."""
    room = min(hip_depth, length) - ABOVE_HIP - 10.0  # the waist is lowered by as much at the centre back
    least, most = kind.length
    wanted = (min(most, max(least, kind.reach * hip_depth - k * kind.shorter)) for k in range(n))
    return tuple(min(room, w) for w in wanted)


def dart_widths(kind: Kind, intake: float, waist: float, hip_depth: float, length: float, asked: int) -> list[float]:
    """What each dart of a quarter takes in, mm; the rest of `intake` is the side seam's.

    `waist` is the quarter's finished waist. `asked` is how many darts, or 0 for as few as keep side and darts
    within their limits. The share of the side is as near half the intake as the limits allow; where they cannot all
    be kept, the side takes what is left.
    """
    shortest = min(dart_lengths(kind, MOST, hip_depth, length))
    if shortest < SHORTEST or intake <= 0:
        return []
    least, most = kind.width[0], min(kind.width[1], BLUNT * shortest)
    n = asked or (0 if intake < least else max(1, math.ceil((intake - SIDE) / most - 1e-9)))
    n = min(n, MOST, int(waist / BETWEEN) - 1)
    if n < 1:
        return []
    low, high = intake - n * most, min(SIDE, intake - n * least)
    side = max(0.0, low, min(intake / 2, high)) if high >= 0 else intake / 2
    return [(intake - side) / n] * n
