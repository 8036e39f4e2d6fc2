"""The menus."""

from collections.abc import Callable, Sequence
from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu, QMenuBar, QWidget

from studio.trouble import shown
from studio.words import tr

from .actions import Actions

_ROOM = 60  # characters of a path


class RecentMenu(QMenu):
    """The skirts of late, listed anew each time it opens; those that are gone are left out."""

    picked = Signal(object)

    def __init__(self, recent: Callable[[], list[Path]], parent: QWidget) -> None:
        super().__init__(tr("Open &recent"), parent)
        self._recent = recent
        self.aboutToShow.connect(self._list)
        self.triggered.connect(self._pick)

    def _list(self) -> None:
        self.clear()
        for path in self._recent():
            action = self.addAction(_named(path))
            action.setData(str(path))
            action.setToolTip(str(path))
        if self.isEmpty():
            self.addAction(tr("Nothing opened yet")).setEnabled(False)

    def _pick(self, action: QAction) -> None:
        self.picked.emit(Path(action.data()))


def fill_menus(bar: QMenuBar, do: Actions, recent: RecentMenu) -> None:
    """Put everything in its menu; None is a line between."""
    menus: Sequence[tuple[str, Sequence[QAction | QMenu | None]]] = (
        (
            tr("&File"),
            (do.new, do.open, recent, None, do.save, do.save_as, None, do.buy, do.export, None, do.close_window),
        ),
        (tr("&Edit"), (do.undo, do.redo, None, do.photo, do.shelf)),
        (
            tr("&View"),
            (do.fit, do.life_size, do.larger, do.smaller, None, do.lines, None, *do.wishes.actions(),
             None, do.next_area, do.area_before),
        ),
        (tr("&Measure"), do.units.actions()),
        (tr("&Help"), (do.how_to_measure, do.how_to_read, None, do.about)),
    )  # fmt: skip
    for words, entries in menus:
        menu = bar.addMenu(words)
        for entry in entries:
            if isinstance(entry, QMenu):
                menu.addMenu(entry)
            elif entry is None:
                menu.addSeparator()
            else:
                menu.addAction(entry)


def _named(path: Path) -> str:
    """A skirt's file as a menu shows it; a menu would take & for a key."""
    return f"{shown(path.stem, _ROOM)}   {shown(str(path.parent), _ROOM)}".replace("&", "&&")
