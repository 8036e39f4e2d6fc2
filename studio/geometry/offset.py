"""A line parallel to another: what turns a seam line into a cut line."""

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
    u, v = c.direction(0), c.direction(1)
    p, q = c.start.along(u.outward(), distance), c.end.along(v.outward(), distance)
    chord, wide = c.start.distance(c.end), p.distance(q)
    k = wide / chord if chord > TOUCH else 1.0
    fit = Cubic(p, p.along(u, k * c.start.distance(c.leave)), q.along(v, -k * c.arrive.distance(c.end)), q)
    off = max(abs(fit.at(t).distance(c.at(t)) - abs(distance)) for t in (0.25, 0.5, 0.75))
    if depth == 0 or off < CLOSE:
        return [fit]
    return _cubic_offset(c.part(0, 0.5), distance, depth - 1) + _cubic_offset(c.part(0.5, 1), distance, depth - 1)
