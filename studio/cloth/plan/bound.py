"""The least that any plan could take: the longest part, cuts along the cloth, and cuts across it.

A cut straight across the cloth meets each copy at most once in a given slice, and the cuts through all copies there,
each with its gap, are no more than the width and one gap. The same holds after any function f has been put to the
shares of the width with: shares that sum to at most 1 are mapped to numbers that sum to at most 1. So the sum over
all slices of thickness × f(share) is no more than the length. Functions of S. P. Fekete and J. Schepers, "New classes
of fast lower bounds for bin packing problems", Mathematical Programming 91 (2001).
"""

from collections.abc import Callable, Iterator
from functools import partial

import numpy as np

from studio.cloth.plan.convex import Array
from studio.cloth.plan.sections import least_cut, slices
from studio.cloth.plan.table import Stance, Table


def least(table: Table) -> float:
    """A length that no plan can go below, mm."""
    return max(0.0, _longest(table), _along(table), _across(table))


def _longest(table: Table) -> float:
    """The part that ends last of its own accord."""
    free = (
        min(table.stances[k].start(0.0) + table.shapes[table.stances[k].shape].along for k in ways)
        for ways in set(table.choices)
    )
    held = (s.x + table.shape(s).along for s in table.held)
    return max((*free, *held), default=0.0)


def _along(table: Table) -> float:
    """What a line along the cloth must run through: copies that cannot avoid it follow one another."""
    every = [*table.choices, *((s.stance,) for s in table.held)]
    kinds = {ways: every.count(ways) for ways in every}
    best = 0.0
    for line in _heights(table):
        total, count = 0.0, 0
        for ways, copies in kinds.items():
            met = min(_met(table, table.stances[k], line) for k in ways)
            total, count = total + met * copies, count + copies * (met > 0)
        best = max(best, total + table.gap * max(0, count - 1))
    return best


def _heights(table: Table) -> set[float]:
    """Lines worth looking at: the middle, and just inside whatever has its place."""
    found = {table.width / 2}
    for stance in table.stances:
        tall = table.shapes[stance.shape].across
        if stance.across is not None:
            found |= {stance.across + tall * share for share in (0.01, 0.25, 0.5, 0.75, 0.99)}
        elif tall > table.width / 2:
            found |= {table.width - tall * 0.999, tall * 0.999}
    return found


def _met(table: Table, stance: Stance, line: float) -> float:
    """The least that the line runs through a copy in this stance, wherever it lies."""
    shape = table.shapes[stance.shape]
    if stance.across is not None:
        first = last = line - stance.across
    else:
        first, last = line - (table.width - shape.across), line
    if first <= 0 or last >= shape.across:
        return 0.0
    return least_cut(table.shapes[stance.shape].outline, first, last, 1)


def _across(table: Table) -> float:
    """What the cuts across the cloth come to."""
    every = [*table.choices, *((s.stance,) for s in table.held)]
    kinds = {ways: every.count(ways) for ways in every}
    longer = table.gap if table.boxes else 0.0  # boxes keep their gap along the cloth too
    sliced: dict[int, tuple[Array, Array]] = {}
    for ways in kinds:
        for k in ways:
            shape = table.stances[k].shape
            if shape not in sliced:
                thick, cuts = slices(table.shapes[shape].outline)
                thick = thick * (1 + longer / thick.sum()) if longer else thick
                sliced[shape] = thick, (cuts + table.gap) / (table.width + table.gap) - 1e-9
    shares = np.unique(np.concatenate([s for _, s in sliced.values()])) if sliced else np.zeros(0)

    def total(f: Callable[[Array], Array]) -> float:
        weights = {k: float((thick * f(share)).sum()) for k, (thick, share) in sliced.items()}
        return sum(n * min(weights[table.stances[k].shape] for k in ways) for ways, n in kinds.items())

    return max(total(f) for f in functions(shares)) - longer if kinds else 0.0


def functions(shares: Array) -> Iterator[Callable[[Array], Array]]:
    """Functions that keep a sum of at most 1 at most 1, all of them rising."""
    yield _as_it_is
    some = shares[(shares > 0.02) & (shares <= 0.5)]
    if len(some) > 24:
        some = some[np.linspace(0, len(some) - 1, 24).astype(int)]
    for least_share in some.tolist():
        yield partial(_large_only, e=least_share)
        yield partial(_counted, e=least_share)
    for k in range(1, 12):
        yield partial(_stepped, k=k)
        for least_share in some[::3].tolist():
            yield partial(_large_stepped, k=k, e=least_share)


def _as_it_is(u: Array) -> Array:
    return np.asarray(np.clip(u, 0.0, None))


def _large_stepped(u: Array, k: int, e: float) -> Array:
    return _stepped(_large_only(u, e), k)


def _large_only(u: Array, e: float) -> Array:
    """Small shares count nothing; those that leave no room but for small ones count as all."""
    return np.where(u > 1 - e + 1e-9, 1.0, np.where(u < e, 0.0, u))


def _stepped(u: Array, k: int) -> Array:
    """So many of k, where k + 1 would be too many."""
    return np.clip(np.floor((k + 1) * u - 1e-9), 0.0, k) / k


def _counted(u: Array, e: float) -> Array:
    """How many shares of at least e could lie beside, out of all that could."""
    most = np.floor(1 / e + 1e-9)
    large = 1 - np.floor((1 - u) / e + 1e-9) / most
    return np.where(u > 0.5 + 1e-9, np.clip(large, 0.0, 1.0), np.where(u >= e, 1 / most, 0.0))
