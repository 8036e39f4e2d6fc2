"""Points and directions on the cutting table: millimetres, x to the right, y down."""

import math
from collections.abc import Iterable, Iterator

from msgspec import Struct


class Point(Struct, frozen=True, order=True, gc=False):
    """A place (mm), or the way from one place to another."""

    x: float
    y: float

    def __iter__(self) -> Iterator[float]:
        """x and y, so that a place can be spread over two arguments."""
        return iter((self.x, self.y))

    def to(self, other: "Point") -> "Point":
        """The way from here to `other`."""
        return Point(other.x - self.x, other.y - self.y)

    def moved(self, dx: float, dy: float) -> "Point":
        """This place, shifted."""
        return Point(self.x + dx, self.y + dy)

    def along(self, direction: "Point", distance: float) -> "Point":
        """The place `distance` from here in a unit `direction`."""
        return Point(self.x + direction.x * distance, self.y + direction.y * distance)

    def towards(self, other: "Point", share: float) -> "Point":
        """The place at `share` of the way to `other`: 0 is here, 1 is there."""
        return Point(self.x + (other.x - self.x) * share, self.y + (other.y - self.y) * share)

    def turned(self, degrees: float, about: "Point | None" = None) -> "Point":
        """This place turned about another (the origin by default), clockwise on the page."""
        a = math.radians(degrees)
        ox, oy = (about.x, about.y) if about else (0.0, 0.0)
        x, y, sine, cosine = self.x - ox, self.y - oy, math.sin(a), math.cos(a)
        return Point(ox + x * cosine - y * sine, oy + x * sine + y * cosine)

    def flipped(self, x: float) -> "Point":
        """This place mirrored in the upright line at `x`."""
        return Point(2 * x - self.x, self.y)

    def distance(self, other: "Point") -> float:
        """Straight distance, mm."""
        return math.hypot(other.x - self.x, other.y - self.y)

    def unit(self) -> "Point":
        """The same way, one millimetre long; a way of no length has no direction and stays."""
        size = math.hypot(self.x, self.y)
        return Point(self.x / size, self.y / size) if size else self

    @property
    def degrees(self) -> float:
        """The angle of this way, clockwise on the page from the right."""
        return math.degrees(math.atan2(self.y, self.x))

    def outward(self) -> "Point":
        """The way a quarter turn to the left: out of a piece whose edges run clockwise on the page."""
        return Point(self.y, -self.x)

    def dot(self, other: "Point") -> float:
        """Scalar product."""
        return self.x * other.x + self.y * other.y

    def cross(self, other: "Point") -> float:
        """Cross product; positive when `other` turns clockwise from here on the page."""
        return self.x * other.y - self.y * other.x


def turned(points: Iterable[Point], degrees: float, about: Point) -> list[Point]:
    """Places turned together about another, clockwise on the page."""
    a = math.radians(degrees)
    sine, cosine = math.sin(a), math.cos(a)
    ways = ((p.x - about.x, p.y - about.y) for p in points)
    return [Point(about.x + x * cosine - y * sine, about.y + x * sine + y * cosine) for x, y in ways]


def crossing(p: Point, u: Point, q: Point, v: Point) -> Point | None:
    """Where the line through p along u meets the line through q along v; None when they run parallel."""
    det = u.cross(v)
    if abs(det) < 1e-12:
        return None
    return p.along(u, p.to(q).cross(v) / det)
