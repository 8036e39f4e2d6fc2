"""The board: the tabletop, and the hand on it. It drags handles, chooses dimensions, zooms and pans."""

from typing import Final

from msgspec import Struct
from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QFocusEvent, QHideEvent, QKeyEvent, QMouseEvent, QNativeGestureEvent, QWheelEvent
from PySide6.QtWidgets import QApplication, QWidget

from studio.geometry import Point
from studio.styles import rack

from .drag import Drag, Grip
from .handles import nearest
from .tabletop import Tabletop
from .view import View

_STEP: Final = 48  # px for an arrow key
_WHEEL: Final = 1.0015  # zoom for each eighth of a degree
_ARROWS: Final[dict[int, tuple[int, int]]] = {
    Qt.Key.Key_Left: (_STEP, 0), Qt.Key.Key_Right: (-_STEP, 0), Qt.Key.Key_Up: (0, _STEP), Qt.Key.Key_Down: (0, -_STEP)
}  # fmt: skip
_BY_TAB: Final = (Qt.FocusReason.TabFocusReason, Qt.FocusReason.BacktabFocusReason, Qt.FocusReason.ShortcutFocusReason)
_PASSING: Final = (
    Qt.FocusReason.ActiveWindowFocusReason,
    Qt.FocusReason.PopupFocusReason,
)  # it comes back to the board
_LEFT: Final = Qt.MouseButton.LeftButton
_SHIFT: Final = Qt.KeyboardModifier.ShiftModifier
_CTRL: Final = Qt.KeyboardModifier.ControlModifier


class _Pan(Struct, frozen=True):
    """A pan that has begun, or that a click on the dimension at `path` may yet turn out not to be."""

    button: Qt.MouseButton
    pressed: Point
    view: View
    path: str
    sure: bool


class Board(Tabletop):
    """The pieces, to look at and to take in hand.

    `dragged` carries the new value at a path while its handle moves: a float, or None where Escape gives back a
    number that was empty. `dropped` says that the drag is over: one drag is one step to undo. `lit_here` carries
    the path under the pointer, then "". `chosen` carries the path of a dimension or handle that was clicked.
    """

    dragged = Signal(str, object)
    dropped = Signal(str)
    lit_here = Signal(str)
    chosen = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._pan: _Pan | None = None
        self._space = False
        self._pointed = ""
        self._sent: float | None = None
        self._moved = False
        self.setMouseTracking(True)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def _free(self, at: Point) -> bool:
        """Whether the table is seen here: not under a ruler or the legend."""
        room, legend = self._room(), self._legend_box()
        return at.x >= room.left and at.y >= room.top and not (legend and legend.contains(round(at.x), round(at.y)))

    def _grip_at(self, at: Point) -> Grip | None:
        if self.scene is None or not self._free(at):
            return None
        return nearest(self.scene.grips, at.moved(-self.view.x, -self.view.y), self.view.scale)

    def _dimension_at(self, at: Point) -> str:
        if self.scene is None or not self._free(at):
            return ""
        here = at.moved(-self.view.x, -self.view.y)
        found = [d for d in self.scene.dimensions if d.caught(here)]
        return found[0].path if found else ""

    def mousePressEvent(self, event: QMouseEvent) -> None:
        at, button = Point(*event.position().toTuple()), event.button()
        if self._drag or self._pan:
            return
        if button == Qt.MouseButton.MiddleButton or (button == _LEFT and self._space):
            self._pan = _Pan(button, at, self.view, "", True)
            self.setCursor(Qt.CursorShape.ClosedHandCursor)
        elif button == _LEFT and (grip := self._grip_at(at)):
            self._take(grip, at)
        elif button == _LEFT:
            self._pan = _Pan(button, at, self.view, self._dimension_at(at), False)
        else:
            event.ignore()

    def _take(self, grip: Grip, at: Point) -> None:
        """Take hold of a handle; the drag counts from here, so that nothing jumps."""
        assert self._brief is not None
        declared = rack.declarations(self._brief)[grip.path]
        start = rack.value(self._brief, grip.path)
        self._drag = Drag(grip, at, start, declared.least, declared.most)
        self._before, self._sent, self._moved = self.scene, start, False
        self.update()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        at = Point(*event.position().toTuple())
        if self._drag:
            self._drag_to(self._drag, at, bool(event.modifiers() & _SHIFT))
        elif self._pan:
            self._pan_to(self._pan, at)
        elif not event.buttons():
            self._point_at(at)

    def _drag_to(self, drag: Drag, at: Point, coarse: bool) -> None:
        value = drag.value(at, self.view.scale, self.unit, coarse)
        if value != self._sent:
            self._sent, self._moved = value, True
            self.dragged.emit(drag.grip.path, value)

    def _pan_to(self, pan: _Pan, at: Point) -> None:
        dx, dy = at.x - pan.pressed.x, at.y - pan.pressed.y
        if not pan.sure:
            if abs(dx) + abs(dy) < QApplication.startDragDistance():
                return
            self._pan = _Pan(pan.button, pan.pressed, pan.view, "", True)
            self.setCursor(Qt.CursorShape.ClosedHandCursor)
        self._look(pan.view.panned(dx, dy))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if self._drag and event.button() == _LEFT:
            path, moved = self._drag.grip.path, self._moved
            self._let_go()
            self.dropped.emit(path) if moved else self.chosen.emit(path)
        elif self._pan and event.button() == self._pan.button:
            pan, self._pan = self._pan, None
            if pan.path and not pan.sure:
                self.chosen.emit(pan.path)
        self._point_at(Point(*event.position().toTuple()))

    def _let_go(self) -> None:
        self._drag = self._before = None
        self._rest()
        self.update()

    def _give_up(self, drag: Drag) -> None:
        """End a drag with the value as it was before."""
        if self._sent != drag.start:
            self.dragged.emit(drag.grip.path, drag.start)
        self._let_go()
        if self._moved:
            self.dropped.emit(drag.grip.path)

    def _point_at(self, at: Point | None) -> None:
        """The pointer rests here; None when it has left."""
        grip = self._grip_at(at) if at else None
        path = grip.path if grip else self._dimension_at(at) if at else ""
        shape = Qt.CursorShape
        if self._space:
            self.setCursor(shape.OpenHandCursor)
        elif grip:
            self.setCursor(shape.SizeVerCursor if grip.axis == "y" else shape.SizeHorCursor)
        else:
            self.setCursor(shape.PointingHandCursor if path else shape.ArrowCursor)
        hover = (grip.piece, grip.path) if grip else None
        if hover != self._hover:
            self._hover = hover
            self.update()
        if path != self._pointed:
            self._pointed = path
            self.lit_here.emit(path)

    def leaveEvent(self, event: QEvent) -> None:
        super().leaveEvent(event)
        if not self._drag and not self._pan:
            self._point_at(None)

    def hideEvent(self, event: QHideEvent) -> None:
        super().hideEvent(event)
        self._pan = None
        if self._drag:
            self._give_up(self._drag)
        self._point_at(None)

    def wheelEvent(self, event: QWheelEvent) -> None:
        event.accept()
        if self._drag or self._pan:
            return
        turn, glide, keys = event.angleDelta(), event.pixelDelta(), event.modifiers()
        touched = not glide.isNull() and event.phase() != Qt.ScrollPhase.NoScrollPhase
        if touched and not keys & _CTRL:  # two fingers on a touch pad
            self._look(self.view.panned(glide.x(), glide.y()))
        elif keys & _SHIFT or not turn.y():
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
        if key == Qt.Key.Key_Escape and self._drag:
            self._give_up(self._drag)
        elif key == Qt.Key.Key_Space:
            self._space = True
            if not self._drag and not self._pan:
                self.setCursor(Qt.CursorShape.OpenHandCursor)
        elif self._drag or self._pan:
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
