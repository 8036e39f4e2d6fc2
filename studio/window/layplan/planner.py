"""The planner beside the window: asked for a docket's plan, it hands on better ones as they come."""

from collections import deque
from typing import Final, Protocol

from msgspec import Struct
from PySide6.QtCore import QObject, QTimer, Signal

from studio.cloth.found import MOST, Ground, ground
from studio.cloth.outlines import Task, laid, spots, task
from studio.cloth.plan.planning import Planning
from studio.cloth.plan.problem import Plan
from studio.workroom import Docket


class Pace(Struct, frozen=True):
    """How a plan is bettered: begun when nothing was edited for so long (ms), its plans fetched so often (ms), for so
    many seconds.
    """

    pause: int
    every: int
    seconds: float


SEEN: Final = Pace(400, 60, 30.0)
"""While the plan is looked at."""
ASIDE: Final = Pace(1000, 500, 6.0)
"""While another view is, whose numbers should not run."""


class Search(Protocol):
    """What is asked of a search in another process."""

    trouble: str | None

    @property
    def running(self) -> bool: ...
    def begin(self, plan: Plan) -> None: ...
    def poll(self) -> Plan | None: ...
    def stop(self) -> None: ...


class Planner(QObject):
    """One search at a time, for the docket shown last; it begins when the maker pauses.

    `better` carries the docket and a lay of it; `changed` says that a search has begun or ended.
    """

    better = Signal(object, object)
    changed = Signal()

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self._docket: Docket | None = None
        self._ground: Ground = ()
        self._task: Task | None = None
        self._search: Search | None = None
        self.trouble: str | None = None  # what ended the last search before its time
        self._pace = SEEN
        self._done: deque[tuple[Ground, Pace]] = deque(maxlen=MOST)  # searched to the end, or stopped by the maker
        self._pause, self._look = QTimer(self), QTimer(self)
        self._pause.setSingleShot(True)
        self._pause.timeout.connect(self._begin)
        self._look.timeout.connect(self._fetch)

    @property
    def running(self) -> bool:
        """Whether better plans may yet come."""
        return self._search is not None or self._pause.isActive()

    def plan(self, docket: Docket, pace: Pace = SEEN) -> None:
        """Better the plan of this docket, as soon as the maker pauses; a search for the same pieces on the same cloth
        goes on, and one that came to its end is not begun again.
        """
        on = ground(docket.pieces, docket.brief.cloth)
        same, self._docket, self._ground = on == self._ground and pace == self._pace, docket, on
        if same and self.running:
            return
        self.stop()
        self._pace = pace
        if not any((on, one) in self._done for one in {pace, SEEN}) and may_be_bettered(docket):
            self._pause.start(pace.pause)
            self.changed.emit()

    def again(self) -> None:
        """Look once more, however long it was looked before."""
        if self._docket is not None and not self.running:
            self._forget()
            self._begin()

    def halt(self) -> None:
        """The maker has seen enough: this cloth is not looked at again unless she says so."""
        self._done.append((self._ground, SEEN))
        self.stop()

    def stop(self) -> None:
        """End the search; the plan in hand stays."""
        was = self.running
        self._pause.stop()
        self._look.stop()
        self.trouble = self._search.trouble if self._search is not None else None
        if self._search is not None:
            self._search.stop()
            self._search = None
        if was:
            self.changed.emit()

    def _begin(self) -> None:
        assert self._docket is not None
        self.trouble = None
        lay, self._task = self._docket.lay, task(self._docket.pieces, self._docket.brief.cloth)
        self._search = self._searching(self._task)
        self._search.begin(Plan(lay.length, lay.bound, spots(lay, self._task)))
        self._look.start(self._pace.every)
        self.changed.emit()

    def _searching(self, task: Task) -> Search:
        return Planning(task.problem, self._pace.seconds)

    def _fetch(self) -> None:
        search, task, docket = self._search, self._task, self._docket
        assert search is not None and task is not None and docket is not None
        over = not search.running
        plan = search.poll()
        if plan is not None:
            self.better.emit(docket, laid(plan, task, docket.lay.bound))
        if over or (plan is not None and plan.proven):
            if not search.trouble:
                self._done.append((self._ground, self._pace))
            self.stop()

    def _forget(self) -> None:
        if (self._ground, SEEN) in self._done:
            self._done.remove((self._ground, SEEN))


def may_be_bettered(docket: Docket) -> bool:
    """Whether a shorter plan may be looked for."""
    lay = docket.lay
    return bool(lay.placed) and not lay.proven and not lay.misfits and not ill_held(docket)


def ill_held(docket: Docket) -> bool:
    """Whether pieces are held off the cloth or on each other: then no plan can be called good."""
    return any(f.rule == "held-on-cloth" and f.weight == "stop" for f in docket.findings)
