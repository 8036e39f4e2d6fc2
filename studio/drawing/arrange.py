"""How pieces lie on a table to be looked at: as the skirt is worn, band above skirt, nothing overlapping."""

import math
from itertools import groupby

from msgspec import Struct

from studio.draft import Piece
from studio.draft.piece import PARTS
from studio.geometry import Box, Point

GAP, MORE = 120.0, 60.0
"""Between rows (mm): room for dimension lines and names; more by so much for each `FAR` that the pieces reach."""
FAR = 750.0
SHAPE = 0.8
"""Height of what is looked at for each mm of its width: of a table, a board, a sheet."""
MUCH = 0.85
"""Parts go beside the skirt where the table becomes smaller than by this."""
ASIDE = 140.0
"""Between pieces in a row (mm)."""
LETTER = 12.0
"""Room in a row for each letter of a piece's name (mm), as many times as rows stand farther apart."""


class Laid(Struct, frozen=True):
    """A piece, where its origin lies on the table (mm), and the number it has on sheets and in the sewing order."""

    piece: Piece
    at: Point
    number: int = 0

    @property
    def box(self) -> Box:
        """Bounds of the cut line on the table."""
        return self.piece.cut_line.box.moved(*self.at)


def arrange(pieces: tuple[Piece, ...]) -> tuple[Laid, ...]:
    """Row under row: the band, the skirt from the waist down with its panels side by side from the opening round,
    small parts, what is cut of other cloth; these last two stand beside the skirt where all is seen much larger so.

    Every row starts at the same seam line; the band's first row fixes the origin, so that pieces stay where they
    are while a number is dragged and only what it moves moves.
    """
    rows = [[p for p in pieces if p.row == row] for row in sorted({p.row for p in pieces})]
    numbers = {p.id: k for k, p in enumerate(pieces, 1)}
    return tuple(Laid(one.piece, one.at, numbers[one.piece.id]) for one in _laid(rows))


def _laid(rows: list[list[Piece]]) -> tuple[Laid, ...]:
    steps = _steps(rows)
    under = _column(rows, Point(0, 0), steps)
    skirt = [row for row in rows if row[0].row < PARTS]
    parts = [list(same) for row in rows[len(skirt) :] for _, same in groupby(row, lambda p: p.cloth)]
    if len(skirt) < 2 or not parts:
        return under
    left = _column(skirt, Point(0, 0), steps)
    first = min(one.box.top for one in left if one.piece.row > 0)
    right = _column(parts, Point(table(left).right + 2 * ASIDE, first), steps)
    moved = table(left).right + 2 * ASIDE - table(right).left
    beside = left + tuple(Laid(one.piece, one.at.moved(moved, 0)) for one in right)
    return beside if _size(table(beside)) < MUCH * _size(table(under)) else under


def _column(rows: list[list[Piece]], at: Point, steps: int) -> tuple[Laid, ...]:
    """Rows under each other: the first row's origin lies at a place, or its top when it is not the band's."""
    laid: list[Laid] = []
    y = at.y
    for row in rows:
        boxes = [p.cut_line.box for p in row]
        x, y = 0.0, y - min(b.top for b in boxes) if laid or row[0].row else y
        for p, box in zip(row, boxes, strict=True):
            x -= min(0.0, box.left) if x else 0.0
            laid.append(Laid(p, Point(at.x + x, y)))
            x += max(box.right + ASIDE, box.left + LETTER * steps * len(p.name))
        y += max(b.bottom for b in boxes) + max(GAP, MORE * steps)
    return tuple(laid)


def _steps(rows: list[list[Piece]]) -> int:
    """The larger what is looked at, the smaller it is shown: pieces stand farther apart, by steps, for their words."""
    high = sum(max(p.cut_line.box.height for p in row) for row in rows)
    wide = max((sum(p.cut_line.box.width + ASIDE for p in row) for row in rows), default=0.0)
    return math.ceil(max(high, wide * SHAPE) / FAR)


def _size(box: Box) -> float:
    """How high the table must be, its width being somewhat more, mm."""
    return max(box.height, box.width * SHAPE)


def table(laid: tuple[Laid, ...]) -> Box:
    """Bounds of everything on the table, mm."""
    box = laid[0].box
    for one in laid[1:]:
        box = box.joined(one.box)
    return box
