"""What is to be laid: outlines, the ways each may lie, and the cloth; and what comes of it: a plan.

x runs along the cloth from its cut end and y across it, mm. On folded cloth the fold lies at y = 0, and what is laid
is one half of the width: a spot there is cut through both layers.
"""

from collections.abc import Iterator
from typing import NamedTuple, TypeAlias

from msgspec import Struct

Outline: TypeAlias = tuple[tuple[float, float], ...]
"""Corners of a closed polygon in order, mm; the last need not repeat the first."""

NEAR = 1e-6
"""Lengths that differ by less are the same (mm)."""


class Way(Struct, frozen=True):
    """One way to lie: quarter turns in degrees, clockwise on the page, and where the top of the box must then be.

    `across` is the distance of the box's top edge from the first selvedge, or None where any will do. Two borders
    make two ways.
    """

    turn: int = 0
    across: float | None = None


class Grid(Struct, frozen=True):
    """The print's repeat along the cloth: the point `at` of the outline falls on offset + k × repeat.

    Without a point, the start of the box does, however the part is turned.
    """

    repeat: float
    offset: float = 0.0
    at: tuple[float, float] | None = None


class Part(Struct, frozen=True):
    """An outline with its grain along x, and how many copies are wanted.

    `mirrored`: every other copy is turned over (left to right, before it is turned). `fold`: half of a symmetrical
    part, whose top edge lies on the fold; turned by 180 degrees it shows its other half.
    """

    id: str
    outline: Outline
    ways: tuple[Way, ...] = (Way(),)
    count: int = 1
    mirrored: bool = False
    grid: Grid | None = None
    fold: bool = False


class Spot(Struct, frozen=True):
    """Where a copy lies: the corner of its box nearest the origin, once turned over and turned.

    On folded cloth, copy k of a paired part stands for the copies 2k and 2k + 1 (see `copies`).
    """

    part: str
    copy: int
    x: float
    y: float
    turn: int = 0
    mirrored: bool = False


class Problem(Struct, frozen=True):
    """The parts, the width to lay them on (of one layer, where folded), the gap between them, and what is held by hand.

    The gap is kept round every corner; round square corners it is squared, as if the box were widened by it.
    What is held binds the rest, but is itself bound by no grid and no place across.
    """

    width: float
    parts: tuple[Part, ...]
    gap: float = 0.0
    folded: bool = False
    held: tuple[Spot, ...] = ()


class Plan(Struct, frozen=True):
    """A lay plan: the length it takes, and the least that any plan could take, mm."""

    length: float
    bound: float
    spots: tuple[Spot, ...]
    proven: bool = False
    """Whether no plan can be shorter."""

    @property
    def share(self) -> float:
        """The plan is at least this good: the bound's share of its length, 1 where proven."""
        return 1.0 if self.proven or self.length <= 0 else self.bound / self.length


class Copy(NamedTuple):
    """A copy to be laid, and whether it is turned over."""

    part: Part
    number: int
    mirrored: bool


def copies(problem: Problem) -> Iterator[Copy]:
    """Every copy that needs a spot.

    On folded cloth the layer beneath gives the mirror image of the layer above. So parts that come in mirrored pairs,
    and parts that are their own mirror image, take one spot for two; an odd one leaves its twin below as a remnant.
    """
    for part in problem.parts:
        if problem.folded and not part.fold and (part.mirrored or _own_mirror(part)):
            yield from (Copy(part, k, False) for k in range((part.count + 1) // 2))
        else:
            turned_over = part.mirrored and not part.fold
            yield from (Copy(part, k, turned_over and k % 2 == 1) for k in range(part.count))


def laid(outline: Outline, turn: int, mirrored: bool) -> tuple[Outline, tuple[float, float]]:
    """The outline turned over and turned, its box at the origin; and the shift that brought it there."""
    turned = [_turned(x, y, turn, mirrored) for x, y in outline]
    left, top = min(x for x, _ in turned), min(y for _, y in turned)
    return tuple((x - left, y - top) for x, y in turned), (-left, -top)


def phase_point(part: Part, turn: int, mirrored: bool) -> float:
    """How far the part's phase point lies from the start of its box, once laid."""
    if part.grid is None or part.grid.at is None:
        return 0.0
    _, (shift, _) = laid(part.outline, turn, mirrored)
    return _turned(*part.grid.at, turn, mirrored)[0] + shift


def _turned(x: float, y: float, turn: int, mirrored: bool) -> tuple[float, float]:
    x = -x if mirrored else x
    return {0: (x, y), 90: (-y, x), 180: (-x, -y), 270: (y, -x)}[turn % 360]


def _own_mirror(part: Part) -> bool:
    """Whether the part turned over is the part itself, turned as it may lie."""
    over = _corners(laid(part.outline, 0, True)[0])
    return any(over == _corners(laid(part.outline, way.turn, False)[0]) for way in part.ways)


def _corners(outline: Outline) -> frozenset[tuple[float, float]]:
    return frozenset((round(x, 3) + 0.0, round(y, 3) + 0.0) for x, y in outline)
