"""The questions before something would be lost, or replaced."""

from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QWidget

from studio.files import file_name
from studio.units import spell
from studio.words import phrase, tr

from .leaf import Leaf


class Question(Leaf):
    """`wants_save` and `wants_loss` carry the answer; the third button, Escape and closing it go on working."""

    wants_save = Signal()
    wants_loss = Signal()

    def __init__(self, title: str, parent: QWidget) -> None:
        super().__init__(tr("Save the changes?"), parent)
        says = phrase("“{title:word}” has changes that are not saved yet.", title=title)
        self.add_words(spell(says, "cm"))
        self.save = self.add_button(tr("Save"), lead=True)
        self.lose = self.add_button(tr("Don’t save"))
        self.stay = self.add_button(tr("Go on working"))
        self.finish()
        self.save.clicked.connect(self._save)
        self.lose.clicked.connect(self._lose)
        self.stay.clicked.connect(self.reject)

    def _save(self) -> None:
        self.accept()
        self.wants_save.emit()

    def _lose(self) -> None:
        self.accept()
        self.wants_loss.emit()


class Replacing(Leaf):
    """Accepted, the other file is replaced; the second button and Escape leave it as it is."""

    def __init__(self, path: Path, parent: QWidget) -> None:
        super().__init__(tr("Replace the file?"), parent)
        says = phrase(
            "{name:word} is there already. Its present version is kept beside it as {old:word}.",
            name=file_name(path),
            old=file_name(path.with_name(f"{path.name}~")),
        )
        self.add_words(spell(says, "cm"))
        self.replace = self.add_button(tr("Replace it"), lead=True)
        self.keep = self.add_button(tr("Leave it as it is"))
        self.finish()
        self.replace.clicked.connect(self.accept)
        self.keep.clicked.connect(self.reject)
