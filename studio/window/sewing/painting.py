"""Small drawings painted in the colours worn: what is black on paper is ink here, white is the cloth's right side."""

from collections.abc import Iterable
from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QFontMetricsF, QPainter, QPen

from studio.drawing import PENS, Colour, Mark, Stroke, Words
from studio.drawing.lettering import ABOVE, BELOW

from .. import theme
from ..paths import painter_path

TOKENS: Final[dict[Colour, str]] = {
    "black": "ink", "accent": "accent", "grey": "quiet", "white": "tissue", "tone": "board",
}  # fmt: skip
"""The colour of each kind of ink in the window."""
_LEAST: Final = 0.9  # px; thinner lines are lost on a screen


def paint(painter: QPainter, drawing: Iterable[Mark], scale: float) -> None:
    """Paint a drawing in mm, `scale` px for each."""
    for mark in drawing:
        if isinstance(mark, Stroke):
            _stroke(painter, mark, scale)
        elif isinstance(mark, Words):
            _words(painter, mark, scale)
        else:
            painter.save()
            if mark.clip is not None:
                left, top, right, foot = (v * scale for v in mark.clip)
                painter.setClipRect(QRectF(left, top, right - left, foot - top), Qt.ClipOperation.IntersectClip)
            paint(painter, mark.marks, scale)
            painter.restore()


def _stroke(painter: QPainter, stroke: Stroke, scale: float) -> None:
    painter.setPen(Qt.PenStyle.NoPen if stroke.bare else _pen(stroke, scale))
    painter.setBrush(theme.colour(TOKENS[stroke.fill]) if stroke.fill else Qt.BrushStyle.NoBrush)
    painter.drawPath(painter_path((stroke.path,), scale))


def _pen(stroke: Stroke, scale: float) -> QPen:
    wide = max(stroke.line_width * scale, _LEAST)
    pen = QPen(theme.colour(TOKENS[stroke.line_colour]), wide, c=Qt.PenCapStyle.FlatCap)
    if pattern := PENS[stroke.ink].pattern:
        pen.setDashPattern([float(p) for p in pattern])
    return pen


def _words(painter: QPainter, words: Words, scale: float) -> None:
    font = theme.font("small", bold=words.face in ("semibold", "bold"))
    font.setPixelSize(max(round(words.height * scale), 1))
    wide = QFontMetricsF(font).horizontalAdvance(words.text)
    left = {"left": 0.0, "centre": -wide / 2, "right": -wide}[words.align]
    painter.save()
    painter.translate(words.at.x * scale, words.at.y * scale)
    painter.rotate(words.turn)
    if words.patch:
        height = float(font.pixelSize())
        painter.fillRect(QRectF(left - 1, -ABOVE * height, wide + 2, (ABOVE + BELOW) * height), theme.colour("tissue"))
    painter.setFont(font)
    painter.setPen(theme.colour(TOKENS[words.letter_colour]))
    painter.drawText(QPointF(left, 0), words.text)
    painter.restore()
