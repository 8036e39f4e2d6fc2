"""The body, and where the tape goes; the measurement in hand lights up."""

from functools import lru_cache
from typing import Final

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QSizePolicy, QWidget

from studio.words import tr

from .. import theme

_TALL, _WIDE = 180.0, 190.0  # units of the drawing
_LEFT = 16.0  # the body stands left of the middle: the upright lines need the room
_ROUND: Final = {"body.waist": (62.0, 27.0), "body.hip": (112.0, 42.0)}  # height, half the width
_UPRIGHT: Final = {  # top, foot, and how far out
    "body.waist_to_hip": (62.0, 112.0, 58.0),
    "body.waist_to_knee": (62.0, 172.0, 74.0),
    "skirt.length": (66.0, 158.0, 74.0),
}


@lru_cache(maxsize=1)
def _body() -> QPainterPath:
    body = QPainterPath()
    for side in (1, -1):
        half = QPainterPath(QPointF(side * 12, 0))
        half.cubicTo(side * 13, 8, side * 34, 6, side * 38, 16)
        half.cubicTo(side * 40, 30, side * 31, 44, side * 27, 62)
        half.cubicTo(side * 25, 74, side * 42, 92, side * 42, 112)
        half.cubicTo(side * 42, 132, side * 33, 150, side * 31, 176)
        half.moveTo(side * 2, 132)
        half.cubicTo(side * 5, 150, side * 9, 160, side * 10, 176)
        body.addPath(half)
    return body


class Figure(QWidget):
    """Lights by the path of a field; other paths leave it dark."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.path = ""
        self.setMinimumHeight(110)
        self.setMaximumHeight(theme.px(232))
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Expanding)
        self.setAccessibleName(tr("Where the tape goes"))

    def sizeHint(self) -> QSize:
        return QSize(190, self.minimumHeight())  # it takes what is left, and never makes a form scroll

    def light(self, path: str) -> None:
        """Light the line of a measurement; "" for none."""
        if path != self.path:
            self.path = path
            self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        scale = min((self.height() - 8) / _TALL, self.width() / _WIDE, theme.px(125) / 100)
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.translate(self.width() / 2 - _LEFT * scale, (self.height() - _TALL * scale) / 2 + 2 * scale)
            painter.scale(scale, scale)
            painter.setBrush(Qt.BrushStyle.NoBrush)
            painter.setPen(self._pen(theme.colour("quiet"), 1.4 / scale))
            painter.drawPath(_body())
            for path, (height, half) in _ROUND.items():
                painter.setPen(self._line(path, scale))
                painter.drawArc(QRectF(-half, height - 6, 2 * half, 12), 180 * 16, 180 * 16)
            for path, (top, foot, out) in self._uprights():
                painter.setPen(self._line(path, scale))
                painter.drawLine(QPointF(out, top), QPointF(out, foot))
                for end in (top, foot):
                    painter.drawLine(QPointF(out - 4, end), QPointF(out + 4, end))

    def _uprights(self) -> list[tuple[str, tuple[float, float, float]]]:
        """The skirt's length stands where the knee's line does, and only while it is in hand."""
        hidden = "body.waist_to_knee" if self.path == "skirt.length" else "skirt.length"
        return [(path, line) for path, line in _UPRIGHT.items() if path != hidden]

    def _line(self, path: str, scale: float) -> QPen:
        on = path == self.path
        return self._pen(theme.colour("accent" if on else "edge"), (2.6 if on else 1.1) / scale)

    @staticmethod
    def _pen(shade: QColor, width: float) -> QPen:
        return QPen(shade, width, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap)
