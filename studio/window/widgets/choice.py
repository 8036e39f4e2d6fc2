"""A field whose value is a word."""

from typing import Final

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QWheelEvent
from PySide6.QtWidgets import QComboBox, QHBoxLayout, QStyledItemDelegate, QWidget

from studio.brief.declare import Declared
from studio.brief.typed import Typed
from studio.units import Unit
from studio.words import tr

from .. import icons, theme
from ..tokens import SIZE, SPACE
from .entry import Entry
from .label import Label
from .strokes import frame, slab

_CHEVRON: Final = 14.0


def opened(word: str) -> str:
    """A word of the brief as it stands by itself: with a capital, the rest as it is."""
    return word[:1].upper() + word[1:]


class Pick(QComboBox):
    """Qt's own list of choices; its closed box is painted, since a style sheet leaves a bevel behind."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setFixedSize(theme.px(SIZE.pick_w), theme.px(SIZE.box_h))
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setItemDelegate(QStyledItemDelegate(self))  # the only one that heeds the style sheet

    def wheelEvent(self, event: QWheelEvent) -> None:
        event.ignore()  # the wheel scrolls the form

    def paintEvent(self, event: QPaintEvent) -> None:
        box, on = QRectF(self.rect()), self.isEnabled()
        edge = "hair" if not on else "accent" if self.hasFocus() else "ink" if self.underMouse() else "edge"
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            slab(painter, box.adjusted(0.5, 0.5, -0.5, -0.5), theme.colour("field" if on else "panel"))
            frame(painter, box, edge, 2.0 if on and self.hasFocus() else 1.0)
            painter.setFont(theme.font())
            painter.setPen(theme.colour("ink" if on else "off"))
            room = box.adjusted(SPACE.s, 0, -_CHEVRON - SPACE.m, 0)
            words = painter.fontMetrics().elidedText(self.currentText(), Qt.TextElideMode.ElideRight, int(room.width()))
            painter.drawText(room, Qt.AlignmentFlag.AlignVCenter, words)
            place = QRectF(box.right() - _CHEVRON - SPACE.s, box.center().y() - _CHEVRON / 2, _CHEVRON, _CHEVRON)
            icons.paint(painter, "unfold", place, "quiet" if on else "off")


class Choice(Entry):
    """One of a few words; the words are those of the declaration, with a capital."""

    def __init__(self, declared: Declared, unit: Unit, parent: QWidget) -> None:
        super().__init__(declared, unit, parent)
        self.label = Label(tr(declared.words), self)
        self.pick = Pick(self)
        self.pick.addItems([opened(tr(option)) for option in declared.options])
        for named in (self.pick, self.pick.view()):
            named.setAccessibleName(tr(declared.words))
        self.pick.setAccessibleDescription(tr(declared.hint))
        self.label.setBuddy(self.pick)
        row = QHBoxLayout(self)
        row.setContentsMargins(SPACE.m, SPACE.xs, SPACE.m, SPACE.xs)
        row.addWidget(self.label, 1)
        row.addWidget(self.pick)
        self._watch(self.pick)
        self.pick.activated.connect(self._choose)
        self.show_value(declared.default, unit)

    def show_value(self, value: Typed, unit: Unit) -> None:
        super().show_value(value, unit)
        if value in self.declared.options:
            self.pick.setCurrentIndex(self.declared.options.index(str(value)))

    def _choose(self, index: int) -> None:
        self._change(self.declared.options[index])
        self._finish()
