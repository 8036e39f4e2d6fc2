"""One gore of a skirt, flat: an upright axis, a side that curves from waist to hip and then runs straight to the hem.

Every level line of a gore meets both sides square, so that across a seam the next gore carries it on without a
corner. A line that meets two slanted sides square is an arc about the point where they meet; its length, not its
chord, is what a tape measures. With half its length b and the slant a (radians) of the sides where it crosses them, its
radius is b/a, and its ends lie at b·sin(a)/a to either side. Below the hip the sides are straight, so all arcs there
share one centre, and half the hem is half the hip and the slant times what lies between them.
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
NARROWS = 0.3
"""A side whose waist lies straight above its hip flares no more than this (radians) from there."""
HOLLOW = 25.0
"""A hollow at the hip is as tight as its allowance and this (mm) let it be, so that the flare takes little from the
width above the hip."""
BEND = 0.15
"""The bend of a trumpet takes this share of what lies below the flare point, above its corner and below it."""


class Fall(Struct, frozen=True):
    """How the gores of one skirt fall: from the waist seam to the hem (mm), where the hip lies and where the flare
    begins (mm below the waist; the hip, unless it is a trumpet), the slant of a side (radians) at waist and hem, and
    the seam allowance (mm) that its curves must leave room for.
    """

    length: float
    hip: float
    flare: float
    waist_slant: float
    hem_slant: float
    allowance: float

    @property
    def trumpet(self) -> bool:
        """Whether the sides fall upright from the hip to a lower flare point."""
        return self.flare > self.hip

    @property
    def corner(self) -> float:
        """Where upright and slanted side of a trumpet would meet, mm below the waist."""
        return self.flare + BEND * (self.length - self.flare)

    @property
    def hip_slant(self) -> float:
        """Slant of a side at the hip, radians."""
        return 0.0 if self.trumpet else self.hem_slant

    def half_hem(self, half_hip: float) -> float:
        """Half the hem of a gore that has so much (mm) of the hip."""
        if self.trumpet:
            return _half_flare(self.hem_slant, self.length - self.corner, half_hip)
        return half_hip + self.hem_slant * (self.length - self.hip)


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
        return Path((*below, replace(curve, end=self.waist.start)))

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
        flare = max(deep, min(flare_from, length - max(LEAST_FALL, 0.2 * (length - deep))))
    falls = Fall(length, deep, flare, 0.0, 0.0, allowance)
    inmost = max(INMOST, -half_hem / (hem + 10))
    if falls.trumpet:
        room, bend = length - falls.corner, falls.corner - flare
        most = min(STEEPEST, 0.9 * (room - bend) / half_hip, 1.5 * bend / (allowance + HOLLOW))
        return _slanted(falls, half_top, half_hip, _flare_slant(half_hem, room, half_hip, inmost, most))
    wanted = min(STEEPEST, deep / half_hip, max(inmost, (half_hem - half_hip) / (length - deep)))
    falls = _slanted(falls, half_top, half_hip, wanted)
    if _fair(half_top, half_hip, falls):
        return falls
    fair, more = min(wanted, (half_hip - half_top) / deep), wanted
    for _ in range(16):
        slant = (fair + more) / 2
        falls = _slanted(falls, half_top, half_hip, slant)
        fair, more = (slant, more) if _fair(half_top, half_hip, falls) else (fair, slant)
    return _slanted(falls, half_top, half_hip, fair)


def lowest_hip(length: float) -> float:
    """The lowest a hip line can be drafted on a gore so long, mm below the waist."""
    return length - min(LEAST_FALL, length / 4)


def _slanted(falls: Fall, half_top: float, half_hip: float, slant: float) -> Fall:
    """The same fall with another flare."""
    falls = replace(falls, hem_slant=slant)
    foot = _corner(half_hip, falls.hip_slant, falls.hip)
    return replace(falls, waist_slant=_waist_slant(half_top, foot, falls.hip_slant, falls.allowance))


def _fair(half_top: float, half_hip: float, falls: Fall) -> bool:
    """Whether the side may flare so from the hip: a hollow leaves its allowance room, and the skirt above the hip is
    hardly narrower than the waist.
    """
    foot = _corner(half_hip, falls.hip_slant, falls.hip)
    curve = _hip_curve(half_top, falls.waist_slant, foot, falls)
    chord = curve.start.to(curve.end)
    mean = math.atan2(chord.x, chord.y)
    if falls.hip_slant > 4 * max(0.0, mean) + NARROWS or 2 * foot.y < falls.hip:
        return False
    speeds = [(curve.speed(share / 8), curve.bend(share / 8)) for share in range(3, 9)]
    tightest = max(bend.cross(way) / math.hypot(*way) ** 3 for way, bend in speeds)
    return tightest * (falls.allowance + HOLLOW / 2) < 1


@lru_cache(maxsize=256)
def gore(half_top: float, half_hip: float, falls: Fall, side: float | None = None) -> Gore:
    """The gore with half its waist and half its hip so long (mm); `side` is how long its sides must be (mm), to be
    sewn to gores with another hip: the slant at the waist is then what gives it.
    """
    foot = _corner(half_hip, falls.hip_slant, falls.hip)
    below = _below(half_hip, foot, falls)
    slant = falls.waist_slant
    if side is not None:
        slant = _slant_for(half_top, foot, falls, side - sum(c.length for c in below))
    curve = _hip_curve(half_top, slant, foot, falls)
    hem = _level(falls.half_hem(half_hip), falls.hem_slant, falls.length)
    return Gore(
        waist=_level(half_top, slant, 0), right=Path((curve, *below)), hem=hem.reversed(),
        hip=_level(half_hip, falls.hip_slant, falls.hip), hip_along=curve.length,
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
    """Slant of the side at the waist (radians), for a fair curve down to its hip at `foot`.

    Where the flare is less than the chord from waist to hip, the curve is as an arc, bent alike at both ends. Where
    it is more, the side leaves the waist as far outside the chord as it comes to the hip, but never beyond
    twice the chord's slant, so that it holds the hips above the hip line and does not bulge.
    """
    slant, most = 0.0, min(1.0, half_top / (allowance + 5))
    for _ in range(8):  # the chord depends a little on the slant
        chord = _corner(half_top, slant, 0).to(foot)
        mean = math.atan2(chord.x, chord.y)
        wanted = 2 * mean - hip_slant if hip_slant < mean else min(hip_slant, 2 * mean)
        slant = min(most, max(0.0, wanted))
    return slant


def _hip_curve(half_top: float, slant: float, foot: Point, falls: Fall) -> Cubic:
    """From waist to hip, tangent to both; a hollow at the hip is as tight as its allowance lets it be."""
    hip_slant, allowance = falls.hip_slant, falls.allowance
    start = _corner(half_top, slant, 0)
    chord = start.distance(foot)
    leave = start.along(_way(slant), chord * LEAVES)
    arrive = chord * ARRIVES
    inside = _way(hip_slant).cross(leave.to(foot))  # of the straight below, drawn on upwards: then the hip is hollow
    if inside > 0:  # an end of a cubic bends by 2/3 of that over the square of its tangent
        arrive = min(0.5 * chord, max(0.1 * chord, math.sqrt(2 / 3 * inside * (allowance + HOLLOW))))
    return Cubic(start, leave, foot.along(_way(hip_slant), -arrive), foot)


def _slant_for(half_top: float, foot: Point, falls: Fall, length: float) -> float:
    """The slant at the waist that makes the hip curve so long (mm): the secant rule from the usual slant."""

    def over(slant: float) -> float:
        return _hip_curve(half_top, slant, foot, falls).length - length

    a, b = falls.waist_slant, falls.waist_slant + 0.01
    f, g = over(a), over(b)
    for _ in range(20):
        if abs(g) < 1e-7 or f == g:
            break
        a, b, f = b, b - g * (b - a) / (g - f), g
        g = over(b)
    return b


def _below(half_hip: float, foot: Point, falls: Fall) -> tuple[Curve, ...]:
    """The side from hip to hem: straight, or upright to the flare point, then bent into the straight."""
    slant = falls.hem_slant
    end = _corner(falls.half_hem(half_hip), slant, falls.length)
    if not falls.trumpet:
        return (Line(foot, end),)
    bend = falls.corner - falls.flare
    top, corner = Point(half_hip, falls.flare), Point(half_hip, falls.corner)
    out = corner.along(_way(slant), bend)
    return (Line(foot, top), Cubic(top, top.towards(corner, 2 / 3), out.towards(corner, 2 / 3), out), Line(out, end))


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
