"""Plans by rows in other orders: two copies change places, or one moves up or down, and what is better is kept.

Now and then a worse order is kept too, less and less as the time runs out (simulated annealing).
"""

import math
import random
import time
from collections.abc import Iterator

from studio.cloth.plan.rows import Choice, decoded, orders
from studio.cloth.plan.table import Laid, Table

WARM = 0.015
"""How much longer a plan may be at first to be kept with good odds, as a share of its length."""


def shuffled(table: Table, seconds: float, seed: int, coarse: bool = False) -> Iterator[list[Laid]]:
    """Shorter and shorter plans, for some seconds."""
    chance, start = random.Random(seed), time.monotonic()
    best: list[Laid] | None = None
    current: list[Choice] = []
    current_cost = math.inf
    for order in orders(table):
        spots = decoded(table, order, coarse)
        if best is None or table.length(spots) < table.length(best):
            best = spots
            yield spots
        if (cost := _cost(table, spots)) < current_cost:
            stances = {s.copy: s.stance for s in spots}
            current, current_cost = [(c, (stances[c],)) for c, _ in order], cost
        if time.monotonic() - start > seconds:
            return
    if best is None or len(current) < 2:
        return
    while (spent := time.monotonic() - start) < seconds:
        order = _varied(table, current, chance)
        if order == current:
            continue
        spots = decoded(table, order, coarse)
        cost = _cost(table, spots)
        warmth = WARM * (1 - spent / seconds) * current_cost
        if cost <= current_cost or chance.random() < math.exp((current_cost - cost) / max(warmth, 1e-9)):
            current, current_cost = order, cost
        if table.length(spots) < table.length(best) - 1e-6:
            best = spots
            yield spots


def _cost(table: Table, spots: list[Laid]) -> float:
    """The length, and a little for how far along the copies end."""
    length = table.length(spots)
    shapes = [table.shape(s) for s in spots]
    total = sum(s.along * s.across for s in shapes) or 1.0
    lean = sum((p.x + s.along) ** 2 * s.along * s.across for p, s in zip(spots, shapes, strict=True))
    return length * (1 + 1e-3 * math.sqrt(lean / total) / (length or 1.0))


def _varied(table: Table, order: list[Choice], chance: random.Random) -> list[Choice]:
    order, n = list(order), len(order)
    for _ in range(1 if chance.random() < 0.7 else 2):
        kind = chance.random()
        if kind < 0.45:
            i, j = chance.sample(range(n), 2)
            order[i], order[j] = order[j], order[i]
        elif kind < 0.8:
            order.insert(chance.randrange(n), order.pop(chance.randrange(n)))
        else:
            i = chance.randrange(n)
            copy = order[i][0]
            order[i] = (copy, (chance.choice(table.choices[copy]),))
    return order
