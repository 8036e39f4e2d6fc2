"""Everything the menus and the tools can do, each once, with its key."""

from collections.abc import Sequence

from PySide6.QtCore import QObject, Signal
from PySide6.QtGui import QAction, QActionGroup, QKeySequence
from PySide6.QtWidgets import QWidget

from studio.words import tr

from . import icons

_Key = QKeySequence.StandardKey


class Actions(QObject):
    """The actions of one window."""

    unit_chosen = Signal(str)
    wish_chosen = Signal(str)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._window = parent
        self.new = self._action(tr("&New…"), "new", _Key.New)
        self.open = self._action(tr("&Open…"), "open", _Key.Open)
        self.save = self._action(tr("&Save"), "save", _Key.Save)
        self.save_as = self._action(tr("Save &as…"), "", "Ctrl+Shift+S")
        self.export = self._action(tr("&Export…"), "export", "Ctrl+E")
        self.buy = self._action(tr("What to &buy…"), "", "Ctrl+B")
        self.close_window = self._action(tr("&Close"), "", _Key.Close, _Key.Quit)
        self.photo = self._action(tr("Cloth from a &photograph…"), "", "Ctrl+P")
        self.shelf = self._action(tr("Shelf of &cloths…"), "", "Ctrl+Shift+C")
        self.undo = self._action(tr("&Undo"), "undo", _Key.Undo)
        self.redo = self._action(tr("&Redo"), "redo", _Key.Redo)
        self.fit = self._action(tr("&Fit"), "fit", "Ctrl+0")
        self.life_size = self._action(tr("Life &size"), "life", "Ctrl+9")
        self.larger = self._action(tr("&Larger"), "plus", _Key.ZoomIn, "Ctrl+=")
        self.smaller = self._action(tr("S&maller"), "minus", _Key.ZoomOut)
        self.lines = self._action(tr("Lines and mar&ks"), "lines", "Ctrl+L")
        self.lines.setCheckable(True)
        self.next_area = self._action(tr("&Next area"), "", "F6")
        self.area_before = self._action(tr("Area &before"), "", "Shift+F6")
        self.how_to_measure = self._action(tr("How to &measure"), "", _Key.HelpContents)
        self.how_to_read = self._action(tr("&Lines and marks"), "")
        self.about = self._action(tr("&About Skirtwright"), "")
        self.wishes = self._choice(("light", tr("&Light")), ("dark", tr("&Dark")), ("system", tr("As the s&ystem")))
        self.units = self._choice(("cm", tr("&Centimetres")), ("in", tr("&Inches")))
        self.export.setIconText(f" {tr('Export')}")  # Qt leaves no room between icon and words
        self.wishes.triggered.connect(self._choose_wish)
        self.units.triggered.connect(self._choose_unit)

    def tick(self, group: QActionGroup, name: str) -> None:
        """Mark the choice that holds."""
        for action in group.actions():
            action.setChecked(action.data() == name)

    def _action(self, words: str, icon: str, *keys: QKeySequence.StandardKey | str) -> QAction:
        action = QAction(words, self)
        if icon:
            action.setIcon(icons.icon(icon))
        action.setIconVisibleInMenu(False)
        action.setShortcuts([k for key in keys for k in _keys(key)])
        plain = words.replace("&", "").removesuffix("…")
        key = action.shortcut().toString(QKeySequence.SequenceFormat.NativeText)
        action.setToolTip(f"{plain} ({key})" if key else plain)
        self._window.addAction(action)
        return action

    def _choice(self, *choices: tuple[str, str]) -> QActionGroup:
        group = QActionGroup(self)
        for name, words in choices:
            action = self._action(words, "")
            action.setCheckable(True)
            action.setData(name)
            group.addAction(action)
        return group

    def _choose_wish(self, action: QAction) -> None:
        self.wish_chosen.emit(action.data())

    def _choose_unit(self, action: QAction) -> None:
        self.unit_chosen.emit(action.data())


def _keys(key: QKeySequence.StandardKey | str) -> Sequence[QKeySequence]:
    return [QKeySequence(key)] if isinstance(key, str) else QKeySequence.keyBindings(key)
