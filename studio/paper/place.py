"""Where the pieces lie, so that few sheets are needed and no join runs along a line or through a buttonhole.

Pieces are set down one after another, each where it needs the fewest new sheets and keeps the whole compact; this
is tried in a few orders. Then each slides, without needing another sheet, until the joins keep clear of its lines.
Everything is bounded: a few orders, a few hundred places a piece.
"""

import math
from collections.abc import Iterable, Sequence
from functools import lru_cache
from itertools import product

from studio.geometry import Box, Point

from .page import Size
from .plan import EDGE, PatternPiece

GAP = 10.0
"""Paper left between two pieces, for the scissors, mm."""

CLEAR = 8.0
"""How far a join keeps from a line that runs along it, mm."""

_STEP = 1.0
_MOST_PIECES = 24
"""Above this many pieces only one order is tried."""


def arranged(pieces: Sequence[PatternPiece], live: Size) -> tuple[PatternPiece, ...]:
    """The pieces moved to their places on a grid of sheets that show `live` mm each, in the order given."""
    boxes = [p.box for p in pieces]
    best = min((_set_down(boxes, order, live) for order in _orders(boxes)), key=lambda spots: _cost(spots, boxes, live))
    taken = [b.moved(*_way(b, at)) for b, at in zip(boxes, best, strict=True)]
    for k in sorted(range(len(pieces)), key=lambda i: (-taken[i].top, -taken[i].left)):
        moved = pieces[k].moved(*_way(boxes[k], Point(taken[k].left, taken[k].top)))
        others = [b for i, b in enumerate(taken) if i != k]
        taken[k] = taken[k].moved(*_slide(moved, taken[k], others, live))
    return tuple(p.moved(*_way(b, Point(t.left, t.top))) for p, b, t in zip(pieces, boxes, taken, strict=True))


def clearance(piece: PatternPiece, live: Size, *, upright: bool) -> float:
    """The least distance (mm) between the joins of one way and what they should keep clear of; 0 where one cuts."""
    step = live.width if upright else live.height
    spots = piece.upright if upright else piece.lying
    spans = [(b.left, b.right) if upright else (b.top, b.bottom) for b in piece.whole]
    return min((_from_join(a, b, step) for a, b in [*((v, v) for v in spots), *spans]), default=math.inf)


def _from_join(first: float, last: float, step: float) -> float:
    """Distance from a span to the nearest join; 0 when a join crosses it. The plan's own edge is no join."""
    before = math.floor(first / step)
    if math.floor(last / step) > before:
        return 0.0
    near = first - before * step if before > 0 else math.inf
    return min(near, (before + 1) * step - last)


def _way(box: Box, at: Point) -> tuple[float, float]:
    return at.x - box.left, at.y - box.top


def _orders(boxes: Sequence[Box]) -> list[list[int]]:
    given = list(range(len(boxes)))
    by_area = sorted(given, key=lambda i: -boxes[i].width * boxes[i].height)
    if len(boxes) > _MOST_PIECES:
        return [by_area]
    by_height = sorted(given, key=lambda i: -boxes[i].height)
    return [given, by_area, by_height, sorted(given, key=lambda i: -boxes[i].width)]


def _set_down(boxes: Sequence[Box], order: Iterable[int], live: Size) -> list[Point]:
    spots = [Point(0, 0)] * len(boxes)
    taken: list[Box] = []
    for k in order:
        spots[k] = _best_spot(boxes[k], taken, live)
        taken.append(boxes[k].moved(*_way(boxes[k], spots[k])))
    return spots


def _best_spot(box: Box, taken: Sequence[Box], live: Size) -> Point:
    """The place of the top left corner that needs the fewest new sheets and keeps the whole compact."""
    xs = _starts(box.width, [t.right for t in taken], live.width)
    ys = _starts(box.height, [t.bottom for t in taken], live.height)
    used = _sheets(taken, live)
    room = [t.grown(GAP - 1e-6) for t in taken]
    right, foot = max((t.right for t in taken), default=0.0), max((t.bottom for t in taken), default=0.0)
    best: tuple[float, ...] = ()
    for x, y in product(xs, ys):
        here = Box(x, y, x + box.width, y + box.height)
        if any(here.meets(r) for r in room):
            continue
        wide, high = max(right, here.right) + EDGE, max(foot, here.bottom) + EDGE
        grid = math.ceil(wide / live.width) * live.width + math.ceil(high / live.height) * live.height
        cost = (len(_sheets([here], live) - used), grid, high, y, x)
        if not best or cost < best:
            best = cost
    return Point(best[-1], best[-2])


def _starts(size: float, ends: Iterable[float], step: float) -> list[float]:
    """Where a piece may begin along one axis: at the edge, after another piece, at a sheet's start or end."""
    starts = {EDGE} | {end + GAP for end in ends}
    for start in list(starts):
        sheet = math.ceil(start / step - 1e-9) * step
        starts |= {sheet + EDGE, max(start, sheet + math.ceil(size / step) * step - size - EDGE)}
    return sorted(starts)


def _sheets(boxes: Iterable[Box], live: Size) -> frozenset[tuple[int, int]]:
    return frozenset().union(*(_cells(b, live) for b in boxes))


@lru_cache(maxsize=4096)
def _cells(b: Box, live: Size) -> frozenset[tuple[int, int]]:
    rows = range(int(b.top // live.height), int((b.bottom - 1e-6) // live.height) + 1)
    columns = range(int(b.left // live.width), int((b.right - 1e-6) // live.width) + 1)
    return frozenset(product(rows, columns))


def _cost(spots: Sequence[Point], boxes: Sequence[Box], live: Size) -> tuple[float, ...]:
    taken = [b.moved(*_way(b, at)) for b, at in zip(boxes, spots, strict=True)]
    right, foot = max(t.right for t in taken), max(t.bottom for t in taken)
    grid = math.ceil(right / live.width) * live.width + math.ceil(foot / live.height) * live.height
    return (len(_sheets(taken, live)), grid, foot, right)


def _slide(piece: PatternPiece, box: Box, others: Sequence[Box], live: Size) -> tuple[float, float]:
    """The shift that brings joins clear of the piece's lines, needs no other sheets and meets no other piece."""
    elsewhere = _sheets(others, live)
    least = len(_sheets([box], live) - elsewhere)
    end = Size(*(max(math.ceil(v / s), 1) * s for v, s in zip(_end([box, *others]), live, strict=True)))
    room = [o.grown(GAP - 1e-6) for o in others]

    def free(b: Box) -> bool:
        inside = b.left >= EDGE and b.top >= EDGE and b.right <= end.width - EDGE and b.bottom <= end.height - EDGE
        return inside and not any(b.meets(r) for r in room) and len(_sheets([b], live) - elsewhere) <= least

    dx = _best_shift(piece, live, upright=True, free=[d for d in _shifts(live.width) if free(box.moved(d, 0))])
    box = box.moved(dx, 0)
    dy = _best_shift(piece, live, upright=False, free=[d for d in _shifts(live.height) if free(box.moved(0, d))])
    return dx, dy


def _end(boxes: Iterable[Box]) -> tuple[float, float]:
    lot = list(boxes)
    return max(b.right for b in lot) + EDGE, max(b.bottom for b in lot) + EDGE


def _shifts(step: float) -> list[float]:
    most = min(400, int(step / 2 / _STEP))
    return [0.0, *(s * k * _STEP for k in range(1, most + 1) for s in (1, -1))]


def _best_shift(piece: PatternPiece, live: Size, *, upright: bool, free: Sequence[float]) -> float:
    """The smallest shift at which all keeps clear; failing that, the one with the fewest lines too near."""
    step = live.width if upright else live.height
    spans = [(v, v) for v in (piece.upright if upright else piece.lying)]
    whole = [(b.left, b.right) if upright else (b.top, b.bottom) for b in piece.whole]
    best: tuple[float, ...] = ()
    for d in free:
        cut = sum(_from_join(a + d, b + d, step) <= 0 for a, b in whole)
        near = [min(CLEAR, _from_join(a + d, b + d, step)) for a, b in [*spans, *whole]]
        cost = (cut, sum(n < CLEAR for n in near), -min(near, default=CLEAR), abs(d), d)
        if not best or cost < best:
            best = cost
        if not cut and min(near, default=CLEAR) >= CLEAR:
            break
    return best[-1] if best else 0.0
