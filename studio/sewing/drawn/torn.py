"""Where cloth goes on beyond a picture: a torn edge."""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import Final

from studio.drawing import Mark, Stroke
from studio.geometry import Box, Line, Path, Point, polyline

from .room import THIN

TOOTH: Final = 1.1
"""How far a torn edge goes in and out, mm."""
_EVERY: Final = 5.0
_SHORT: Final = 1.5


def torn(outline: Sequence[Point], window: Box) -> Iterator[Mark]:
    """The torn edges of a cloth whose flat outline is cut by a window: white beyond a jagged line."""
    sides = (
        (Point(window.left, window.top), Point(window.right, window.top)),
        (Point(window.right, window.top), Point(window.right, window.bottom)),
        (Point(window.right, window.bottom), Point(window.left, window.bottom)),
        (Point(window.left, window.bottom), Point(window.left, window.top)),
    )
    for start, end in sides:
        way = start.to(end).unit()
        for first, last in _inside(outline, start, way, start.distance(end)):
            if last - first > _SHORT:
                yield from _jagged(start.along(way, first), start.along(way, last))


def _inside(outline: Sequence[Point], start: Point, way: Point, size: float) -> Iterator[tuple[float, float]]:
    """The stretches of a side that lie inside an outline: between its crossings, by twos (even-odd)."""
    inner = start.along(Point(-way.y, way.x), 1e-4)  # a hair inside the window, so that an edge along it does not count
    found = []
    for a, b in pairwise(outline):
        from_a, from_b = way.cross(inner.to(a)), way.cross(inner.to(b))
        if (from_a > 0) != (from_b > 0):
            cross = a.towards(b, from_a / (from_a - from_b))
            found.append(way.dot(inner.to(cross)))
    found.sort()
    for first, last in zip(found[::2], found[1::2], strict=False):
        if (low := max(0.0, first)) < (high := min(size, last)):
            yield low, high


def _jagged(start: Point, end: Point) -> Iterator[Mark]:
    """White from the window's side in to a jagged line, and the line."""
    n = max(2, round(start.distance(end) / _EVERY)) * 2
    way = start.to(end).unit()
    into = Point(-way.y, way.x)
    step = start.distance(end) / n
    teeth = [start.along(way, k * step).along(into, TOOTH if k % 2 else 0.1) for k in range(n + 1)]
    line = polyline(teeth)
    rim = (end.along(into, -0.6), start.along(into, -0.6))
    around = Path((*line.curves, Line(teeth[-1], rim[0]), Line(*rim), Line(rim[1], teeth[0])))
    yield Stroke(around, "plain", fill="white", bare=True)
    yield Stroke(line, "plain", THIN)
