"""A number: a label over a slider for judging by eye, the value in a box, the way back to usual, a line for a fault."""

from typing import Any, Final

from PySide6.QtCore import QEvent, Qt
from PySide6.QtWidgets import QGridLayout, QWidget

from studio.brief.declare import Declared, Kind
from studio.brief.typed import Typed, is_usual, write_value
from studio.units import Unit
from studio.words import tr

from ..tokens import SPACE
from .reset import Reset
from .slider import EyeSlider
from .typed_entry import TypedEntry

_UNITS: Final[dict[Kind, str]] = {"ratio": "×", "share": "%", "weight": "g/m²"}
_SPOKEN: Final = {"cm": "centimetres", "in": "inches", "×": "times", "%": "per cent", "g/m²": "grams a square metre"}
_EIGHTH: Final = 25.4 / 8  # mm; inches are written to the eighth
_REACH: Final = 10  # a slider spans at most so many times the usual value; what is longer is typed


class Field(TypedEntry):
    """A length, ratio, count, share or weight."""

    def __init__(self, declared: Declared, unit: Unit, parent: QWidget) -> None:
        super().__init__(declared, unit, parent)
        self.box.hold_number()
        most = min(declared.most, _REACH * declared.usual) if declared.usual else declared.most
        self.slider = EyeSlider(declared.least, declared.usual, most, self._step(), self)
        self.reset = Reset(self)
        self.slider.setAccessibleName(f"{tr(declared.words)}, {tr('by eye')}")
        self.reset.setAccessibleName(f"{tr(declared.words)}, {tr('back to usual')}")
        self._lay_out()
        self._watch(self.slider, self.reset)
        self.slider.moved.connect(self._slide)
        self.slider.let_go.connect(self._finish)
        self.reset.clicked.connect(self._back_to_usual)
        self.box.stepped.connect(self._take_steps)
        self._relabel()
        self._write()
        self._follow()

    @property
    def held(self) -> bool:
        return self.slider.isSliderDown()

    def show_value(self, value: Typed, unit: Unit) -> None:
        if unit != self.unit:
            self.unit = unit
            self._relabel()
            self._write()
        super().show_value(value, unit)

    def _lay_out(self) -> None:
        grid = QGridLayout(self)
        grid.setContentsMargins(SPACE.m, 3, SPACE.m, 3)
        grid.setHorizontalSpacing(SPACE.xs)
        grid.setVerticalSpacing(0)
        grid.addWidget(self.label, 0, 0)
        grid.addWidget(self.slider, 1, 0)
        grid.addWidget(self.reset, 0, 1, 2, 1, Qt.AlignmentFlag.AlignCenter)
        grid.addWidget(self.box, 0, 2, 2, 1, Qt.AlignmentFlag.AlignVCenter)
        grid.addWidget(self.fault_line, 2, 0, 1, 3)
        grid.setColumnStretch(0, 1)
        grid.setRowMinimumHeight(0, 20)

    def _step(self) -> float:
        """The step of arrow keys and slider: as declared, in inches the nearest number of eighths."""
        step = self.declared.step
        if self.declared.kind == "length" and self.unit == "in":
            return max(1, round(step / _EIGHTH)) * _EIGHTH
        return step

    def _relabel(self) -> None:
        """Everything that speaks of the unit."""
        unit = self.unit if self.declared.kind == "length" else _UNITS.get(self.declared.kind, "")
        self.box.set_unit(unit)
        self.box.setAccessibleName(", ".join(filter(None, (tr(self.declared.words), tr(_SPOKEN.get(unit, ""))))))
        self.slider.set_step(self._step())
        self._describe()

    def _whole(self, amount: float) -> Typed:
        return round(amount) if self.declared.kind == "count" else amount

    def _slide(self, amount: float) -> None:
        self._change(self._whole(amount))
        self._write()

    def _take_steps(self, steps: int) -> None:
        start: Any = self.declared.usual if self.value is None else self.value
        amount = round(float(start) + steps * self._step(), 6)
        self._change(self._whole(min(max(amount, self.declared.least), self.declared.most)))
        self._write()

    def _back_to_usual(self) -> None:
        self.box.setFocus(Qt.FocusReason.OtherFocusReason)  # the button is about to hide
        self._change(self.default)
        self._write()
        self._finish()

    def _follow(self) -> None:
        amount = self.value if isinstance(self.value, (int, float)) else None
        self.slider.show_amount(amount)
        self.slider.setAccessibleDescription(write_value(self.declared, self.value, self.unit))
        self.reset.setVisible(self.isEnabled() and (bool(self.fault) or not self._is_usual))

    @property
    def _is_usual(self) -> bool:
        """Whether it holds the usual value, of either unit, or one that reads the same."""
        one, unit = self.declared, self.unit
        return is_usual(one, self.value) or write_value(one, self.value, unit) == write_value(one, self.default, unit)

    def _light(self) -> None:
        super()._light()
        self.slider.set_lit(self._in_hand or self._lit_from_outside)

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() == QEvent.Type.EnabledChange:
            self._follow()
