"""One finding: its weight, one sentence, and what mends it."""

from PySide6.QtCore import QEvent, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QEnterEvent, QFocusEvent, QFontMetrics, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from studio.check.finding import Weight

from .. import theme
from ..tokens import SIZE, SPACE
from .label import Elided
from .strokes import Fade, ring, slab
from .weight import paint_weight, spoken

_MARK_X = 24.0
_WORDS_X = 40


class FindingRow(QWidget):
    """A row that is kept and given its next finding by `show_finding`, so that focus and pointer stay where they are.

    `pointed` carries the path of the field the finding speaks of while the pointer or the focus is on it, then "".
    `mended` is sent when the remedy is pressed, `asked` when the maker wants to see what else there is.
    """

    mended = Signal()
    asked = Signal()
    pointed = Signal(str)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.weight: Weight = "note"
        self.place = ""
        self._hover = Fade(self)
        self.setFixedHeight(theme.px(SIZE.finding))
        self.setFocusPolicy(Qt.FocusPolicy.TabFocus)
        self.words = Elided("", self)
        self.more = QPushButton("", self)
        self.more.setFixedHeight(theme.px(26))
        self.more.clicked.connect(self.asked)
        self.more.hide()
        self.remedy = QPushButton("", self)
        self.remedy.setFixedSize(theme.px(SIZE.remedy_w), theme.px(26))
        self.remedy.clicked.connect(self.mended)
        row = QHBoxLayout(self)
        row.setContentsMargins(_WORDS_X, 0, SPACE.s, 0)
        row.setSpacing(SPACE.l)
        row.addWidget(self.words, 1)
        row.addWidget(self.more)
        row.addWidget(self.remedy)

    def remedy_width(self) -> int:
        """How wide the remedy's button wants to be, px."""
        words = QFontMetrics(theme.font()).horizontalAdvance(self.remedy.text())
        return max(theme.px(SIZE.remedy_w), words + 2 * SPACE.l)

    def whole_width(self) -> int:
        """How wide the row must be for its sentence to be read whole, px."""
        buttons = sum(b.width() + SPACE.l for b in (self.more, self.remedy) if b.text())
        return _WORDS_X + self.words.sizeHint().width() + buttons + SPACE.s

    def show_finding(self, weight: Weight, words: str, remedy: str = "", place: str = "", more: str = "") -> None:
        """Give it a finding: the words as they are read, the buttons' words ("" for none), the path it points at."""
        self.weight, self.place = weight, place
        self.words.setText(words)
        self.remedy.setText(remedy)
        self.remedy.setVisible(bool(remedy))
        self.more.setText(more)
        self.more.setVisible(bool(more))
        self.setAccessibleName(f"{spoken(weight)}: {words}")
        self.remedy.setAccessibleDescription(words)
        self.more.setAccessibleDescription(words)
        self.update()

    def enterEvent(self, event: QEnterEvent) -> None:
        super().enterEvent(event)
        self._point(True)

    def leaveEvent(self, event: QEvent) -> None:
        super().leaveEvent(event)
        self._point(self.hasFocus())

    def focusInEvent(self, event: QFocusEvent) -> None:
        super().focusInEvent(event)
        self._point(True)

    def focusOutEvent(self, event: QFocusEvent) -> None:
        super().focusOutEvent(event)
        self._point(self.underMouse())

    def _point(self, on: bool) -> None:
        self._hover.to(on)
        self.pointed.emit(self.place if on else "")

    def paintEvent(self, event: QPaintEvent) -> None:
        box = QRectF(self.rect()).adjusted(SPACE.s, 1, 0, -1)
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            if self._hover.level:
                slab(painter, box, theme.colour(f"{self.weight}_bg", round(255 * self._hover.level)))
            if self.hasFocus():
                if first := next((b for b in (self.more, self.remedy) if b.isVisible()), None):
                    box.setRight(first.x() - SPACE.s)  # a button has a ring of its own
                ring(painter, box)
            paint_weight(painter, self.weight, QPointF(_MARK_X, self.height() / 2))
