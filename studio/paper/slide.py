"""Pieces slide, without needing another sheet, until no join runs along a line or through a buttonhole.

All together within the paper that is left over and then each by itself, or each by itself at once, whichever is
better. Bounded: at most 400 places each way.
"""

import math
from collections.abc import Iterable, Sequence
from functools import lru_cache
from itertools import product

from msgspec import Struct

from studio.geometry import Box

from .page import Size
from .plan import EDGE, GAP, PatternPiece

CLEAR = 8.0
"""How far a join keeps from a line that runs along it, mm."""

_FAR = 400
"""Pieces are tried at every millimetre up to this far."""


class _Joins(Struct, frozen=True):
    """The joins of one way: every `step` mm, up to but not at the grid's `end`."""

    upright: bool
    step: float
    end: float

    def off(self, first: float, last: float) -> float:
        """Distance (mm) from a span to the nearest join; 0 when one crosses it."""
        before = math.floor(first / self.step)
        if math.floor(last / self.step) > before:
            return 0.0
        near = first - before * self.step if before > 0 else math.inf
        after = (before + 1) * self.step
        return min(near, after - last) if after < self.end - 1 else near


def _joins(boxes: Sequence[Box], live: Size, *, upright: bool) -> _Joins:
    step = live.width if upright else live.height
    used = max(b.right if upright else b.bottom for b in boxes) + EDGE
    return _Joins(upright, step, math.ceil(used / step - 1e-9) * step)


def slid(pieces: Sequence[PatternPiece], live: Size) -> tuple[PatternPiece, ...]:
    """The pieces where the joins of sheets that show `live` mm keep clear of their lines as well as can be."""
    lain = list(pieces)
    for upright in (True, False):
        joins = _joins([p.box for p in lain], live, upright=upright)
        ways = [_each_shifted(start, live, joins) for start in (_all_shifted(lain, live, joins), lain)]
        lain = min(ways, key=lambda way: _together([_nearness(p, joins, 0) for p in way]))
    return tuple(lain)


def crowding(pieces: Sequence[PatternPiece], live: Size) -> tuple[int, int]:
    """How much the joins cut that should stay whole, and how many lines they come too near to."""
    both = [_joins([p.box for p in pieces], live, upright=upright) for upright in (True, False)]
    found = [_nearness(p, joins, 0) for joins in both for p in pieces]
    return sum(cut for cut, _, _ in found), sum(near for _, near, _ in found)


def _each_shifted(pieces: list[PatternPiece], live: Size, joins: _Joins) -> list[PatternPiece]:
    """Each piece shifted by itself, those that lie lowest first."""
    lain = list(pieces)
    for k in sorted(range(len(lain)), key=lambda i: (-lain[i].box.top, -lain[i].box.left)):
        lain[k] = _one_shifted(lain[k], [p.box for i, p in enumerate(lain) if i != k], live, joins)
    return lain


def _spans(piece: PatternPiece, joins: _Joins) -> list[tuple[float, float]]:
    """What joins should keep clear of; the spans that none may cut come last."""
    lines = piece.upright if joins.upright else piece.lying
    return [*((v, v) for v in lines), *_whole(piece, joins)]


def _whole(piece: PatternPiece, joins: _Joins) -> list[tuple[float, float]]:
    return [(b.left, b.right) if joins.upright else (b.top, b.bottom) for b in piece.whole]


def _all_shifted(pieces: list[PatternPiece], live: Size, joins: _Joins) -> list[PatternPiece]:
    """All pieces shifted together within the paper that is left over."""
    boxes = [p.box for p in pieces]
    used = max(b.right if joins.upright else b.bottom for b in boxes) + EDGE
    spare = min(_FAR, int(joins.end - used + 1e-6))
    fewest = len(sheets_under(boxes, live))
    ways = [_across(float(d), joins) for d in range(spare + 1)]
    best = min(
        (w for w in ways if len(sheets_under([b.moved(*w) for b in boxes], live)) <= fewest),
        key=lambda w: _together([_nearness(p, joins, sum(w)) for p in pieces]),
    )
    return [p.moved(*best) for p in pieces]


def _together(lot: Iterable[tuple[int, int, float]]) -> tuple[int, int, float]:
    cut, near, apart = zip(*lot, strict=True)
    return (sum(cut), sum(near), max(apart))


def _across(distance: float, joins: _Joins) -> tuple[float, float]:
    return (distance, 0.0) if joins.upright else (0.0, distance)


def sheets_under(boxes: Iterable[Box], live: Size) -> frozenset[tuple[int, int]]:
    """Row and column of each sheet that boxes reach into."""
    return frozenset().union(*(_cells(b, live) for b in boxes))


@lru_cache(maxsize=4096)
def _cells(b: Box, live: Size) -> frozenset[tuple[int, int]]:
    rows = range(int(b.top // live.height), int((b.bottom - 1e-6) // live.height) + 1)
    columns = range(int(b.left // live.width), int((b.right - 1e-6) // live.width) + 1)
    return frozenset(product(rows, columns))


def _one_shifted(piece: PatternPiece, others: Sequence[Box], live: Size, joins: _Joins) -> PatternPiece:
    """The piece by itself: no new sheet, off the other pieces, the smallest shift at which all keeps clear."""
    box, elsewhere = piece.box, sheets_under(others, live)
    least = len(sheets_under([box], live) - elsewhere)
    room = [o.grown(GAP - 1e-6) for o in others]

    def free(b: Box) -> bool:
        first, last = (b.left, b.right) if joins.upright else (b.top, b.bottom)
        if first < EDGE or last > joins.end - EDGE or any(b.meets(r) for r in room):
            return False
        return len(sheets_under([b], live) - elsewhere) <= least

    best: tuple[float, ...] = (math.inf,)
    shift = (0.0, 0.0)
    for far in range(min(_FAR, int(joins.step / 2)) + 1):
        for d in (float(far), float(-far)):
            way = _across(d, joins)
            if free(box.moved(*way)) and (near := _nearness(piece, joins, d)) < best:
                best, shift = near, way
        if best[:2] == (0, 0):
            break
    return piece.moved(*shift)


def _nearness(piece: PatternPiece, joins: _Joins, shift: float) -> tuple[int, int, float]:
    """How badly the joins lie: what they cut, how many lines they come too near to, and how near (negative)."""
    cut = sum(joins.off(a + shift, b + shift) <= 0 for a, b in _whole(piece, joins))
    near = [min(CLEAR, joins.off(a + shift, b + shift)) for a, b in _spans(piece, joins)]
    return (cut, sum(n < CLEAR for n in near), -min(near, default=CLEAR))
