"""A leaf: a small sheet laid over the window, with a heading, something to read or to decide, and its buttons."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from . import theme
from .tokens import SPACE
from .widgets.label import Label

_WIDE = 480  # px


class Leaf(QDialog):
    """`open` lays it down and returns at once; Escape takes it away."""

    def __init__(self, title: str, parent: QWidget, wide: int = _WIDE) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(title)
        self.setAccessibleName(title)
        self.setMinimumWidth(theme.px(wide))
        self.column = QVBoxLayout(self)
        self.column.setContentsMargins(SPACE.xl, SPACE.xl, SPACE.xl, SPACE.xl)
        self.column.setSpacing(SPACE.s)
        self.heading = Label(title, self, "number")
        self.heading.setWordWrap(True)
        self.column.addWidget(self.heading)
        self.ends = QHBoxLayout()
        self.ends.setContentsMargins(0, SPACE.m, 0, 0)
        self.ends.setSpacing(SPACE.m)

    def add_words(self, text: str, shade: str = "ink") -> Label:
        """A paragraph."""
        words = Label(text, self, "body", shade)
        words.setWordWrap(True)
        self.column.addWidget(words)
        return words

    def add_button(self, words: str, *, lead: bool = False) -> QPushButton:
        """A button at the foot; the lead one answers to Enter."""
        button = QPushButton(words, self)
        button.setAutoDefault(lead)
        if lead:
            button.setObjectName("lead")
            button.setDefault(True)
        self.ends.addWidget(button)
        return button

    def finish(self) -> None:
        """Close the column with the buttons."""
        self.ends.addStretch(1)
        self.column.addLayout(self.ends)
