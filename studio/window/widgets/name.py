"""A field for a name: what the skirt is called, and who it is for."""

from PySide6.QtWidgets import QGridLayout, QWidget

from studio.brief.declare import Declared
from studio.units import Unit
from studio.words import tr

from .. import theme
from ..tokens import SPACE
from .typed_entry import TypedEntry

_LABEL_W = 44


class Name(TypedEntry):
    """A short text, its label to the left; the hint stands in the empty box."""

    def __init__(self, declared: Declared, unit: Unit, parent: QWidget) -> None:
        super().__init__(declared, unit, parent)
        self.box.setPlaceholderText(tr(declared.hint))
        grid = QGridLayout(self)
        grid.setContentsMargins(SPACE.m, SPACE.xs, SPACE.m, SPACE.xs)
        grid.setHorizontalSpacing(SPACE.s)
        grid.setVerticalSpacing(SPACE.xs)
        grid.addWidget(self.label, 0, 0)
        grid.addWidget(self.box, 0, 1)
        grid.addWidget(self.fault_line, 1, 0, 1, 2)
        grid.setColumnMinimumWidth(0, theme.px(_LABEL_W))
        grid.setColumnStretch(1, 1)
        self._describe()
        self._write()
