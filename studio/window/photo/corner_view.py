"""A photograph with the cloth's corners on it, and two points that a distance was measured between: each can be
dragged, by pointer or by key.
"""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QPointF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPen, QPolygonF
from PySide6.QtWidgets import QWidget

from studio.geometry import Point
from studio.words import tr

from .. import theme
from .picture_view import PictureView

_CATCH: Final = 18.0  # px
_RING: Final = 7.0
_CROSS: Final = 11.0
_WAYS: Final[dict[int, tuple[int, int]]] = {
    Qt.Key.Key_Left: (-1, 0), Qt.Key.Key_Right: (1, 0), Qt.Key.Key_Up: (0, -1), Qt.Key.Key_Down: (0, 1)
}  # fmt: skip


class CornerView(PictureView):
    """Four corners, clockwise from the upper left, and two points `between` which a distance lies, or none; `moved`
    says that one has been put elsewhere.
    """

    moved = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.corners: list[Point] = []
        self.between: list[Point] = []
        self._held: int | None = None
        self.chosen = 0
        self.setAccessibleName(tr("Corners of the cloth"))
        self._describe()

    @property
    def points(self) -> list[Point]:
        """The corners, then the two points (dots)."""
        return [*self.corners, *self.between]

    def put(self, corners: Sequence[Point]) -> None:
        """Put the corners there (dots)."""
        self.corners = list(corners)
        self.update()

    def ask_between(self, on: bool) -> None:
        """Show two points, at first a quarter and three quarters across the cloth, or show none."""
        self.between = []
        if on and self.corners:
            a, b, c, d = self.corners
            top, foot = a.towards(b, 0.5), d.towards(c, 0.5)
            self.between = [top.towards(foot, 0.25), top.towards(foot, 0.75)]
        self.chosen = 4 if self.between else 0
        self._describe()
        self.update()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        far = [(QPointF(self.to_px(p) - event.position()).manhattanLength(), k) for k, p in enumerate(self.points)]
        distance, k = min(far, default=(2 * _CATCH + 1, 0))
        if distance <= 2 * _CATCH:
            self._held = self.chosen = k
            self.update()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if self._held is not None:
            self._move(self._held, self.to_dot(event.position()))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        self._held = None

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key, points = event.key(), self.points
        if Qt.Key.Key_1 <= key < Qt.Key.Key_1 + len(points):
            self.chosen = key - Qt.Key.Key_1
            self.update()
        elif key in _WAYS and points:
            step = 10 if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else 1
            x, y = _WAYS[key]
            self._move(self.chosen, self.to_dot(self.to_px(points[self.chosen].moved(x * step, y * step))))
        else:
            super().keyPressEvent(event)

    def _describe(self) -> None:
        corners = tr("Keys 1 to 4 choose a corner, arrows move it, with Shift by ten.")
        self.setAccessibleDescription(f"{corners} {tr('Keys 5 and 6 choose the points.')}" if self.between else corners)

    def _move(self, k: int, dot: Point) -> None:
        if k < 4:
            self.corners[k] = dot
        else:
            self.between[k - 4] = dot
        self.moved.emit()
        self.update()

    def _paint_over(self, painter: QPainter) -> None:
        seen = [self.to_px(p) for p in self.points]
        if not seen:
            return
        corners, between = seen[:4], seen[4:]
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for token, width in (("tissue", 4.0), ("accent", 2.0)):
            painter.setPen(QPen(theme.colour(token), width))
            painter.drawPolygon(QPolygonF(corners))
            painter.drawPolyline(QPolygonF(between))
            for at in between:
                painter.drawLine(at - QPointF(_CROSS, 0), at + QPointF(_CROSS, 0))
                painter.drawLine(at - QPointF(0, _CROSS), at + QPointF(0, _CROSS))
        for k, at in enumerate(seen):
            chosen = k == self.chosen and self.hasFocus()
            if k >= 4 and not chosen:
                continue  # a cross is enough
            painter.setPen(QPen(theme.colour("tissue"), 4))
            painter.drawEllipse(at, _RING, _RING)
            if k < 4:
                painter.setBrush(theme.colour("accent" if chosen else "tissue"))
            painter.setPen(QPen(theme.colour("accent"), 2))
            painter.drawEllipse(at, _RING, _RING)
            painter.setBrush(Qt.BrushStyle.NoBrush)
