"""The cut line, computed from seam lines and allowances with the corners a cutter would make.

Where two edges meet, their parallels are drawn on until they cross. At a hem the sides are folded back as a
mirror image, so that a slanted side still lies flat when the hem is turned up. A corner so sharp that its
point would run away is cut off blunt.
"""

import math
from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from msgspec.structs import replace

from studio.geometry import TOUCH, Cubic, Curve, Line, Path, Point, beside, crossing, offset

from .piece import Edge

RUN = 2.5
"""A mitre longer than this many allowances is cut off (common practice, no source)."""


def cut_line(edges: Sequence[Edge]) -> Path:
    """The closed cut line round edges that follow each other clockwise; an edge may have corners of its own."""
    edges = [one for e in edges for one in _parted(e)]
    sides = [_side(e) for e in edges]
    corners = [_corner(one, other) for one, other in zip(sides, [*sides[1:], sides[0]], strict=True)]
    outline: list[Curve] = []
    for k, side in enumerate(sides):
        outline += _between(side, corners[k - 1][-1], corners[k][0])
        outline += (Line(p, q) for p, q in zip(corners[k], corners[k][1:], strict=False))
    return Path(tuple(_straightened(c for c in outline if _seen(c))))


class _Side(NamedTuple):
    """An edge, what runs beside it in the cut line, and the ways that leaves and arrives."""

    edge: Edge
    curves: list[Curve]
    leaves: Point
    arrives: Point


def _side(edge: Edge) -> _Side:
    beside = offset(edge.path, edge.allowance)
    return _Side(edge, list(beside.curves), beside.leaves, beside.arrives)


def _seen(c: Curve) -> bool:
    """Whether a curve has any length; its ends mostly tell."""
    return c.start.distance(c.end) > TOUCH or c.length > TOUCH


def _parted(edge: Edge) -> list[Edge]:
    """An edge as one for each run between its corners."""
    runs = edge.path.runs
    return [edge] if len(runs) == 1 else [replace(edge, path=run) for run in runs]


def _straightened(curves: Iterable[Curve]) -> Iterator[Curve]:
    """Lines that run on in each other's way, made one."""
    before: Curve | None = None
    for c in curves:
        if isinstance(c, Line) and isinstance(before, Line) and _run_on(before, c):
            before = Line(before.start, c.end)
            continue
        if before is not None:
            yield before
        before = c
    if before is not None:
        yield before


def _run_on(before: Line, after: Line) -> bool:
    """Whether two lines go the same way."""
    u, v = before.start.to(before.end), after.start.to(after.end)
    return u.dot(v) > 0 and abs(u.cross(v)) < 1e-9 * math.hypot(*u) * math.hypot(*v)


def _between(side: _Side, start: Point, end: Point) -> list[Curve]:
    """A side from corner to corner: a straight one moves its ends; a curve gains tangents, or is cut back to a corner
    that lies before its end.
    """
    curves = side.curves
    if len(curves) == 1 and isinstance(curves[0], Line):
        return [Line(start, end)]
    if curves[-1].end.to(end).dot(side.arrives) < -TOUCH:
        curves = _cut_back(curves, end)
    if curves[0].start.to(start).dot(side.leaves) > TOUCH:
        curves = [c.reversed() for c in reversed(_cut_back([c.reversed() for c in reversed(curves)], start))]
    return [Line(start, curves[0].start), *curves, Line(curves[-1].end, end)]


def _cut_back(side: list[Curve], end: Point) -> list[Curve]:
    """A side that ends at a corner beside its way, which a line or cubic is drawn to."""
    *before, last = side
    share = beside(last, end)
    if share <= 0:
        return _cut_back(before, end) if before else side
    kept = last.part(0, min(1.0, share))
    return [*before, replace(kept, end=end) if isinstance(kept, Cubic | Line) else kept]


def _corner(before: _Side, after: _Side) -> list[Point]:
    """The points of the cut line from the end of one edge's side to the start of the next."""
    e, f = before.edge, after.edge
    p, u = before.curves[-1].end, before.arrives
    q, v = after.curves[0].start, after.leaves
    if f.hem and not e.hem:
        return _hem_corner(f.path.start, f.path.leaves, p, u, q, v)
    if e.hem and not f.hem:
        back = e.path.arrives
        return _hem_corner(e.path.end, Point(-back.x, -back.y), q, Point(-v.x, -v.y), p, Point(-u.x, -u.y))[::-1]
    if abs(u.cross(v)) < 1e-9:  # one line runs on: step where the allowances differ
        return [p] if p.distance(q) < TOUCH else [p, q]
    tip = crossing(p, u, q, v)
    widest = max(e.allowance, f.allowance)
    if tip is None or (u.cross(v) > 0 and e.path.end.distance(tip) > RUN * widest):
        return [p.along(u, widest), q.along(v, -widest)]
    return [tip]


def _hem_corner(corner: Point, along: Point, p: Point, u: Point, q: Point, v: Point) -> list[Point]:
    """Down the side to the hem line, then its mirror image down to the hem's raw edge.

    The hem line starts at `corner` and runs `along`; the side's cut line ends at p along u, the hem's starts at q
    along v.
    """
    at_line = crossing(p, u, corner, along)
    if at_line is None:
        return [p, q]
    sideways = u.dot(along)
    back = Point(u.x - 2 * sideways * along.x, u.y - 2 * sideways * along.y)
    at_edge = crossing(at_line, back, q, v)
    if at_edge is None:
        return [p, q]
    return [at_edge] if abs(sideways) < 1e-12 else [at_line, at_edge]
