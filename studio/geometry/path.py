"""A path: curves joined end to end.  A seam line, a fold, the outline of a piece."""

import itertools
import math
from collections.abc import Iterable

from msgspec import Struct

from .box import Box
from .curve import Arc, Cubic, Curve, Line
from .point import Point

TOUCH = 1e-6
"""Ends nearer than this (mm) are one point."""
CORNER = 0.001
"""Sine of the angle from which a path has a corner: about a twentieth of a degree."""


class Path(Struct, frozen=True, gc=False):
    """Curves in order, each beginning where the one before it ends."""

    curves: tuple[Curve, ...]

    @property
    def start(self) -> Point:
        """Where it begins."""
        return self.curves[0].start

    @property
    def end(self) -> Point:
        """Where it ends."""
        return self.curves[-1].end

    @property
    def leaves(self) -> Point:
        """Unit direction in which it sets out."""
        return self.curves[0].direction(0)

    @property
    def arrives(self) -> Point:
        """Unit direction in which it comes to its end."""
        return self.curves[-1].direction(1)

    @property
    def closed(self) -> bool:
        """Whether it ends where it began."""
        return self.start.distance(self.end) < TOUCH

    @property
    def length(self) -> float:
        """Length along it, mm."""
        return sum(c.length for c in self.curves)

    def at(self, distance: float) -> Point:
        """The place `distance` mm along; before the start and past the end it stays there."""
        curve, share = self._locate(distance)
        return curve.at(share)

    def direction(self, distance: float) -> Point:
        """Unit direction of travel `distance` mm along."""
        curve, share = self._locate(distance)
        return curve.direction(share)

    def along(self, distance: float) -> tuple[Point, Point]:
        """The place `distance` mm along, and the unit direction of travel there."""
        curve, share = self._locate(distance)
        return curve.at(share), curve.direction(share)

    def _locate(self, distance: float) -> tuple[Curve, float]:
        left = max(0.0, distance)
        for c in self.curves:
            size = c.length
            if left <= size:
                return c, share_at(c, left)
            left -= size
        return self.curves[-1], 1.0

    def split(self, distance: float) -> tuple["Path", "Path"]:
        """The path up to `distance` mm along it, and the rest; `distance` lies inside."""
        first: list[Curve] = []
        left = distance
        for k, c in enumerate(self.curves):
            size = c.length
            if left < size - TOUCH:
                share = share_at(c, left)
                if left > TOUCH:
                    first.append(c.part(0, share))
                    return Path(tuple(first)), Path((c.part(share, 1), *self.curves[k + 1 :]))
                return Path(tuple(first)), Path(self.curves[k:])
            first.append(c)
            left -= size
        raise ValueError(f"A path of {self.length:.2f} mm cannot be split at {distance:.2f} mm.")

    def reversed(self) -> "Path":
        """The same path, walked the other way."""
        return Path(tuple(c.reversed() for c in reversed(self.curves)))

    def moved(self, dx: float, dy: float) -> "Path":
        """A shifted copy."""
        return Path(tuple(c.moved(dx, dy) for c in self.curves))

    def turned(self, degrees: float, about: Point) -> "Path":
        """A copy turned about a point, clockwise on the page."""
        return Path(tuple(c.turned(degrees, about) for c in self.curves))

    def flipped(self, x: float) -> "Path":
        """A copy mirrored in the upright line at `x`; what ran clockwise runs the other way."""
        return Path(tuple(c.flipped(x) for c in self.curves))

    @property
    def runs(self) -> tuple["Path", ...]:
        """The path parted at its corners: where the way bends by more than `CORNER`."""
        if len(self.curves) == 1:
            return (self,)
        runs, run = [], [self.curves[0]]
        for a, b in itertools.pairwise(self.curves):
            comes, goes = a.direction(1), b.direction(0)
            if abs(comes.cross(goes)) > CORNER or comes.dot(goes) < 0:
                runs.append(Path(tuple(run)))
                run = []
            run.append(b)
        return (*runs, Path(tuple(run)))

    def flat(self, tolerance: float = 0.05) -> list[Point]:
        """Points of a run of chords within `tolerance` mm; a closed path repeats its first point."""
        points = [self.start]
        for c in self.curves:
            points += c.flat(tolerance)
        return points

    def nearest(self, point: Point) -> tuple[float, float]:
        """How far along (mm) the path passes nearest to `point`, and how far it is from there (mm)."""
        along, best = 0.0, (0.0, math.inf)
        for c in self.curves:
            share = _nearest_share(c, point)
            far = c.at(share).distance(point)
            if far < best[1]:
                best = (along + c.part(0, share).length if share > 0 else along, far)
            along += c.length
        return best

    @property
    def area(self) -> float:
        """The ground that a closed path encloses, mm²."""
        return abs(sum(c.swept for c in self.curves)) / 2

    @property
    def box(self) -> Box:
        """The upright rectangle that just holds it."""
        points = [p for c in self.curves for p in c.extremes]
        xs, ys = [p.x for p in points], [p.y for p in points]
        return Box(min(xs), min(ys), max(xs), max(ys))


def polyline(points: Iterable[Point]) -> Path:
    """Straight lines from point to point; points on top of each other count once."""
    kept: list[Point] = []
    for p in points:
        if not kept or kept[-1].distance(p) > TOUCH:
            kept.append(p)
    return Path(tuple(Line(a, b) for a, b in itertools.pairwise(kept)))


def line(x0: float, y0: float, x1: float, y1: float) -> Path:
    """One straight line."""
    return Path((Line(Point(x0, y0), Point(x1, y1)),))


def rectangle(left: float, top: float, right: float, bottom: float) -> Path:
    """A closed rectangle, clockwise on the page from its top left corner."""
    a, b, c, d = Point(left, top), Point(right, top), Point(right, bottom), Point(left, bottom)
    return Path((Line(a, b), Line(b, c), Line(c, d), Line(d, a)))


def circle(centre: Point, radius: float) -> Path:
    """A whole circle."""
    return Path((Arc(centre, radius, 0, 180), Arc(centre, radius, 180, 180)))


def joined(paths: Iterable[Path]) -> Path:
    """One path from several that meet end to start."""
    return Path(tuple(c for p in paths for c in p.curves))


def share_at(c: Curve, distance: float) -> float:
    """The parameter at `distance` mm along a curve (lines and arcs run evenly; a cubic is solved for)."""
    size = c.length
    if size <= 0:
        return 0.0
    share = min(1.0, distance / size)
    if not isinstance(c, Cubic) or not 0 < share < 1:
        return share
    low, high = 0.0, 1.0
    for _ in range(50):  # Newton's rule, kept between bounds
        short = c.part(0, share).length - distance
        if abs(short) < TOUCH:
            break
        low, high = (share, high) if short < 0 else (low, share)
        way = c.speed(share)
        speed = math.hypot(way.x, way.y)
        wanted = share - short / speed if speed > TOUCH else low
        share = wanted if low < wanted < high else (low + high) / 2
    return share


def beside(c: Curve, point: Point) -> float:
    """The share of a curve at which a point near its end lies square beside it; below 0 before its start."""
    if isinstance(c, Line):
        way = c.start.to(c.end)
        return c.start.to(point).dot(way) / way.dot(way)
    if isinstance(c, Arc):
        return _nearest_on_arc(c, point)
    share = 1.0
    for _ in range(20):
        way = c.speed(share)
        step = c.at(share).to(point).dot(way) / max(way.dot(way), TOUCH)
        share += step
        if abs(step) < 1e-9 or share < 0:
            break
    return share


def _nearest_share(c: Curve, point: Point) -> float:
    if isinstance(c, Line):
        way = c.start.to(c.end)
        size = way.dot(way)
        return min(1.0, max(0.0, c.start.to(point).dot(way) / size)) if size else 0.0
    if isinstance(c, Arc):
        return _nearest_on_arc(c, point)
    n = 32
    k = min(range(n + 1), key=lambda i: c.at(i / n).distance(point))
    low, high = max(0, k - 1) / n, min(n, k + 1) / n
    for _ in range(40):
        a, b = low + (high - low) / 3, high - (high - low) / 3
        low, high = (low, b) if c.at(a).distance(point) < c.at(b).distance(point) else (a, high)
    return (low + high) / 2


def _nearest_on_arc(c: Arc, point: Point) -> float:
    """The share at which a ray from the centre through the point meets the arc, or its nearer end."""
    way = c.centre.to(point)
    turned = (math.degrees(math.atan2(way.y, way.x)) - c.first) * (1 if c.sweep >= 0 else -1) % 360
    if turned <= abs(c.sweep):
        return turned / abs(c.sweep)
    return 0.0 if c.start.distance(point) <= c.end.distance(point) else 1.0
