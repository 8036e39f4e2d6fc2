"""Words that stand still: a label in one of the voices, and one that ends in an ellipsis."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QResizeEvent
from PySide6.QtWidgets import QLabel, QSizePolicy, QWidget

from .. import theme
from ..tokens import Voice


class Label(QLabel):
    """Words in the voice `ink`, `quiet` or `stop`; the style sheet colours them, so a change of theme reaches them."""

    def __init__(
        self, text: str, parent: QWidget, size: Voice = "body", shade: str = "ink", *, bold: bool = False
    ) -> None:
        super().__init__(text, parent)
        self.setProperty("voice", shade)
        self.setTextFormat(Qt.TextFormat.PlainText)
        self.setFont(theme.font(size, bold=bold))


class Elided(Label):
    """One line that ends in an ellipsis where room is short; the tooltip then has the whole of it."""

    def __init__(self, text: str, parent: QWidget, size: Voice = "body", shade: str = "ink") -> None:
        super().__init__(text, parent, size, shade)
        self.setSizePolicy(QSizePolicy.Policy.Ignored, QSizePolicy.Policy.Preferred)

    def minimumSizeHint(self) -> QSize:
        return QSize(0, super().minimumSizeHint().height())

    def setText(self, text: str) -> None:
        super().setText(text)
        self._tell()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._tell()

    def shown(self) -> str:
        """The words as they fit."""
        return self.fontMetrics().elidedText(self.text(), Qt.TextElideMode.ElideRight, self.width())

    def _tell(self) -> None:
        self.setToolTip("" if self.shown() == self.text() else self.text())

    def paintEvent(self, event: QPaintEvent) -> None:
        token = str(self.property("voice")) if self.isEnabled() else "off"
        with QPainter(self) as painter:
            painter.setFont(self.font())
            painter.setPen(theme.colour(token))
            painter.drawText(self.rect(), Qt.AlignmentFlag.AlignVCenter | Qt.AlignmentFlag.AlignLeft, self.shown())
