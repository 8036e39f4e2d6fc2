"""The foot of the canvas: one sentence of advice, and how the table is looked at."""

from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible, QAccessibleAnnouncementEvent
from PySide6.QtWidgets import QHBoxLayout, QSizePolicy, QVBoxLayout, QWidget

from studio.words import tr

from . import theme
from .actions import Actions
from .tokens import SIZE, SPACE
from .tool import chrome, tool
from .widgets.label import Elided, Label
from .widgets.strokes import hairline

_NOTE = 200  # px; a long file name ends in an ellipsis


RESTS: Final = {
    "pieces": "Drag a ring on a piece, or type in a field.",
    "lay": "Drag pieces, or bands at the left; R turns a piece, Delete lets it go.",
    "sewing": "Tick what is done; once the skirt is saved, its ticks are kept.",
}
"""What is advised in each view while nothing is in hand."""


class Foot(QWidget):
    """Hint, lines, life size, smaller, scale, larger, fit."""

    def __init__(self, do: Actions, parent: QWidget) -> None:
        super().__init__(parent)
        chrome(self)
        self.setFixedHeight(theme.px(SIZE.foot) + 5)
        self._view = "pieces"
        self.hint = Elided("", self, "small", "quiet")
        self.note = Elided("", self, "small", "quiet")
        self.note.setSizePolicy(QSizePolicy.Policy.Maximum, QSizePolicy.Policy.Preferred)
        self.note.setMaximumWidth(theme.px(_NOTE))
        self.note.hide()
        self.scale = Label("", self, "small", "quiet")
        self.scale.setFixedWidth(theme.px(48))
        self.scale.setAlignment(Qt.AlignmentFlag.AlignCenter)
        self.scale.setToolTip(tr("Scale: 1:1 is life size"))
        row = QHBoxLayout()
        row.setContentsMargins(SPACE.m, 2, SPACE.s, 2)
        row.setSpacing(2)
        row.addWidget(self.hint, 1)
        row.addWidget(self.note)
        row.addSpacing(SPACE.m)
        row.addWidget(tool(do.lines, self))
        row.addWidget(tool(do.life_size, self))
        row.addSpacing(SPACE.s)
        row.addWidget(tool(do.smaller, self))
        row.addWidget(self.scale)
        row.addWidget(tool(do.larger, self))
        row.addWidget(tool(do.fit, self))
        stack = QVBoxLayout(self)
        stack.setContentsMargins(0, 0, 0, 0)
        stack.setSpacing(0)
        stack.addWidget(hairline(self))
        stack.addLayout(row)

    def advise(self, hint: str) -> None:
        """Say what the field in hand is, or what can be done here."""
        self.hint.setText(hint or tr(RESTS[self._view]))

    def rest_on(self, view: str) -> None:
        """The view over it is another one."""
        self._view = view
        self.advise("")

    def tell(self, done: str) -> None:
        """Say quietly what has been done, beside the hint; "" once it is no longer so."""
        self.note.setText(done)
        self.note.setVisible(bool(done))
        if done:
            QAccessible.updateAccessibility(QAccessibleAnnouncementEvent(self, done))

    def show_scale(self, words: str) -> None:
        """Say the scale as drafting writes it, and to a screen reader too."""
        self.scale.setText(words)
        self.scale.setAccessibleName(f"{tr('Scale')} {words}")
