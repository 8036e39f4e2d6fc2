"""One step of the sewing order: number, box to tick, what to do, what to mind, and its picture."""

from collections.abc import Iterable
from html import escape
from typing import Final

from PySide6.QtCore import QRectF, QSize, Qt, Signal
from PySide6.QtGui import QMouseEvent, QPainter, QPaintEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from studio.brief import Brief
from studio.draft import Draft
from studio.draft.making import Making
from studio.drawing import Drawing
from studio.sewing import CAUTIONS, ROOM, on_screen, picture, pictured
from studio.units import Unit, spell
from studio.words import tr

from .. import theme
from ..tokens import RADIUS, SPACE
from ..widgets.label import Label
from ..widgets.strokes import slab
from ..widgets.yes_no import Tick
from .painting import paint

_WIDE: Final = 232  # px of a picture, where the system font is 12 px high
_NUMBER: Final = 22
_AIR: Final = 4  # px between sentences


class PictureBox(QWidget):
    """Shows a step's picture; it is drawn when it is first painted."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._from: tuple[Making, Draft, Brief, Unit] | None = None
        self._drawing: Drawing | None = None
        self.setFixedSize(self.sizeHint())

    def sizeHint(self) -> QSize:
        wide = theme.px(_WIDE)
        return QSize(wide, round(wide * ROOM.height / ROOM.width))

    def show_step(self, step: Making, draft: Draft, brief: Brief, unit: Unit) -> None:
        """Show what a step of a draft works on."""
        self._from, self._drawing = (step, draft, brief, unit), None
        self.update()

    def drawing(self) -> Drawing:
        """What is shown."""
        if self._drawing is None:
            self._drawing = on_screen(picture(*self._from)) if self._from else ()
        return self._drawing

    def paintEvent(self, event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            slab(painter, QRectF(self.rect()), theme.colour("tissue"), RADIUS.tile)  # the paper it is drawn on
            paint(painter, self.drawing(), self.width() / ROOM.width)


class _Title(Label):
    """The title belongs to the box beside it: a click on it ticks."""

    pressed = Signal()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self.pressed.emit()


class Step(QWidget):
    """A row that keeps its place in the list while its words change; `ticked` carries its key and whether it is."""

    ticked = Signal(str, bool)

    def __init__(self, key: str, parent: QWidget) -> None:
        super().__init__(parent)
        self.key = key
        self._told: tuple[int, Making, tuple[str, ...], Unit] | None = None
        self.number = Label("", self, "title", "quiet")
        self.number.setFixedWidth(theme.px(_NUMBER))
        self.number.setAlignment(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
        self.tick = Tick("", self)
        self.title = _Title("", self, "title", bold=True)
        self.title.setCursor(Qt.CursorShape.PointingHandCursor)
        self.says = Label("", self)
        self.warns = Label("", self, "small", "quiet")
        self.picture = PictureBox(self)
        self._lay_out()
        self.tick.toggled.connect(self._toggled)
        self.title.pressed.connect(self.tick.click)

    def show_step(self, number: int, step: Making, warned: tuple[str, ...], made: tuple[Draft, Brief, Unit]) -> None:
        """Show a step of a draft, its words in a unit."""
        draft, brief, unit = made
        if self._told != (told := (number, step, warned, unit)):
            self._told = told
            self._tell(number, step, warned, unit)
        if pictured(step):
            self.picture.show_step(step, draft, brief, unit)

    def _tell(self, number: int, step: Making, warned: tuple[str, ...], unit: Unit) -> None:
        self.number.setText(str(number))
        self.title.setText(step.title)
        self.tick.setAccessibleName(f"{number} {step.title}")
        sentences = [spell(s, unit) for s in step.says]
        self.says.setText(_apart(sentences))
        cautions = [spell(CAUTIONS[c], unit) for c in warned]
        self.warns.setText(_apart(f"{tr('Mind')}: {c}" for c in cautions))
        self.warns.setVisible(bool(cautions))
        self.tick.setAccessibleDescription(" ".join((*sentences, *cautions)))
        self.picture.setVisible(pictured(step))

    def set_done(self, done: bool) -> None:
        """Show it ticked or not, without saying so."""
        if done == self.tick.isChecked():
            return
        self.tick.blockSignals(True)
        self.tick.setChecked(done)
        self.tick.blockSignals(False)
        self._hush(done)

    def _toggled(self, done: bool) -> None:
        self._hush(done)
        self.ticked.emit(self.key, done)

    def _hush(self, done: bool) -> None:
        """What is done speaks in the second voice."""
        for label in (self.title, self.says):
            label.setProperty("voice", "quiet" if done else "ink")
            label.style().unpolish(label)
            label.style().polish(label)

    def _lay_out(self) -> None:
        head = QHBoxLayout()
        head.setSpacing(SPACE.s)
        head.addWidget(self.title, 1)
        words = QVBoxLayout()
        words.setSpacing(SPACE.xs)
        words.addLayout(head)
        for label in (self.title, self.says, self.warns):
            label.setWordWrap(True)
            label.setMinimumWidth(1)  # it breaks to the room there is
        for label in (self.says, self.warns):
            label.setTextFormat(Qt.TextFormat.RichText)
            words.addWidget(label)
        words.addStretch(1)
        self.title.setMinimumHeight(self.tick.minimumHeight())
        row = QHBoxLayout(self)
        row.setContentsMargins(SPACE.m, SPACE.m, SPACE.l, SPACE.m)
        row.setSpacing(SPACE.s)
        top = Qt.AlignmentFlag.AlignTop
        self.number.setMinimumHeight(self.tick.minimumHeight())
        row.addWidget(self.number, 0, top)
        row.addWidget(self.tick, 0, top)
        row.addLayout(words, 1)
        row.addSpacing(SPACE.s)
        row.addWidget(self.picture, 0, top)


def _apart(sentences: Iterable[str]) -> str:
    """Sentences under each other with a little air between, so that a broken line is told from the next sentence."""
    return "".join(f'<p style="margin:0 0 {_AIR}px 0">{escape(s)}</p>' for s in sentences)
