"""The brief in hand: its history, its file, and the docket made up from it. It knows no widgets."""

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from PySide6.QtCore import QObject, QTimer, Signal

from studio.brief import Brief
from studio.brief.skirt_file import save
from studio.cloth.placed import Lay
from studio.history import History
from studio.styles import rack
from studio.units import Unit
from studio.workroom import Docket, make_up, relaid


class Desk(QObject):
    """Every edit goes through here, and comes back as one whole docket.

    `made_up` carries the docket, once for all edits of one turn of the event loop. `settling` asks whoever is being
    typed in to say now what was typed; `taken` says that another skirt lies on the desk. Another style starts in round
    numbers of its `unit`.
    """

    made_up = Signal(object)
    settling = Signal()
    taken = Signal()

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self.history = History(rack.usual())
        self.unit: Unit = "cm"
        self.file: Path | None = None
        self._drafted = self.history  # the last that could be made up
        self._docket: Docket | None = None
        self._pause = QTimer(self)
        self._pause.setSingleShot(True)
        self._pause.setInterval(0)
        self._pause.timeout.connect(self._make_up)

    @property
    def brief(self) -> Brief:
        """The brief as it is now."""
        return self.history.now

    @property
    def docket(self) -> Docket:
        """What is made up from the brief as it is now."""
        if self._docket is None or self._docket.brief is not self.brief:
            self._docket = make_up(self.brief, before=self._docket)
        self._drafted = self.history
        return self._docket

    @property
    def clean(self) -> bool:
        """Whether nothing is lost by putting the skirt away; what is being typed counts once it has settled."""
        return self.history.clean

    def deliver(self) -> None:
        """Make up now what was to be made up at the next turn of the event loop."""
        self._pause.stop()
        self._make_up()

    def relay(self, planned: Docket, lay: Lay) -> None:
        """Take a better lay plan of a docket, if that is still the one on the desk and its own is longer."""
        if self._docket is planned and planned.brief is self.brief and _better(lay, planned.lay):
            self._docket = relaid(planned, lay)
            self.made_up.emit(self._docket)

    def settle(self) -> None:
        """Have whatever is being typed taken as meant."""
        self.settling.emit()

    def take(self, brief: Brief, file: Path | None, saved: Brief | None = None) -> None:
        """Put another skirt on the desk; `saved` is what can be had again, where that is not the brief itself."""
        self.file = file
        self._step(History(brief, saved))
        self.taken.emit()

    def edit(self, path: str, value: Any) -> None:
        """A new value; values in a row at one path are one step, until it is finished."""
        if path == "skirt.style":
            brief = rack.restyled(self.brief, value, self.unit, self.history.worn())
            self._step(self.history.edit(brief, joins=path))
            return
        self._step(self.history.edit(rack.edit(self.brief, {path: value}), joins=path))

    def finish(self, path: str = "") -> None:
        """What follows is a step of its own."""
        self.history = self.history.finish()

    def mend(self, remedy: Mapping[str, Any]) -> None:
        """Apply a remedy, as one step."""
        self.settle()
        self._step(self.history.finish().edit(rack.edit(self.brief, remedy)))

    def undo(self) -> None:
        """Take the last step back."""
        self.settle()
        self._step(self.history.undo())

    def redo(self) -> None:
        """Make it again."""
        self.settle()
        self._step(self.history.redo())

    def save(self, path: Path) -> None:
        """Write the skirt to a file, which from now on is its own. Raises `Trouble`; then all is as it was."""
        self.settle()
        save(path, self.brief)
        self.file = path
        saved = self.history.saved_at()
        if self._drafted is self.history:
            self._drafted = saved
        self.history = saved

    def _step(self, history: History) -> None:
        if history is not self.history:
            self.history = history
            self._pause.start()

    def _make_up(self) -> None:
        """Show what comes of the brief; should drafting break down, the skirt is as it was before."""
        try:
            docket = self.docket
        except Exception:
            if self._docket is not None:
                self.history = self._drafted
                self.made_up.emit(self._docket)
            raise
        self.made_up.emit(docket)


def _better(lay: Lay, than: Lay) -> bool:
    """Whether a plan is shorter, or more is known of how short a plan can be."""
    return lay.length < than.length - 1e-3 or (lay.length <= than.length + 1e-3 and lay.bound > than.bound + 1e-3)
