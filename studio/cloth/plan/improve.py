"""Better and better plans: by rows at once, then by whatever finds a shorter one, until time is up or none can be.

This runs where it is called and takes the seconds it is given; `planning` has it run beside a window.
"""

import math
import time
from collections.abc import Iterator
from typing import TypeAlias

from studio.cloth.plan import bound, engine, press, prove, rows, shuffle, solver, stir
from studio.cloth.plan.installed import engine_installed
from studio.cloth.plan.problem import Plan, Problem, Spot
from studio.cloth.plan.sound import sound
from studio.cloth.plan.table import Laid, Table

Spots: TypeAlias = tuple[Spot, ...]

ALIKE = 0.01
"""A plan not longer than its bound by more than this (mm) is proven best: no shears cut finer."""
SETTLING = 1.5
"""Seconds kept for bringing the engine's packing to where it must lie."""
SHORT, LONG = 2.0, 6.0
"""Seconds that the engine is first given for few parts, and at most: a new start finds more than going on."""
INTRICATE = 12
"""With more convex parts to a shape than this, rows are made of hulls."""


def first_plan(problem: Problem) -> Plan:
    """A plan at once, for a problem without misfits."""
    return _Best(Table(problem)).plan()


def plans(
    problem: Problem, seconds: float = 60.0, seed: int = 1, with_engine: bool | None = None, start: Spots = ()
) -> Iterator[Plan]:
    """A plan at once, then only better ones: shorter, or with more known of how short a plan can be.

    `start` is a plan in hand: where it is sound, none is longer.
    The problem has no misfits. Without the engine (None: if it is installed) plans come from rows and from unrest
    alone; the engine's trouble ends its part, never the search. The same seed need not give the same plans, since the
    clock has a say.
    """
    until = time.monotonic() + seconds
    best = _Best(Table(problem))
    best.take(best.table.found(start))
    yield (plan := best.plan())
    if plan.proven:
        return
    for spots in _found(best, until, seed, engine_installed() if with_engine is None else with_engine):
        if spots is None or best.take(spots):
            plan = best.plan()
            yield plan
            if plan.proven:
                return
        if time.monotonic() >= until:
            return


class _Best:
    """The best plan so far, and the least that any could take."""

    def __init__(self, table: Table) -> None:
        self.table = table
        self.spots = rows.first(table)
        self.length = table.length(self.spots)
        self.least = min(bound.least(table), self.length)

    def take(self, spots: list[Laid]) -> bool:
        """Whether these are sound and shorter, and so the best from now on."""
        length = self.table.length(spots)
        if length > self.length - 1e-3 or not sound(self.table, spots):
            return False
        self.spots, self.length = spots, length
        self.least = min(self.least, length)
        return True

    def plan(self) -> Plan:
        return Plan(self.length, self.least, self.table.spots(self.spots), proven=self.length - self.least <= ALIKE)

    def raised(self, seconds: float) -> bool:
        """Whether a proof was tried and the bound rose."""
        before, self.least = self.least, prove.least(self.table, self.length, self.least, seconds)
        return self.least > before + 1e-6


def _found(best: _Best, until: float, seed: int, with_engine: bool) -> Iterator[list[Laid] | None]:
    """Plans to be judged, best or not; None where the bound has risen."""

    def left(most: float) -> float:
        return max(0.0, min(most, until - time.monotonic()))

    table = best.table
    coarse = max((len(s.parts) for s in table.shapes), default=0) > INTRICATE
    yield from shuffle.shuffled(table, left(0.3), seed, coarse)
    if not solver.present():
        while left(1.0):
            seed += 1
            yield from shuffle.shuffled(table, left(10.0), seed, coarse)
        return
    yield from _pressed(best)
    if best.raised(left(1.5)):
        yield None
    few = len(table.free) <= press.FEW
    span = SHORT if table.bound_to_place or few else left(math.inf)
    while left(1.0):
        if with_engine:
            try:
                yield from _packed(best, int(max(1.0, left(span + SETTLING) - SETTLING)), until, seed)
            except engine.EngineFailed:
                with_engine = False
        if table.boxes or not with_engine:
            yield from shuffle.shuffled(table, left(span / 2), seed, coarse)
            yield from _pressed(best)
        if table.bound_to_place or not with_engine or few:
            yield from stir.stirred(table, best.spots, left(min(span / 2, SHORT)), seed, best.least)
        if best.raised(left(span / 4)):
            yield None
        span, seed = min(span * 2, LONG) if few else span * 2, seed + 1


def _pressed(best: _Best) -> Iterator[list[Laid]]:
    pressed = press.compact(best.table, best.spots)
    if pressed:
        yield pressed


def _packed(best: _Best, seconds: int, until: float, seed: int) -> Iterator[list[Laid]]:
    """The engine's packings, brought to where they must lie; those much longer than the best are passed over."""
    for spots in engine.packed(best.table, seconds, seed):
        if best.table.length(spots) < best.length * 1.01:
            settled = stir.settled(best.table, spots, best.length, until)
            if settled:
                yield settled
