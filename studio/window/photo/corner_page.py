"""The photograph with the cloth's corners, and what gives its scale: the width, or a distance that was measured."""

from typing import TYPE_CHECKING, Final

from PySide6.QtWidgets import QPushButton, QVBoxLayout, QWidget

from studio.geometry import Point
from studio.trouble import Trouble
from studio.units import Unit, read_length, spell, write_length
from studio.words import phrase, tr

from ..tokens import SPACE
from ..widgets.box import Box
from ..widgets.label import Label
from ..widgets.yes_no import Tick
from .corner_view import CornerView
from .picture_view import image_of
from .row import row

if TYPE_CHECKING:
    from studio.cloth.photo.found import Corners, Photo

NARROWEST: Final = 300.0
WIDEST: Final = 3200.0
"""What is still a cloth, across (mm)."""
_SHORTEST: Final = 50.0
"""A distance to measure a whole cloth by (mm): with a shorter one, a dot more or less is too much."""


class CornerPage(QWidget):
    """`view` holds the corners and the two points; `asked` says what the maker has typed."""

    def __init__(self, width: float, unit: Unit, parent: QWidget) -> None:
        super().__init__(parent)
        self._unit = unit
        self.view = CornerView(self)
        self.width_box, self.turn = Box(self), QPushButton(tr("Start from the next corner"), self)
        self.known, self.apart_box = Tick(tr("By a distance between two points"), self), Box(self)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(SPACE.s)
        column.addWidget(self.view, 1)
        column.addWidget(row(self, Label(tr("Width of the cloth"), self), self.width_box, self.turn))
        column.addWidget(row(self, self.known, self.apart_box))
        for box, words in ((self.width_box, tr("Width of the cloth")), (self.apart_box, tr("Between the two points"))):
            box.hold_number()
            box.set_unit(unit)
            box.setAccessibleName(words)
        self.width_box.write(write_length(width, unit, bare=True))
        self.apart_box.setEnabled(False)
        self.turn.clicked.connect(self._turn)
        self.known.toggled.connect(self._measure)

    def take(self, photo: "Photo", corners: "Corners") -> None:
        """Show a photograph and the corners that were found on it."""
        self.view.show_image(image_of(photo))
        self.view.put(corners.points)
        self.view.setFocus()

    def asked(self) -> tuple[float, tuple[Point, Point] | None]:
        """The cloth's width (mm) and None, or a distance and the two points it lies between (dots). Raises `Unreadable`
        or `Trouble`.
        """
        if not self.known.isChecked():
            width = read_length(self.width_box.text(), self._unit)
            self.refuse(width)
            return width, None
        apart = read_length(self.apart_box.text(), self._unit)
        if not _SHORTEST <= apart <= WIDEST:
            says = phrase("Type a distance between {a} and {b}; the longer, the better.", a=_SHORTEST, b=WIDEST)
            raise Trouble(spell(says, self._unit))
        a, b = self.view.between
        return apart, (a, b)

    def refuse(self, width: float) -> None:
        """Raise `Trouble` where no cloth is so wide (mm)."""
        if NARROWEST <= width <= WIDEST:
            return
        text = "A cloth is between {a} and {b} wide."
        if self.known.isChecked():
            text = "A cloth is between {a} and {b} wide; by that distance this one would be {w}."
        raise Trouble(spell(phrase(text, a=NARROWEST, b=WIDEST, w=width), self._unit))

    def _measure(self, on: bool) -> None:
        self.apart_box.setEnabled(on)
        self.width_box.setEnabled(not on)
        self.view.ask_between(on)
        if on:
            self.apart_box.setFocus()

    def _turn(self) -> None:
        """For a picture that lies on its side: the next corner becomes the first."""
        self.view.put([*self.view.corners[1:], *self.view.corners[:1]])
