"""From and to of a band, beside each other: what is typed there, and the exact ends behind rounded words."""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QWidget

from studio.brief.typed import read_value
from studio.units import Unit, write_length
from studio.words import tr

from .. import theme
from ..tokens import SIZE, SPACE
from .band_words import PARTS, speak
from .box import Box
from .field import spoken_unit
from .label import Label

ENDS: Final = ("start", "end")


class BandEnds(QWidget):
    """`typed` is sent at each keystroke, `entered` by Enter, `given_up` by Escape; `stepped` carries the end that Up
    and Down would move, and by how many steps.
    """

    typed = Signal()
    entered = Signal()
    given_up = Signal()
    stepped = Signal(str, int)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.boxes = {name: Box(self) for name in ENDS}
        self.wrong: tuple[str, ...] = ENDS  # the ends that a fault is about
        self.kept = (0.0, 0.0)  # the exact ends, mm, that the words last written stand for
        self._written = ("", "")
        self._unit: Unit = "cm"
        to = Label(tr(PARTS["end"].words).lower(), self)
        to.setAlignment(Qt.AlignmentFlag.AlignCenter)
        to.setFixedWidth(theme.px(SPACE.xl))
        to.setBuddy(self.boxes["end"])
        line = QHBoxLayout(self)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(0)
        for part in (self.boxes["start"], to, self.boxes["end"]):
            line.addWidget(part)
        for box in self.boxes.values():
            box.hold_number()
            box.textEdited.connect(self.typed)
            box.returnPressed.connect(self.entered)
            box.given_up.connect(self.given_up)
        self.boxes["start"].stepped.connect(self._step_start)
        self.boxes["end"].stepped.connect(self._step_end)
        self.setFixedWidth(2 * theme.px(SIZE.box_w) + theme.px(SPACE.xl))

    @property
    def typing(self) -> bool:
        """Whether the maker is typing in one of them at this moment."""
        return any(box.hasFocus() and box.isModified() for box in self.boxes.values())

    def write(self, start: float, end: float, unit: Unit) -> None:
        """Write both ends (mm)."""
        self.kept, self._unit = (start, end), unit
        self._written = (write_length(start, unit, bare=True), write_length(end, unit, bare=True))
        for box, words in zip(self.boxes.values(), self._written, strict=True):
            box.set_unit(unit)
            box.write(words)

    def read(self) -> tuple[float, float]:
        """Both ends, mm: the exact one where its box holds what was written there. Raises `Unreadable`."""
        start, end = (self._end(name, k) for k, name in enumerate(ENDS))
        self.wrong = ENDS
        return start, end

    def leave(self) -> None:
        """What was typed stays, but a new value from elsewhere may be written over it."""
        for box in self.boxes.values():
            box.setModified(False)

    def select(self) -> None:
        """Select what the box with the cursor holds."""
        for box in self.boxes.values():
            if box.hasFocus():
                box.selectAll()

    def describe(self, title: str, fault: str, wrong: Sequence[str]) -> None:
        """Mark the ends that are wrong, and say of which band they are and what is wrong."""
        for name, box in self.boxes.items():
            box.set_fault(name in wrong)
            speak(box, title, name, spoken_unit(self._unit), fault)

    def _end(self, name: str, k: int) -> float:
        self.wrong = (name,)
        text = self.boxes[name].text()
        across = self.kept[k] if text == self._written[k] else read_value(PARTS[name], text, self._unit)
        assert isinstance(across, (int, float))
        return across

    def _step_start(self, steps: int) -> None:
        self.stepped.emit("start", steps)

    def _step_end(self, steps: int) -> None:
        self.stepped.emit("end", steps)
