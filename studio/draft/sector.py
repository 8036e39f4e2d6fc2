"""A sector of a ring: part of a round skirt between two straight sides, waist and hem true arcs about one centre."""

import math
from typing import Literal, TypeAlias

from msgspec import Struct

from studio.geometry import Arc, Box, Line, Path, Point

Held: TypeAlias = Literal["left", "right", "middle"]
"""What of a sector hangs straight down the page, on the straight of the cloth: a side, or its middle."""


class Sector(Struct, frozen=True):
    """From the waist's radius to the hem's (mm), about `centre`.

    `first` is the page angle of its left side and `angle` how far it reaches from there to the right (degrees; 90
    points down the page, and the right lies at smaller angles). Its sides are radial; `taken` moves the left seam line
    in, parallel to itself (mm).
    """

    centre: Point
    waist: float
    hem: float
    first: float
    angle: float
    taken: float = 0.0

    @property
    def last(self) -> float:
        """Page angle of the right side, degrees."""
        return self.first - self.angle

    @property
    def sides(self) -> tuple[Path, Path, Path, Path]:
        """Top, right, hem and left, walked clockwise."""
        above, below = self._lost(self.waist), self._lost(self.hem)
        top = Arc(self.centre, self.waist, self.first - above, above - self.angle)
        hem = Arc(self.centre, self.hem, self.last, self.angle - below)
        return Path((top,)), Path((Line(top.end, hem.start),)), Path((hem,)), Path((Line(hem.end, top.start),))

    def _lost(self, radius: float) -> float:
        """Degrees of an arc of that radius that lie beyond the left seam line."""
        return math.degrees(math.asin(self.taken / radius)) if self.taken else 0.0

    def degrees_at(self, along: float) -> float:
        """Page angle of a place `along` mm of the waist from its left end."""
        return self.first - self._lost(self.waist) - math.degrees(along / self.waist)

    def place(self, degrees: float, radius: float) -> Point:
        """The place at a page angle, so far (mm) from the centre."""
        return self.centre.along(way(degrees), radius)

    def round(self, start: float, end: float, radius: float) -> Path:
        """An arc between two places along the waist (mm from its left end), so far from the centre."""
        first, last = self.degrees_at(start), self.degrees_at(end)
        return Path((Arc(self.centre, radius, first, last - first),))

    def radial(self, along: float, start: float, end: float) -> Path:
        """A line away from the centre, from radius to radius, at a place `along` mm of the waist from its left end."""
        degrees = self.degrees_at(along)
        return Path((Line(self.place(degrees, start), self.place(degrees, end)),))

    def cut_box(self, top: float, right: float, hem: float, left: float) -> Box:
        """The box of its cut line with those allowances (mm), where both sides are radial.

        A side's allowance ends square to it, at the waist as at the hem.
        """
        radii = (self.waist - top, self.hem + hem)
        ends = [self.place(self.last, r).along(way(self.last - 90), right) for r in radii]
        ends += [self.place(self.first, r).along(way(self.first + 90), left) for r in radii]
        quarters = range(math.ceil(self.last / 90 - 1e-9), math.floor(self.first / 90 + 1e-9) + 1)
        xs, ys = zip(*ends, *(self.place(90.0 * k, self.hem + hem) for k in quarters), strict=True)
        return Box(min(xs), min(ys), max(xs), max(ys))


def way(degrees: float) -> Point:
    """The way at a page angle, one millimetre long."""
    a = math.radians(degrees)
    return Point(math.cos(a), math.sin(a))


def first_side(angle: float, by: Held) -> float:
    """Page angle of the left side of a sector that hangs down by one side, or by its middle."""
    return {"left": 90.0, "right": 90.0 + angle, "middle": 90.0 + angle / 2}[by]
