"""Opening and saving, with nothing lost by either."""

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QWidget

from studio.assets import asset
from studio.brief import Brief
from studio.brief.skirt_file import open_file
from studio.files import file_stem
from studio.styles import rack
from studio.trouble import Trouble

from .choosing import SUFFIX, choose_open, choose_save, documents
from .desk import Desk
from .settings import Settings

if TYPE_CHECKING:
    from .question import Question

Chooser = Callable[[QWidget, Path], Path | None]


class Files(QObject):
    """Which skirt is on the desk, and where it is kept.

    `trouble` carries a sentence about what could not be had; `settled` says that a file was opened or saved.
    """

    trouble = Signal(str)
    settled = Signal()

    def __init__(self, desk: Desk, settings: Settings, window: QWidget) -> None:
        super().__init__(window)
        self._desk, self._settings, self._window = desk, settings, window
        self.choose_open: Chooser = choose_open
        self.choose_save: Chooser = choose_save
        self.question: Question | None = None
        self._then: Callable[[], None] | None = None
        self._next: tuple[Brief, Path | None, Brief | None] | None = None

    def begin(self, file: Path | None) -> bool:
        """Put the first skirt on the desk: this file, the last one, or the sample. False at the very first start."""
        wanted = file or (self._settings.file if self._settings.started else None)
        if wanted is None and not self._settings.started:
            return False
        try:
            brief = open_file(wanted, rack.RECORDS) if wanted else None
        except Trouble as trouble:
            self._put(*self._sample())
            self.trouble.emit(str(trouble))
            return True
        if brief is None or wanted is None:
            self._put(*self._sample())
        else:
            self._put(brief, wanted.absolute())
        return True

    def open(self) -> None:
        """Ask for a skirt, and open it."""
        if path := self.choose_open(self._window, self._folder()):
            self.open_path(path)

    def open_path(self, path: Path) -> None:
        """Open a skirt; what cannot be read is said, and nothing changes."""
        brief = self._read(path)
        if brief is None:
            if not path.exists():
                self._settings.forget(path)
        else:
            self._leave_for(brief, path.absolute())

    def open_sample(self) -> None:
        """Open the sample; it is nobody's file, so a save asks for a name."""
        self._leave_for(*self._sample())

    def draft(self, brief: Brief) -> None:
        """Begin a new skirt; what was typed for it is not saved yet."""
        self._leave_for(brief, None, rack.usual())

    def save(self) -> bool:
        """Save the skirt in its file; whether it is saved."""
        return self._save_at(self._desk.file) if self._desk.file else self.save_as()

    def save_as(self) -> bool:
        """Ask for a name, and save the skirt there."""
        self._desk.settle()
        start = self._desk.file or self._folder() / f"{file_stem(self._desk.brief.title)}{SUFFIX}"
        path = self.choose_save(self._window, start)
        return self._save_at(path.absolute()) if path else False

    def leave(self, then: Callable[[], None]) -> None:
        """Go on to `then` once nothing is lost by it; asks where something would be."""
        self._desk.settle()
        if self._desk.clean:
            then()
            return
        self._then = then
        if self.question is None:
            from .question import Question

            self.question = Question(self._desk.brief.title, self._window)
            self.question.wants_save.connect(self._save_and_leave)
            self.question.wants_loss.connect(self._leave)
            self.question.finished.connect(self._forget_question)
            self.question.open()

    def recent(self) -> list[Path]:
        """The skirts of late; those that are gone are forgotten."""
        for path in self._settings.recent:
            if not path.exists():
                self._settings.forget(path)
        return self._settings.recent

    def _leave_for(self, brief: Brief, file: Path | None, saved: Brief | None = None) -> None:
        self._next = (brief, file, saved)
        self.leave(self._put_next)

    def _put_next(self) -> None:
        if self._next:
            self._put(*self._next)
            self._next = None

    def _put(self, brief: Brief, file: Path | None, saved: Brief | None = None) -> None:
        self._desk.take(brief, file, saved)
        self._remember()

    def _save_and_leave(self) -> None:
        if self.save():
            self._leave()

    def _forget_question(self) -> None:
        self.question = None

    def _leave(self) -> None:
        if self._then:
            self._then()

    def _save_at(self, path: Path) -> bool:
        try:
            self._desk.save(path)
        except Trouble as trouble:
            self.trouble.emit(str(trouble))
            return False
        self._remember()
        return True

    def _remember(self) -> None:
        self._settings.file = self._desk.file
        self._settings.started = True
        if self._desk.file:
            self._settings.remember(self._desk.file)
        self.settled.emit()

    def _read(self, path: Path) -> Brief | None:
        try:
            return open_file(path, rack.RECORDS)
        except Trouble as trouble:
            self.trouble.emit(str(trouble))
            return None

    def _sample(self) -> tuple[Brief, None]:
        return self._read(asset("sample.skirt")) or rack.usual(), None

    def _folder(self) -> Path:
        """Where the maker works."""
        recent = self._settings.recent
        return self._desk.file.parent if self._desk.file else recent[0].parent if recent else documents()
