"""The side seam of a darted skirt: a curve from the waist to the hip that runs on straight to the hem."""

import math

from msgspec import Struct

from studio.geometry import TOUCH, Curve, Line, Path, Point

from .smooth import smooth

FAIR = 1.5
"""At the waist the seam leans this much more than the straight way from waist to hip, so that it rounds over the hip
(common practice, no source)."""
WIDEST = 0.5
"""A side flares by at most this share of its length: 30 degrees."""


class Side(Struct, frozen=True):
    """A side seam before any dart is closed: from the waist down a curve that ends at the hip, and the straight below;
    or only the straight, where it flares more than the hip asks for.
    """

    top: Point
    lean: float  # of the waist's end from the upright, radians
    below: Point  # the way the straight runs
    curve: Curve | None = None

    @property
    def hip(self) -> Point:
        """Where the straight begins."""
        return self.curve.end if self.curve else self.top

    def at(self, depth: float) -> tuple[Point, Point]:
        """The place level with `depth` on the centre, mm below the waist, and the way the seam runs there."""
        if self.curve is None:
            return self.top.along(self.below, max(0.0, depth)), self.below
        if depth >= self.hip.y:
            return self.hip.along(self.below, depth - self.hip.y), self.below
        share = _share_at_depth(self.curve, depth)
        return self.curve.at(share), self.curve.direction(share)

    def length(self, depth: float) -> float:
        """From the waist down to a depth, along the seam, mm."""
        if self.curve is None:
            return max(0.0, depth)
        if depth >= self.hip.y:
            return self.curve.length + depth - self.hip.y
        return self.curve.part(0, _share_at_depth(self.curve, depth)).length

    def down(self, length: float) -> Path:
        """The seam from the waist, so long (mm)."""
        if self.curve is None:
            return Path((Line(self.top, self.top.along(self.below, length)),))
        left = length - self.curve.length
        if left < -TOUCH:
            return Path((self.curve,)).split(length)[0]
        straight = Line(self.hip, self.hip.along(self.below, left))
        return Path((self.curve, straight) if left > TOUCH else (self.curve,))


class SideLine(Struct, frozen=True):
    """What a side is drawn to, mm: how far the hip lies out from the centre, how deep below the waist, how long the
    skirt is, and how much the hem lies out further than the hip.
    """

    hip: float
    depth: float
    length: float
    flare: float

    def side(self, intake: float, rise: float) -> Side:
        """The seam that takes in `intake` mm from hip to waist and begins `rise` mm above the waist of the centre."""
        top, lean = Point(self.intake_at(intake), -rise), self.lean(intake)
        if self.flares(intake):
            return Side(top, lean, _way(lean))
        below = _way(self._below(intake))
        return Side(top, lean, below, smooth(top, _way(lean), Point(-self.hip, self.depth), below))

    def intake_at(self, intake: float) -> float:
        """Where the waist's corner lies, x in mm."""
        return intake - self.hip

    def lean(self, intake: float) -> float:
        """How much the seam leans at the waist, radians: square to it the waist ends."""
        if self.flares(intake):
            return math.asin(min(WIDEST, self.flare / self.length))
        chord = self._chord(intake)
        return chord + (FAIR - 1) * (chord - self._below(intake))

    def flares(self, intake: float) -> bool:
        """Whether the seam is straight all the way, for the flare asks for as much room as the hip, or more."""
        return math.tan(self._chord(intake)) * self.length <= self.flare + TOUCH

    def flared(self, intake: float) -> float:
        """How much of its flare a seam is given that takes in so much, mm."""
        if self.flares(intake):
            return min(self.flare, WIDEST * self.length)
        return min(self.flare, math.sin(self._below(intake)) * (self.length - self.depth))

    def _chord(self, intake: float) -> float:
        return math.atan2(max(0.0, intake), self.depth)

    def _below(self, intake: float) -> float:
        """How much the straight below the hip leans; never more than the way down to the hip."""
        left = self.length - self.depth
        return min(self._chord(intake), math.asin(min(WIDEST, self.flare / left))) if left > 50 else 0.0


def _way(lean: float) -> Point:
    """Down a side that leans out so much."""
    return Point(-math.sin(lean), math.cos(lean))


def _share_at_depth(curve: Curve, depth: float) -> float:
    """The share of a curve that falls all the way at which it passes a depth."""
    low, high = 0.0, 1.0
    for _ in range(50):
        share = (low + high) / 2
        low, high = (share, high) if curve.at(share).y < depth else (low, share)
    return (low + high) / 2
