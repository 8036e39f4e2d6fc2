"""The board: the tabletop, and the hand on it. It drags handles, chooses dimensions, zooms and pans."""

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QHideEvent, QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QWidget

from studio.geometry import Point
from studio.styles import rack

from .drag import Drag, Grip
from .handles import nearest
from .surface import LEFT, SHIFT
from .tabletop import Tabletop


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
        self._pointed = ""
        self._sent: float | None = None
        self._moved = False

    def _busy(self) -> bool:
        return self._drag is not None

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
        grip = self._grip_at(at) if button == LEFT and not self._space else None
        if grip:
            self._take(grip, at)
        elif not self._start_pan(event, at, self._dimension_at(at)):
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
            self._drag_to(self._drag, at, bool(event.modifiers() & SHIFT))
        elif self._pan:
            self._pan_to(self._pan, at)
        elif not event.buttons():
            self._point_at(at)

    def _drag_to(self, drag: Drag, at: Point, coarse: bool) -> None:
        value = drag.value(at, self.view.scale, self.unit, coarse)
        if value != self._sent:
            self._sent, self._moved = value, True
            self.dragged.emit(drag.grip.path, value)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if self._drag and event.button() == LEFT:
            path, moved = self._drag.grip.path, self._moved
            self._let_go()
            self.dropped.emit(path) if moved else self.chosen.emit(path)
        elif self._pan and event.button() == self._pan.button:
            pan, self._pan = self._pan, None
            if pan.target and not pan.sure:
                self.chosen.emit(pan.target)
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

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape and self._drag:
            self._give_up(self._drag)
        else:
            super().keyPressEvent(event)
