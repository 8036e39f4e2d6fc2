"""A small button that is an icon: the way back to the usual value, the way to take something away."""

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QWidget

from .. import icons, theme
from ..tokens import SIZE
from .strokes import ring


class SmallButton(QAbstractButton):
    """As large as can be hit; its room is kept when it hides, so that nothing shifts."""

    def __init__(self, icon: str, tip: str, parent: QWidget) -> None:
        super().__init__(parent)
        self._icon = icon
        self.setFixedSize(theme.px(SIZE.target), theme.px(SIZE.target))
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setToolTip(tip)
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
            icons.paint(painter, self._icon, middle, "accent" if self.underMouse() or self.hasFocus() else "quiet")
