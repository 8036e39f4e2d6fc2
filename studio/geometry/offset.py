"""A line parallel to another: what turns a seam line into a cut line."""

import math
from functools import lru_cache

from .curve import Arc, Cubic, Curve, Line
from .path import TOUCH, Path

CLOSE = 0.01
"""A cubic's parallel is another cubic within this (mm), halved until it is."""


def offset(path: Path, distance: float) -> Path:
    """The path `distance` mm outward: to the left of the way it is walked, out of a clockwise piece.

    Corners inside the path stay open ends: the caller joins them as the piece wants (see draft.cut_line).
    Lines and arcs are exact; an arc must be wider than the distance it is drawn in by.
    """
    if abs(distance) < TOUCH:
        return path
    curves: list[Curve] = []
    for c in path.curves:
        if isinstance(c, Line | Arc):
            curves.append(c.offset(distance))
        else:
            curves += _cubic_offset(c, distance, 8)
    return Path(tuple(curves))


@lru_cache(maxsize=256)
def _cubic_offset(c: Cubic, distance: float, depth: int) -> tuple[Curve, ...]:
    """A cubic with the true places and speeds at both ends; halved while its middle strays."""
    first, last = c.direction(0), c.direction(1)
    start, end = c.start.along(first.outward(), distance), c.end.along(last.outward(), distance)
    leave, arrive = (_speed(c, t, distance) / 3 for t in (0, 1))
    fit = Cubic(start, start.along(first, leave), end.along(last, -arrive), end)
    if depth == 0 or all(_strays(c, fit, t, distance) < CLOSE for t in (0.5, 0.25, 0.75)):
        return (fit,)
    return tuple(part for half in ((0, 0.5), (0.5, 1)) for part in _cubic_offset(c.part(*half), distance, depth - 1))


def _strays(c: Cubic, fit: Cubic, share: float, distance: float) -> float:
    """How far the fitted parallel lies off its distance there, mm."""
    return abs(c.at(share).to(fit.at(share)).cross(c.direction(share)) - distance)


def _speed(c: Cubic, share: float, distance: float) -> float:
    """Speed of the parallel: that of the cubic, times 1 + distance x curvature; 0 where it would turn back."""
    way, bend = c.speed(share), c.bend(share)
    speed = math.hypot(way.x, way.y)
    return max(0.0, speed + distance * way.cross(bend) / speed**2) if speed > TOUCH else 0.0
