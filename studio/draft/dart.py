"""Darts: closed, so that the waist can be drawn across them as one smooth line, and opened again.

A dart turns about its point. With y down and angles clockwise on the page, closing one turns what lies to its left,
towards the side seam, clockwise about the point by the dart's angle. Darts are counted from the centre outwards.
"""

from collections.abc import Sequence
from typing import NamedTuple

from msgspec import Struct

from studio.geometry import Cubic, Curve, Line, Path, Point
from studio.words import Phrase, phrase

from .piece import LineMark, Spot

DRILLED = 10.0
"""A drill hole lies this far (mm) short of the point, so that the stitching covers it (common practice, no source)."""
HOLE = 4.0
"""The drill mark is a ring this wide, mm."""


class Hinge(NamedTuple):
    """A dart to be closed or opened: its point as it lies open, and its angle in degrees."""

    apex: Point
    degrees: float


class Dart(Struct, frozen=True):
    """A dart as it is cut: its point, where its legs meet the waist on the side's and on the centre's side (mm), and
    its roof, the two stretches of waist edge between them.
    """

    apex: Point
    outer: Point
    inner: Point
    roof: tuple[Curve, Curve]

    @property
    def intake(self) -> float:
        """What it takes in at the waist, mm."""
        return self.outer.distance(self.inner)

    @property
    def length(self) -> float:
        """From the waist to the point along a leg, mm; both legs are as long."""
        return self.apex.distance(self.inner)

    @property
    def middle(self) -> Point:
        """Halfway between its legs at the waist."""
        return self.outer.towards(self.inner, 0.5)

    def marks(self, words: Phrase | None = None, governs: tuple[str, ...] = ()) -> tuple[LineMark, Spot]:
        """Its legs, and the place to drill short of its point."""
        legs = Path((Line(self.outer, self.apex), Line(self.apex, self.inner)))
        up = self.apex.to(self.middle).unit()
        drill = self.apex.along(up, min(DRILLED, self.length / 3))
        words = words or phrase("dart {w} wide, {l} long", w=self.intake, l=self.length)
        return LineMark("dart", legs, words, governs), Spot("drill", drill, HOLE, governs=governs)


def shut(p: Point, hinges: Sequence[Hinge]) -> Point:
    """Where a place beyond these darts comes to lie when they are closed."""
    for apex, degrees in reversed(hinges):
        p = p.turned(degrees, apex)
    return p


def shut_curve(c: Curve, hinges: Sequence[Hinge]) -> Curve:
    """The same for a curve."""
    for apex, degrees in reversed(hinges):
        c = c.turned(degrees, apex)
    return c


def opened(c: Curve, hinges: Sequence[Hinge]) -> Curve:
    """Where a curve that was drawn with these darts closed comes to lie when they are opened."""
    for apex, degrees in hinges:
        c = c.turned(-degrees, apex)
    return c


def met(line: Line | Cubic, p: Point, way: Point, near: float) -> float:
    """The share of a waist `line`, walked from side to centre, at which the upward ray from `p` along `way` meets it.

    How far the line lies to the side of the ray is a polynomial too, of the sides its control points lie to. Newton's
    rule from `near`, kept between bounds; 0 or 1 where the ray passes an end.
    """
    if isinstance(line, Line):
        first, last = (p.to(q).cross(way) for q in (line.start, line.end))
        return min(1.0, max(0.0, first / (first - last)))
    a, b, c, d = (p.to(q).cross(way) for q in (line.start, line.leave, line.arrive, line.end))
    low, high, share = 0.0, 1.0, near
    for _ in range(60):
        t, s = share, 1 - share
        miss = s * s * s * a + 3 * s * t * (s * b + t * c) + t * t * t * d
        low, high = (share, high) if miss > 0 else (low, share)
        if abs(miss) < 1e-10 or high - low < 1e-15:
            break
        slope = 3 * (s * s * (b - a) + 2 * s * t * (c - b) + t * t * (d - c))
        wanted = share - miss / slope if slope < 0 else low
        share = wanted if low < wanted < high else (low + high) / 2
    return share


def dart(line: Line | Cubic, hinges: Sequence[Hinge], ray: Point, at: float, tuck: bool) -> Dart:
    """The outermost of these darts, opened: its legs from the share `at` of the closed waist `line`, and its roof.

    `ray` is the way its closed seam runs up to the waist. Folded, the cloth of a dart lies under the waist beside it:
    towards the centre, or towards the side where it is a tuck. So its roof is the mirror image in its leg of the waist
    there, up to its middle line, and the mirror image of that in the middle line.
    """
    *before, (apex, degrees) = hinges
    half = degrees / 2
    tip = met(line, shut(apex, before), ray.turned(-half if tuck else half), at)
    middle = ray.turned(-sum(h.degrees for h in before) - half)
    if tuck:
        inner_half = opened(line.part(tip, at), hinges).turned(degrees, apex)
        roof = _mirrored(inner_half, apex, middle).reversed(), inner_half
    else:
        outer_half = opened(line.part(at, tip), hinges)
        roof = outer_half, _mirrored(outer_half, apex, middle).reversed()
    return Dart(apex, roof[0].start, roof[1].end, roof)


def _mirrored(c: Curve, p: Point, way: Point) -> Curve:
    """The mirror image of a curve in the line through p along `way`."""
    off = way.degrees + 90  # how far the line leans clockwise from upright
    return c.turned(-off, p).flipped(p.x).turned(off, p)
