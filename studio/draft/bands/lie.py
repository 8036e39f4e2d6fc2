"""How a band lies on the table: places on it are told by how far along its waist seam and how far up from it."""

import math

from msgspec import Struct

from studio.geometry import Arc, Line, Path, Point


class Lie(Struct, frozen=True):
    """A straight band, or one on a curve that hangs lowest at `middle`.

    `deep` is the waist seam's y (mm), on a curve that of its lowest place. `radius` is that of the waist seam, whose
    centre lies above; 0 where the band is straight.
    """

    deep: float
    radius: float = 0.0
    middle: float = 0.0

    @property
    def centre(self) -> Point:
        """The middle of the circles that a curved band lies on."""
        return Point(self.middle, self.deep - self.radius)

    def at(self, along: float, up: float) -> Point:
        """The place `along` the waist seam from the plain end and `up` from it, mm."""
        if not self.radius:
            return Point(along, self.deep - up)
        return self.centre.along(self.up(along), up - self.radius)

    def up(self, along: float) -> Point:
        """The way from the waist seam to the top edge, one millimetre long."""
        if not self.radius:
            return Point(0.0, -1.0)
        turn = (along - self.middle) / self.radius
        return Point(-math.sin(turn), -math.cos(turn))

    def way(self, along: float) -> Point:
        """The way along the band from the plain end, one millimetre long."""
        up = self.up(along)
        return Point(-up.y, up.x)

    def run(self, start: float, end: float, up: float) -> Path:
        """A line along the band at one height, either way."""
        if not self.radius:
            return Path((Line(self.at(start, up), self.at(end, up)),))
        first, last = (90 - math.degrees((s - self.middle) / self.radius) for s in (start, end))
        return Path((Arc(self.centre, self.radius - up, first, last - first),))

    def across(self, along: float, low: float, high: float) -> Path:
        """A line square to the waist seam, from one height to another."""
        return Path((Line(self.at(along, low), self.at(along, high)),))
