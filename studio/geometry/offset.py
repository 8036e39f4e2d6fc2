"""A line parallel to another: what turns a seam line into a cut line."""

import math

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


def _cubic_offset(c: Cubic, distance: float, depth: int) -> list[Curve]:
    """A cubic with the true places and speeds at both ends; halved while its middle strays."""
    ends = [c.at(t).along(c.direction(t).outward(), distance) for t in (0, 1)]
    leave, arrive = (_speed(c, t, distance) / 3 for t in (0, 1))
    fit = Cubic(ends[0], ends[0].along(c.direction(0), leave), ends[1].along(c.direction(1), -arrive), ends[1])
    strays = max(abs(c.at(t).to(fit.at(t)).dot(c.direction(t).outward()) - distance) for t in (0.25, 0.5, 0.75))
    if depth == 0 or strays < CLOSE:
        return [fit]
    return [part for half in ((0, 0.5), (0.5, 1)) for part in _cubic_offset(c.part(*half), distance, depth - 1)]


def _speed(c: Cubic, share: float, distance: float) -> float:
    """Speed of the parallel: that of the cubic, times 1 + distance x curvature; 0 where it would turn back."""
    way, bend = c.speed(share), c.bend(share)
    speed = math.hypot(way.x, way.y)
    return max(0.0, speed + distance * way.cross(bend) / speed**2) if speed > TOUCH else 0.0
