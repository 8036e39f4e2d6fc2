"""A style to pick: its silhouette in a tile."""

from PySide6.QtCore import QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QWidget

from studio.words import tr

from .. import icons, theme
from ..tokens import RADIUS, SIZE, SPACE
from .choice import opened
from .strokes import frame, ring, slab

_SILHOUETTE = 30  # px
_ABOVE = 6


class StylePick(QAbstractButton):
    """The chosen tile has the plate, a heavier edge and a half-bold word: never colour alone."""

    def __init__(self, style: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.style_name = style
        self.setText(opened(tr(style)))
        self.setCheckable(True)
        self.setAutoExclusive(True)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setFixedHeight(theme.px(SIZE.tile_h))
        self.setMinimumWidth(theme.px(72))

    def sizeHint(self) -> QSize:
        return QSize(theme.px(SIZE.tile_w), theme.px(SIZE.tile_h))

    def paintEvent(self, event: QPaintEvent) -> None:
        box, on = QRectF(self.rect()), self.isChecked()
        side = theme.px(_SILHOUETTE)
        silhouette = QRectF(box.center().x() - side / 2, _ABOVE, side, side)
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            slab(painter, box.adjusted(0.5, 0.5, -0.5, -0.5), theme.colour("plate" if on else "field"), RADIUS.tile)
            edge = "accent" if on else "ink" if self.underMouse() else "edge"
            frame(painter, box, edge, 1.5 if on else 1.0, RADIUS.tile)
            icons.paint(painter, self.style_name, silhouette, "accent" if on else "quiet")
            painter.setFont(theme.font("small", bold=on))
            painter.setPen(theme.colour("ink"))
            painter.drawText(box.adjusted(0, _ABOVE + side, 0, -SPACE.xs), Qt.AlignmentFlag.AlignCenter, self.text())
            if self.hasFocus():
                ring(painter, box.adjusted(2, 2, -2, -2))
