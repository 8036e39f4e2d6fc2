"""A field one types in: reads each keystroke, keeps the exact value behind rounded words, says what is wrong once."""

from PySide6.QtWidgets import QWidget

from studio.brief.declare import Declared
from studio.brief.typed import Typed, read_value, write_value
from studio.units import Unit, Unreadable
from studio.words import tr

from ..tokens import SPACE
from .box import Box
from .entry import Entry
from .label import Label


class TypedEntry(Entry):
    """A label, a box, and a line below for what cannot be read.

    Text that reads cleanly takes effect at once. Text that does not waits: only when the maker presses Enter or goes
    on is it called a fault. It then stays to be mended, and the value is the one from before.
    """

    def __init__(self, declared: Declared, unit: Unit, parent: QWidget) -> None:
        super().__init__(declared, unit, parent)
        self.label = Label(tr(declared.words), self)
        self.box = Box(self)
        self.label.setBuddy(self.box)
        self.fault_line = Label("", self, "small", "stop")
        self.fault_line.setWordWrap(True)
        self.fault_line.setContentsMargins(0, 2, 0, SPACE.xs)
        self.fault_line.hide()
        self._written, self._kept = "", self.value  # the words last written, and the exact value they stand for
        self.box.setPlaceholderText(tr(declared.blank))
        self.box.setAccessibleName(tr(declared.words))
        self._watch(self.box)
        self.box.textEdited.connect(self._read_on)
        self.box.returnPressed.connect(self.settle)
        self.box.given_up.connect(self.give_up)

    def show_value(self, value: Typed, unit: Unit) -> None:
        same = value == self.value and unit == self.unit
        typing = self.box.hasFocus() and self.box.isModified()
        super().show_value(value, unit)
        self._follow()
        if not typing and not (same and self.fault):
            self._write()

    def take_in_hand(self, path: str = "") -> QWidget:
        """Put the cursor into the box, so that what is typed replaces what it holds."""
        super().take_in_hand(path)
        self.box.selectAll()
        return self

    def settle(self) -> None:
        try:
            value = self._read()
        except Unreadable as fault:
            self._set_fault(str(fault))
            self._take_back()
            self.box.setModified(False)  # a new value from elsewhere may be written over it
        else:
            self._change(value)
            self._write()
        self._finish()

    def _read_on(self) -> None:
        """A keystroke."""
        try:
            value = self._read()
        except Unreadable as fault:
            if self.fault:
                self._set_fault(str(fault))
            return
        self._set_fault("")
        self._change(value)

    def _read(self) -> Typed:
        text = self.box.text()
        return self._kept if text == self._written else read_value(self.declared, text, self.unit)

    def _write(self) -> None:
        self._written, self._kept = self._words(), self.value
        self.box.write(self._written)
        self._set_fault("")

    def _words(self) -> str:
        """The value as the box shows it; empty where the placeholder says what nothing means."""
        words = write_value(self.declared, self.value, self.unit, bare=True)
        return "" if words == tr(self.declared.blank) else words

    def give_up(self) -> None:
        self._take_back()
        self._write()
        self._finish()
        self.box.selectAll()

    def _change(self, value: Typed) -> None:
        super()._change(value)
        self._follow()

    def _follow(self) -> None:
        """Whatever else shows the value; called whenever it changes."""

    def _set_fault(self, words: str) -> None:
        if words == self.fault:
            return
        self.fault = words
        self.fault_line.setText(words)
        self.fault_line.setVisible(bool(words))
        self.box.set_fault(bool(words))
        self._describe()
        self._follow()
        self.update()

    def _describe(self) -> None:
        """What a screen reader adds to the name: first what is wrong."""
        self.box.setAccessibleDescription(f"{self.fault} {self.advice}".strip())
