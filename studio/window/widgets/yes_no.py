"""A field whose value is yes or no."""

from typing import Final

from PySide6.QtCore import QPoint, QRectF, QSize, Qt
from PySide6.QtGui import QFontMetrics, QPainter, QPaintEvent
from PySide6.QtWidgets import QCheckBox, QHBoxLayout, QWidget

from studio.brief.declare import Declared
from studio.brief.typed import Typed
from studio.units import Unit
from studio.words import tr

from .. import icons, theme
from ..tokens import SIZE, SPACE
from .entry import Entry
from .strokes import frame, ring, slab

_SQUARE: Final = 16.0


class Tick(QCheckBox):
    """Qt's own check box, painted in the colours worn."""

    def __init__(self, text: str, parent: QWidget) -> None:
        super().__init__(text, parent)
        self.setMinimumHeight(theme.px(SIZE.box_h))
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)

    def sizeHint(self) -> QSize:
        words = QFontMetrics(theme.font()).horizontalAdvance(self.text())
        return QSize(round(_SQUARE) + SPACE.s + words + SPACE.xs, theme.px(SIZE.box_h))

    def hitButton(self, pos: QPoint) -> bool:
        return self.rect().contains(pos)

    def paintEvent(self, event: QPaintEvent) -> None:
        on, ticked = self.isEnabled(), self.isChecked()
        whole = QRectF(self.rect())
        square = QRectF(0.5, whole.center().y() - _SQUARE / 2, _SQUARE, _SQUARE)
        token = "off" if not on else "accent" if ticked else "ink" if self.underMouse() else "edge"
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            slab(painter, square, theme.colour(token if ticked else "field" if on else "panel"))
            frame(painter, square, token if on or ticked else "hair")
            if ticked:
                icons.paint(painter, "tick", square.adjusted(1, 1, -1, -1), "on_accent" if on else "panel")
            if self.hasFocus():
                ring(painter, square.adjusted(-0.5, -0.5, 0.5, 0.5).adjusted(-2, -2, 2, 2) & whole)
            painter.setFont(theme.font())
            painter.setPen(theme.colour("ink" if on else "off"))
            painter.drawText(whole.adjusted(_SQUARE + SPACE.s, 0, 0, 0), Qt.AlignmentFlag.AlignVCenter, self.text())


class YesNo(Entry):
    """Yes or no, as a square to tick; its words are the label."""

    def __init__(self, declared: Declared, unit: Unit, parent: QWidget) -> None:
        super().__init__(declared, unit, parent)
        self.tick = Tick(tr(declared.words), self)
        self.tick.setAccessibleName(tr(declared.words))
        self.tick.setAccessibleDescription(tr(declared.hint))
        row = QHBoxLayout(self)
        row.setContentsMargins(SPACE.m, SPACE.xs, SPACE.m, SPACE.xs)
        row.addWidget(self.tick)
        row.addStretch(1)
        self._watch(self.tick)
        self.tick.clicked.connect(self._choose)
        self.show_value(declared.default, unit)

    def show_value(self, value: Typed, unit: Unit) -> None:
        super().show_value(value, unit)
        self.tick.setChecked(bool(value))

    def _choose(self) -> None:
        self._change(self.tick.isChecked())
        self._finish()
