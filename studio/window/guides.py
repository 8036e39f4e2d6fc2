"""What Help shows: how to measure, and what the lines and marks mean."""

from collections.abc import Mapping
from typing import Final

from PySide6.QtCore import QEvent, QSize, Signal
from PySide6.QtGui import QEnterEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QGridLayout, QHBoxLayout, QVBoxLayout, QWidget

from studio.brief import Declared
from studio.words import tr

from . import theme
from .board.meanings import WORDS, Meaning
from .board.samples import SAMPLE, paint_sample
from .leaf import Leaf
from .tokens import SPACE
from .widgets.choice import opened
from .widgets.figure import Figure
from .widgets.label import Label

_MEANS: Final[dict[Meaning, str]] = {
    "cut": "Cut here.",
    "seam": "Sew here.",
    "fold": "Fold and press here: the band, and the hem’s finished edge.",
    "placement": "A pleat’s fold is laid on this line.",
    "direction": "From the fold of a pleat to where it is laid.",
    "centre": "The middle, and the quarters: they meet those of the other piece.",
    "hip": "The height of the hips, from side to side.",
    "grain": "Lay this arrow along the selvedge.",
    "gather": "Sew the gathering stitches along it, and stop where it stops.",
    "row stop": "The gathering stitches start and stop here; beyond it the cloth stays flat.",
    "zip stop": "The opening ends here.",
    "slit top": "The seam ends here; below it the slit stays open.",
    "notch": "Snip here; notches meet notches.",
    "button": "Where a button is sewn on.",
    "buttonhole": "Where the hole is worked, between its bars.",
    "hook": "Where hook and bar are sewn on: the hook flat, the bar upright.",
}


class HowToMeasure(Leaf):
    """Each measurement in words; the figure shows the one under the pointer."""

    def __init__(self, declared: Mapping[str, Declared], parent: QWidget) -> None:
        super().__init__(tr("How to measure"), parent, 560)
        self.add_words(
            tr("Over what is worn under the skirt, tape level and not tight. Breathe out, look ahead."), "quiet"
        )
        figure = Figure(self)
        figure.setMinimumHeight(theme.px(220))
        lines = QVBoxLayout()
        lines.setSpacing(SPACE.m)
        for path, one in declared.items():
            if path.startswith("body."):
                line = _Measurement(one, self)
                line.pointed.connect(figure.light)
                lines.addWidget(line)
        lines.addStretch(1)
        two = QHBoxLayout()
        two.setSpacing(SPACE.xl)
        two.addLayout(lines, 3)
        two.addWidget(figure, 2)
        self.column.addLayout(two)
        self.close_button = self.add_button(tr("Close"))
        self.close_button.clicked.connect(self.accept)
        self.finish()


class _Measurement(QWidget):
    """A measurement's name, and how it is taken."""

    pointed = Signal(str)

    def __init__(self, declared: Declared, parent: QWidget) -> None:
        super().__init__(parent)
        self._path = declared.path
        how = Label(tr(declared.hint), self, "body", "quiet")
        how.setWordWrap(True)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(2)
        column.addWidget(Label(tr(declared.words), self, bold=True))
        column.addWidget(how)

    def enterEvent(self, event: QEnterEvent) -> None:
        super().enterEvent(event)
        self.pointed.emit(self._path)

    def leaveEvent(self, event: QEvent) -> None:
        super().leaveEvent(event)
        self.pointed.emit("")


class HowToRead(Leaf):
    """Every line on the board and on paper, and what to do there."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(tr("Lines and marks"), parent, 520)
        grid = QGridLayout()
        grid.setHorizontalSpacing(SPACE.l)
        grid.setVerticalSpacing(SPACE.m)
        grid.setColumnStretch(2, 1)
        for row, (meaning, words) in enumerate(WORDS.items()):
            means = Label(tr(_MEANS[meaning]), self, "body", "quiet")
            means.setWordWrap(True)
            grid.addWidget(_Sample(meaning, self), row, 0)
            grid.addWidget(Label(opened(tr(words)), self), row, 1)
            grid.addWidget(means, row, 2)
        self.column.addLayout(grid)
        self.close_button = self.add_button(tr("Close"))
        self.close_button.clicked.connect(self.accept)
        self.finish()


class _Sample(QWidget):
    """A piece of line, as on the board."""

    def __init__(self, meaning: Meaning, parent: QWidget) -> None:
        super().__init__(parent)
        self._meaning: Meaning = meaning
        self.setFixedSize(self.sizeHint())

    def sizeHint(self) -> QSize:
        return QSize(SAMPLE + 2, theme.px(18))

    def paintEvent(self, event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            paint_sample(painter, self._meaning, 1, self.height() / 2 + 0.5)
