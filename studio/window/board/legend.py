"""The legend: what the lines of this view mean, in the lower right corner."""

import math
from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QLineF, QPointF, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPen

from studio.geometry import Point
from studio.words import tr

from .. import theme
from .ground import Kept
from .heads import add_head
from .pens import SEE_THROUGH, Ink, advance, face, metrics, pen

WORDS: Final[dict[Ink, str]] = {
    "cut": "cut",
    "seam": "seam",
    "fold": "fold, hem",
    "centre": "centre, quarter",
    "grain": "grain",
    "gather": "gather row",
    "notch": "notch, stop",
    "button": "button, hole",
    "hole": "hook, bar",
}
"""Every ink and its words, in the order they stand; a hole beside a button has no words of its own."""
_ASIDE: Final = 16  # px from the board's corner
SAMPLE: Final = 34
"""How long a sample of a line is, px."""
_PAD: Final = 12


class Legend:
    """The legend of one board, kept as a picture."""

    def __init__(self) -> None:
        self._kept = Kept()

    def box(self, inks: Sequence[Ink], board: QSize) -> QRect:
        """Where it stands."""
        rows = math.ceil(len(inks) / 2)
        wide = 2 * (_column(inks) + _PAD) + 2
        high = rows * _row() + 16
        return QRect(board.width() - wide - _ASIDE, board.height() - high - _ASIDE, wide, high)

    def paint(self, painter: QPainter, inks: tuple[Ink, ...], board: QSize, density: float) -> None:
        """Paint it in the board's corner."""
        box = self.box(inks, board)
        painter.drawPixmap(box.topLeft(), self._kept.picture(inks, box.size(), density, lambda p: _paint(p, inks, box)))


def _column(inks: Sequence[Ink]) -> int:
    return SAMPLE + 8 + math.ceil(max(advance(tr(WORDS[i]), "small") for i in inks))


def _row() -> int:
    return math.ceil(metrics("small").height()) + 5


def _paint(painter: QPainter, inks: Sequence[Ink], box: QRect) -> None:
    painter.setPen(QPen(theme.colour("hair"), 1))
    painter.setBrush(theme.colour("board"))
    painter.drawRoundedRect(QRectF(0.5, 0.5, box.width() - 1, box.height() - 1), 6, 6)
    painter.setFont(face("small"))
    rows = math.ceil(len(inks) / 2)
    small = metrics("small")
    for k, ink in enumerate(inks):
        column, row = divmod(k, rows)
        x, y = _PAD + column * (_column(inks) + _PAD), 8 + _row() * row + _row() // 2 + 0.5
        paint_sample(painter, ink, x, y)
        painter.setPen(theme.colour("ink"))
        painter.drawText(QPointF(x + SAMPLE + 8, round(y + (small.ascent() - small.descent()) / 2)), tr(WORDS[ink]))


def paint_sample(painter: QPainter, ink: Ink, x: float, y: float) -> None:
    """Draw a sample of an ink, `SAMPLE` px long from x, with its middle at y."""
    middle = x + SAMPLE / 2
    painter.setBrush(Qt.BrushStyle.NoBrush)
    painter.setPen(pen(ink))
    if ink == "notch":
        painter.setPen(pen("cut"))
        painter.drawLine(QLineF(x, y - 4, x + SAMPLE, y - 4))
        painter.drawLine(QLineF(middle, y - 4, middle, y + 4))
    elif ink == "button":
        painter.setBrush(theme.colour("tissue", SEE_THROUGH))
        painter.drawEllipse(QPointF(x + 8, y), 4.5, 4.5)
        painter.drawLines([QLineF(x + 6.2, y, x + 9.8, y), QLineF(x + 8, y - 1.8, x + 8, y + 1.8)])
        painter.setPen(pen("hole"))
        painter.drawLines(_barred(x + 20, x + SAMPLE, y))
    elif ink == "hole":
        painter.drawLines([QLineF(x + 4, y, x + 14, y), QLineF(x + 25, y - 5, x + 25, y + 5)])
    else:
        painter.drawLine(QLineF(x, y, x + SAMPLE, y))
        if ink == "grain":
            heads = QPainterPath()
            start, end = Point(x, y), Point(x + SAMPLE, y)
            add_head(heads, start, end)
            add_head(heads, end, start)
            painter.fillPath(heads, pen("grain").color())


def _barred(start: float, end: float, y: float) -> list[QLineF]:
    return [QLineF(start, y, end, y), *(QLineF(x, y - 3, x, y + 3) for x in (start, end))]
