"""The slider, for judging by eye."""

from PySide6.QtCore import QPointF, QSignalBlocker, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen, QWheelEvent
from PySide6.QtWidgets import QSlider, QWidget

from .. import theme
from ..tokens import SIZE
from .box import STRIDE

_INSET = 7.0  # of the track, so that the ring of focus stays inside
_CATCH = 9.0  # how near the thumb a press takes hold of it without moving it
_KEYS = (Qt.FocusReason.TabFocusReason, Qt.FocusReason.BacktabFocusReason, Qt.FocusReason.ShortcutFocusReason)


class EyeSlider(QSlider):
    """The notch is the usual value; the thick part is how far one is from it.

    `moved` gives the value while it slides, `let_go` says that the hand is off. The exact value shown need not lie
    on a step: only sliding rounds it.
    """

    moved = Signal(float)
    let_go = Signal()

    def __init__(self, least: float, usual: float, most: float, step: float, parent: QWidget) -> None:
        super().__init__(Qt.Orientation.Horizontal, parent)
        self.least, self.usual, self.most = least, usual, most
        self.amount: float | None = usual
        self.lit = False
        self._step = step
        self._grip = 0.0
        self._by_keys = False
        self.setFixedHeight(theme.px(SIZE.slider))
        self.setMinimumWidth(60)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setPageStep(STRIDE)
        self.set_step(step)
        self.valueChanged.connect(self._slid)

    def set_step(self, step: float) -> None:
        """Change the step, for another unit."""
        self._step = step
        with QSignalBlocker(self):
            self.setRange(int(self.least // step), int(-(-self.most // step)))
        self.show_amount(self.amount)

    def show_amount(self, amount: float | None) -> None:
        """Show a value; None, not known, rests at the usual one."""
        self.amount = amount
        with QSignalBlocker(self):
            self.setValue(round((self.usual if amount is None else amount) / self._step))
        self.update()

    def set_lit(self, on: bool) -> None:
        """In the accent, because its field is in hand."""
        if on != self.lit:
            self.lit = on
            self.update()

    def _slid(self, position: int) -> None:
        self.amount = min(max(round(position * self._step, 6), self.least), self.most)
        self.moved.emit(self.amount)

    def _x_of(self, amount: float) -> float:
        share = (amount - self.least) / (self.most - self.least)
        return _INSET + (self.width() - 2 * _INSET) * min(max(share, 0.0), 1.0)

    def _thumb(self) -> float:
        return self._x_of(self.usual if self.amount is None else self.amount)

    def _slide_to(self, x: float) -> None:
        share = (x - _INSET) / max(1.0, self.width() - 2 * _INSET)
        self.setValue(round((self.least + share * (self.most - self.least)) / self._step))

    def mousePressEvent(self, event: QMouseEvent) -> None:
        if event.button() != Qt.MouseButton.LeftButton:
            event.ignore()
            return
        x = event.position().x()
        off = x - self._thumb()
        self._grip = off if abs(off) <= _CATCH else 0.0
        self.setSliderDown(True)
        if not self._grip:
            self._slide_to(x)

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if self.isSliderDown():
            self._slide_to(event.position().x() - self._grip)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if self.isSliderDown() and event.button() == Qt.MouseButton.LeftButton:
            self.setSliderDown(False)
            self.update()
            self.let_go.emit()

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        self._by_keys = event.reason() in _KEYS

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        super().keyReleaseEvent(event)
        if not event.isAutoRepeat():
            self.let_go.emit()

    def wheelEvent(self, event: QWheelEvent) -> None:
        event.ignore()  # the wheel scrolls the form; it must not change what it happens to pass over

    def paintEvent(self, event: QPaintEvent) -> None:
        on, held, known = self.isEnabled(), self.isSliderDown(), self.amount is not None
        ringed = self.hasFocus() and self._by_keys
        lit = on and (self.lit or held or self.hasFocus())
        y, x, usual = self.height() / 2, self._thumb(), self._x_of(self.usual)
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            painter.setPen(QPen(theme.colour("edge" if on else "hair"), 1))
            painter.drawLine(QPointF(0, y), QPointF(self.width(), y))
            painter.drawLine(QPointF(usual, y - 5), QPointF(usual, y + 5))
            if on:
                thick = theme.colour("accent" if lit else "quiet")
                painter.setPen(QPen(thick, 2.5, Qt.PenStyle.SolidLine, Qt.PenCapStyle.FlatCap))
                painter.drawLine(QPointF(usual, y), QPointF(x, y))
            if ringed:
                painter.setPen(QPen(theme.colour("accent"), 2))
                painter.setBrush(Qt.BrushStyle.NoBrush)
                painter.drawEllipse(QPointF(x, y), 8, 8)
            large = (self.underMouse() or lit) and not ringed
            radius = 3.5 if not known and not lit else 6 if large else 5
            painter.setPen(QPen(theme.colour("accent" if lit else "quiet" if on else "off"), 1.5))
            filled = on and (held or ringed)
            painter.setBrush(theme.colour("accent" if filled else "field" if on else "panel"))
            painter.drawEllipse(QPointF(x, y), radius, radius)
