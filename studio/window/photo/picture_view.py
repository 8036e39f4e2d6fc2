"""A picture fitted into its place, with points on it that can be dragged, by pointer or by key."""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QImage, QKeyEvent, QMouseEvent, QPainter, QPaintEvent, QPen, QPolygonF
from PySide6.QtWidgets import QWidget

from studio.geometry import Point
from studio.words import tr

from .. import theme

_CATCH: Final = 18.0  # px
_RING: Final = 7.0
_WAYS: Final[dict[int, tuple[int, int]]] = {
    Qt.Key.Key_Left: (-1, 0), Qt.Key.Key_Right: (1, 0), Qt.Key.Key_Up: (0, -1), Qt.Key.Key_Down: (0, 1)
}  # fmt: skip


class PictureView(QWidget):
    """Shows an image; `place` says where its dots lie on the widget."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.image = QImage()
        self.setMinimumSize(320, 220)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def show_image(self, image: QImage) -> None:
        """Another picture."""
        self.image = image
        self.update()

    @property
    def place(self) -> QRectF:
        """Where the picture lies, px."""
        if self.image.isNull():
            return QRectF()
        room = QRectF(self.rect()).adjusted(10, 10, -10, -10)
        k = min(room.width() / self.image.width(), room.height() / self.image.height())
        wide, high = self.image.width() * k, self.image.height() * k
        return QRectF(room.center().x() - wide / 2, room.center().y() - high / 2, wide, high)

    def to_px(self, dot: Point) -> QPointF:
        """Where a dot of the picture is seen."""
        at = self.place
        return QPointF(
            at.x() + dot.x * at.width() / self.image.width(), at.y() + dot.y * at.height() / self.image.height()
        )

    def to_dot(self, px: QPointF) -> Point:
        """The dot that is seen there, kept on the picture."""
        at = self.place
        x = (px.x() - at.x()) * self.image.width() / at.width()
        y = (px.y() - at.y()) * self.image.height() / at.height()
        return Point(min(max(x, 0.0), self.image.width()), min(max(y, 0.0), self.image.height()))

    def paintEvent(self, event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            painter.setRenderHints(QPainter.RenderHint.Antialiasing | QPainter.RenderHint.SmoothPixmapTransform)
            painter.fillRect(self.rect(), theme.colour("board"))
            if not self.image.isNull():
                painter.drawImage(self.place, self.image)
                self._paint_over(painter)
            if self.hasFocus():
                painter.setPen(QPen(theme.colour("accent"), 2))
                painter.setBrush(Qt.BrushStyle.NoBrush)
                painter.drawRect(QRectF(self.rect()).adjusted(1, 1, -1, -1))

    def _paint_over(self, painter: QPainter) -> None:
        """What lies on the picture."""

    def sizeHint(self) -> QSize:
        return QSize(620, 380)


class CornerView(PictureView):
    """Four corners, clockwise from the upper left; `moved` says that one has been put elsewhere."""

    moved = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.corners: list[Point] = []
        self._held: int | None = None
        self.chosen = 0
        self.setAccessibleName(tr("Corners of the cloth"))
        self.setAccessibleDescription(tr("Keys 1 to 4 choose a corner, arrows move it, with Shift by ten."))

    def put(self, corners: Sequence[Point]) -> None:
        """Put the corners there (dots)."""
        self.corners = list(corners)
        self.update()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        far = [(QPointF(self.to_px(c) - event.position()).manhattanLength(), k) for k, c in enumerate(self.corners)]
        distance, k = min(far, default=(_CATCH + 1, 0))
        if distance <= 2 * _CATCH:
            self._held = self.chosen = k
            self.update()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if self._held is not None:
            self._move(self._held, self.to_dot(event.position()))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        self._held = None

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = event.key()
        if Qt.Key.Key_1 <= key <= Qt.Key.Key_4 and self.corners:
            self.chosen = key - Qt.Key.Key_1
            self.update()
        elif key in _WAYS and self.corners:
            step = 10 if event.modifiers() & Qt.KeyboardModifier.ShiftModifier else 1
            x, y = _WAYS[key]
            here = self.corners[self.chosen].moved(x * step, y * step)
            self._move(self.chosen, self.to_dot(self.to_px(here)))
        else:
            super().keyPressEvent(event)

    def _move(self, k: int, dot: Point) -> None:
        self.corners[k] = dot
        self.moved.emit()
        self.update()

    def _paint_over(self, painter: QPainter) -> None:
        seen = [self.to_px(c) for c in self.corners]
        if not seen:
            return
        painter.setBrush(Qt.BrushStyle.NoBrush)
        for token, width in (("tissue", 4.0), ("accent", 2.0)):
            painter.setPen(QPen(theme.colour(token), width))
            painter.drawPolygon(QPolygonF(seen))
        for k, at in enumerate(seen):
            painter.setPen(QPen(theme.colour("tissue"), 4))
            painter.drawEllipse(at, _RING, _RING)
            painter.setBrush(theme.colour("accent" if k == self.chosen and self.hasFocus() else "tissue"))
            painter.setPen(QPen(theme.colour("accent"), 2))
            painter.drawEllipse(at, _RING, _RING)
            painter.setBrush(Qt.BrushStyle.NoBrush)
