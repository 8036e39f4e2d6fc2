"""Cloth seen from its cut edge: a line that runs straight, and turns back on itself at every fold."""

import math
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


def waved(start: Point, end: Point, apart: float, height: float) -> Path:
    """A wavy line, as cloth lies when it is drawn up: half waves about so far apart (mm)."""
    n = max(2, round(start.distance(end) / apart))
    curves: list[Curve] = []
    way = start.to(end).unit()
    up = way.outward()
    step = start.distance(end) / n
    for k in range(n):
        a, b = start.along(way, k * step), start.along(way, (k + 1) * step)
        sign = height if k % 2 == 0 else -height
        curves += _half_wave(a, b, up, sign)
    return Path(tuple(curves))


def _half_wave(a: Point, b: Point, up: Point, height: float) -> list[Curve]:
    from studio.geometry import Cubic

    lift = height * 4 / 3
    return [Cubic(a, a.along(up, lift), b.along(up, lift), b)]


def pointing(degrees: float) -> Point:
    """The way of an angle, clockwise from the right."""
    return Point(math.cos(math.radians(degrees)), math.sin(math.radians(degrees)))
