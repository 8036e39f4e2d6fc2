"""Asking the desktop for a file or a folder."""

import os
from pathlib import Path

from PySide6.QtCore import QStandardPaths
from PySide6.QtWidgets import QFileDialog, QWidget

from studio.words import tr

SUFFIX = ".skirt"


def documents() -> Path:
    """Where the maker keeps what she makes."""
    return Path(QStandardPaths.writableLocation(QStandardPaths.StandardLocation.DocumentsLocation))


def shelf_folder() -> Path:
    """Where her named cloths are kept."""
    place = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.AppDataLocation)
    return Path(place) / "shelf"


def choose_open(parent: QWidget, start: Path) -> Path | None:
    """A skirt to open; None when the maker thought better of it."""
    dialog = _dialog(parent, tr("Open a skirt"), start)
    dialog.setFileMode(QFileDialog.FileMode.ExistingFile)
    return _chosen(dialog)


def choose_save(parent: QWidget, start: Path) -> Path | None:
    """A name to save under; None when the maker thought better of it."""
    dialog = _dialog(parent, tr("Save the skirt as"), start.parent)
    dialog.setAcceptMode(QFileDialog.AcceptMode.AcceptSave)
    dialog.setOption(QFileDialog.Option.DontConfirmOverwrite)  # `may_replace` asks, and knows what is kept
    dialog.setDefaultSuffix(SUFFIX)
    dialog.selectFile(start.name)
    return _chosen(dialog)


PICTURES = "*.jpg *.jpeg *.png *.webp *.tif *.tiff"


def choose_picture(parent: QWidget, start: Path) -> Path | None:
    """A photograph to open; None when the maker thought better of it."""
    names = f"{tr('Pictures')} ({PICTURES});;{tr('All files')} (*)"
    dialog = QFileDialog(parent, tr("Open a photograph of the cloth"), str(start), names)
    dialog.setFileMode(QFileDialog.FileMode.ExistingFile)
    return _chosen(dialog)


def choose_file(parent: QWidget, title: str, start: Path) -> Path | None:
    """A name for a file of the kind that `start` is; the desktop asks before another is replaced."""
    dialog = QFileDialog(parent, title, str(start.parent), f"{start.suffix[1:].upper()} (*{start.suffix})")
    dialog.setAcceptMode(QFileDialog.AcceptMode.AcceptSave)
    dialog.setDefaultSuffix(start.suffix)
    dialog.selectFile(start.name)
    return _chosen(dialog)


def may_replace(parent: QWidget, path: Path) -> bool:
    """Whether the maker wants another file replaced by the skirt on the table."""
    from .question import Replacing

    question = Replacing(path, parent)
    return question.exec() == Replacing.DialogCode.Accepted


def choose_folder(parent: QWidget, start: Path) -> Path | None:
    """A folder to write into; None when the maker thought better of it."""
    while not os.path.exists(start) and start != start.parent:
        start = start.parent
    dialog = QFileDialog(parent, tr("Where to write"), str(start))
    dialog.setFileMode(QFileDialog.FileMode.Directory)
    return _chosen(dialog)


def _dialog(parent: QWidget, title: str, folder: Path) -> QFileDialog:
    return QFileDialog(parent, title, str(folder), f"{tr('Skirts')} (*{SUFFIX});;{tr('All files')} (*)")


def _chosen(dialog: QFileDialog) -> Path | None:
    chosen = Path(dialog.selectedFiles()[0]) if dialog.exec() and dialog.selectedFiles() else None
    dialog.deleteLater()
    return chosen
