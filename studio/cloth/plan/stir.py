"""Plans by unrest: a few copies are put elsewhere, a little length is taken away, and all are moved apart again.

This is how copies come to their places across and onto the print's repeat after the engine, which knows neither.
"""

import random
import time
from collections.abc import Iterator

from studio.cloth.plan import press
from studio.cloth.plan.problem import NEAR
from studio.cloth.plan.table import Laid, Table

SHARES = (0.002, 0.005, 0.01, 0.02)
"""How much of the length is taken away."""


def settled(table: Table, spots: list[Laid], below: float, until: float) -> list[Laid] | None:
    """Copies that lie only nearly where they may, brought there: the first length below `below` at which it works.

    `until` is the time by the monotonic clock at which to stop trying.
    """
    spots = [snapped(table, s) for s in spots]
    if not table.bound_to_place:
        return _shorter(table, press.compact(table, spots), below)
    length = table.length(spots)
    while length < below - NEAR and time.monotonic() < until:
        apart = press.separate(table, [_within(table, s, length) for s in spots], length)
        if apart is not None:
            return _shorter(table, press.compact(table, apart), below)
        length = max(length * 1.01, length + 1e-3)
    return None


def stirred(table: Table, spots: list[Laid], seconds: float, seed: int, floor: float) -> Iterator[list[Laid]]:
    """Shorter and shorter plans from one in hand, for some seconds or until the least length is reached."""
    chance, until = random.Random(seed), time.monotonic() + seconds
    while spots and time.monotonic() < until and table.length(spots) > floor + NEAR:
        length = table.length(spots)
        target = max(floor, length * (1 - chance.choice(SHARES)))
        moved = [_within(table, s, target) for s in _unsettled(table, spots, target, chance)]
        apart = press.separate(table, moved, target)
        better = _shorter(table, press.compact(table, apart) if apart else None, length)
        if better:
            spots = better
            yield spots


def snapped(table: Table, laid: Laid) -> Laid:
    """A copy at the nearest place that binds it: across, and along where it is tied to a repeat."""
    same = table.stances[laid.stance].turn
    ways = [k for k in table.choices[laid.copy] if table.stances[k].turn == same] or [laid.stance]
    stance = min(ways, key=lambda k: abs((table.stances[k].across or laid.y) - laid.y))
    return _within(table, laid._replace(stance=stance), float("inf"))


def _within(table: Table, laid: Laid, length: float) -> Laid:
    """A copy between the selvedges, within the length where it can be, in its place across and on its grid."""
    stance, shape = table.stances[laid.stance], table.shape(laid)
    x = max(0.0, min(laid.x, length - shape.along))
    if stance.repeat is not None:
        first = stance.start(0.0)
        steps = max(0, round((x - first) / stance.repeat))
        while steps and first + steps * stance.repeat + shape.along > length + NEAR:
            steps -= 1
        x = first + steps * stance.repeat
    y = stance.across if stance.across is not None else min(max(laid.y, 0.0), max(0.0, table.width - shape.across))
    return laid._replace(x=x, y=y)


def _unsettled(table: Table, spots: list[Laid], length: float, chance: random.Random) -> list[Laid]:
    """One or two copies changed about, put somewhere else, or turned."""
    spots = list(spots)
    for _ in range(chance.choice((1, 1, 2))):
        i, kind = chance.randrange(len(spots)), chance.random()
        one = spots[i]
        stance = chance.choice(table.choices[one.copy])
        if kind < 0.45:
            j = chance.randrange(len(spots))
            spots[i], spots[j] = _at_middle(table, one, spots[j]), _at_middle(table, spots[j], one)
        elif kind < 0.75:
            spots[i] = one._replace(stance=stance, x=chance.uniform(0, length), y=chance.uniform(0, table.width))
        else:
            spots[i] = one._replace(stance=stance)
    return spots


def _at_middle(table: Table, one: Laid, other: Laid) -> Laid:
    """A copy put where another has its middle."""
    a, b = table.shape(one), table.shape(other)
    return one._replace(x=other.x + (b.along - a.along) / 2, y=other.y + (b.across - a.across) / 2)


def _shorter(table: Table, spots: list[Laid] | None, below: float) -> list[Laid] | None:
    return spots if spots is not None and table.length(spots) < below - NEAR else None
