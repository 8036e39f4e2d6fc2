"""The shelf of cloths: put this one there, or take another down for this skirt."""

from pathlib import Path

import msgspec
from PySide6.QtCore import Signal
from PySide6.QtWidgets import QListWidget, QListWidgetItem, QWidget

from studio.brief import Cloth
from studio.cloth import shelf
from studio.trouble import Trouble
from studio.units import Unit, spell
from studio.words import phrase, tr

from .leaf import Leaf

KEPT = ("held", "on_hand")
"""What belongs to the skirt in hand and not to the cloth."""


class ShelfSheet(Leaf):
    """`used` carries what the cloth in the brief becomes: values by path."""

    used = Signal(object)

    def __init__(self, folder: Path, cloth: Cloth, unit: Unit, parent: QWidget) -> None:
        super().__init__(tr("Shelf of cloths"), parent, 600)
        self._folder, self._cloth, self._unit = folder, cloth, unit
        self.says = self.add_words("", "quiet")
        self.list = QListWidget(self)
        self.list.setAccessibleName(tr("Cloths on the shelf"))
        self.column.addWidget(self.list, 1)
        self.lead = self.add_button(tr("Use this cloth"), lead=True)
        self.keep = self.add_button(tr("Keep the cloth in hand"))
        self.off = self.add_button(tr("Take off the shelf"))
        self.cancel = self.add_button(tr("Close"))
        self.finish()
        self.lead.clicked.connect(self._use)
        self.keep.clicked.connect(self._keep)
        self.off.clicked.connect(self._take_off)
        self.cancel.clicked.connect(self.reject)
        self.list.currentRowChanged.connect(self._weigh)
        self.list.itemActivated.connect(self._use)
        self._list()

    def _list(self) -> None:
        self.list.clear()
        for cloth in shelf.cloths(self._folder):
            item = QListWidgetItem(words(cloth, self._unit), self.list)
            item.setData(256, cloth)
        if self.list.count():
            self.list.setCurrentRow(0)
        self._weigh()

    def _weigh(self, _row: int = 0) -> None:
        chosen = self.list.currentItem() is not None
        self.lead.setEnabled(chosen)
        self.off.setEnabled(chosen)
        self.keep.setEnabled(bool(self._cloth.name))
        if not self._cloth.name:
            self.says.setText(tr("Give the cloth in hand a name under Cloth, and it can be kept here."))
        elif not self.list.count():
            self.says.setText(tr("Nothing on the shelf yet."))
        else:
            self.says.setText("")

    def _keep(self) -> None:
        try:
            shelf.put(self._folder, self._cloth)
        except Trouble as fault:
            self.says.setText(str(fault))
            return
        except OSError:
            self.says.setText(tr("The cloth could not be kept: the desktop’s folder for it cannot be written to."))
            return
        self._list()

    def _take_off(self) -> None:
        item = self.list.currentItem()
        if item is not None:
            try:
                shelf.take_off(self._folder, item.data(256).name)
            except OSError:
                self.says.setText(tr("It cannot be taken off: the desktop’s folder for it cannot be written to."))
                return
            self._list()

    def _use(self) -> None:
        item = self.list.currentItem()
        if item is not None:
            now = msgspec.structs.asdict(item.data(256))
            self.used.emit({f"cloth.{name}": value for name, value in now.items() if name not in KEPT})
            self.accept()


def words(cloth: Cloth, unit: Unit) -> str:
    """A cloth in a line."""
    parts = [spell(phrase("{n:word}, {w} wide", n=cloth.name, w=cloth.width), unit)]
    if cloth.repeat is not None:
        parts.append(spell(phrase("repeat {r}", r=cloth.repeat), unit))
    if cloth.bands:
        n = len(cloth.bands)
        parts.append(spell(phrase("{n:count} band" if n == 1 else "{n:count} bands", n=n), unit))
    return ", ".join(parts)
