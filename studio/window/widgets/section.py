"""A section of a form that folds, and says what is in it while it is folded."""

from PySide6.QtCore import QPointF, QRectF, QSize, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QAbstractButton, QSizePolicy, QVBoxLayout, QWidget

from studio.check.finding import Weight

from .. import icons, theme
from ..tokens import SIZE, SPACE
from .strokes import ring
from .weight import MARK, paint_weight, spoken

_CHEVRON = 14.0
_WORDS_X = 28.0


class Header(QAbstractButton):
    """The whole row is the target: chevron, name, summary, and the heaviest mark inside."""

    def __init__(self, text: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.setText(text)
        self.summary = ""
        self.weight: Weight | None = None
        self.setCheckable(True)
        self.setFixedHeight(theme.px(SIZE.header))
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.setCursor(Qt.CursorShape.PointingHandCursor)
        self.setAttribute(Qt.WidgetAttribute.WA_Hover)
        self.setAccessibleName(text)

    def sizeHint(self) -> QSize:
        return QSize(theme.px(160), theme.px(SIZE.header))

    def tell(self, summary: str, weight: Weight | None) -> None:
        """What is inside, in a few words, and the heaviest weight among the findings there."""
        if (summary, weight) != (self.summary, self.weight):
            self.summary, self.weight = summary, weight
            self.setToolTip(summary)
            self.setAccessibleDescription(" ".join(filter(None, (summary, spoken(weight) if weight else ""))))
            self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        box = QRectF(self.rect())
        middle, right = box.center().y(), box.right() - SPACE.m
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            if self.underMouse():
                painter.fillRect(box, theme.colour("hover"))
            painter.setPen(theme.colour("hair"))
            painter.drawLine(QPointF(SPACE.m, 0.5), QPointF(right, 0.5))
            chevron = QRectF(SPACE.m - 3, middle - _CHEVRON / 2, _CHEVRON, _CHEVRON)
            icons.paint(painter, "unfold" if self.isChecked() else "fold", chevron, "quiet")
            painter.setFont(theme.font(bold=True))
            painter.setPen(theme.colour("ink"))
            painter.drawText(box.adjusted(_WORDS_X, 0, -SPACE.m, 0), Qt.AlignmentFlag.AlignVCenter, self.text())
            left = _WORDS_X + painter.fontMetrics().horizontalAdvance(self.text()) + SPACE.m
            if self.weight:
                paint_weight(painter, self.weight, QPointF(right - MARK, middle))
                right -= 2 * MARK + SPACE.s
            if not self.isChecked():
                self._paint_summary(painter, QRectF(left, 0, max(0.0, right - left), box.height()))
            if self.hasFocus():
                ring(painter, box.adjusted(2, 2, -2, -2))

    def _paint_summary(self, painter: QPainter, room: QRectF) -> None:
        painter.setFont(theme.font("small"))
        painter.setPen(theme.colour("quiet"))
        words = painter.fontMetrics().elidedText(self.summary, Qt.TextElideMode.ElideRight, int(room.width()))
        painter.drawText(room, Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignRight, words)


class Section(QWidget):
    """A header and a body; `add` fills the body from the top.

    `folded` says whether it is folded now; `unfolded` carries the section itself when the maker's hand opened it.
    """

    folded = Signal(bool)
    unfolded = Signal(object)

    def __init__(self, text: str, parent: QWidget, *, is_open: bool = False) -> None:
        super().__init__(parent)
        self.head = Header(text, self)
        self.body = QWidget(self)
        self._inside = QVBoxLayout(self.body)
        self._inside.setContentsMargins(0, 0, 0, SPACE.s)
        self._inside.setSpacing(0)
        stack = QVBoxLayout(self)
        stack.setContentsMargins(0, 0, 0, 0)
        stack.setSpacing(0)
        stack.addWidget(self.head)
        stack.addWidget(self.body)
        self.head.toggled.connect(self._open)
        self.head.clicked.connect(self._tell_unfolded)
        self.body.setVisible(is_open)
        self.head.setChecked(is_open)

    @property
    def is_open(self) -> bool:
        """Whether the body shows."""
        return self.head.isChecked()

    def add(self, widget: QWidget) -> None:
        """Put a field, or anything else, at the foot of the section."""
        self._inside.addWidget(widget)

    def open(self, on: bool = True) -> None:
        """Unfold, or fold."""
        self.head.setChecked(on)

    def tell(self, summary: str, weight: Weight | None = None) -> None:
        """What it says while folded, and the heaviest weight inside (shown always)."""
        self.head.tell(summary, weight)

    def _open(self, on: bool) -> None:
        self.body.setVisible(on)
        self.folded.emit(not on)

    def _tell_unfolded(self, on: bool) -> None:
        if on:
            self.unfolded.emit(self)
