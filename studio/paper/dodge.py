"""Words that slide off the joins, so that none is cut in two when the sheets are trimmed.

Words on a line slide along it; a block, such as the title block, may go anywhere inside its piece. Neither may come
to lie on a line or on words that it was clear of before. What finds no free place stays.
"""

from collections.abc import Iterable, Sequence
from itertools import product

from msgspec import Struct
from msgspec.structs import replace

from studio.drawing import Drawing, Group, Mark, Stroke, Words, flat_marks, moved
from studio.drawing.lettering import words_box, words_corners
from studio.geometry import Box

from .grid import Grid
from .plan import PatternPiece, Plan
from .reach import Trace, boxed, surrounds, trace
from .sizes import BLEED

APART = BLEED + 1
"""Least distance between words and a join, mm, so that no letter shows on the tab; a block keeps off the gauges too."""

_BLOCK_APART = 11.0
_FAR = 150
_FIELD = 8.0
_HAIR = 0.2


class _Joins(Struct, frozen=True):
    boxes: tuple[Box, ...]

    def near(self, box: Box) -> "_Joins":
        return _Joins(tuple(j for j in self.boxes if j.meets(box)))

    def cut(self, box: Box) -> bool:
        return any(box.meets(j) for j in self.boxes)


def dodged(plan: Plan, grid: Grid) -> Plan:
    """The plan with its words off the grid's joins."""
    joins = _Joins(tuple(_strip(j.way == "upright", j.place, j.start, j.end) for j in grid.joins))
    return Plan(tuple(_piece(p, joins) for p in plan.pieces)) if joins.boxes else plan


def _strip(upright: bool, place: float, start: float, end: float) -> Box:
    return Box(place, start, place, end) if upright else Box(start, place, end, place)


def _piece(piece: PatternPiece, joins: _Joins) -> PatternPiece:
    joins = joins.near(piece.box.grown(_BLOCK_APART))
    if not joins.boxes:
        return piece
    lines = [trace(m.path) for m in flat_marks(piece.drawing) if isinstance(m, Stroke) and m.path.curves]
    outline = trace(piece.outline)
    words = [words_box(m) for m in flat_marks(piece.drawing) if isinstance(m, Words)]
    blocks: list[Group] = []
    boxes = [boxed((b,))[0].box for b in piece.blocks]
    for k, block in enumerate(piece.blocks):
        others = [*words, *boxes[:k], *boxes[k + 1 :]]
        dx, dy = _block_shift(boxes[k], joins, lines, others, outline)
        blocks.append(Group(block.name, moved(block.marks, dx, dy)))
        boxes[k] = boxes[k].moved(dx, dy)
    taken = [*words, *boxes]
    return replace(piece, drawing=_slid(piece.drawing, joins, lines, taken, piece.box), blocks=tuple(blocks))


def _slid(drawing: Drawing, joins: _Joins, lines: Sequence[Trace], taken: list[Box], inside: Box) -> Drawing:
    """The drawing with every word slid along its own line; `taken` follows the words as they move."""
    kept: list[Mark] = []
    for mark in drawing:
        if isinstance(mark, Words) and joins.cut(words_box(mark).grown(APART)):
            there = _word_place(mark, joins, lines, taken, inside)
            taken[taken.index(words_box(mark))] = words_box(there)
            mark = there
        elif isinstance(mark, Group):
            mark = Group(mark.name, _slid(mark.marks, joins, lines, taken, inside), mark.clip)
        kept.append(mark)
    return tuple(kept)


def _word_place(words: Words, joins: _Joins, lines: Sequence[Trace], taken: Sequence[Box], inside: Box) -> Words:
    a, b, *_ = words_corners(words)
    way = a.to(b).unit()
    here = words_box(words)
    others = [t for t in taken if t != here and not t.meets(here)]
    crossed = [t for t in lines if t.touches(here)]
    free = [t for t in lines if not t.touches(here)]
    for far in range(1, _FAR + 1):
        for distance in (far, -far):
            there = here.moved(way.x * distance, way.y * distance)
            if joins.cut(there.grown(APART)) or not inside.holds(there) or any(there.meets(o) for o in others):
                continue
            if any(t.touches(there) for t in free) or (crossed and not any(t.touches(there) for t in crossed)):
                continue
            return replace(words, at=words.at.along(way, distance))
    return words


def _block_shift(
    box: Box, joins: _Joins, lines: Sequence[Trace], others: Iterable[Box], outline: Trace
) -> tuple[float, float]:  # fmt: skip
    if not joins.cut(box.grown(_BLOCK_APART)):
        return 0.0, 0.0
    blocking = [o.grown(_HAIR) for o in others]
    free = [t for t in lines if not t.touches(box.grown(1))]
    for dx, dy in _ways(box, joins):
        there = box.moved(dx, dy)
        if not outline.box.holds(there) or joins.cut(there.grown(_BLOCK_APART)):
            continue
        if any(there.meets(b) for b in blocking) or any(t.touches(there.grown(1)) for t in free):
            continue
        if surrounds(outline.points, there.centre) and not outline.touches(there):
            return dx, dy
    return 0.0, 0.0


def _ways(box: Box, joins: _Joins) -> list[tuple[float, float]]:
    """Ways a block may be moved, the shortest first: by steps, and so that it just clears a join."""
    xs = {x * _FIELD for x in range(-75, 76)}
    ys = {y * _FIELD for y in range(-19, 20)}
    apart = _BLOCK_APART + 0.01
    for j in joins.boxes:
        if j.width:
            ys |= {j.top + apart - box.top, j.top - apart - box.bottom}
        else:
            xs |= {j.left + apart - box.left, j.left - apart - box.right}
    return sorted(product(xs, ys), key=lambda d: (d[0] ** 2 + d[1] ** 2, d))
