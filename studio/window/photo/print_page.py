"""The cloth laid flat with what was read from it, each to be put right by hand."""

from typing import TYPE_CHECKING

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from studio.cloth.photo import word
from studio.units import Unit, spell
from studio.words import phrase, tr

from ..tokens import SPACE
from ..widgets.label import Label
from ..widgets.yes_no import Tick
from .flat_view import FlatView
from .picture_view import image_of
from .row import row

if TYPE_CHECKING:
    from studio.cloth.photo.flat import Flat
    from studio.cloth.photo.found import Print


class PrintPage(QWidget):
    """`view` holds the bands and the repeat; `told` carries what is there now, in a sentence."""

    told = Signal(str)

    def __init__(self, unit: Unit, parent: QWidget) -> None:
        super().__init__(parent)
        self._unit = unit
        self._found: Print | None = None
        self.view = FlatView(self)
        self.repeat_says = Label("", self, "body")
        self.halve, self.double = QPushButton("÷ 2", self), QPushButton("× 2", self)
        self.one_way = Tick(tr("One way: the print has a top"), self)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(SPACE.s)
        column.addWidget(self.view, 1)
        column.addWidget(row(self, self.repeat_says, self.halve, self.double, self.one_way))
        for button, words in ((self.halve, tr("Half the repeat")), (self.double, tr("Twice the repeat"))):
            button.setAccessibleName(words)
        self.halve.clicked.connect(self._halve)
        self.double.clicked.connect(self._double)
        self.view.changed.connect(self._tell)

    def take(self, flat: "Flat", found: "Print") -> None:
        """Show a cloth laid flat, and what was read from it."""
        self._found = found
        self.view.mm_per_dot = flat.mm_per_dot
        self.view.show_image(image_of(flat.photo))
        self.view.bands = [(b.start, b.end) for b in found.bands]
        self.view.repeat = found.repeat.length if found.repeat else None
        self.view.offset = found.repeat.offset if found.repeat else 0.0
        self.one_way.setChecked(found.one_way)
        self._tell()

    def _tell(self) -> None:
        """What is there now, and how sure the reading was of what is still as it was read."""
        found = self._found
        if found is None:
            return
        n = len(self.view.bands)
        bands = spell(phrase("{n:count} band" if n == 1 else "{n:count} bands", n=n), self._unit)
        sure = min((b.sure for b in found.bands), default=0.0)
        as_read = self.view.bands == [(b.start, b.end) for b in found.bands]
        hint = f" ({_sure(sure)})" if found.bands and as_read else ""
        if self.view.repeat is None:
            self.repeat_says.setText(tr("No repeat was found."))
        else:
            text = spell(phrase("Repeat {r}", r=self.view.repeat), self._unit)
            as_read = found.repeat is not None and found.repeat.length == self.view.repeat
            self.repeat_says.setText(f"{text} ({_sure(found.repeat.sure)})" if found.repeat and as_read else text)
        for button in (self.halve, self.double):
            button.setEnabled(self.view.repeat is not None)
        self.one_way.setToolTip(_sure(found.one_way_sure))
        self.told.emit(
            f"{bands}{hint}. {tr('Drag a line to put it right; drag where there is none for another band.')}"
        )

    def _halve(self) -> None:
        self._set_repeat((self.view.repeat or 0.0) / 2)

    def _double(self) -> None:
        self._set_repeat((self.view.repeat or 0.0) * 2)

    def _set_repeat(self, repeat: float) -> None:
        self.view.repeat = min(max(5.0, repeat), 3000.0)
        self.view.update()
        self._tell()


def _sure(hint: float) -> str:
    """How sure a reading is, in words."""
    return {"sure": tr("sure"), "likely": tr("likely"), "guess": tr("a guess")}[word(hint)]
