"""The notice: one sentence laid over the top of the canvas, that stays until it is closed or no longer so."""

from typing import Literal, TypeAlias

from PySide6.QtCore import QEvent, QObject, QPointF, QRectF, Qt
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QWidget

from studio.check.finding import Weight
from studio.words import tr

from . import theme
from .tokens import RADIUS, SPACE
from .widgets.label import Label
from .widgets.strokes import frame, slab
from .widgets.weight import paint_weight, spoken

Deed: TypeAlias = Literal["open", "save"]
"""What was tried in vain; once it has been done, the notice about it has no more to say."""

_MARK_X = 24.0
_MOST = 640  # px


class Notice(QWidget):
    """It lies over the widget it is given, and moves nothing; a screen reader says it at once."""

    def __init__(self, over: QWidget) -> None:
        super().__init__(over)
        self._over = over
        self.weight: Weight = "stop"
        self._about: Deed = "save"
        self.words = Label("", self)
        self.words.setWordWrap(True)
        self.button = QPushButton(tr("Close"), self)
        self.button.clicked.connect(self.clear)
        self._row = row = QHBoxLayout(self)
        row.setContentsMargins(40, SPACE.s, SPACE.s, SPACE.s)
        row.setSpacing(SPACE.m)
        row.addWidget(self.words, 1)
        row.addWidget(self.button, 0, Qt.AlignmentFlag.AlignTop)
        over.installEventFilter(self)
        self.hide()

    @property
    def text(self) -> str:
        """The sentence shown; "" for none."""
        return "" if self.isHidden() else self.words.text()

    def say(self, sentence: str, about: Deed, weight: Weight = "stop") -> None:
        """Show a sentence, in place of one before it, until what it is about has been done."""
        self.weight, self._about = weight, about
        self.words.setText(sentence)
        self.setAccessibleName(f"{spoken(weight)}: {sentence}")
        self.button.setAccessibleDescription(sentence)
        self.show()
        self._place()
        self.raise_()
        said = QAccessibleAnnouncementEvent(self, sentence)
        said.setPoliteness(QAccessible.AnnouncementPoliteness.Assertive)
        QAccessible.updateAccessibility(said)

    def clear(self) -> None:
        """Put it away."""
        self.hide()

    def done(self, deed: Deed) -> None:
        """Put it away if it was about this."""
        if deed == self._about:
            self.clear()

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() == QEvent.Type.Resize:
            self._place()
        return False

    def _place(self) -> None:
        """At the top, in the middle, as high as its words want."""
        wide = min(self._over.width() - 2 * SPACE.m, theme.px(_MOST))
        self.setFixedWidth(wide)
        self.setFixedHeight(max(self._row.heightForWidth(wide), self._row.minimumSize().height()))
        self.move((self._over.width() - wide) // 2, SPACE.m)

    def paintEvent(self, event: QPaintEvent) -> None:
        box = QRectF(self.rect())
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            slab(painter, box.adjusted(0.5, 0.5, -0.5, -0.5), theme.colour(f"{self.weight}_bg"), RADIUS.tile)
            frame(painter, box, self.weight, 1.0, RADIUS.tile)
            paint_weight(painter, self.weight, QPointF(_MARK_X, SPACE.s + self.button.height() / 2))
