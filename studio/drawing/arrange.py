"""How pieces lie on a table to be looked at: as the skirt is worn, band above skirt, nothing overlapping."""

import math

from msgspec import Struct

from studio.draft import Piece
from studio.geometry import Box, Point

GAP, MORE = 120.0, 60.0
"""Between rows (mm): room for dimension lines and names; more by so much for each `FAR` that the pieces reach."""
FAR = 750.0
ASIDE = 140.0
"""Between pieces in a row (mm)."""


class Laid(Struct, frozen=True):
    """A piece and where its origin lies on the table, mm."""

    piece: Piece
    at: Point

    @property
    def box(self) -> Box:
        """Bounds of the cut line on the table."""
        return self.piece.cut_line.box.moved(*self.at)


def arrange(pieces: tuple[Piece, ...]) -> tuple[Laid, ...]:
    """Row under row: the band, the skirt from the waist down with its panels side by side from the opening round,
    small parts, what is cut of other cloth.

    Every row starts at the same seam line; the band's first row fixes the origin, so that pieces stay where they
    are while a number is dragged and only what it moves moves.
    """
    laid: list[Laid] = []
    y = 0.0
    rows = [[p for p in pieces if p.row == number] for number in sorted({p.row for p in pieces})]
    gap = _gap(rows)
    for row in rows:
        boxes = [p.cut_line.box for p in row]
        x, y = 0.0, y - min((b.top for b in boxes), default=0.0) if laid else y
        for p, box in zip(row, boxes, strict=True):
            x -= min(0.0, box.left) if x else 0.0
            laid.append(Laid(p, Point(x, y)))
            x += box.right + ASIDE
        y += max((b.bottom for b in boxes), default=-gap) + gap
    return tuple(laid)


def _gap(rows: list[list[Piece]]) -> float:
    """The larger what is looked at, the smaller it is shown: rows stand farther apart, by steps, so that words fit."""
    high = sum(max(p.cut_line.box.height for p in row) for row in rows)
    wide = max((sum(p.cut_line.box.width + ASIDE for p in row) for row in rows), default=0.0)
    return max(GAP, MORE * math.ceil(max(high, wide * 0.75) / FAR))


def table(laid: tuple[Laid, ...]) -> Box:
    """Bounds of everything on the table, mm."""
    box = laid[0].box
    for one in laid[1:]:
        box = box.joined(one.box)
    return box
