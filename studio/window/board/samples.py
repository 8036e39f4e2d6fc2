"""A sample of each line and mark, as it is drawn on the board."""

from typing import Final

from PySide6.QtCore import QLineF, QPointF, Qt
from PySide6.QtGui import QPainter, QPainterPath

from studio.geometry import Point

from .. import theme
from .heads import add_head
from .meanings import Meaning
from .pens import LINES, SEE_THROUGH, Ink, pale, pen

SAMPLE: Final = 34
"""How long a sample is, px."""
_BAND: Final = 7.0  # px; gather rows that run together


def paint_sample(painter: QPainter, meaning: Meaning, x: float, y: float) -> None:
    """Draw the sample of a meaning, `SAMPLE` px long from x, with its middle at y."""
    end, middle = x + SAMPLE, x + SAMPLE / 2
    painter.setBrush(Qt.BrushStyle.NoBrush)
    match meaning:
        case "gather":
            _draw_rows(painter, x, end, y)
        case "row stop":
            _draw_rows(painter, x, middle, y)
            _draw(painter, "notch", QLineF(middle, y - 6, middle, y + 6))
        case "slit top":
            _draw(painter, "seam", QLineF(x, y, middle, y))
            _draw(painter, "notch", QLineF(middle, y - 4, middle, y + 4))
        case "zip stop":
            _draw(painter, "seam", QLineF(x, y, end, y))
            _draw(painter, "notch", QLineF(middle, y - 4, middle, y + 4))
        case "notch":
            _draw(painter, "cut", QLineF(x, y - 4, end, y - 4))
            _draw(painter, "notch", QLineF(middle, y - 4, middle, y + 4))
        case "button":
            _draw_button(painter, QPointF(middle, y))
        case "buttonhole":
            ends = (middle - 9, middle + 9)
            _draw(painter, "hole", QLineF(ends[0], y, ends[1], y), *(QLineF(a, y - 3, a, y + 3) for a in ends))
        case "direction":
            _draw(painter, "grain", QLineF(x, y, end, y))
            _draw_head(painter, Point(end, y), Point(x, y))
        case "hip":
            _draw(painter, "centre", QLineF(x, y, end, y))
            _draw(painter, "seam", *(QLineF(a, y - 6, a, y + 6) for a in (x + 1, end - 1)))
        case "hook":
            _draw(painter, "hole", QLineF(x + 4, y, x + 14, y), QLineF(x + 25, y - 5, x + 25, y + 5))
        case _:
            _draw(painter, meaning, QLineF(x, y, end, y))
            if meaning == "grain":
                _draw_head(painter, Point(x, y), Point(end, y))
                _draw_head(painter, Point(end, y), Point(x, y))


def _draw(painter: QPainter, ink: Ink, *lines: QLineF) -> None:
    painter.setPen(pen(ink))
    painter.drawLines(list(lines))


def _draw_rows(painter: QPainter, start: float, end: float, y: float) -> None:
    """Dots, on the pale band that rows become where they run together."""
    painter.setPen(pale(_BAND))
    painter.drawLine(QLineF(start, y, end, y))
    _draw(painter, "gather", QLineF(start, y, end, y))


def _draw_button(painter: QPainter, at: QPointF) -> None:
    painter.setPen(pen("button"))
    painter.setBrush(theme.colour("tissue", SEE_THROUGH))
    painter.drawEllipse(at, 4.5, 4.5)
    painter.drawLines([QLineF(at.x() - 1.8, at.y(), at.x() + 1.8, at.y()),
                       QLineF(at.x(), at.y() - 1.8, at.x(), at.y() + 1.8)])  # fmt: skip


def _draw_head(painter: QPainter, tip: Point, tail: Point) -> None:
    head = QPainterPath()
    add_head(head, tip, tail)
    painter.fillPath(head, theme.colour(LINES["grain"].token))
