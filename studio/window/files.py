"""Opening and saving, with nothing lost by either."""

import os
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, TypeAlias

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QWidget

from studio.brief import Brief
from studio.brief.skirt_file import open_file
from studio.files import file_name, file_stem
from studio.shipped import asset
from studio.styles import rack
from studio.trouble import Trouble
from studio.units import spell
from studio.words import phrase

from .choosing import SUFFIX, choose_open, choose_save, documents, may_replace
from .desk import Desk
from .settings import Settings

if TYPE_CHECKING:
    from .question import Question

Chooser: TypeAlias = Callable[[QWidget, Path], Path | None]
Asker: TypeAlias = Callable[[QWidget, Path], bool]


class Files(QObject):
    """Which skirt is on the desk, and where it is kept.

    `trouble` carries a sentence about what could not be had, and what was tried; `opened` says that another skirt
    lies on the desk, `saved` where this one is kept now.
    """

    trouble = Signal(str, str)
    opened = Signal()
    saved = Signal(object)

    def __init__(self, desk: Desk, settings: Settings, window: QWidget) -> None:
        super().__init__(window)
        self._desk, self._settings, self._window = desk, settings, window
        self.choose_open: Chooser = choose_open
        self.choose_save: Chooser = choose_save
        self.may_replace: Asker = may_replace
        self.question: Question | None = None
        self._then: Callable[[], None] | None = None
        self._next: tuple[Brief, Path | None, Brief | None] | None = None

    def begin(self, file: Path | None) -> bool:
        """Put the first skirt on the desk: this file, the last one, or the sample. False at the very first start."""
        wanted = file or (self._settings.file if self._settings.started else None)
        if wanted is None and not self._settings.started:
            return False
        brief, says = _read(wanted) if wanted else (None, "")
        if brief is not None and wanted is not None:
            self._put(brief, wanted.absolute())
            return True
        sample, missing = _read(asset("sample.skirt"))
        self._put(sample or rack.usual(), None)
        if says or missing:  # said after the skirt is there, since another skirt clears what was said before
            self.trouble.emit(says or missing, "open")
        return True

    def open(self) -> None:
        """Ask for a skirt, and open it."""
        if path := self.choose_open(self._window, self._folder()):
            self.open_path(path)

    def open_path(self, path: Path) -> None:
        """Open a skirt; what cannot be read is said, and nothing changes."""
        brief, says = _read(path)
        if brief is not None:
            self._leave_for(brief, path.absolute())
            return
        self.trouble.emit(says, "open")
        if not os.path.exists(path):
            self._settings.forget(path)

    def open_sample(self) -> None:
        """Open the sample; it is nobody's file, so a save asks for a name."""
        brief, says = _read(asset("sample.skirt"))
        if brief is None:
            self.trouble.emit(says, "open")
        else:
            self._leave_for(brief, None)

    def draft(self, brief: Brief) -> None:
        """Begin a new skirt; what was typed for it is not saved yet."""
        self._leave_for(brief, None, rack.usual())

    def save(self) -> bool:
        """Save the skirt in its file; whether it is saved."""
        return self._save_at(self._desk.file) if self._desk.file else self.save_as()

    def save_as(self) -> bool:
        """Ask for a name, and save the skirt there; what is kept under that name is not replaced unasked."""
        self._desk.settle()
        start = self._desk.file or self._folder() / f"{file_stem(self._desk.brief.title)}{SUFFIX}"
        path = self.choose_save(self._window, start)
        if path is None or not (self._is_free(path) or self.may_replace(self._window, path)):
            return False
        return self._save_at(path.absolute())

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
            if not os.path.exists(path):
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
        self.opened.emit()

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
            self.trouble.emit(_named(path, trouble, "{name:word} was not saved. {why:word}"), "save")
            return False
        self._remember()
        self.saved.emit(path)
        return True

    def _is_free(self, path: Path) -> bool:
        """Whether nothing is kept under that name, or only this very skirt."""
        own = self._desk.file
        return not os.path.exists(path) or (own is not None and own.exists() and path.samefile(own))

    def _remember(self) -> None:
        self._settings.file = self._desk.file
        self._settings.started = True
        if self._desk.file:
            self._settings.remember(self._desk.file)

    def _folder(self) -> Path:
        """Where the maker works."""
        recent = self._settings.recent
        return self._desk.file.parent if self._desk.file else recent[0].parent if recent else documents()


def _read(path: Path) -> tuple[Brief | None, str]:
    """The skirt in a file, or why there is none."""
    try:
        return open_file(path, rack.RECORDS), ""
    except Trouble as trouble:
        return None, _named(path, trouble, "{name:word} was not opened. {why:word}")


def _named(path: Path, trouble: Trouble, text: str) -> str:
    """What went wrong, in words that name the file."""
    name, why = file_name(path), str(trouble)
    return why if name in why else spell(phrase(text, name=name, why=why), "cm")
