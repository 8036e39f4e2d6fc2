"""A number that matters: a small caption, then figure and unit on one line."""

from PySide6.QtCore import QPointF, QSize, Qt, Signal
from PySide6.QtGui import QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QWidget

from .. import theme
from ..tokens import SIZE, SPACE


class Fact(QWidget):
    """It changes without moving; `pressed` is sent by a press on it."""

    pressed = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.caption = self.figure = self.unit = ""
        self.setFixedHeight(theme.px(SIZE.fact))
        self.setMinimumWidth(theme.px(96))

    def sizeHint(self) -> QSize:
        return QSize(theme.px(96), theme.px(SIZE.fact))

    def show_fact(self, caption: str, figure: str, unit: str = "", hint: str = "") -> None:
        """Say what it is, how much, of what; the hint is a tooltip that says how it comes about."""
        if (caption, figure, unit, hint) != (self.caption, self.figure, self.unit, self.toolTip()):
            self.caption, self.figure, self.unit = caption, figure, unit
            self.setToolTip(hint)
            self.setAccessibleName(f"{caption}: {figure} {unit}".strip())
            self.update()

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if event.button() == Qt.MouseButton.LeftButton and self.rect().contains(event.position().toPoint()):
            self.pressed.emit()

    def paintEvent(self, event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            painter.setFont(theme.font("small"))
            painter.setPen(theme.colour("quiet"))
            painter.drawText(QPointF(0, theme.px(13)), self.caption)
            painter.setFont(theme.font("number"))
            painter.setPen(theme.colour("ink"))
            base = theme.px(35)
            painter.drawText(QPointF(0, base), self.figure)
            after = painter.fontMetrics().horizontalAdvance(self.figure) + SPACE.xs
            painter.setFont(theme.font("body"))
            painter.setPen(theme.colour("quiet"))
            painter.drawText(QPointF(after, base), self.unit)
