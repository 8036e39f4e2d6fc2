"""A smooth line from one place to another that leaves and arrives the way it must."""

import math

from studio.geometry import Cubic, Line, Point

ROOT_2, ROOT_5 = math.sqrt(2), math.sqrt(5)
STRAIGHT = 1e-9
"""A line that turns by less (radians) is straight."""


def smooth(start: Point, leaves: Point, end: Point, arrives: Point) -> Line | Cubic:
    """The curve from `start` to `end` (mm) that leaves and arrives along these unit ways; straight where both agree.

    How far it keeps to each way follows from how much it has to turn: J. D. Hobby, "Smooth, easy to compute
    interpolating splines", Discrete and Computational Geometry 1, 1986. The curve it gives is nearly an arc where an
    arc would do.
    """
    chord = start.to(end)
    size, way = math.hypot(chord.x, chord.y), chord.unit()
    first = math.atan2(way.cross(leaves), way.dot(leaves))
    last = math.atan2(arrives.cross(way), arrives.dot(way))
    if abs(first) < STRAIGHT and abs(last) < STRAIGHT:
        return Line(start, end)
    leave, arrive = size * _keeps(first, last), size * _keeps(last, first)
    return Cubic(start, start.along(leaves, leave), end.along(arrives, -arrive), end)


def _keeps(turn: float, other: float) -> float:
    """How far a curve keeps to its way at one end, share of the chord: Hobby's rho / 3."""
    sine, also, cosine, cosine_also = math.sin(turn), math.sin(other), math.cos(turn), math.cos(other)
    bend = ROOT_2 * (sine - also / 16) * (also - sine / 16) * (cosine - cosine_also)
    return (2 + bend) / (3 * (1 + (ROOT_5 - 1) / 2 * cosine + (3 - ROOT_5) / 2 * cosine_also))
