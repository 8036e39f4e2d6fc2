"""Cloth seen from its cut edge: a line that runs straight, and turns back on itself at every fold."""

from collections.abc import Iterable
from typing import TypeAlias

from studio.drawing import Stroke
from studio.drawing.furniture import stroke
from studio.geometry import Arc, Curve, Line, Path, Point

from .room import SEWN

Turn: TypeAlias = tuple[int, float]
"""Half a turn: 1 clockwise on the page, -1 the other way, and how far apart (mm) the two layers then lie."""
CLOTH_LINE = 0.6
"""Width of cloth seen from its edge, mm."""


def folded(start: Point, heading: float, *moves: float | Turn) -> Path:
    """From `start` along `heading` degrees (clockwise from the right): lengths to go straight, and turns."""
    curves: list[Curve] = []
    at = start
    for move in moves:
        way = Point(1, 0).turned(heading)
        if isinstance(move, tuple):
            sign, apart = move
            aside = Point(-way.y * sign, way.x * sign)
            centre = at.along(aside, apart / 2)
            curves.append(Arc(centre, apart / 2, heading - 90 * sign, 180.0 * sign))
            at, heading = at.along(aside, apart), heading + 180 * sign
        elif move > 0:
            curves.append(Line(at, at.along(way, move)))
            at = curves[-1].end
    return Path(tuple(curves))


def cloth(path: Path, width: float = CLOTH_LINE) -> Stroke:
    """A layer of cloth seen from its edge."""
    return Stroke(path, "plain", width)


def stitched(points: Iterable[tuple[float, float]]) -> Stroke:
    """A stitch through the layers, seen from the side."""
    return stroke("plain", *points, width=SEWN, colour="accent")
