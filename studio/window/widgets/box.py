"""The box one types in: the value at the right, its unit behind it in the second voice."""

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QFontMetrics, QKeyEvent, QKeySequence, QPainter, QPaintEvent
from PySide6.QtWidgets import QLineEdit, QWidget

from .. import theme
from ..tokens import SIZE, SPACE

STRIDE = 5
"""Steps taken at once with Shift, or with the page keys on a slider."""

_WAYS = {Qt.Key.Key_Up: 1, Qt.Key.Key_Down: -1}


class Box(QLineEdit):
    """A line edit that knows its unit, the step keys and Escape.

    Qt's spin box drops keystrokes when it is written to while one types, and reads no fractions.
    """

    stepped = Signal(int)  # Up and Down, in steps
    given_up = Signal()  # Escape

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.unit = ""
        self.fault = False
        self.setFixedHeight(theme.px(SIZE.box_h))
        self.setAcceptDrops(False)  # a skirt file dropped here is for the window

    def hold_number(self) -> None:
        """Narrow, with the value at the right."""
        self.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self.setFixedWidth(theme.px(SIZE.box_w))

    def set_unit(self, unit: str) -> None:
        """Show a unit inside the box; an empty box shows none, so that its placeholder has the room."""
        self.unit = unit
        self._make_room()

    def write(self, text: str) -> None:
        """Write a value, as of now untouched by the maker."""
        if text != self.text() or self.isModified():
            self.setText(text)
        self._make_room()

    def set_fault(self, on: bool) -> None:
        """The red edge."""
        if on != self.fault:
            self.fault = on
            self.setProperty("fault", on)
            self.style().unpolish(self)
            self.style().polish(self)

    def _make_room(self) -> None:
        width = QFontMetrics(theme.font("small")).horizontalAdvance(self.unit) if self._unit_shows() else 0
        self.setTextMargins(0, 0, width + SPACE.xs if width else 0, 0)

    def _unit_shows(self) -> bool:
        return bool(self.unit) and bool(self.text() or not self.placeholderText())

    def event(self, event: QEvent) -> bool:
        """Undo and redo are the window's: a number typed is one step there, not a letter here."""
        keys = (QKeySequence.StandardKey.Undo, QKeySequence.StandardKey.Redo)
        if (
            event.type() == QEvent.Type.ShortcutOverride
            and isinstance(event, QKeyEvent)
            and any(event.matches(key) for key in keys)
        ):
            event.ignore()
            return False
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        way = _WAYS.get(Qt.Key(event.key()), 0)
        if way:
            self.stepped.emit(way * STRIDE if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else way)
        elif event.key() == Qt.Key.Key_Escape:
            event.setAccepted(self.isModified())  # with nothing typed to give up, it is for whoever is behind
            self.given_up.emit()
        else:
            super().keyPressEvent(event)
            self._make_room()

    def paintEvent(self, event: QPaintEvent) -> None:
        super().paintEvent(event)
        if not self._unit_shows():
            return
        with QPainter(self) as painter:
            painter.setFont(theme.font("small"))
            painter.setPen(theme.colour("quiet" if self.isEnabled() else "off"))
            place = self.rect().adjusted(0, 0, -SPACE.s, 0)
            painter.drawText(place, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter, self.unit)
