"""The bed of a patch: everything on its panel that it must not reach across."""

from collections.abc import Iterable, Sequence
from itertools import pairwise

from msgspec import Struct

from studio.geometry import Path, Point

from .patch import Quad, Seat
from .piece import Piece

CROSSED = ("dart", "pleat fold", "placement")
"""Marks that a patch may not lie across."""
FINE = 0.5
"""Curves are looked at within this (mm)."""
TOUCHES = 1e-6

Chord = tuple[Point, Point]


class Bed(Struct, frozen=True):
    """Chords of a panel's seam line, and of its darts and folds, as the patch sees them: x along the waist from the
    patch's middle, y down from the waist, mm.
    """

    seat: Seat
    outline: tuple[Chord, ...]
    marks: tuple[Chord, ...]

    def room(self, width: float) -> "Room":
        """What a patch so wide comes up against on its way down."""
        half = width / 2 - TOUCHES
        taken = (_between(c, half) for c in (*self.outline, *self.marks))
        crossed = (_crossed(c) for c in self.outline)
        return Room(tuple(t for t in taken if t is not None), tuple(y for y in crossed if y is not None))


class Room(Struct, frozen=True):
    """The heights that a patch of one width may not lie across, from and to, and where the panel begins and ends along
    the patch's middle; mm below the waist.
    """

    taken: tuple[tuple[float, float], ...]
    crossed: tuple[float, ...]

    def holds(self, top: float, depth: float) -> bool:
        """Whether a patch lies inside the seam line, and across no dart and no fold."""
        above, below = top + TOUCHES, top + depth - TOUCHES
        if any(low < below and high > above for low, high in self.taken):
            return False
        middle = top + depth / 2  # what no edge crosses lies inside as a whole, or not at all
        return sum(y < middle for y in self.crossed) % 2 == 1


def chords_of(paths: Iterable[Path]) -> list[Chord]:
    """Paths as chords."""
    return [pair for path in paths for pair in pairwise(path.flat(FINE))]


def bed(piece: Piece, seat: Seat) -> Bed:
    """What the patch at that seat lies on."""

    def seen(paths: Iterable[Path]) -> tuple[Chord, ...]:
        return tuple((_from(seat, a), _from(seat, b)) for a, b in chords_of(paths))

    marks = (m.path for m in piece.lines if m.role in CROSSED)
    return Bed(seat, seen(e.path for e in piece.edges), seen(marks))


def _from(seat: Seat, p: Point) -> Point:
    way = seat.at.to(p)
    return Point(way.dot(seat.way), way.dot(seat.down))


def _between(chord: Chord, half: float) -> tuple[float, float] | None:
    """How far down a chord reaches within `half` of the middle: least and most; None where it is not there."""
    a, b = chord if chord[0].x <= chord[1].x else chord[::-1]
    if b.x <= -half or a.x >= half:
        return None
    if b.x - a.x < TOUCHES:
        return min(a.y, b.y), max(a.y, b.y)
    slope = (b.y - a.y) / (b.x - a.x)
    one = a.y + (max(a.x, -half) - a.x) * slope
    other = a.y + (min(b.x, half) - a.x) * slope
    return min(one, other), max(one, other)


def _crossed(chord: Chord) -> float | None:
    """How far down a chord crosses the patch's own middle line."""
    a, b = chord
    if (a.x > 0) == (b.x > 0):
        return None
    return a.y - a.x * (b.y - a.y) / (b.x - a.x)


def overlap(one: Quad, other: Quad) -> bool:
    """Whether two patches lie over each other: no side of either parts them."""
    return not any(_parts(p, one, other) for p in (one, other))


def _parts(sides: Quad, one: Sequence[Point], other: Sequence[Point]) -> bool:
    for a, b in pairwise((*sides, sides[0])):
        out = a.to(b).outward()
        u, v = ([p.dot(out) for p in corners] for corners in (one, other))
        if max(u) <= min(v) + TOUCHES or max(v) <= min(u) + TOUCHES:
            return True
    return False
