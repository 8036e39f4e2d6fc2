"""Where the pieces lie, so that few sheets are needed.

Pieces are set down one after another, each where it needs the fewest new sheets and keeps the whole compact; this
is tried in a few orders, with a few hundred places a piece. Then they slide clear of the joins, and of the ways that
need fewest sheets the one with most room at the joins is taken.
"""

import math
from collections.abc import Iterable, Sequence
from itertools import product

from studio.geometry import Box, Point

from .page import Size
from .plan import EDGE, GAP, PatternPiece
from .slide import crowding, sheets_under, slid

_MOST_PIECES = 24
"""Above this many pieces only one order is tried."""


def arranged(pieces: Sequence[PatternPiece], live: Size) -> tuple[PatternPiece, ...]:
    """The pieces moved to their places on a grid of sheets that show `live` mm each, in the order given."""
    boxes = [p.box for p in pieces]
    ways = {tuple(_set_down(boxes, order, live)): None for order in _orders(boxes)}
    fewest = min(_cost(spots, boxes, live)[0] for spots in ways)
    found = [
        (slid([p.moved(*_way(b, at)) for p, b, at in zip(pieces, boxes, spots, strict=True)], live), cost)
        for spots in ways
        if (cost := _cost(spots, boxes, live))[0] == fewest
    ]
    best, _ = min(found, key=lambda one: (crowding(one[0], live), one[1]))
    return best


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
    used = sheets_under(taken, live)
    room = [t.grown(GAP - 1e-6) for t in taken]
    right, foot = max((t.right for t in taken), default=0.0), max((t.bottom for t in taken), default=0.0)
    best: tuple[float, ...] = ()
    for x, y in product(xs, ys):
        here = Box(x, y, x + box.width, y + box.height)
        if any(here.meets(r) for r in room):
            continue
        wide, high = max(right, here.right) + EDGE, max(foot, here.bottom) + EDGE
        grid = math.ceil(wide / live.width) * live.width + math.ceil(high / live.height) * live.height
        cost = (len(sheets_under([here], live) - used), grid, high, y, x)
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


def _cost(spots: Sequence[Point], boxes: Sequence[Box], live: Size) -> tuple[float, ...]:
    taken = [b.moved(*_way(b, at)) for b, at in zip(boxes, spots, strict=True)]
    right, foot = max(t.right for t in taken), max(t.bottom for t in taken)
    grid = math.ceil(right / live.width) * live.width + math.ceil(foot / live.height) * live.height
    return (len(sheets_under(taken, live)), grid, foot, right)
