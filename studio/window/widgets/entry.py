"""What every field has: one thing the maker decides, the plate when it is in hand, and what it says to the window."""

from PySide6.QtCore import QEvent, QObject, QRectF, Qt, Signal
from PySide6.QtGui import QFocusEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QApplication, QWidget

from studio.brief.declare import Declared
from studio.brief.typed import Typed
from studio.units import Unit, usual_in
from studio.words import tr

from .. import theme
from ..tokens import SPACE
from .strokes import Fade, slab

PASSING = (Qt.FocusReason.PopupFocusReason, Qt.FocusReason.ActiveWindowFocusReason)  # the maker will be back


class Entry(QWidget):
    """A field, built from its declaration alone.

    `changed` carries each new value, live; `finished` says that the edit is over, so that a slide, or a number typed
    digit by digit, is one step to undo. `lit` carries the path while the field is in hand, "" when it is put down.
    """

    changed = Signal(str, object)
    finished = Signal(str)
    lit = Signal(str)

    def __init__(self, declared: Declared, unit: Unit, parent: QWidget) -> None:
        super().__init__(parent)
        self.declared = declared
        self.value: Typed = declared.default
        self.unit: Unit = unit
        self.fault = ""
        self._before: tuple[Typed] | None = None  # the value before the edit that is going on
        self.controls: list[QWidget] = []  # what Tab stops at, in order
        self._in_hand = False
        self._lit_from_outside = False
        self._plate = Fade(self)
        self.setToolTip(self.advice)

    @property
    def advice(self) -> str:
        """How to measure or choose, and what it means to leave the field empty."""
        blank = self.declared.blank
        return f"{tr(self.declared.hint)} {tr('Empty:')} {tr(blank)}." if blank else tr(self.declared.hint)

    @property
    def hint(self) -> str:
        """What the field in hand is, in one sentence."""
        return tr(self.declared.hint)

    @property
    def default(self) -> Typed:
        """What a new skirt starts with, in round numbers of the unit."""
        value = self.declared.default
        return usual_in(value, self.unit) if self.declared.kind == "length" and value is not None else value

    @property
    def held(self) -> bool:
        """Whether its value is being dragged at this moment."""
        return False

    @property
    def path(self) -> str:
        """The path of what is declared."""
        return self.declared.path

    def show_value(self, value: Typed, unit: Unit) -> None:
        """Show a value of the brief in a unit; what the maker is typing at this moment stays."""
        self.value, self.unit = value, unit

    def set_unit(self, unit: Unit) -> None:
        """Show the same value in another unit."""
        self.settle()
        self.show_value(self.value, unit)

    def settle(self) -> None:
        """Take what has been typed as meant, and end the edit; before saving, printing or undoing."""
        self._finish()

    def give_up(self) -> None:
        """Leave everything as it was before this edit."""
        self._take_back()
        self._finish()

    def take_in_hand(self, path: str = "") -> QWidget:
        """Put the cursor into the field, or the part of it that a path speaks of; what is then to be in view."""
        self.controls[0].setFocus(Qt.FocusReason.ShortcutFocusReason)
        return self

    def set_lit(self, on: bool) -> None:
        """Light the field from outside, because the pointer is on its line or its finding."""
        self._lit_from_outside = on
        self._light()

    def light(self, path: str) -> None:
        """Light the field, if it is what a path speaks of."""
        self.set_lit(path == self.path)

    def _change(self, value: Typed) -> None:
        """A new value from the maker's hand."""
        if value == self.value:
            return
        if self._before is None:
            self._before = (self.value,)
        self.value = value
        self.changed.emit(self.path, value)

    def _take_back(self) -> None:
        """The value as it was before this edit."""
        if self._before is not None:
            self._change(self._before[0])

    def _finish(self) -> None:
        if self._before is not None:
            self._before = None
            self.finished.emit(self.path)

    def _watch(self, *controls: QWidget) -> None:
        """Know when one of the field's controls is in hand."""
        self.controls += controls
        for control in controls:
            control.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() == QEvent.Type.FocusIn:
            self._take_up(True)
        elif event.type() == QEvent.Type.FocusOut and isinstance(event, QFocusEvent) and event.reason() not in PASSING:
            self.settle()
            now = QApplication.focusWidget()
            self._take_up(now is not None and self.isAncestorOf(now))
        return False

    def _take_up(self, on: bool) -> None:
        if on != self._in_hand:
            self._in_hand = on
            self._light()
            self.lit.emit(self.path if on else "")

    def _light(self) -> None:
        self._plate.to(self._in_hand or self._lit_from_outside)

    def paintEvent(self, event: QPaintEvent) -> None:
        level = 1.0 if self.fault else self._plate.level
        if not level:
            return
        token, bar = ("stop_bg", "stop") if self.fault else ("plate", "accent")
        alpha = round(255 * level)
        box = QRectF(self.rect()).adjusted(SPACE.xs, 0, -SPACE.xs, 0)
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            slab(painter, box, theme.colour(token, alpha))
            box.setWidth(3)
            slab(painter, box, theme.colour(bar, alpha), 1.5)
