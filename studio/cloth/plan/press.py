"""Moving everything at once: each pair is kept apart along one straight line, the one that parts them best now.

With one line for each pair the shortest strip, or the least overlap at a given length, is a linear programme. Lines
are chosen anew after each, so the copies slide past each other's corners. (Li and Milenkovic, "Compaction and
separation algorithms for non-convex polygons and their applications", European Journal of Operational Research 84,
1995.)
"""

from typing import NamedTuple

import numpy as np

from studio.cloth.plan import solver
from studio.cloth.plan.convex import Array
from studio.cloth.plan.table import Laid, Table

FEW = 16
"""With so few copies all pairs are kept apart; with more, only near ones, and no copy moves far at a time."""


class Lines(NamedTuple):
    """For each line: b lies beyond `offset` from a along (nx, ny); `gap` is how far beyond it lies now."""

    a: Array
    b: Array
    nx: Array
    ny: Array
    offset: Array
    gap: Array


def compact(table: Table, spots: list[Laid], times: int = 6) -> list[Laid] | None:
    """The copies pushed towards the cut end until nothing gives, or None where they cannot be kept apart."""
    best: list[Laid] | None = None
    for _ in range(times):
        moved = _moved(table, spots, None, None)
        if moved is None:
            return best
        spots = moved[0]
        gained = best is None or table.length(spots) < table.length(best) - 1e-3
        if best is None or table.length(spots) <= table.length(best):
            best = spots
        if not gained:
            break
    return best


def separate(table: Table, spots: list[Laid], length: float, times: int = 14) -> list[Laid] | None:
    """The copies moved apart within a length, or None where that does not come about.

    Pairs that go on overlapping weigh more each time (guided local search).
    """
    weights: dict[tuple[int, int], float] = {}
    last, worse = np.inf, 0
    for _ in range(times):
        moved = _moved(table, spots, length, weights)
        if moved is None:
            return None
        spots, overlaps = moved
        total = sum(overlaps.values())
        if total < 1e-5:
            return spots
        most = max(overlaps.values())
        for pair, depth in overlaps.items():
            weights[pair] = weights.get(pair, 1.0) * (1 + depth / most)
        worse += total > last * 0.98
        if worse > 3:
            return None
        last = total
    return None


def _moved(
    table: Table, spots: list[Laid], length: float | None, weights: dict[tuple[int, int], float] | None
) -> tuple[list[Laid], dict[tuple[int, int], float]] | None:
    """One linear programme: unknowns are all x, all y, the length, and one overlap a line where `length` is given."""
    every = [*spots, *table.held]
    n, at = len(every), np.array([(s.x, s.y) for s in every])
    along = np.array([table.shape(s).along for s in every])
    near = None if n <= FEW else 0.15 * table.width
    lines = _lines(table, every, len(spots), near)
    m = len(lines.a)
    least, most = _limits(table, every, at, length, near)
    soft = m if length is not None else 0
    cost = np.concatenate([np.full(n, 1e-5), np.zeros(n), [1.0], np.ones(soft)])
    if weights is not None:
        pairs = list(zip(lines.a.tolist(), lines.b.tolist(), strict=True))
        cost[: 2 * n + 1] = 0.0
        cost[2 * n + 1 :] = [weights.get(p, 1.0) for p in pairs]
    line, copy = np.arange(m), np.arange(n)
    rows = [line, line, line, line, m + copy, m + copy]
    columns = [lines.b, n + lines.b, lines.a, n + lines.a, copy, np.full(n, 2 * n)]
    values = [lines.nx, lines.ny, -lines.nx, -lines.ny, -np.ones(n), np.ones(n)]
    if soft:
        rows, columns, values = [*rows, line], [*columns, 2 * n + 1 + line], [*values, np.ones(m)]
    answer = solver.solve(
        solver.Programme(
            cost,
            np.concatenate([least, np.zeros(soft)]),
            np.concatenate([most, np.full(soft, np.inf)]),
            np.concatenate(rows).astype(np.int32),
            np.concatenate(columns).astype(np.int32),
            np.concatenate(values),
            np.concatenate([lines.offset, along]),
            np.full(m + n, np.inf),
        )
    )
    if answer.unknowns is None:
        return None
    x, y = answer.unknowns[:n], answer.unknowns[n : 2 * n]
    overlaps: dict[tuple[int, int], float] = {}
    if weights is not None:
        for pair, depth in zip(pairs, answer.unknowns[2 * n + 1 :].tolist(), strict=True):
            if depth > 1e-7:
                overlaps[pair] = overlaps.get(pair, 0.0) + depth
    moved = [s._replace(x=float(x[k]), y=float(y[k])) for k, s in enumerate(spots)]
    return moved, overlaps


def _limits(
    table: Table, every: list[Laid], at: Array, length: float | None, near: float | None
) -> tuple[Array, Array]:
    """How far each x, each y and the length may go."""
    n = len(every)
    reach = np.inf if near is None else near / 2.9  # two copies that both move cannot meet from further than `near`
    last = np.array([max(0.0, table.width - table.shape(s).across) for s in every])
    least = np.concatenate([np.maximum(0.0, at[:, 0] - reach), np.clip(at[:, 1] - reach, 0.0, last), [0.0]])
    most = np.concatenate([at[:, 0] + reach, np.clip(at[:, 1] + reach, 0.0, last), [np.inf]])
    most[:n] = np.maximum(most[:n], 0.0)
    if length is not None:
        least[2 * n] = most[2 * n] = length
    for k, s in enumerate(every):
        stance = table.stances[s.stance]
        if stance.repeat is not None or s.copy < 0:
            least[k] = most[k] = s.x
        if stance.across is not None:
            least[n + k] = most[n + k] = stance.across
    return least, most


def _lines(table: Table, every: list[Laid], free: int, near: float | None) -> Lines:
    """For each pair of parts, the line that parts them best as they lie."""
    box = np.array([(s.x, s.y, s.x + table.shape(s).along, s.y + table.shape(s).across) for s in every])
    found: list[tuple[float, ...]] = []
    for b in range(free):
        others = np.arange(len(every)) if b < free else np.arange(0)
        apart = np.maximum(box[:, :2] - box[b, 2:], box[b, :2] - box[:, 2:]).max(1)
        close = (others < b) | (others >= free)
        if near is not None:
            close &= apart < near + table.gap
        for a in np.nonzero(close)[0].tolist():
            way = (every[b].x - every[a].x, every[b].y - every[a].y)
            for region in table.regions(every[a].stance, every[b].stance):
                beyond = region.normals @ way - region.offsets
                k = int(beyond.argmax())
                if near is None or beyond[k] <= near:
                    found.append((a, b, *region.normals[k], region.offsets[k], beyond[k]))
    columns = np.array(found).reshape(-1, 6).T
    return Lines(columns[0].astype(int), columns[1].astype(int), *columns[2:])
