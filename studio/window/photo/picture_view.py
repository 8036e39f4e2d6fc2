"""A picture fitted into its place."""

from typing import TYPE_CHECKING

from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QImage, QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from studio.geometry import Point

from .. import theme

if TYPE_CHECKING:
    from studio.cloth.photo.found import Photo


def image_of(photo: "Photo") -> QImage:
    """A photograph as Qt paints it."""
    pixels = photo.pixels
    high, wide = pixels.shape[:2]
    return QImage(pixels.tobytes(), wide, high, 3 * wide, QImage.Format.Format_RGB888).copy()


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
