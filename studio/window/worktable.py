"""The worktable: measurements, canvas and construction above, findings and numbers below; all show one docket."""

from PySide6.QtCore import Signal
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout, QWidget

from studio.styles import rack
from studio.units import Unit
from studio.workroom import Docket

from .actions import Actions
from .canvas import Canvas
from .columns import columns
from .construction import Construction
from .form import Form
from .lights import Lights
from .measurements import Measurements
from .strip import Strip
from .widgets.entry import Entry
from .widgets.strokes import hairline


class Worktable(QWidget):
    """It shows a docket and says what the maker does to it; it decides nothing.

    `edited` carries a path and its new value, live; `finished` that the edit is over; `mended` the finding whose
    remedy was chosen; `better` carries a docket and a better lay plan of it.
    """

    edited = Signal(str, object)
    finished = Signal(str)
    mended = Signal(object)
    better = Signal(object, object)

    def __init__(self, do: Actions, unit: Unit, parent: QWidget) -> None:
        super().__init__(parent)
        brief = rack.usual()
        self.unit: Unit = unit
        self.measurements = Measurements(rack.declarations(brief), unit, self)
        self.canvas = Canvas(do, self)
        self.construction = Construction(brief, unit, self)
        self.strip = Strip(self)
        self.forms: tuple[Form, ...] = (self.measurements, self.construction)
        self.lights = Lights(self.forms, self.canvas, self)
        self._lay_out()
        self._connect()

    def show_docket(self, docket: Docket) -> None:
        """Show it everywhere."""
        self.measurements.show_brief(docket.brief, self.unit)
        self.construction.show_docket(docket, self.unit)
        entry = self.in_hand()
        self.canvas.board.hold(entry is not None and entry.held)
        self.canvas.show_docket(docket, self.unit)
        self.strip.show_docket(docket, self.unit)

    def clear(self) -> None:
        """Make room for another skirt: no words that could not be read, and all of it in view."""
        for form in self.forms:
            for entry in form.fields.values():
                if entry.fault:
                    entry.give_up()
        self.canvas.board.await_another()

    def in_hand(self) -> Entry | None:
        """The field that has the focus."""
        return next((entry for form in self.forms if (entry := form.in_hand())), None)

    def settle(self) -> None:
        """Have the field in hand taken as meant."""
        if entry := self.in_hand():
            entry.settle()

    def give_up(self) -> bool:
        """Put back what is being typed where it cannot be read; whether there was such a thing."""
        entry = self.in_hand()
        if entry is None:
            return False
        entry.settle()
        if entry.fault:
            entry.give_up()
            return True
        return False

    def reveal(self, path: str) -> None:
        """Put the cursor into the field of a path, if it has one that applies."""
        for form in self.forms:
            if (entry := form.entry(path)) is not None and not entry.isHidden():
                form.reveal(path)

    def _lay_out(self) -> None:
        above = QHBoxLayout()
        above.setSpacing(0)
        above.addWidget(self.measurements)
        above.addWidget(hairline(self, upright=True))
        above.addWidget(self.canvas, 1)
        above.addWidget(hairline(self, upright=True))
        above.addWidget(self.construction)
        stack = QVBoxLayout(self)
        stack.setContentsMargins(0, 0, 0, 0)
        stack.setSpacing(0)
        stack.addLayout(above, 1)
        stack.addWidget(hairline(self))
        stack.addWidget(self.strip)

    def _connect(self) -> None:
        board = self.canvas.board
        for form in self.forms:
            form.changed.connect(self.edited)
            form.finished.connect(self._finish)
            form.lit.connect(self.lights.take)
        board.dragged.connect(self.edited)
        board.dropped.connect(self.finished)
        board.lit_here.connect(self.lights.point)
        board.chosen.connect(self.reveal)
        self.canvas.lay.edited.connect(self._put)
        self.canvas.lay.better.connect(self.better)
        self.canvas.lay.table.lit_here.connect(self.lights.point)
        self.canvas.lay.table.asked.connect(self.reveal)
        self.strip.findings.pointed.connect(self.lights.point)
        self.strip.findings.mended.connect(self.mended)

    def _put(self, path: str, value: object) -> None:
        """A piece was put down: one step."""
        self.edited.emit(path, value)
        self.finished.emit(path)

    def _finish(self, path: str) -> None:
        self.finished.emit(path)
        self.canvas.board.hold(False)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        left, right = columns(self.width())
        self.measurements.setFixedWidth(left)
        self.construction.setFixedWidth(right)
