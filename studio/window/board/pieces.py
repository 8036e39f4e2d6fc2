"""Painting the pieces: tissue, then lines from the faint to the firm, then what is lit."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QPainter, QPen

from .. import theme
from ..cloth.under import Prints
from .pens import SEE_THROUGH, halo, pale, pen
from .shape import Drawn, Shape


def paint_piece(painter: QPainter, shape: Shape, lit: str, under: Prints | None) -> None:
    """One piece, its origin where the painter stands, over its print; lines that the path `lit` governs are lit."""
    painter.fillPath(shape.outline, theme.colour("tissue"))
    if under is not None:
        under.paint(painter, shape.piece.id, shape.outline, shape.sewn, shape.scale, lit)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    for drawn in sorted(shape.drawn, key=lambda d: lit in d.governs):
        _paint(painter, shape, drawn, lit in drawn.governs)
    painter.fillPath(shape.heads, pen("grain").color())


def _paint(painter: QPainter, shape: Shape, drawn: Drawn, lit: bool) -> None:
    if drawn.ink == "gather" and shape.band:
        painter.strokePath(drawn.path, pale(shape.band, lit))
        return
    if lit:
        painter.strokePath(drawn.path, halo())
    if drawn.ink == "button":
        painter.fillPath(drawn.path, theme.colour("tissue", SEE_THROUGH))
    painter.strokePath(drawn.path, pen(drawn.ink, lit))


def paint_ghost(painter: QPainter, was: Shape, now: Shape | None, moved: bool, path: str) -> None:
    """Where a piece was before the drag: its outline if it has changed, and the lines that `path` moves."""
    painter.setBrush(Qt.BrushStyle.NoBrush)
    dotted = QPen(theme.colour("quiet"), 1, Qt.PenStyle.DotLine)
    if now is None or moved or was.piece.cut_line != now.piece.cut_line:
        painter.strokePath(was.outline, dotted)
    if now is None or moved or was.piece != now.piece:
        for drawn in was.drawn:
            if path in drawn.governs and drawn.ink in ("fold", "placement", "seam", "centre", "hole", "button"):
                painter.strokePath(drawn.path, dotted)
