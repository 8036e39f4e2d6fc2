"""The way back to the usual value."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QWidget

from studio.words import tr

from .. import icons, theme
from ..tokens import SIZE
from .strokes import ring


class Reset(QAbstractButton):
    """A small button in a column that is kept when it hides, so that nothing shifts."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setFixedSize(theme.px(SIZE.target), theme.px(SIZE.target))
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setToolTip(tr("Back to usual"))
        policy = self.sizePolicy()
        policy.setRetainSizeWhenHidden(True)
        self.setSizePolicy(policy)

    def paintEvent(self, event: QPaintEvent) -> None:
        box = QRectF(self.rect())
        middle = box.adjusted(5, 5, -5, -5)
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            if self.hasFocus():
                ring(painter, box.adjusted(1, 1, -1, -1))
            icons.paint(painter, "reset", middle, "accent" if self.underMouse() or self.hasFocus() else "quiet")
