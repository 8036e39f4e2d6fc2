"""The waist of a quarter, drawn with its darts closed: one smooth curve, square to the side seam and to the centre."""

import math
from collections.abc import Iterator
from functools import lru_cache
from typing import NamedTuple

from msgspec import Struct
from msgspec.structs import replace

from studio.geometry import Cubic, Line, Point

from .dart import Hinge, met, shut
from .side_seam import Side, SideLine
from .smooth import smooth

RAISED = 13.0
"""The side waist is raised by up to this (mm): 0.5 to 1.3 cm (common practice, no source)."""
HOLLOW = 0.5
"""As far as it goes, the waist is raised by this share of what an arc square to centre and side would be."""
NEAR = 1e-4
STEPS, SETTLES = 100, 3
WILD, CALM = 20, 0.3
FAR = 30.0
"""No guess goes farther than this from the one before it (mm)."""
FLAT = 0.3
"""A side that leans more than this cosine is not followed all the way."""
LEAST_SLOPE = 0.4
"""A millimetre more at the side shortens the waist by at least so much."""


class Wanted(Struct, frozen=True):
    """What a waist is drawn to, mm: its sewn length, how much it is lowered at the centre, its darts from the centre
    outwards, the side and what that takes in as a first guess, and how long the side is to be from waist to hip
    (0: what it comes to).
    """

    waist: float
    lowered: float
    widths: tuple[float, ...]
    lengths: tuple[float, ...]
    side: SideLine
    intake: float
    side_length: float


class _Guess(NamedTuple):
    """A waist for one guess, closed; its darts and its side as they lie open, and the way up that the darts stand."""

    line: Line | Cubic
    hinges: list[Hinge]
    side: Side
    up: Point


class WaistLine(Struct, frozen=True):
    """The closed waist from side to centre, where it crosses its darts and which way their seams run there; the darts
    and the side as they lie open; and what it was drawn to.
    """

    line: Line | Cubic
    cuts: tuple[float, ...]
    rays: tuple[Point, ...]
    hinges: tuple[Hinge, ...]
    side: Side
    wanted: Wanted


@lru_cache(maxsize=64)
def waist_line(w: Wanted) -> WaistLine:
    """The waist that is as long as it is to be sewn, and its side as long as that is to be.

    The points of the darts are put right first, until their legs are as long as wanted to a tenth; then
    what the side takes in, by the secant rule, and how high it is raised, with it. Where no side so long can be had,
    on a body that is hardly one, it comes out as it may.
    """
    intake, rise, sags = w.intake, _rise(w, w.intake), [0.0] * len(w.widths)
    before: tuple[float, float] | None = None
    for step in range(STEPS):
        found = _drawn(w, intake, rise, sags)
        miss = found.line.length - w.waist
        curve = found.side.curve if w.side_length else None
        short = w.side_length - curve.length if curve else 0.0
        if max(abs(miss), abs(short)) < NEAR:
            break
        change = miss
        part = 1.0 if step < WILD else CALM  # a guess that runs to and fro is followed half way
        if step < SETTLES:
            legs = [point.distance(found.line.at(cut)) for point, _, cut in _seams(found)]
            sags = [s + long - leg for s, long, leg in zip(sags, w.lengths, legs, strict=True)]
        else:
            change = _secant(before, (intake, miss))
            before = intake, miss
        change = min(max(change, -FAR), FAR)
        if curve:
            more = (short - math.sin(found.side.lean) * change) / max(FLAT, math.cos(found.side.lean))
            rise += part * min(max(more, -FAR), FAR)
        intake += part * change
    else:
        if w.side_length:
            return waist_line(replace(w, side_length=0.0))
    seams = tuple(_seams(found))
    rays, cuts = tuple(ray for _, ray, _ in seams), tuple(cut for *_, cut in seams)
    return WaistLine(found.line, cuts, rays, tuple(found.hinges), found.side, w)


def _secant(before: tuple[float, float] | None, now: tuple[float, float]) -> float:
    """How far to go on from a guess that misses: as far as it misses, or as the guess before it tells."""
    if before is None or before[0] == now[0]:
        return now[1]
    slope = (before[1] - now[1]) / (now[0] - before[0])
    return now[1] / (slope if slope > LEAST_SLOPE else 1.0)


def _rise(w: Wanted, intake: float) -> float:
    return min(RAISED, HOLLOW * w.waist * math.tan(max(0.0, w.side.lean(intake)) / 2))


def _drawn(w: Wanted, intake: float, rise: float, sags: list[float]) -> _Guess:
    """The waist for one guess. The darts part it evenly and stand square on the straight way from centre to side."""
    side = w.side.side(intake, rise)
    centre = Point(0, w.lowered)
    across, n = centre.to(side.top), len(w.widths)
    spread = math.hypot(*across) / (w.waist + sum(w.widths))
    outward = across.unit()
    down = outward.outward()
    hinges: list[Hinge] = []
    for k, (width, long) in enumerate(zip(w.widths, w.lengths, strict=True)):
        at = spread * ((k + 1) * w.waist / (n + 1) + sum(w.widths[:k]) + width / 2)
        apex = centre.along(outward, at).along(down, long + sags[k])
        hinges.append(Hinge(apex, math.degrees(2 * math.asin(width / 2 / long))))
    turn = side.lean + math.radians(sum(h.degrees for h in hinges))
    line = smooth(shut(side.top, hinges), Point(math.cos(turn), math.sin(turn)), centre, Point(1, 0))
    return _Guess(line, hinges, side, Point(-down.x, -down.y))


def _seams(found: _Guess) -> Iterator[tuple[Point, Point, float]]:
    """Each dart's seam once it is closed: its point, the way it runs up, and the share of the waist where it ends."""
    turn, n = 0.0, len(found.hinges)
    for k, hinge in enumerate(found.hinges):
        point, ray = shut(hinge.apex, found.hinges[:k]), found.up.turned(hinge.degrees / 2 + turn)
        yield point, ray, met(found.line, point, ray, 1 - (k + 1) / (n + 1))
        turn += hinge.degrees
