"""How heavy a finding is, told by shape before colour: ring for a note, triangle for a doubt, square for a stop."""

from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPen

from studio.check.finding import Weight
from studio.words import tr

from .. import theme

MARK: Final = 7.0
"""Half the height of a mark, px."""

_ROUND: Final = (Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap, Qt.PenJoinStyle.RoundJoin)


def spoken(weight: Weight) -> str:
    """The weight as a word, for who cannot see the shape."""
    return {"note": tr("Note"), "doubt": tr("Doubt"), "stop": tr("Stop")}[weight]


def paint_weight(painter: QPainter, weight: Weight, centre: QPointF, radius: float = MARK) -> None:
    """Draw a weight's shape round a point."""
    painter.save()
    if weight == "stop":
        _square(painter, centre, radius)
    else:
        painter.setPen(QPen(theme.colour(weight), 1.5, *_ROUND))
        painter.setBrush(theme.colour(f"{weight}_bg"))
        if weight == "note":
            painter.drawEllipse(centre, radius - 1, radius - 1)
            _stroke_and_dot(painter, centre, radius, -1)
        else:
            painter.drawPath(_triangle(centre, radius))
            _stroke_and_dot(painter, centre + QPointF(0, 1), radius, 1)
    painter.restore()


def _square(painter: QPainter, centre: QPointF, radius: float) -> None:
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(theme.colour("stop"))
    side = 2 * radius - 1
    painter.drawRoundedRect(QRectF(centre.x() - side / 2, centre.y() - side / 2, side, side), 2, 2)
    painter.setPen(QPen(theme.colour("field"), 1.8, *_ROUND))
    painter.drawLine(centre - QPointF(radius * 0.4, 0), centre + QPointF(radius * 0.4, 0))


def _triangle(centre: QPointF, radius: float) -> QPainterPath:
    path = QPainterPath(centre + QPointF(0, 0.5 - radius))
    path.lineTo(centre + QPointF(radius, radius - 1.5))
    path.lineTo(centre + QPointF(-radius, radius - 1.5))
    path.closeSubpath()
    return path


def _stroke_and_dot(painter: QPainter, centre: QPointF, radius: float, way: int) -> None:
    """An i (way −1) or an exclamation mark (way 1)."""
    painter.drawLine(centre - QPointF(0, radius * 0.35 * way), centre + QPointF(0, radius * 0.1 * way))
    painter.drawPoint(centre + QPointF(0, radius * 0.5 * way))
