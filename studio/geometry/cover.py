"""A closed path as a polygon of few corners that covers it: tangents where it bulges out, chords where it is hollow."""

import math
from collections.abc import Iterator

from .curve import Curve, Line
from .path import Path
from .point import Point


def cover(path: Path, tolerance: float) -> list[Point]:
    """Corners of a polygon that holds all of a closed path, and reaches at most about 2 × `tolerance` mm past it.

    A curve between two stations lies within the triangle of its chord and its end tangents as long as it bends one
    way; where it bulges out the tangents' meeting replaces the chord.
    """
    clockwise = sum(c.swept for c in path.curves) > 0  # with y down
    corners: list[Point] = []
    for curve in path.curves:
        corners.append(curve.at(0))
        if not isinstance(curve, Line):
            corners += _between(curve, tolerance, clockwise)
    return corners


def _between(curve: Curve, tolerance: float, clockwise: bool) -> list[Point]:
    """The corners of a curve, its ends left out."""
    found: list[Point] = []
    for first, last in _parts(curve, 0.0, 1.0, tolerance):
        a, b = curve.at(first), curve.at(last)
        if first:
            found.append(a)
        sag = max(_sags(curve, first, last), key=abs)
        meets = _meeting(curve, first, last) if (sag < 0) == clockwise and abs(sag) > FLAT else None
        if meets is not None and abs(a.to(b).cross(a.to(meets))) <= 8 * tolerance * a.distance(b):
            found.append(meets)
    return found


def _parts(curve: Curve, first: float, last: float, tolerance: float, depth: int = 9) -> Iterator[tuple[float, float]]:
    """Parts that each lie within `tolerance` of their chord and bend one way, halved until they do."""
    sags = _sags(curve, first, last)
    one_way = min(sags) >= -FLAT or max(sags) <= FLAT
    well = max(map(abs, sags)) <= tolerance and one_way
    if depth and not (well and (max(map(abs, sags)) <= FLAT or _meeting(curve, first, last) is not None)):
        middle = (first + last) / 2
        yield from _parts(curve, first, middle, tolerance, depth - 1)
        yield from _parts(curve, middle, last, tolerance, depth - 1)
    else:
        yield first, last


def _sags(curve: Curve, first: float, last: float) -> tuple[float, ...]:
    """How far the curve lies to the side of its chord at three places, mm."""
    a, b = curve.at(first), curve.at(last)
    long = a.distance(b) or 1.0
    if a.distance(b) < 1e-9:  # a closed circle: its chord is no line
        return (math.inf,)
    return tuple(a.to(b).cross(a.to(curve.at(first + (last - first) * share))) / long for share in SHARES)


def _meeting(curve: Curve, first: float, last: float) -> Point | None:
    """Where the tangents at the ends of a part meet between them; None where they do not."""
    a, b, leave, arrive = curve.at(first), curve.at(last), curve.direction(first), curve.direction(last)
    turn = leave.cross(arrive)
    if abs(turn) < 1e-12:
        return None
    ahead, behind = a.to(b).cross(arrive) / turn, leave.cross(a.to(b)) / turn
    sign = math.copysign(1.0, turn)
    held = all(
        sign * leave.cross(a.to(q)) >= -FLAT and -sign * arrive.cross(q.to(b)) >= -FLAT
        for q in (curve.at(first + (last - first) * share) for share in SHARES)
    )
    return a.along(leave, ahead) if ahead > 0 and behind > 0 and held else None


SHARES = (0.25, 0.5, 0.75)
FLAT = 0.005
"""What bends by less (mm) is straight."""
