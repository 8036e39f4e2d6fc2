"""The three curves every line on a pattern is made of: straight line, arc of a circle, cubic.

All three answer the same questions (start, end, length, a place and a direction at a share of the way, a
part, the reverse, a moved copy), so that nothing above needs to know which one it holds.
"""

import math
from functools import lru_cache
from typing import TypeAlias

from msgspec import Struct

from .point import Point, turned
from .quadrature import measured


class Line(Struct, frozen=True, gc=False):
    """A straight line from `start` to `end`."""

    start: Point
    end: Point

    @property
    def length(self) -> float:
        """Length, mm."""
        return self.start.distance(self.end)

    def at(self, share: float) -> Point:
        """The place at `share` of the way."""
        return self.start.towards(self.end, share)

    def direction(self, share: float) -> Point:
        """Unit direction of travel."""
        return self.start.to(self.end).unit()

    def part(self, first: float, last: float) -> "Line":
        """The stretch between two shares of the way."""
        return Line(self.at(first), self.at(last))

    def reversed(self) -> "Line":
        """The same line, walked the other way."""
        return Line(self.end, self.start)

    def moved(self, dx: float, dy: float) -> "Line":
        """A shifted copy."""
        return Line(self.start.moved(dx, dy), self.end.moved(dx, dy))

    def turned(self, degrees: float, about: Point) -> "Line":
        """A copy turned about a point, clockwise on the page."""
        return Line(*turned((self.start, self.end), degrees, about))

    def flipped(self, x: float) -> "Line":
        """A copy mirrored in the upright line at `x`."""
        return Line(self.start.flipped(x), self.end.flipped(x))

    @property
    def swept(self) -> float:
        """Twice the area that the line from the origin to a point of the curve sweeps as the point walks it, mm²."""
        return self.start.cross(self.end)

    @property
    def extremes(self) -> tuple[Point, ...]:
        """Points whose upright box holds the curve."""
        return (self.start, self.end)

    def flat(self, tolerance: float) -> list[Point]:
        """Points after the start of a run of chords that stays within `tolerance`."""
        return [self.end]

    def offset(self, distance: float) -> "Line":
        """The parallel line, `distance` outward."""
        out = self.direction(0).outward()
        return self.moved(out.x * distance, out.y * distance)


class Arc(Struct, frozen=True, gc=False):
    """Part of a circle: from angle `first`, turning by `sweep` (degrees, clockwise on the page)."""

    centre: Point
    radius: float
    first: float
    sweep: float

    def _on(self, degrees: float) -> Point:
        a = math.radians(degrees)
        return Point(self.centre.x + self.radius * math.cos(a), self.centre.y + self.radius * math.sin(a))

    @property
    def start(self) -> Point:
        """Where it begins."""
        return self._on(self.first)

    @property
    def end(self) -> Point:
        """Where it ends."""
        return self._on(self.first + self.sweep)

    @property
    def length(self) -> float:
        """Length along the curve, mm."""
        return abs(math.radians(self.sweep)) * self.radius

    def at(self, share: float) -> Point:
        """The place at `share` of the way."""
        return self._on(self.first + self.sweep * share)

    def direction(self, share: float) -> Point:
        """Unit direction of travel."""
        a = math.radians(self.first + self.sweep * share)
        way = 1.0 if self.sweep >= 0 else -1.0
        return Point(-math.sin(a) * way, math.cos(a) * way)

    def part(self, first: float, last: float) -> "Arc":
        """The stretch between two shares of the way."""
        return Arc(self.centre, self.radius, self.first + self.sweep * first, self.sweep * (last - first))

    def reversed(self) -> "Arc":
        """The same arc, walked the other way."""
        return Arc(self.centre, self.radius, self.first + self.sweep, -self.sweep)

    def moved(self, dx: float, dy: float) -> "Arc":
        """A shifted copy."""
        return Arc(self.centre.moved(dx, dy), self.radius, self.first, self.sweep)

    def turned(self, degrees: float, about: Point) -> "Arc":
        """A copy turned about a point, clockwise on the page."""
        return Arc(self.centre.turned(degrees, about), self.radius, self.first + degrees, self.sweep)

    def flipped(self, x: float) -> "Arc":
        """A copy mirrored in the upright line at `x`."""
        return Arc(self.centre.flipped(x), self.radius, 180 - self.first, -self.sweep)

    @property
    def swept(self) -> float:
        """Twice the area swept from the origin, mm² (see `Line.swept`)."""
        return self.centre.cross(self.end) - self.centre.cross(self.start) + self.radius**2 * math.radians(self.sweep)

    @property
    def extremes(self) -> tuple[Point, ...]:
        """Points whose upright box holds the arc: its ends and the quarters of the circle it passes."""
        low, high = sorted((self.first, self.first + self.sweep))
        quarters = range(math.ceil(low / 90 - 1e-12), math.floor(high / 90 + 1e-12) + 1)
        return (self.start, self.end, *(self._on(90.0 * k) for k in quarters))

    def flat(self, tolerance: float) -> list[Point]:
        """Points after the start of a run of chords within `tolerance` of the arc."""
        step = 2 * math.acos(max(-1.0, 1 - min(tolerance / self.radius, 1))) if self.radius > 0 else math.pi
        n = max(1, math.ceil(abs(math.radians(self.sweep)) / step))
        return [self.at((k + 1) / n) for k in range(n)]

    def offset(self, distance: float) -> "Arc":
        """The parallel arc, `distance` outward (left of the way it is walked)."""
        return Arc(self.centre, self.radius + (distance if self.sweep >= 0 else -distance), self.first, self.sweep)


class Cubic(Struct, frozen=True, gc=False):
    """A cubic curve from `start` to `end`, drawn towards the two control points `leave` and `arrive`."""

    start: Point
    leave: Point
    arrive: Point
    end: Point

    @property
    def length(self) -> float:
        """Length along the curve, mm, to 1e-6 (Gauss-Legendre on halves until they agree)."""
        return _cubic_length(self)

    def at(self, share: float) -> Point:
        """The place at parameter `share`."""
        t, s = share, 1 - share
        a, b, c, d = s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t
        p, q, r, e = self.start, self.leave, self.arrive, self.end
        return Point(a * p.x + b * q.x + c * r.x + d * e.x, a * p.y + b * q.y + c * r.y + d * e.y)

    def speed(self, share: float) -> Point:
        """First derivative at parameter `share`, mm per unit of the parameter."""
        p, q, r, e = self.start, self.leave, self.arrive, self.end
        t, s = share, 1 - share
        a, b, c = 3 * s * s, 6 * s * t, 3 * t * t
        return Point(
            a * (q.x - p.x) + b * (r.x - q.x) + c * (e.x - r.x), a * (q.y - p.y) + b * (r.y - q.y) + c * (e.y - r.y)
        )

    def bend(self, share: float) -> Point:
        """Second derivative at parameter `share`."""
        p, q, r, e = self.start, self.leave, self.arrive, self.end
        s, t = 6 * (1 - share), 6 * share
        return Point(
            s * (p.x - 2 * q.x + r.x) + t * (q.x - 2 * r.x + e.x), s * (p.y - 2 * q.y + r.y) + t * (q.y - 2 * r.y + e.y)
        )

    def direction(self, share: float) -> Point:
        """Unit direction of travel; at a control point that lies on its end, that of the chord beyond it."""
        way = self.speed(share)
        size = math.hypot(way.x, way.y)
        if size < 1e-9:
            near = min(max(share, 1e-4), 1 - 1e-4)
            return self.at(near - 1e-4).to(self.at(near + 1e-4)).unit()
        return Point(way.x / size, way.y / size)

    def part(self, first: float, last: float) -> "Cubic":
        """The stretch between two parameters."""
        k = (last - first) / 3
        p, q, u, v = self.at(first), self.at(last), self.speed(first), self.speed(last)
        return Cubic(p, p.along(u, k), q.along(v, -k), q)

    def reversed(self) -> "Cubic":
        """The same curve, walked the other way."""
        return Cubic(self.end, self.arrive, self.leave, self.start)

    def moved(self, dx: float, dy: float) -> "Cubic":
        """A shifted copy."""
        return Cubic(*(p.moved(dx, dy) for p in (self.start, self.leave, self.arrive, self.end)))

    def turned(self, degrees: float, about: Point) -> "Cubic":
        """A copy turned about a point, clockwise on the page."""
        return Cubic(*turned((self.start, self.leave, self.arrive, self.end), degrees, about))

    def flipped(self, x: float) -> "Cubic":
        """A copy mirrored in the upright line at `x`."""
        return Cubic(*(p.flipped(x) for p in (self.start, self.leave, self.arrive, self.end)))

    @property
    def swept(self) -> float:
        """Twice the area swept from the origin, mm² (see `Line.swept`); of a Bernstein polynomial, exact."""
        a, b, c, d = self.start, self.leave, self.arrive, self.end
        return (6 * a.cross(b) + 3 * a.cross(c) + a.cross(d) + 3 * b.cross(c) + 3 * b.cross(d) + 6 * c.cross(d)) / 10

    @property
    def extremes(self) -> tuple[Point, ...]:
        """Points whose upright box holds the curve: its ends and where it turns back in x or in y."""
        p, q, r, e = self.start, self.leave, self.arrive, self.end
        turns = [*_turns(p.x, q.x, r.x, e.x), *_turns(p.y, q.y, r.y, e.y)]
        return (p, e, *(self.at(t) for t in turns))

    def flat(self, tolerance: float) -> list[Point]:
        """Points after the start of a run of chords that stays within `tolerance`.

        The bound on the chord's error is that of Wang: sqrt(6/8 * max|second difference| / tolerance) parts.
        """
        p, q, r, e = self.start, self.leave, self.arrive, self.end
        bend = max(
            math.hypot(p.x - 2 * q.x + r.x, p.y - 2 * q.y + r.y),
            math.hypot(q.x - 2 * r.x + e.x, q.y - 2 * r.y + e.y),
        )
        n = max(1, math.ceil(math.sqrt(0.75 * bend / tolerance)))
        return [self.at((k + 1) / n) for k in range(n)]


Curve: TypeAlias = Line | Arc | Cubic


def _turns(p: float, q: float, r: float, e: float) -> list[float]:
    """Parameters inside a cubic where one coordinate stands still: roots of its derivative."""
    a, b, c = q - p, r - q, e - r
    square, half, rest = a - 2 * b + c, b - a, a
    if abs(square) < 1e-12:
        roots = [-rest / (2 * half)] if abs(half) > 1e-12 else []
    else:
        inner = half * half - square * rest
        roots = [(-half + way * math.sqrt(inner)) / square for way in (1, -1)] if inner >= 0 else []
    return [t for t in roots if 0 < t < 1]


@lru_cache(maxsize=1024)
def _cubic_length(c: Cubic) -> float:
    u, v, w = c.start.to(c.leave), c.leave.to(c.arrive), c.arrive.to(c.end)
    speed = u.x, u.y, 2 * (v.x - u.x), 2 * (v.y - u.y), u.x - 2 * v.x + w.x, u.y - 2 * v.y + w.y
    return measured(speed)
