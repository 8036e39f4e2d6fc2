"""The left form: which skirt, for whom, and the body."""

from collections.abc import Mapping

from PySide6.QtWidgets import QWidget

from studio.brief import Declared
from studio.units import Unit
from studio.words import tr

from .form import Form
from .tokens import SPACE
from .widgets.figure import Figure

_NAMES = ("title", "who")


class Measurements(Form):
    """The figure shows where the tape goes; it gives way where the window is low."""

    def __init__(self, declared: Mapping[str, Declared], unit: Unit, parent: QWidget) -> None:
        super().__init__(tr("Measurements"), unit, parent)
        self.figure = Figure(self.sheet)
        for path in _NAMES:
            self.column.addWidget(self._add_field(declared[path], self.sheet))
        self.column.addSpacing(SPACE.s)
        self.column.addWidget(self.figure, 20)
        self.column.addSpacing(SPACE.s)
        for path, one in declared.items():
            if path.startswith("body."):
                self.column.addWidget(self._add_field(one, self.sheet))
        self.column.addStretch(1)

    def light(self, path: str) -> None:
        super().light(path)
        self.figure.light(path)
