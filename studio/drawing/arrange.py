"""How pieces lie on a table to be looked at: as the skirt is worn, band above skirt, nothing overlapping."""

from msgspec import Struct

from studio.draft import Piece
from studio.geometry import Box, Point

GAP = 120.0
"""Between rows (mm): room for dimension lines."""
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
    for number in sorted({p.row for p in pieces}):
        row = [p for p in pieces if p.row == number]
        boxes = [p.cut_line.box for p in row]
        x, y = 0.0, y - min((b.top for b in boxes), default=0.0) if laid else y
        for p, box in zip(row, boxes, strict=True):
            x -= min(0.0, box.left) if x else 0.0
            laid.append(Laid(p, Point(x, y)))
            x += box.right + ASIDE
        y += max((b.bottom for b in boxes), default=-GAP) + GAP
    return tuple(laid)


def table(laid: tuple[Laid, ...]) -> Box:
    """Bounds of everything on the table, mm."""
    box = laid[0].box
    for one in laid[1:]:
        box = box.joined(one.box)
    return box
