"""Whether a plan of boxes could be shorter: a proof by whole-number programming.

Boxes are let slide freely across the cloth, so that only their starts along it matter: at no place may they take more
than the width, nor two that have their place across take the same line. What is impossible even so is impossible.
Every box may then be thought pushed towards the cut end until it meets another's end, so its start is a sum of a few
lengths; and so is the least length of all. (Normal patterns: N. Christofides and C. Whitlock, Operations Research 25,
1977. Bars: M. A. Boschetti and L. Montaletti, Operations Research 58, 2010.)

All lengths are whole ticks, rounded down, which makes no plan impossible, and keeps sums exact.
"""

import math
import time
from bisect import bisect_left
from collections.abc import Iterator
from typing import NamedTuple

import numpy as np

from studio.cloth.plan import solver
from studio.cloth.plan.bound import functions
from studio.cloth.plan.convex import Array
from studio.cloth.plan.problem import NEAR
from studio.cloth.plan.table import Stance, Table

TICK = 1e-4
"""Lengths are reckoned in these (mm)."""
SAME = 100
"""A plan shorter by no more than so many ticks (a hundredth of a millimetre) is no better."""
CROWD = 24
"""More boxes than these are not proven: writing the proof down alone would take longer than it is given."""
MANY = 6000
"""With more places than these the proof would take too long to be worth trying."""


class _Bar(NamedTuple):
    """A box at a start it could have, in ticks, its gap included; `top` is its place across in mm, if it has one."""

    kind: int
    start: int
    along: int
    across: int
    top: float | None

    def over(self, at: int) -> bool:
        """Whether it lies over this place along the cloth."""
        return self.start <= at < self.start + self.along

    def on_line(self, line: float) -> bool:
        """Whether it is sure to lie on this line along the cloth."""
        return self.top is not None and self.top <= line + NEAR and line < self.top + self.across * TICK - NEAR


def least(table: Table, length: float, known: float, seconds: float) -> float:
    """The least length not proven impossible, from `known` up to that of a plan in hand (mm)."""
    if not table.boxes or len(table.free) > CROWD or not solver.present():
        return known
    until = time.monotonic() + seconds
    room = _Room(table, length)
    low, high = bisect_left(room.ends, known / TICK - 10), bisect_left(room.ends, _ticks(length) - SAME)
    probe = high - 1
    while low < high and room.starts and (left := until - time.monotonic()) > 0.01:
        possible = room.possible(room.ends[probe], left)
        if possible is None:
            break
        low, high = (low, probe) if possible else (probe + 1, high)
        probe = (low + high) // 2
    reached = room.ends[low] * TICK if room.starts and low < len(room.ends) else known
    return min(max(known, reached), length)


class _Room:
    """Where the boxes of a table could start, and where they could end, within a length."""

    def __init__(self, table: Table, length: float) -> None:
        self.table, self.gap = table, _ticks(table.gap)
        self.kinds = [(ways, table.choices.count(ways)) for ways in dict.fromkeys(table.choices)]
        self.stances = [table.stances[k] for ways, _ in self.kinds for k in ways]
        self.fixed = [
            _Bar(-1, _ticks(s.x), self._along(table.stances[s.stance]), self._across(table.stances[s.stance]), s.y)
            for s in table.held
        ]
        most = _ticks(length) + 1
        self.starts = self._all_starts(most)
        ends = {b.start + b.along - self.gap for b in self.fixed}
        for s in self.stances:
            ends |= {at + self._along(s) - self.gap for at in self._starts(s, most)}
        self.ends = sorted(e for e in ends if e <= most)

    def possible(self, length: int, seconds: float) -> bool | None:
        """Whether the bars can lie within the length; None where that cannot be told in time."""
        bars = list(self._bars(length))
        if len(bars) > MANY:
            return None
        rows = _Rows()
        for kind, (_, count) in enumerate(self.kinds):
            rows.add([(k, 1.0) for k, bar in enumerate(bars) if bar.kind == kind], count, np.inf)
        width = math.ceil((self.table.width + self.table.gap) / TICK)
        shares = np.array([bar.across / width for bar in bars])
        weights = _weights(shares)
        for at in sorted({bar.start for bar in (*bars, *self.fixed)}):
            here = [k for k, bar in enumerate(bars) if bar.over(at)]
            held = [bar for bar in self.fixed if bar.over(at)]
            taken = sum(bar.across for bar in held)
            rows.add([(k, float(shares[k])) for k in here], -np.inf, max(0.0, 1 - taken / width))
            if not held:
                for w in weights:
                    rows.add([(k, float(w[k])) for k in here if w[k]], -np.inf, 1.0)
            for line in {bar.top for bar in (*(bars[k] for k in here), *held) if bar.top is not None}:
                free = 0.0 if any(bar.on_line(line) for bar in held) else 1.0
                rows.add([(k, 1.0) for k in here if bars[k].on_line(line)], -np.inf, free)
        most = np.array([float(self.kinds[bar.kind][1]) for bar in bars])
        answer = solver.solve(rows.programme(most), seconds)
        if answer.impossible:
            return False
        return True if answer.unknowns is not None else None

    def _bars(self, length: int) -> Iterator[_Bar]:
        for kind, (ways, _) in enumerate(self.kinds):
            for stance in (self.table.stances[k] for k in ways):
                along, across = self._along(stance), self._across(stance)
                for at in self._starts(stance, length):
                    if at + along - self.gap <= length:
                        yield _Bar(kind, at, along, across, stance.across)

    def _all_starts(self, most: int) -> list[int]:
        """Every start that need be thought of; none where they are too many."""
        steps = {self._along(s) for s in self.stances if s.repeat is None}
        found = {0} | {b.start + b.along for b in self.fixed}
        for s in self.stances:
            found |= {at + self._along(s) for at in self._on_grid(s, most)}
        fresh = set(found)
        while fresh and len(found) <= MANY:
            fresh = {s + step for s in fresh for step in steps if s + step < most} - found
            found |= fresh
        return [] if fresh else sorted(found)

    def _starts(self, stance: Stance, most: int) -> Iterator[int]:
        return iter(self.starts) if stance.repeat is None else self._on_grid(stance, most)

    def _on_grid(self, stance: Stance, most: int) -> Iterator[int]:
        if stance.repeat is not None:
            at = stance.start(0.0)
            while _ticks(at) < most:
                yield _ticks(at)
                at += stance.repeat

    def _along(self, stance: Stance) -> int:
        return _ticks(self.table.shapes[stance.shape].along + self.table.gap)

    def _across(self, stance: Stance) -> int:
        return _ticks(self.table.shapes[stance.shape].across + self.table.gap)


def _weights(shares: Array) -> list[Array]:
    """Other ways to weigh the same bars, in which too much is still too much (see `bound`): none is needed, but with
    them an impossible length shows much sooner.
    """
    every = {tuple(np.round(f(shares), 9).tolist()) for f in functions(np.unique(shares))}
    return [np.array(w) for w in sorted(every) if any(a > b + 1e-6 for a, b in zip(w, shares, strict=True))]


class _Rows:
    """Inequalities as they come; the same one is kept once."""

    def __init__(self) -> None:
        self.triples: list[tuple[int, int, float]] = []
        self.low: list[float] = []
        self.high: list[float] = []
        self._seen: set[tuple[object, ...]] = set()

    def add(self, entries: list[tuple[int, float]], least: float, most: float) -> None:
        """One more: the sum of value × unknown lies between two numbers."""
        if (key := (tuple(entries), least, most)) not in self._seen:
            self._seen.add(key)
            self.triples.extend((len(self.low), column, value) for column, value in entries)
            self.low.append(least)
            self.high.append(most)

    def programme(self, most: Array) -> solver.Programme:
        """Whole numbers from 0 up to `most`, with nothing to minimise."""
        triples = np.array(self.triples).reshape(-1, 3)
        rows, columns = triples[:, 0].astype(np.int32), triples[:, 1].astype(np.int32)
        none = np.zeros(len(most))
        low, high = np.array(self.low), np.array(self.high)
        return solver.Programme(none, none, most, rows, columns, triples[:, 2], low, high, np.ones(len(most), np.bool_))


def _ticks(mm: float) -> int:
    """Whole ticks, rounded down, but for what is only the computer's own rounding."""
    return math.floor(mm / TICK + 1e-3)
