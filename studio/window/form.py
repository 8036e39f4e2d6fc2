"""What both forms are: fields in a column that scrolls, filled from the brief."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QApplication, QScrollArea, QVBoxLayout, QWidget

from studio.brief import Brief, Declared
from studio.styles import rack
from studio.units import Unit

from .tokens import SPACE
from .widgets.entry import Entry
from .widgets.entry_for import entry_for
from .widgets.label import Label


class Form(QScrollArea):
    """Passes on what its fields say; shows only the fields that apply to the brief."""

    changed = Signal(str, object)
    finished = Signal(str)
    lit = Signal(str)

    def __init__(self, title: str, unit: Unit, parent: QWidget) -> None:
        super().__init__(parent)
        self.fields: dict[str, Entry] = {}
        self._unit: Unit = unit
        self.setWidgetResizable(True)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setAccessibleName(title)
        self.sheet = QWidget(self)
        self.sheet.setObjectName("panel")
        self.sheet.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
        self.column = QVBoxLayout(self.sheet)
        self.column.setContentsMargins(0, SPACE.m, 0, SPACE.s)
        self.column.setSpacing(0)
        heading = Label(title, self.sheet, "title", bold=True)
        heading.setContentsMargins(SPACE.m, 0, SPACE.m, SPACE.s)
        self.column.addWidget(heading)
        self.setWidget(self.sheet)

    def show_brief(self, brief: Brief, unit: Unit) -> None:
        """Show a brief in a unit; what has not changed is not touched."""
        self._unit = unit
        for path, entry in self.fields.items():
            value = rack.value(brief, path)
            if value != entry.value or unit != entry.unit:
                entry.show_value(value, unit)
            if entry.isHidden() == rack.applies(brief, entry.declared):
                entry.setHidden(not entry.isHidden())

    def light(self, path: str) -> None:
        """Light the field of a path from outside; "" for none."""
        for entry in self.fields.values():
            entry.light(path)

    def entry(self, path: str) -> Entry | None:
        """The field that a path speaks of, or a part of it; None where this form has none."""
        return next((e for one, e in self.fields.items() if path == one or path.startswith(f"{one}.")), None)

    def hint(self, path: str) -> str:
        """What is in hand, in one sentence; "" where no field of this form speaks of the path."""
        entry = self.entry(path)
        return entry.hint if entry else ""

    def reveal(self, path: str) -> None:
        """Put the cursor into a field, wherever it is."""
        entry = self.entry(path)
        assert entry is not None
        self.ensureWidgetVisible(entry.take_in_hand(path), 0, SPACE.xl)

    def in_hand(self) -> Entry | None:
        """The field that has the focus."""
        now = QApplication.focusWidget()
        return next((entry for entry in self.fields.values() if now and entry.isAncestorOf(now)), None)

    def _add_field(self, declared: Declared, parent: QWidget) -> Entry:
        entry = entry_for(declared, self._unit, parent)
        entry.changed.connect(self.changed)
        entry.finished.connect(self.finished)
        entry.lit.connect(self.lit)
        self.fields[declared.path] = entry
        return entry
