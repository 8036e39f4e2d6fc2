"""The legend: what the lines and marks of this view mean, in the lower right corner."""

import math
from collections.abc import Iterator
from functools import lru_cache
from typing import Final

from PySide6.QtCore import QPointF, QRect, QRectF, QSize
from PySide6.QtGui import QPainter, QPen

from studio.words import tr

from .. import theme
from .ground import Kept
from .meanings import WORDS, Meaning
from .pens import advance, face, metrics
from .samples import SAMPLE, paint_sample

_ASIDE: Final = 12  # px from the board's corner
_PAD: Final = 12
_EDGE: Final = 8  # px above the first row and below the last
_GAP: Final = 8  # px between a sample and its words
_COLUMNS: Final = 3


class Legend:
    """The legend of one board, kept as a picture."""

    def __init__(self) -> None:
        self._kept = Kept()

    def box(self, shown: tuple[Meaning, ...], board: QSize) -> QRect:
        """Where it stands."""
        columns = _columns(shown)
        wide = _PAD + sum(_wide(column) + _PAD for column in columns) + 2
        high = len(columns[0]) * _row() + 2 * _EDGE
        return QRect(board.width() - wide - _ASIDE, board.height() - high - _ASIDE, wide, high)

    def paint(self, painter: QPainter, shown: tuple[Meaning, ...], board: QSize, density: float) -> None:
        """Paint it in the board's corner."""
        box = self.box(shown, board)
        picture = self._kept.picture(shown, box.size(), density, lambda p: _paint(p, shown, box.size()))
        painter.drawPixmap(box.topLeft(), picture)


@lru_cache(maxsize=8)
def _columns(shown: tuple[Meaning, ...]) -> list[tuple[Meaning, ...]]:
    """What is shown, column by column, all but the last equally long."""
    rows = math.ceil(len(shown) / _COLUMNS)
    return [shown[k : k + rows] for k in range(0, len(shown), rows)]


def _wide(column: tuple[Meaning, ...]) -> int:
    return SAMPLE + _GAP + math.ceil(max(advance(tr(WORDS[m]), "small") for m in column))


def _row() -> int:
    return math.ceil(metrics("small").height()) + 3


def _places(shown: tuple[Meaning, ...]) -> Iterator[tuple[Meaning, float, float]]:
    """Where each sample begins, and the middle of its row."""
    x = _PAD
    for column in _columns(shown):
        for row, meaning in enumerate(column):
            yield meaning, x, _EDGE + _row() * row + _row() // 2 + 0.5
        x += _wide(column) + _PAD


def _paint(painter: QPainter, shown: tuple[Meaning, ...], size: QSize) -> None:
    painter.setPen(QPen(theme.colour("hair"), 1))
    painter.setBrush(theme.colour("board"))
    painter.drawRoundedRect(QRectF(0.5, 0.5, size.width() - 1, size.height() - 1), 6, 6)
    painter.setFont(face("small"))
    small = metrics("small")
    for meaning, x, y in _places(shown):
        paint_sample(painter, meaning, x, y)
        painter.setPen(theme.colour("ink"))
        words = QPointF(x + SAMPLE + _GAP, round(y + (small.ascent() - small.descent()) / 2))
        painter.drawText(words, tr(WORDS[meaning]))
