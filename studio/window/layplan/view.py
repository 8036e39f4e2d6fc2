"""The view of the lay plan: the cloth, and a line that says how good the plan is and whether it is still bettered."""

from PySide6.QtCore import Signal
from PySide6.QtGui import QHideEvent, QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from studio.cloth.plan.installed import engine_installed
from studio.units import Unit, spell
from studio.words import Phrase, phrase, tr
from studio.workroom import Docket

from ..tokens import SPACE
from ..tool import chrome
from ..widgets.label import Elided
from ..widgets.strokes import hairline
from .hand import HandTable
from .planner import ASIDE, Planner, ill_held, may_be_bettered


class LayPlan(QWidget):
    """`edited` carries a path and its new value; `better` a docket and a better lay of it; `printing` the docket whose
    plan is shown and shall be printed.
    """

    edited = Signal(str, object)
    better = Signal(object, object)
    printing = Signal(object)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.table, self.planner = HandTable(self), Planner(self)
        self._docket: Docket | None = None
        self._open = False
        self._bar = QWidget(self)
        chrome(self._bar)
        self.says = Elided("", self._bar, "small", "quiet")
        self.look = QPushButton(self._bar)
        self.turn = QPushButton(tr("Turn"), self._bar)
        self.release = QPushButton(tr("Let all go"), self._bar)
        self.print = QPushButton(tr("Print this plan…"), self._bar)
        row = QHBoxLayout(self._bar)
        row.setContentsMargins(SPACE.m, SPACE.xs, SPACE.s, SPACE.xs)
        row.setSpacing(SPACE.s)
        row.addWidget(self.says, 1)
        for button in (self.turn, self.release, self.look, self.print):
            row.addWidget(button)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self._bar)
        column.addWidget(hairline(self))
        column.addWidget(self.table, 1)
        self.setFocusProxy(self.table)
        self.table.put.connect(self._put)
        self.table.banded.connect(self._band)
        self.table.picked.connect(self._tell)
        self.planner.better.connect(self.better)
        self.planner.changed.connect(self._tell)
        self.look.clicked.connect(self._look)
        self.print.clicked.connect(self._print)
        self.turn.clicked.connect(self.table.turn)
        self.release.clicked.connect(self.table.let_all_go)

    def show_docket(self, docket: Docket) -> None:
        """Show the docket's lay and better it: for a short while, quietly, where another view is seen."""
        self._docket = docket
        self._take_up()

    def open(self) -> None:
        """The table is laid out: from now on plans are bettered, whichever view is seen."""
        self._open = True
        self._take_up()

    def shut(self) -> None:
        """The table is gone, and with it any search."""
        self._open = False
        self.planner.stop()

    def _take_up(self) -> None:
        if self._docket is None:
            return
        if self.isVisible():
            self.table.show_docket(self._docket)
            self.planner.plan(self._docket)
            self._tell()
        elif self._open:
            self.planner.plan(self._docket, ASIDE)

    def set_unit(self, unit: Unit) -> None:
        """Write lengths in another unit."""
        self.table.set_unit(unit)
        self._tell()

    def light(self, path: str) -> None:
        """Light the bands of the print that a path speaks of."""
        self.table.light(path)

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self._take_up()

    def hideEvent(self, event: QHideEvent) -> None:
        super().hideEvent(event)
        self.planner.stop()
        self._take_up()

    def _put(self, held: object) -> None:
        self.edited.emit("cloth.held", held)

    def _band(self, bands: object) -> None:
        self.edited.emit("cloth.bands", bands)

    def _look(self) -> None:
        self.planner.halt() if self.planner.running else self.planner.again()

    def _print(self) -> None:
        if self._docket is not None:
            self.printing.emit(self._docket)

    def _tell(self, _picked: str = "") -> None:
        docket, running = self._docket, self.planner.running
        if docket is None:
            return
        said = words(docket, engine_installed(), self.planner.trouble is not None)
        self.says.setText(spell(said, self.table.unit))
        self.look.setText(tr("Stop looking") if running else tr("Look further"))
        self.look.setEnabled(running or may_be_bettered(docket))
        self.turn.setEnabled(self.table.chosen is not None)
        self.release.setEnabled(bool(docket.brief.cloth.held))
        self.print.setEnabled(not docket.lay.misfits)


def words(docket: Docket, with_engine: bool, broke_off: bool = False) -> Phrase:
    """How good the plan is, as far as it is known, and whether the search broke off before its time."""
    lay = docket.lay
    if lay.misfits:
        return phrase("{p:word} does not fit the cloth.", p=lay.misfits[0].name)
    if ill_held(docket):
        return phrase("Takes {l}, but some pieces are held off the cloth or on each other.", l=lay.length)
    if lay.proven:
        return phrase("Takes {l}: the best possible.", l=lay.length)
    if broke_off:
        text = "Takes {l}: at least {s:share} of the best possible. The search broke off; this plan stays good."
    elif not with_engine:
        text = (
            "Takes {l}, laid in rows: at least {s:share} of the best possible. Closer plans need the planner’s engine."
        )
    else:
        text = "Takes {l}: at least {s:share} of the best possible."
    return phrase(text, l=lay.length, s=_whole(lay.share))


def _whole(share: float) -> float:
    """Rounded down to whole per cent: never more than is known."""
    return int(share * 100 + 1e-9) / 100
