"""The cutting table: every copy with the ways it may lie, and where any two of them would touch."""

import math
from collections.abc import Iterable
from functools import cached_property
from typing import NamedTuple

import numpy as np

from studio.cloth.plan import convex
from studio.cloth.plan.clear import Forbidden, forbidden
from studio.cloth.plan.convex import Array
from studio.cloth.plan.problem import NEAR, Copy, Outline, Problem, Spot, copies, phase_point
from studio.cloth.plan.problem import laid as laid_out

SLACK = 3e-4
"""Hollows shallower than this share of a part's size are filled: they hold nothing."""


class Shape(NamedTuple):
    """An outline as laid: its box, itself, what is laid in its place, the hull of that, and its convex parts."""

    along: float
    across: float
    outline: Outline
    points: list[convex.Corner]
    hull: tuple[Array, ...]
    parts: tuple[Array, ...]

    @property
    def box(self) -> bool:
        """Whether it fills its box."""
        return abs(abs(convex.area(self.points)) - self.along * self.across) <= 1e-9 * self.along * self.across


class Stance(NamedTuple):
    """A copy as it may lie: its shape, and what binds it."""

    shape: int
    turn: int
    mirrored: bool
    across: float | None
    repeat: float | None
    phase: float

    def start(self, least: float) -> float:
        """The first start of the box at or after `least`."""
        if self.repeat is None:
            return max(0.0, least)
        steps = math.ceil((max(0.0, least) - self.phase) / self.repeat - 1e-9)
        return self.phase + steps * self.repeat


class Laid(NamedTuple):
    """A copy on the cloth: which of the free copies, in which stance, and the corner of its box."""

    copy: int
    stance: int
    x: float
    y: float


class Table:
    """A problem made ready: shapes, stances, the free copies with their stances, and the held ones where they lie."""

    def __init__(self, problem: Problem) -> None:
        """Shapes, stances and what is held, of a problem."""
        self.problem, self.width, self.gap = problem, problem.width, problem.gap
        self.shapes: list[Shape] = []
        self.stances: list[Stance] = []
        self._shapes: dict[frozenset[tuple[float, float]], int] = {}
        self._regions: dict[tuple[int, int, bool], list[Forbidden]] = {}
        held = {(s.part, s.copy): s for s in problem.held}
        every = list(copies(problem))
        self.free = [c for c in every if (c.part.id, c.number) not in held]
        kinds: dict[tuple[str, bool], tuple[int, ...]] = {}
        for c in self.free:
            if (c.part.id, c.mirrored) not in kinds:
                kinds[c.part.id, c.mirrored] = self._ways(c)
        self.choices = [kinds[c.part.id, c.mirrored] for c in self.free]
        self.held = [
            Laid(-1, self._held(c, spot), spot.x, spot.y)
            for c in every
            if (spot := held.get((c.part.id, c.number))) is not None
        ]
        self.held_spots = [held[c.part.id, c.number] for c in every if (c.part.id, c.number) in held]

    def shape(self, laid: Laid) -> Shape:
        """The shape of a copy on the cloth."""
        return self.shapes[self.stances[laid.stance].shape]

    def length(self, spots: list[Laid]) -> float:
        """The length that these and the held ones take."""
        return max((s.x + self.shape(s).along for s in (*spots, *self.held)), default=0.0)

    @cached_property
    def boxes(self) -> bool:
        """Whether everything fills its box."""
        return all(s.box for s in self.shapes)

    @cached_property
    def bound_to_place(self) -> bool:
        """Whether anything is held, anchored or tied to a repeat."""
        return bool(self.held) or any(s.across is not None or s.repeat is not None for s in self.stances)

    def regions(self, a: int, b: int, coarse: bool = False) -> list[Forbidden]:
        """Where stance b may not lie beside stance a; `coarse` takes their hulls."""
        one, other = self.stances[a].shape, self.stances[b].shape
        key = (one, other, coarse)
        if key not in self._regions:
            first, second = self.shapes[one], self.shapes[other]
            pairs = (first.hull, second.hull) if coarse else (first.parts, second.parts)
            self._regions[key] = [forbidden(p, q, self.gap) for p in pairs[0] for q in pairs[1]]
        return self._regions[key]

    def spot(self, laid: Laid) -> Spot:
        """A copy on the cloth as the plan tells it."""
        copy, stance = self.free[laid.copy], self.stances[laid.stance]
        return Spot(copy.part.id, copy.number, laid.x, laid.y, stance.turn, stance.mirrored)

    def spots(self, free: list[Laid]) -> tuple[Spot, ...]:
        """All copies as the plan tells them, the held ones too."""
        return (*(self.spot(s) for s in sorted(free)), *self.held_spots)

    def found(self, spots: Iterable[Spot]) -> list[Laid]:
        """Spots of the free copies as they lie here, each in the way most like it; what lies in none is left out."""
        copies = {(c.part.id, c.number): k for k, c in enumerate(self.free)}
        laid = []
        for s in spots:
            if (copy := copies.get((s.part, s.copy))) is None:
                continue
            shape = self._shape(laid_out(self.free[copy].part.outline, s.turn, s.mirrored)[0])
            ways = [(self._unlike(k, s), k) for k in self.choices[copy] if self.stances[k].shape == shape]
            laid += [Laid(copy, min(ways)[1], s.x, s.y)] if ways else []
        return laid

    def _unlike(self, stance: int, spot: Spot) -> tuple[float, float, bool]:
        """How far from its place across and its phase a spot lies, and whether it is turned otherwise."""
        s = self.stances[stance]
        off = abs((spot.x - s.phase + s.repeat / 2) % s.repeat - s.repeat / 2) if s.repeat else 0.0
        return abs(spot.y - (spot.y if s.across is None else s.across)), off, s.turn != spot.turn

    def _ways(self, copy: Copy) -> tuple[int, ...]:
        part, found, seen = copy.part, [], set()
        for way in part.ways:
            turn, mirrored, across = way.turn % 360, copy.mirrored, way.across
            if part.fold:  # its other half, and never off the fold
                turn, mirrored, across = 0, copy.mirrored != (turn == 180), 0.0
            shape = self._shape(laid_out(part.outline, turn, mirrored)[0])
            repeat = part.grid.repeat if part.grid else None
            phase = (part.grid.offset - phase_point(part, turn, mirrored)) % part.grid.repeat if part.grid else 0.0
            stance = Stance(shape, turn, mirrored, across, repeat, phase)
            same = (shape, across, round(phase, 6))
            room = self.width - self.shapes[shape].across - (across or 0.0)
            if same not in seen and room >= -NEAR and (across or 0.0) >= -NEAR:
                seen.add(same)
                found.append(self._stance(stance))
        return tuple(found)

    def _held(self, copy: Copy, spot: Spot) -> int:
        shape = self._shape(laid_out(copy.part.outline, spot.turn, spot.mirrored)[0])
        return self._stance(Stance(shape, spot.turn, spot.mirrored, spot.y, None, 0.0))

    def _stance(self, stance: Stance) -> int:
        self.stances.append(stance)
        return len(self.stances) - 1

    def _shape(self, outline: Outline) -> int:
        outline = tuple((round(x, 6) + 0.0, round(y, 6) + 0.0) for x, y in outline)  # what is level stays level
        key = frozenset(outline)
        if key not in self._shapes:
            along, across = max(x for x, _ in outline), max(y for _, y in outline)
            points = convex.covering(outline, SLACK * math.hypot(along, across))
            parts = tuple(np.array(p) for p in convex.convex_parts(points))
            self._shapes[key] = len(self.shapes)
            self.shapes.append(Shape(along, across, outline, points, (np.array(convex.hull(points)),), parts))
        return self._shapes[key]
