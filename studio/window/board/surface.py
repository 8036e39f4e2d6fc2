"""A surface in millimetres to look at: zoom, pan, fit, by wheel, touch, keys and hand. Pieces and cloth lie on one."""

from typing import Final

from msgspec import Struct
from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QFocusEvent, QKeyEvent, QMouseEvent, QNativeGestureEvent, QResizeEvent, QWheelEvent
from PySide6.QtWidgets import QApplication, QWidget

from studio.geometry import Box, Point
from studio.units import Unit

from .. import theme
from ..tokens import SIZE
from .glass import life
from .ground import Ground
from .pens import forget
from .view import View, drafting_scale

_ZOOM: Final = 1.25
_STEP: Final = 48  # px for an arrow key
_WHEEL: Final = 1.0015  # zoom for each eighth of a degree
_ARROWS: Final[dict[int, tuple[int, int]]] = {
    Qt.Key.Key_Left: (_STEP, 0), Qt.Key.Key_Right: (-_STEP, 0), Qt.Key.Key_Up: (0, _STEP), Qt.Key.Key_Down: (0, -_STEP)
}  # fmt: skip
_BY_TAB: Final = (Qt.FocusReason.TabFocusReason, Qt.FocusReason.BacktabFocusReason, Qt.FocusReason.ShortcutFocusReason)
_PASSING: Final = (
    Qt.FocusReason.ActiveWindowFocusReason,
    Qt.FocusReason.PopupFocusReason,
)  # it comes back to the surface
LEFT: Final = Qt.MouseButton.LeftButton
SHIFT: Final = Qt.KeyboardModifier.ShiftModifier
_CTRL: Final = Qt.KeyboardModifier.ControlModifier


class Pan(Struct, frozen=True):
    """A pan that has begun, or that a click on `target` may yet turn out not to be."""

    button: Qt.MouseButton
    pressed: Point
    view: View
    target: str
    sure: bool


class Surface(QWidget):
    """Rulers along two edges and the ground between them; what lies on it is for those who come of it."""

    scale_changed = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.unit: Unit = "cm"
        self.view = View()
        self._fitted = True
        self._zoomed = False  # by hand, since the last fit
        self._ring = False  # the focus came by a key
        self._space = False
        self._pan: Pan | None = None
        self._ground = Ground()
        self.setAttribute(Qt.WidgetAttribute.WA_OpaquePaintEvent)
        self.setMinimumSize(360, 240)
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def fit(self) -> None:
        """All of it in view, and so again when the surface changes its size."""
        raise NotImplementedError

    def _relay(self) -> None:
        """The scale, the unit or the type has changed: set everything anew."""
        self.update()

    def _busy(self) -> bool:
        """Whether something is in hand, so that the view must not move."""
        return False

    def set_unit(self, unit: Unit) -> None:
        """Rulers, grid and words in another unit."""
        if unit != self.unit:
            self.unit = unit
            self._relay()

    def zoom_in(self) -> None:
        """A quarter larger, about the middle."""
        self._look(self.view.zoomed(self.view.scale * _ZOOM, self._middle()))

    def zoom_out(self) -> None:
        """As much smaller."""
        self._look(self.view.zoomed(self.view.scale / _ZOOM, self._middle()))

    def life_size(self) -> None:
        """As large as they will be cut, as far as the screen knows its own size."""
        self._look(self.view.zoomed(life(self.screen()), self._middle()))

    @property
    def scale_words(self) -> str:
        """The scale as drafting writes it: 1:11."""
        return drafting_scale(self.view.scale, life(self.screen()))

    def theme_changed(self) -> None:
        """Other colours or another size of type."""
        forget()
        self._relay()

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() in (QEvent.Type.FontChange, QEvent.Type.StyleChange, QEvent.Type.PaletteChange):
            self.theme_changed()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        if self._fitted:
            self.fit()

    def _middle(self) -> Point:
        return self._room().centre

    def _room(self) -> Box:
        """What lies between the rulers and the far edges, px."""
        ruler = theme.px(SIZE.ruler)
        return Box(ruler, ruler, self.width(), self.height())

    def _look(self, view: View, fitted: bool = False) -> None:
        """Look at the table another way."""
        scaled = view.scale != self.view.scale
        self._zoomed = not fitted and (scaled or self._zoomed)
        self._fitted, self.view = fitted, view
        if scaled:
            self._relay()
            self.scale_changed.emit()
        self.update()

    def _start_pan(self, event: QMouseEvent, at: Point, target: str = "") -> bool:
        """Begin a pan, by the middle button, with the space bar, or by hand on what is not `target`; else nothing."""
        button = event.button()
        sure = button == Qt.MouseButton.MiddleButton or (button == LEFT and self._space)
        if not sure and button != LEFT:
            return False
        self._pan = Pan(button, at, self.view, "" if sure else target, sure)
        if sure:
            self.setCursor(Qt.CursorShape.ClosedHandCursor)
        return True

    def _pan_to(self, pan: Pan, at: Point) -> None:
        dx, dy = at.x - pan.pressed.x, at.y - pan.pressed.y
        if not pan.sure:
            if abs(dx) + abs(dy) < QApplication.startDragDistance():
                return
            self._pan = Pan(pan.button, pan.pressed, pan.view, "", True)
            self.setCursor(Qt.CursorShape.ClosedHandCursor)
        self._look(pan.view.panned(dx, dy))

    def wheelEvent(self, event: QWheelEvent) -> None:
        event.accept()
        if self._busy() or self._pan:
            return
        turn, glide, keys = event.angleDelta(), event.pixelDelta(), event.modifiers()
        touched = not glide.isNull() and event.phase() != Qt.ScrollPhase.NoScrollPhase
        if touched and not keys & _CTRL:  # two fingers on a touch pad
            self._look(self.view.panned(glide.x(), glide.y()))
        elif keys & SHIFT or not turn.y():
            self._look(self.view.panned((turn.y() or turn.x()) / 2, 0))
        else:
            at = Point(*event.position().toTuple())
            self._look(self.view.zoomed(self.view.scale * _WHEEL ** turn.y(), at))

    def event(self, event: QEvent) -> bool:
        if isinstance(event, QNativeGestureEvent) and event.gestureType() == Qt.NativeGestureType.ZoomNativeGesture:
            at = Point(*event.position().toTuple())
            self._look(self.view.zoomed(self.view.scale * (1 + event.value()), at))
            return True
        return super().event(event)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = event.key()  # a plain number: not every letter on earth is a Qt.Key
        if key == Qt.Key.Key_Space:
            self._space = True
            if not self._busy() and not self._pan:
                self.setCursor(Qt.CursorShape.OpenHandCursor)
        elif self._busy() or self._pan:
            event.ignore()
        elif key in _ARROWS:
            self._look(self.view.panned(*_ARROWS[key]))
        elif key in (Qt.Key.Key_Plus, Qt.Key.Key_Equal):
            self.zoom_in()
        elif key == Qt.Key.Key_Minus:
            self.zoom_out()
        elif key == Qt.Key.Key_0:
            self.fit()
        elif key == Qt.Key.Key_1:
            self.life_size()
        else:
            super().keyPressEvent(event)

    def keyReleaseEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Space and not event.isAutoRepeat():
            self._space = False
            if not self._pan:
                self.unsetCursor()
        super().keyReleaseEvent(event)

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        if event.reason() not in _PASSING:
            self._ring = event.reason() in _BY_TAB
        self.update()

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self._space = False
        self.update()
