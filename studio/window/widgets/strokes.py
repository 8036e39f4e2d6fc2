"""What painted widgets have in common: the plate under what is in hand, the ring of focus, the hairline, the fade."""

from PySide6.QtCore import QAbstractAnimation, QRectF, Qt, QVariantAnimation
from PySide6.QtGui import QColor, QPainter, QPen
from PySide6.QtWidgets import QFrame, QWidget

from .. import theme
from ..tokens import MOTION, RADIUS


def slab(painter: QPainter, box: QRectF, shade: QColor, radius: float = RADIUS.control) -> None:
    """A filled round-cornered box without an edge."""
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(shade)
    painter.drawRoundedRect(box, radius, radius)


def frame(painter: QPainter, box: QRectF, token: str, width: float = 1.0, radius: float = RADIUS.control) -> None:
    """An edge that lies wholly inside its box, and no filling."""
    painter.setPen(QPen(theme.colour(token), width))
    painter.setBrush(Qt.BrushStyle.NoBrush)
    inset = width / 2
    painter.drawRoundedRect(box.adjusted(inset, inset, -inset, -inset), radius, radius)


def ring(painter: QPainter, box: QRectF, radius: float = RADIUS.control) -> None:
    """The ring of keyboard focus."""
    frame(painter, box, "accent", 2.0, radius)


def hairline(parent: QWidget, *, upright: bool = False) -> QFrame:
    """The line between two areas."""
    line = QFrame(parent)
    line.setObjectName("hairline")
    if upright:
        line.setFixedWidth(1)
    else:
        line.setFixedHeight(1)
    return line


class Fade(QVariantAnimation):
    """How far a plate is lit, 0 to 1: there in 80 ms, or at once where the desktop wants no motion."""

    def __init__(self, owner: QWidget) -> None:
        super().__init__(owner)
        self._owner = owner
        self.level = 0.0
        self._on = False
        self.setStartValue(0.0)
        self.setEndValue(1.0)
        self.valueChanged.connect(self._show)

    def to(self, on: bool) -> None:
        """Light up, or go out."""
        if on == self._on:
            return
        self._on = on
        self.setDuration(MOTION.plate if self._owner.isVisible() and theme.moves(self._owner) else 0)
        self.setDirection(QAbstractAnimation.Direction.Forward if on else QAbstractAnimation.Direction.Backward)
        self.start()

    def _show(self, level: float) -> None:
        self.level = level
        self._owner.update()
