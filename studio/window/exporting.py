"""An export that goes on while the window lives: one step of it at each turn of the event loop."""

from collections.abc import Generator, Iterator
from pathlib import Path

from PySide6.QtCore import QObject, QTimer, Signal

from studio.export import Step
from studio.trouble import Trouble
from studio.words import tr


class Exporting(QObject):
    """Takes the steps one by one. Afterwards one of `done`, `cancelled` and `failed` (with a sentence) is sent."""

    stepped = Signal(object)
    done = Signal()
    cancelled = Signal()
    failed = Signal(str)

    def __init__(self, steps: Iterator[Step], parent: QObject) -> None:
        super().__init__(parent)
        self._steps = steps
        self.wrote: list[Path] = []
        self._turn = QTimer(self)
        self._turn.setInterval(0)
        self._turn.timeout.connect(self._step)
        self._turn.start()

    @property
    def running(self) -> bool:
        """Whether there is more to do."""
        return self._turn.isActive()

    def cancel(self) -> None:
        """Stop before the next page; nothing half-written stays."""
        if self.running:
            self._stop()
            self.cancelled.emit()

    def _step(self) -> None:
        try:
            step = next(self._steps, None)
        except Trouble as trouble:
            self._fail(str(trouble))
        except Exception:
            self._fail(tr("Something went wrong in the writing; what was finished before is whole."))
            raise  # for the log
        else:
            self._tell(step)

    def _tell(self, step: Step | None) -> None:
        if step is None:
            self._stop()
            self.done.emit()
            return
        if step.wrote:
            self.wrote.append(step.wrote)
        self.stepped.emit(step)

    def _fail(self, sentence: str) -> None:
        self._stop()
        self.failed.emit(sentence)

    def _stop(self) -> None:
        self._turn.stop()
        if isinstance(self._steps, Generator):
            self._steps.close()
