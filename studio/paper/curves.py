"""Arcs for media that know only cubics."""

import math

from studio.geometry import Arc, Cubic

_MOST = 45.0


def cubics(arc: Arc) -> tuple[Cubic, ...]:
    """An arc as cubics that leave it by less than 5 parts in a million of its radius: 0.005 mm on a radius of 1 m.

    Each spans 45 degrees at most, with handles of 4/3 tan(angle / 4) radii (Goldapp, "Approximation of circular
    arcs by cubic polynomials", 1991; from memory). One cubic for a quarter would miss by 0.27 mm on that radius.
    """
    parts = max(1, math.ceil(abs(arc.sweep) / _MOST - 1e-9))
    found = []
    for k in range(parts):
        piece = arc.part(k / parts, (k + 1) / parts)
        handle = 4 / 3 * math.tan(math.radians(abs(piece.sweep)) / 4) * piece.radius
        start, end = piece.start, piece.end
        leave, arrive = start.along(piece.direction(0), handle), end.along(piece.direction(1), -handle)
        found.append(Cubic(start, leave, arrive, end))
    return tuple(found)
