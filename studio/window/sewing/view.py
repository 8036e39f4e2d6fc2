"""The sewing order, in place of the board: every step in turn, to be ticked off at the machine."""

from collections.abc import Iterable
from itertools import pairwise
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from studio.units import Unit, spell
from studio.words import tr
from studio.workroom import Docket

from .. import theme
from ..tokens import SPACE
from ..widgets.label import Label
from ..widgets.strokes import hairline

if TYPE_CHECKING:
    from .step import Step

_WIDEST: Final = 880  # px; longer lines are hard to read


class SewingView(QScrollArea):
    """Steps are kept by key, so that ticks, focus and place stay where they are while numbers change.

    It works only while it is seen. `ticked` says that a box was ticked or cleared: `done` holds the keys of all that
    are.
    """

    ticked = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.steps: dict[str, Step] = {}
        self.done: set[str] = set()
        self._docket: Docket | None = None
        self._unit: Unit = "cm"
        self._shown: tuple[Docket, Unit] | None = None
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setAccessibleName(tr("Sewing order"))
        self._sheet = QWidget(self)
        self._sheet.setObjectName("panel")
        self._column = QVBoxLayout()
        self._column.setContentsMargins(0, SPACE.s, 0, SPACE.l)
        self._column.setSpacing(0)
        middle = QWidget(self._sheet)
        middle.setMaximumWidth(theme.px(_WIDEST))
        middle.setLayout(self._column)
        row = QHBoxLayout(self._sheet)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(middle)
        self.setWidget(self._sheet)

    def show_docket(self, docket: Docket) -> None:
        """Show the steps of what has been made up, now or when it is seen."""
        self._docket = docket
        if self.isVisible():
            self._show()

    def set_unit(self, unit: Unit) -> None:
        """Write lengths in another unit, with the docket that follows."""
        self._unit = unit

    def light(self, path: str) -> None:
        """Nothing here is bound to a single number."""

    def take(self, done: Iterable[str]) -> None:
        """Another skirt comes to the table, with the keys of the steps that are done: its own ticks, from the top."""
        self.done = set(done)
        self._shown = None
        self.verticalScrollBar().setValue(0)

    def in_order(self) -> "list[Step]":
        """The rows as they stand."""
        return sorted(self.steps.values(), key=self._column.indexOf)

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self._show()

    def _show(self) -> None:
        docket, unit = self._docket, self._unit
        if docket is None or self._shown == (docket, unit):
            return
        from studio.sewing import cautions, sewing_order  # what only a maker at the machine needs

        if self._shown is None and not self.steps:
            self._column.addWidget(self._with_care())
            self._column.addStretch(1)
        self._shown = (docket, unit)
        order = sewing_order(docket.brief, docket.draft)
        keys = [step.key for step in order]
        for key in [key for key in self.steps if key not in keys]:
            self._drop(self.steps.pop(key))
        made = (docket.draft, docket.brief, unit)
        for place, (step, warned) in enumerate(zip(order, cautions(order), strict=True)):
            row = self.steps.get(step.key) or self._add(step.key)
            if self._column.indexOf(row) != place:
                self._column.insertWidget(place, row)
            row.show_step(place + 1, step, warned, made)
            row.set_done(step.key in self.done)
        self._tab_in_order()

    def _add(self, key: str) -> "Step":
        from .step import Step

        row = self.steps[key] = Step(key, self._sheet)
        row.ticked.connect(self._tick)
        return row

    def _drop(self, row: "Step") -> None:
        row.hide()  # now: deleteLater waits for the event loop, and a row must leave the tab order
        self._column.removeWidget(row)
        row.deleteLater()

    def _tab_in_order(self) -> None:
        rows = self.in_order()
        for row, after in pairwise(rows):
            QWidget.setTabOrder(row.tick, after.tick)

    def _tick(self, key: str, done: bool) -> None:
        (self.done.add if done else self.done.discard)(key)
        self.ticked.emit()

    def _with_care(self) -> QWidget:
        """What is said once for the whole work, at the foot."""
        from studio.sewing import ALWAYS

        care = QWidget(self._sheet)
        column = QVBoxLayout(care)
        column.setContentsMargins(SPACE.xl, SPACE.m, SPACE.l, SPACE.m)
        column.setSpacing(SPACE.xs)
        column.addWidget(hairline(care))
        column.addSpacing(SPACE.s)
        column.addWidget(Label(tr("With care"), care, "body", "quiet", bold=True))
        for sentence in ALWAYS:
            label = Label(spell(sentence, "cm"), care, "small", "quiet")
            label.setWordWrap(True)
            label.setMinimumWidth(1)
            column.addWidget(label)
        return care
