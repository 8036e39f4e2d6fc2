"""The print under the pieces: each shows the very part of the cloth that it will be cut from."""

from typing import Final

from msgspec import Struct
from PySide6.QtCore import Qt
from PySide6.QtGui import QPainter, QPainterPath, QTransform

from studio.brief import Cloth
from studio.brief.bands import bands_at
from studio.cloth.placed import Placed
from studio.workroom import Docket

from .. import theme
from .print import paint_lit, paint_print
from .way import to_cloth

_VEIL: Final = 60
_HIDDEN: Final = 150
"""Alpha of the tissue over the print, so that lines read; and over what seams and hem will hide."""


class Prints(Struct, frozen=True):
    """A printed cloth, and where the first copy of each piece lies on it."""

    cloth: Cloth
    placed: dict[str, Placed]
    drop: float = 0.0
    """How far across the cloth the fold lies, mm."""

    def paint(
        self, painter: QPainter, piece: str, outline: QPainterPath, sewn: QPainterPath, scale: float, lit: str = ""
    ) -> None:
        """The print inside an outline, a veil over it, and a thicker one beyond the seam line; px from its origin.

        The bands that the path `lit` speaks of are lit.
        """
        placed = self.placed.get(piece)
        if placed is None:
            return
        way = _to_piece(placed, scale, self.drop)
        start, end = placed.at.x, placed.at.x + placed.along
        painter.save()
        painter.setClipPath(outline, Qt.ClipOperation.IntersectClip)
        painter.setTransform(way, True)
        paint_print(painter, self.cloth, start, end, scale)
        painter.restore()
        painter.fillPath(outline, theme.colour("tissue", _VEIL))
        hidden = QPainterPath(outline)
        hidden.addPath(sewn)
        hidden.setFillRule(Qt.FillRule.OddEvenFill)
        painter.fillPath(hidden, theme.colour("tissue", _HIDDEN))
        if bands := bands_at(lit, self.cloth.bands):
            painter.save()
            painter.setClipPath(outline, Qt.ClipOperation.IntersectClip)
            painter.setTransform(way, True)
            paint_lit(painter, bands, start, end)
            painter.restore()


def _to_piece(placed: Placed, scale: float, drop: float) -> QTransform:
    """From the cloth (mm from its first edge) to a piece on the board (px from its origin)."""
    back, _ = to_cloth(placed).inverted()
    return QTransform.fromTranslate(0, -drop) * back * QTransform.fromScale(scale, scale)


def prints(docket: Docket) -> Prints | None:
    """The print under a docket's pieces, or None for a plain cloth."""
    cloth, lay = docket.brief.cloth, docket.lay
    if not cloth.bands and not cloth.photo:
        return None
    first = {p.piece.id: p for p in reversed(lay.placed) if not p.mirrored or p.half}
    return Prints(cloth, first, lay.width if lay.folded else 0.0)
