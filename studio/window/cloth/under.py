"""The print under the pieces: each shows the very part of the cloth that it will be cut from."""

from typing import Final

from msgspec import Struct
from PySide6.QtCore import Qt
from PySide6.QtGui import QPainter, QPainterPath

from studio.brief import Cloth
from studio.cloth.placed import Placed
from studio.workroom import Docket

from .. import theme
from .print import paint_print
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

    def paint(self, painter: QPainter, piece: str, outline: QPainterPath, sewn: QPainterPath, scale: float) -> None:
        """The print inside an outline, a veil over it, and a thicker one beyond the seam line; px from its origin."""
        placed = self.placed.get(piece)
        if placed is None:
            return
        painter.save()
        painter.setClipPath(outline, Qt.ClipOperation.IntersectClip)
        painter.scale(scale, scale)
        back, _ = to_cloth(placed).inverted()
        painter.setTransform(back, True)
        painter.translate(0, -self.drop)
        paint_print(painter, self.cloth, placed.at.x, placed.at.x + placed.along, scale)
        painter.restore()
        painter.fillPath(outline, theme.colour("tissue", _VEIL))
        hidden = QPainterPath(outline)
        hidden.addPath(sewn)
        hidden.setFillRule(Qt.FillRule.OddEvenFill)
        painter.fillPath(hidden, theme.colour("tissue", _HIDDEN))


def prints(docket: Docket) -> Prints | None:
    """The print under a docket's pieces, or None for a plain cloth."""
    cloth, lay = docket.brief.cloth, docket.lay
    if not cloth.bands and not cloth.photo:
        return None
    first = {p.piece.id: p for p in reversed(lay.placed) if not p.mirrored or p.half}
    return Prints(cloth, first, lay.width if lay.folded else 0.0)
