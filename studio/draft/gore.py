"""One gore of a skirt, flat: an upright axis, a side that rounds from waist to hip and then flares straight to the hem.

Every level line of a gore meets both sides square, so that across a seam the next gore carries it on without a
corner. A line that meets two slanted sides square is an arc about the point where they meet; its length, not its
chord, is what a tape measures. With half its length b and the slant a (radians) of the sides where it crosses them, its
radius is b/a, and its ends lie at b·sin(a)/a to either side. Where the sides are straight, all arcs share one centre.

Above the hips a side never bends inwards, for there the body rounds out: it comes to the hip less slanted than the
line from waist to hip, and what the hem wants more is bent in gently below the hip.
"""

import math
from functools import lru_cache

from msgspec import Struct
from msgspec.structs import replace

from studio.geometry import Arc, Cubic, Curve, Line, Path, Point, line

UPRIGHT = 1e-6
"""A slant below this (radians) is none: the level line is straight."""
STEEPEST, INMOST = 1.05, -0.35
"""No side slants more (radians): 60 degrees out, where eight gores make three circles, and 20 degrees in."""
LEAST_FALL = 30.0
"""Between hip and hem, or flare and hem, at least this much is left (mm), and a quarter of a very short skirt."""
LEAVES, ARRIVES = 0.45, 0.3
"""How far the curve from waist to hip keeps to its tangents, share of its chord: longer at the waist, as the body
rounds out above the hip line (common practice, no source)."""
ROUNDS = 0.5
"""A side that flares comes to the hip with this share of the slant of the line from waist to hip, and leaves the waist
as much beyond it."""
HOLLOW = 25.0
"""The bend into the flare turns about a circle of its allowance and at least this (mm), so that it can be pressed."""
BEND = 0.15
"""The bend takes this share of what lies below the place where the flare begins, above its corner and below it."""


class Fall(Struct, frozen=True):
    """How the gores of one skirt fall: from the waist seam to the hem (mm), where the hip lies and where the flare
    begins (mm below the waist; the hip, unless it is a trumpet), the slant of a side (radians) at waist, hip and hem,
    and half the hip of the mean gore, mm.
    """

    half_hip: float
    length: float
    hip: float
    flare: float
    waist_slant: float
    hip_slant: float
    hem_slant: float

    @property
    def bend(self) -> float:
        """From where the flare begins to where the sides above and below would meet, mm."""
        return BEND * (self.length - self.flare)

    def corner(self, half_hip: float) -> Point:
        """Where the sides above and below the flare would meet, of a gore that has so much (mm) of the hip."""
        return self.begins(half_hip).along(_way(self.hip_slant), self.bend)

    def begins(self, half_hip: float) -> Point:
        """Where its side begins to flare; a trumpet falls upright to there."""
        return _corner(half_hip, self.hip_slant, self.hip_of(half_hip) + self.flare - self.hip)

    def hip_of(self, half_hip: float) -> float:
        """Where the hip lies on a gore's axis (mm): a wider one's higher up, so that all are equally long below it."""
        wider = _corner(half_hip - self.half_hip, self.hip_slant, 0).x
        return self.hip + wider * (math.tan(self.hip_slant / 2) - math.tan(self.hem_slant / 2))

    def half_hem(self, half_hip: float) -> float:
        """Half the hem of a gore that has so much (mm) of the hip."""
        corner = self.corner(half_hip)
        return _half_flare(self.hem_slant, self.length - corner.y, corner.x)


class Gore(Struct, frozen=True):
    """One gore between its seam lines, its axis at x = 0 and the middle of its waist at y = 0 (mm).

    `waist` and `hip` are walked to the right, `hem` to the left, `right` down from the waist; `hip_along` is where
    the hip lies down a side.
    """

    waist: Path
    right: Path
    hem: Path
    hip: Path
    hip_along: float

    @property
    def left(self) -> Path:
        """The other side, walked upwards, to end just where the waist starts."""
        *below, curve = self.right.flipped(0).reversed().curves
        return Path((*below, replace(curve, end=self.waist.start) if isinstance(curve, Cubic) else curve))

    @property
    def side(self) -> float:
        """Length of a side, mm."""
        return self.right.length

    def half(self, depth: float) -> float:
        """Half its width on the level line that crosses the axis `depth` mm below the waist; past an end, the end's."""
        for c in self.right.curves:
            if depth < _level_through(c, 1)[0]:
                return _half_at(c, depth)
        return _level_through(self.right.curves[-1], 1)[1]


@lru_cache(maxsize=256)
def fall(
    half_top: float, half_hip: float, half_hem: float, length: float, hip_depth: float, *,
    flare_from: float = 0.0, allowance: float = 15.0, hem: float = 25.0,
) -> Fall:  # fmt: skip
    """How a gore of these half widths (mm) falls; `flare_from` above the hip is the hip.

    What cannot be drafted is drawn in to what can: a hip at or below the hem lies above it, and the flare is
    no more than the sides, their allowance and the hem's (mm) have room for.
    """
    deep = min(hip_depth, lowest_hip(length))
    flare = deep
    if flare_from > deep:
        flare = max(deep, min(flare_from, lowest_flare(length, deep)))
    trumpet = flare > deep
    inmost = max(INMOST, -half_hem / (hem + 10))
    chord = math.atan2(half_hip - half_top, deep)
    held = 0.0 if trumpet else min(chord * (ROUNDS if chord > 0 else 1.0), deep / half_hip)
    straight = max(inmost, (half_hem - half_hip) / (length - deep))
    if not trumpet and straight <= held:
        return _topped(Fall(half_hip, length, deep, flare, 0.0, straight, straight), half_top, allowance)
    falls = Fall(half_hip, length, deep, flare, 0.0, held, held)
    corner, bend = falls.corner(half_hip), falls.bend
    room = length - corner.y
    most = min(STEEPEST, 0.9 * (room - bend) / corner.x, held + 2 * math.atan2(bend, allowance + HOLLOW))
    slant = _flare_slant(half_hem, room, corner.x, inmost if trumpet else held, max(held, most))
    return _topped(replace(falls, hem_slant=slant), half_top, allowance)


def lowest_hip(length: float) -> float:
    """The lowest a hip line can be drafted on a gore so long, mm below the waist."""
    return length - min(LEAST_FALL, length / 4)


def lowest_flare(length: float, hip: float) -> float:
    """The lowest a trumpet of this length and hip can begin to flare, mm below the waist."""
    return length - max(LEAST_FALL, 0.2 * (length - hip))


def _topped(falls: Fall, half_top: float, allowance: float) -> Fall:
    """The same fall with its slant at the waist."""
    foot = _corner(falls.half_hip, falls.hip_slant, falls.hip)
    return replace(falls, waist_slant=_waist_slant(half_top, foot, falls.hip_slant, allowance))


@lru_cache(maxsize=256)
def gore(half_top: float, half_hip: float, falls: Fall, side: float | None = None) -> Gore:
    """The gore with half its waist and half its hip so long (mm); `side` is how long its sides must be (mm), to be
    sewn to gores with another hip: the slant at the waist is then what gives it.
    """
    deep = falls.hip_of(half_hip)
    foot = _corner(half_hip, falls.hip_slant, deep)
    below = _below(half_hip, foot, falls)
    slant = falls.waist_slant
    if side is not None:
        slant = _slant_for(half_top, foot, falls, side - sum(c.length for c in below))
    curve = _hip_curve(half_top, slant, foot, falls.hip_slant)
    hem = _level(falls.half_hem(half_hip), falls.hem_slant, falls.length)
    return Gore(
        waist=_level(half_top, slant, 0), right=Path((curve, *below)), hem=hem.reversed(),
        hip=_level(half_hip, falls.hip_slant, deep), hip_along=curve.length,
    )  # fmt: skip


def _level(half: float, slant: float, depth: float) -> Path:
    """The level line of half length `half` through the axis at `depth`, walked to the right."""
    if abs(slant) < UPRIGHT:
        return line(-half, depth, half, depth)
    radius = half / slant
    turn = math.degrees(slant)
    return Path((Arc(Point(0, depth - radius), abs(radius), math.copysign(90, radius) + turn, -2 * turn),))


def _corner(half: float, slant: float, depth: float) -> Point:
    """Where that line meets the right side."""
    chord = half * math.sin(slant) / slant if abs(slant) >= UPRIGHT else half
    return Point(chord, depth - chord * math.tan(slant / 2))


def _way(slant: float) -> Point:
    """Down a right side."""
    return Point(math.sin(slant), math.cos(slant))


def _waist_slant(half_top: float, foot: Point, hip_slant: float, allowance: float) -> float:
    """Slant of the side at the waist (radians): from there to the hip at `foot` it bends alike at both ends, as an
    arc would, if the allowance has room at the waist's corners.
    """
    slant, most = 0.0, min(1.0, half_top / (allowance + 5))
    for _ in range(30):  # the chord depends a little on the slant
        chord = _corner(half_top, slant, 0).to(foot)
        before, slant = slant, min(most, max(-most, 2 * math.atan2(chord.x, chord.y) - hip_slant))
        if abs(slant - before) < UPRIGHT**2 / 10:
            break
    return slant


def _hip_curve(half_top: float, slant: float, foot: Point, hip_slant: float) -> Cubic | Arc:
    """From waist to hip, tangent to both: an arc where it bends alike at both ends."""
    start = _corner(half_top, slant, 0)
    way, turn = start.to(foot), slant - hip_slant
    chord = start.distance(foot)
    if turn > UPRIGHT and abs(2 * math.atan2(way.x, way.y) - slant - hip_slant) < UPRIGHT**2:
        return _turning(start, slant, hip_slant, chord / 2 / math.sin(turn / 2))
    return Cubic(start, start.along(_way(slant), chord * LEAVES), foot.along(_way(hip_slant), -chord * ARRIVES), foot)


def _slant_for(half_top: float, foot: Point, falls: Fall, length: float) -> float:
    """The slant at the waist that makes the hip curve so long (mm): the secant rule from the usual slant."""

    def over(slant: float) -> float:
        return _hip_curve(half_top, slant, foot, falls.hip_slant).length - length

    a, b = falls.waist_slant, falls.waist_slant + 0.01
    f, g = over(a), over(b)
    for _ in range(20):
        if abs(g) < 1e-7 or f == g:
            break
        a, b, f = b, b - g * (b - a) / (g - f), g
        g = over(b)
    return b


def _below(half_hip: float, foot: Point, falls: Fall) -> tuple[Curve, ...]:
    """The side from hip to hem: straight, or bent into the straight from where the flare begins."""
    end = _corner(falls.half_hem(half_hip), falls.hem_slant, falls.length)
    if abs(falls.hem_slant - falls.hip_slant) < UPRIGHT:
        return (Line(foot, end),)
    begins = falls.begins(half_hip)
    bend = _bend(begins, falls.hip_slant, falls.hem_slant, falls.bend)
    return (*((Line(foot, begins),) if falls.flare > falls.hip else ()), bend, Line(bend.end, end))


def _bend(begins: Point, from_slant: float, to_slant: float, leg: float) -> Arc:
    """The arc that turns a side from one slant to another; `leg` is from where it begins to the corner it rounds."""
    return _turning(begins, from_slant, to_slant, leg / math.tan(abs(to_slant - from_slant) / 2))


def _turning(begins: Point, from_slant: float, to_slant: float, radius: float) -> Arc:
    """The arc of a radius (mm) down a right side from one slant to another."""
    turn = to_slant - from_slant
    first = (180.0 if turn > 0 else 0.0) - math.degrees(from_slant)
    centre = begins.along(_way(from_slant).outward(), math.copysign(radius, turn))
    return Arc(centre, radius, first, -math.degrees(turn))


def _half_flare(slant: float, room: float, half_hip: float) -> float:
    """Half the hem of a trumpet (mm): slant × radius, which is `room` below the corner and half_hip / tan(slant)."""
    return slant * room + half_hip * (slant / math.tan(slant) if abs(slant) >= UPRIGHT else 1.0)


def _flare_slant(half_hem: float, room: float, half_hip: float, lo: float, hi: float) -> float:
    """The slant (radians) that gives a trumpet its hem, or the nearest there is: Newton's rule, inside the bounds."""
    slant = min(hi, max(lo, (half_hem - half_hip) / room))
    for _ in range(20):
        sine = math.sin(slant)
        gain = room + half_hip * ((sine * math.cos(slant) - slant) / sine**2 if abs(slant) >= UPRIGHT else 0.0)
        step = (_half_flare(slant, room, half_hip) - half_hem) / gain
        before, slant = slant, min(hi, max(lo, slant - step))
        if abs(slant - before) < 1e-14:
            break
    return slant


def _level_through(c: Curve, share: float) -> tuple[float, float]:
    """Of the level line through a place on a side: where it crosses the axis, and half its length (mm)."""
    at, way = c.at(share), c.direction(share)
    slant = math.atan2(way.x, way.y)
    return at.y + at.x * math.tan(slant / 2), at.x * (slant / math.sin(slant) if abs(slant) >= UPRIGHT else 1.0)


def _half_at(c: Curve, depth: float) -> float:
    """Half the level line at a depth that a side's curve passes: false position, the stuck end's miss halved."""
    a, b = 0.0, 1.0
    f, g = _level_through(c, a)[0] - depth, _level_through(c, b)[0] - depth
    if f >= 0:
        return _level_through(c, 0)[1]
    for _ in range(60):
        share = (a * g - b * f) / (g - f)
        found, half = _level_through(c, share)
        miss = found - depth
        if abs(miss) < 1e-9:
            break
        if miss > 0:
            b, g, f = share, miss, f / 2
        else:
            a, f, g = share, miss, g / 2
    return half
