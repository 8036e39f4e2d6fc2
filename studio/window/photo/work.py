"""Work off the window's thread, with how far it is, and a way to stop it."""

import threading
from collections.abc import Callable
from typing import Any

from PySide6.QtCore import QObject, Signal

from studio.trouble import Trouble
from studio.words import tr


class Work(QObject):
    """One job in a thread of its own. Afterwards one of `done` (with what came of it) and `failed` (with a sentence)
    is sent, unless it was stopped; signals arrive in the window's thread.

    The job is given a function to tell the share done, 0 to 1, which answers False once it should stop.
    """

    progressed = Signal(float)
    done = Signal(object)
    failed = Signal(str)

    def __init__(self, job: Callable[[Callable[[float], bool]], Any], parent: QObject) -> None:
        super().__init__(parent)
        self._job, self._stop = job, threading.Event()
        self._thread = threading.Thread(target=self._run, daemon=True)

    def start(self) -> None:
        """Begin."""
        self._thread.start()

    @property
    def running(self) -> bool:
        """Whether it is at work and still wanted."""
        return self._thread.is_alive() and not self._stop.is_set()

    def stop(self) -> None:
        """What comes of it is not wanted any more; the job ends at its next step."""
        self._stop.set()

    def _on(self, share: float) -> bool:
        if not self._stop.is_set():
            self.progressed.emit(share)
        return not self._stop.is_set()

    def _run(self) -> None:
        try:
            found = self._job(self._on)
        except Trouble as trouble:
            self._tell(self.failed, str(trouble))
        except MemoryError:
            self._tell(self.failed, tr("There is not memory enough for this picture; save it smaller."))
        except Exception:
            self._tell(self.failed, tr("Something went wrong with this picture; nothing was changed."))
            raise  # for the log
        else:
            self._tell(self.done, found)

    def _tell(self, signal: Any, said: object) -> None:
        if not self._stop.is_set():
            signal.emit(said)
