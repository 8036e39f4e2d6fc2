"""How a skirt lies on a table: half its waist, half its hem, and the length between.

Laid flat, the front of a skirt is a part of a ring: its inner arc is half the waist seam, its outer arc half the hem,
and it is as deep as the skirt is long. A tube is the ring of endless radius; a whole circle lies as half a disc. One
that is fitted to the hips is as wide as they are at their height, and its sides are curved above.
"""

import math
from typing import Final

from msgspec import Struct
from msgspec.structs import replace

from studio.brief import Brief
from studio.draft import Draft
from studio.geometry import Arc, Line, Path, Point, polyline

from ..saying import panels

_WIDEST: Final = math.pi
"""A hem wider than half a circle falls in folds when it is laid flat."""
_FULL: Final = 2.2
"""A hem so many times the hips falls as a ring does, and not from the hips."""
_BENDS: Final = 12
"""Chords of a side that is curved above the hips."""
STRAIGHT: Final = 0.01
"""Below this angle (radians) the sides are drawn parallel to each other."""


class Laid(Struct, frozen=True):
    """A skirt laid flat, mm: half the waist, half the hem, the length, and how high the band stands; places are told
    by their share of the way across, from -1 to 1, and how far down they lie.
    """

    waist: float
    hem: float
    long: float
    band: float
    hip: float = 0.0
    deep: float = 0.0

    @property
    def angle(self) -> float:
        """The whole angle of the ring, radians; none where the hips give it its shape."""
        return 0.0 if self.deep else max(-_WIDEST, min(_WIDEST, (self.hem - self.waist) / self.long))

    @property
    def radius(self) -> float:
        """Of the waist seam."""
        return self.waist / self.angle

    def at(self, across: float, down: float) -> Point:
        """A place on the skirt."""
        if abs(self.angle) < STRAIGHT:
            return Point(across * self._wide(down) / 2, down)
        turn, r = across * self.angle / 2, self.radius
        return Point(math.sin(turn) * (r + down), math.cos(turn) * (r + down) - r)

    def _wide(self, down: float) -> float:
        """How wide a skirt without an angle lies so far down; above the hips on a curve that runs on straight below."""
        if not self.deep:
            return self.waist + (self.hem - self.waist) * down / self.long
        slope = (self.hem - self.hip) / (self.long - self.deep)
        if down >= self.deep:
            return self.hip + slope * (down - self.deep)
        up = max(0.0, 1 - max(0.0, down) / self.deep)
        straight = self.hip - slope * self.deep * up
        return straight + (self.waist - (self.hip - slope * self.deep)) * up * up

    def level(self, down: float, across: float = 1.0) -> Path:
        """A line across the skirt from left to right, square to its length."""
        if abs(self.angle) < STRAIGHT:
            return Path((Line(self.at(-across, down), self.at(across, down)),))
        half = math.degrees(self.angle / 2) * across
        r = self.radius + down
        centre = Point(0, -self.radius)
        if r < 0:
            return Path((Arc(centre, -r, 270 + half, -2 * half),))
        return Path((Arc(centre, r, 90 + half, -2 * half),))

    def down(self, across: float, start: float, end: float) -> Path:
        """A line down the skirt, or up it; as curved as the sides are there."""
        low, high = sorted((start, end))
        bends = [self.deep * k / _BENDS for k in range(_BENDS + 1) if low < self.deep * k / _BENDS < high]
        stops = (low, *(bends if self.deep else ()), high)
        return polyline(self.at(across, y) for y in (stops if start <= end else reversed(stops)))


def laid(brief: Brief, draft: Draft) -> Laid:
    """The finished skirt, laid flat."""
    waist = draft.fact("waist_seam")
    if draft.has("closed_girth") and any(p.id == "waistband" for p in draft.pieces):
        waist = min(waist, draft.fact("closed_girth"))
    hem = draft.fact("hem_sweep") if draft.has("hem_sweep") else waist
    one = Laid(waist / 2, hem / 2, brief.finished_length, brief.waistband.depth)
    fitted = any(m.role == "hip" for p in panels(draft.pieces) for m in p.lines) and brief.hip_depth < one.long
    if not fitted or not draft.has("hip_girth") or one.hem > _FULL * draft.fact("hip_girth") / 2:
        return one
    return replace(one, hip=draft.fact("hip_girth") / 2, deep=brief.hip_depth)
