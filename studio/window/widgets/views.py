"""The switch between views: words in a row, the chosen one on a bar that joins the canvas below."""

from collections.abc import Sequence

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QFontMetrics, QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QButtonGroup, QHBoxLayout, QWidget

from .. import theme
from ..tokens import RADIUS, SIZE, SPACE
from .strokes import ring, slab


class ViewWord(QAbstractButton):
    """One word of the switch."""

    def __init__(self, text: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.setText(text)
        self.setCheckable(True)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setFixedHeight(theme.px(SIZE.toolbar))

    def sizeHint(self) -> QSize:
        words = QFontMetrics(theme.font("title", bold=True)).horizontalAdvance(self.text())
        return QSize(words + 20, theme.px(SIZE.toolbar))

    def minimumSizeHint(self) -> QSize:
        return self.sizeHint()

    def paintEvent(self, event: QPaintEvent) -> None:
        box, on = QRectF(self.rect()), self.isChecked()
        plate = box.adjusted(2, 9, -2, -9)
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            if self.underMouse() and not on and self.isEnabled():
                slab(painter, plate, theme.colour("hover"), RADIUS.tile)
            painter.setFont(theme.font("title", bold=on))
            painter.setPen(theme.colour("off" if not self.isEnabled() else "ink" if on else "quiet"))
            painter.drawText(box, Qt.AlignmentFlag.AlignCenter, self.text())
            if on:
                slab(painter, QRectF(10, box.height() - 3, box.width() - 20, 3), theme.colour("accent"), 1.5)
            if self.hasFocus():
                ring(painter, plate, RADIUS.tile)


class ViewSwitch(QWidget):
    """Only the views there are, each a name and its words; arrow keys go from one to the next."""

    chosen = Signal(str)

    def __init__(self, views: Sequence[tuple[str, str]], parent: QWidget) -> None:
        super().__init__(parent)
        self._names = [name for name, _ in views]
        self._group = QButtonGroup(self)
        row = QHBoxLayout(self)
        row.setContentsMargins(SPACE.m, 0, 0, 0)
        row.setSpacing(0)
        for place, (_, words) in enumerate(views):
            word = ViewWord(words, self)
            self._group.addButton(word, place)
            row.addWidget(word)
        row.addStretch(1)
        self._group.button(0).setChecked(True)
        self._group.idToggled.connect(self._toggled)

    @property
    def view(self) -> str:
        """The name of the view shown."""
        return self._names[self._group.checkedId()]

    def word(self, name: str) -> QAbstractButton:
        """The button of a view, to disable it or to give it a tooltip."""
        return self._group.button(self._names.index(name))

    def choose(self, name: str) -> None:
        """Show a view."""
        self.word(name).setChecked(True)

    def _toggled(self, place: int, on: bool) -> None:
        if on:
            self.chosen.emit(self._names[place])
