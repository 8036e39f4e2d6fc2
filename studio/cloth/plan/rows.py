"""A plan at once: one copy after another to the place nearest the cut end, first selvedge first.

A copy is tried at every height where it would touch a selvedge or another copy, and in between where shapes curve.
At each height the regions forbidden by those already laid are intervals, so the first free start is exact. The cloth
has no end, so whatever fits across it finds a place.
"""

from collections.abc import Iterable, Iterator, Sequence

import numpy as np

from studio.cloth.plan.convex import Array
from studio.cloth.plan.problem import NEAR
from studio.cloth.plan.table import Laid, Table

STEPS = 96
"""Heights tried between the selvedges where shapes are not boxes."""

Choice = tuple[int, tuple[int, ...]]
"""A copy and the stances it is tried in."""


def decoded(table: Table, order: Iterable[Choice], coarse: bool = False) -> list[Laid]:
    """The copies laid in this order, each in whichever of its stances ends first."""
    placed: list[Laid] = []
    for copy, stances in order:
        beside = [*table.held, *placed]
        tries = (Laid(copy, k, *_place(table, k, beside, coarse)) for k in stances)
        placed.append(min(tries, key=lambda s: (round(s.x + table.shape(s).along, 3), s.y)))
    return placed


def first(table: Table) -> list[Laid]:
    """A plan at once, by hulls: bound copies first, then the longest."""
    return decoded(table, next(orders(table)), coarse=True)


def orders(table: Table) -> Iterator[list[Choice]]:
    """Orders worth trying, all of them with every stance open."""

    def size(copy: int) -> tuple[float, float]:
        shape = table.shapes[table.stances[table.choices[copy][0]].shape]
        return shape.along, shape.across

    def bound(copy: int) -> int:
        ways = [table.stances[k] for k in table.choices[copy]]
        return -sum(all(w.across is not None for w in ways) * 2 + (w.repeat is not None) for w in ways[:1])

    keys = (
        lambda c: (bound(c), -size(c)[0] * size(c)[1]),
        lambda c: (bound(c), -size(c)[0], -size(c)[1]),
        lambda c: (bound(c), -size(c)[1], -size(c)[0]),
        lambda c: (0, -size(c)[0] * size(c)[1]),
        lambda c: (0, -size(c)[1]),
        lambda c: (0, -size(c)[0]),
    )
    for key in keys:
        yield [(c, table.choices[c]) for c in sorted(range(len(table.free)), key=key)]


def _place(table: Table, stance: int, beside: Sequence[Laid], coarse: bool) -> tuple[float, float]:
    """The first start along the cloth over all heights, and the height."""
    heights = _heights(table, stance, beside)
    bound = table.stances[stance]
    lows, highs = [], []
    for other in beside:
        ways = heights - other.y
        for region in table.regions(other.stance, stance, coarse):
            if region.top >= ways[-1] - NEAR or region.bottom <= ways[0] + NEAR:
                continue
            met = (ways > region.top + NEAR) & (ways < region.bottom - NEAR)
            if region.box:
                low, high = region.left[0, 1], region.right[0, 1]
            else:
                low = np.interp(ways, region.left[:, 0], region.left[:, 1])
                high = np.interp(ways, region.right[:, 0], region.right[:, 1])
            lows.append(np.where(met, other.x + low, np.inf))
            highs.append(np.where(met, other.x + high, -np.inf))
    starts = np.full(len(heights), bound.start(0.0))
    if lows:
        starts = _past(np.array(lows), np.array(highs), starts, bound.repeat, bound.phase)
    k = int(np.lexsort((heights, np.round(starts, 3)))[0])
    return float(starts[k]), float(heights[k])


def _past(lows: Array, highs: Array, starts: Array, repeat: float | None, phase: float) -> Array:
    """The first start at each height that lies within none of the intervals."""
    order = np.argsort(lows, axis=0)
    lows, highs = np.take_along_axis(lows, order, 0), np.take_along_axis(highs, order, 0)
    while True:
        before = starts
        for low, high in zip(lows, highs, strict=True):
            blocked = (low < starts - NEAR) & (high > starts + NEAR)
            if blocked.any():
                free = high if repeat is None else phase + np.ceil((high - phase) / repeat - 1e-9) * repeat
                starts = np.where(blocked, free, starts)
        if repeat is None or np.array_equal(before, starts):
            return starts


def _heights(table: Table, stance: int, beside: Sequence[Laid]) -> Array:
    bound, shape = table.stances[stance], table.shapes[table.stances[stance].shape]
    if bound.across is not None:
        return np.array([bound.across])
    last = max(0.0, table.width - shape.across)
    found = {0.0, last}
    for other in beside:
        below, above = other.y + table.shape(other).across + table.gap, other.y - shape.across - table.gap
        found.update(y for y in (below, above) if 0 <= y <= last)
    if not table.boxes:
        found.update(np.linspace(0.0, last, STEPS).tolist())
    return np.array(sorted(found))
