"""The middle of the table: the view chosen, above its foot."""

from collections.abc import Callable
from typing import Final, Protocol

from PySide6.QtCore import Qt
from PySide6.QtGui import QHideEvent, QKeySequence, QShortcut, QShowEvent
from PySide6.QtWidgets import QStackedWidget, QVBoxLayout, QWidget

from studio.units import Unit
from studio.workroom import Docket

from .actions import Actions
from .board import Board
from .board.surface import Surface
from .foot import Foot
from .layplan import LayPlan
from .sewing import SewingView


class View(Protocol):
    """What every view of the docket can do; each is a widget."""

    def show_docket(self, docket: Docket) -> None:
        """Show what has been made up."""

    def set_unit(self, unit: Unit) -> None:
        """Write lengths in another unit."""

    def light(self, path: str) -> None:
        """Light what a path governs; "" for nothing."""


VIEWS: Final[tuple[tuple[str, str, Callable[[QWidget], View]], ...]] = (
    ("pieces", "Pieces", Board),
    ("lay", "Lay plan", LayPlan),
    ("sewing", "Sewing order", SewingView),
)
"""Every view there is, in the order of the switch: its name, its words, and what makes it."""


class Canvas(QWidget):
    """All views are kept up to date; one shows."""

    def __init__(self, do: Actions, parent: QWidget) -> None:
        super().__init__(parent)
        self._stack = QStackedWidget(self)
        self.views = {name: make(self._stack) for name, _, make in VIEWS}
        self.foot = Foot(do, self)
        for view in self.views.values():
            assert isinstance(view, QWidget)
            self._stack.addWidget(view)
        board = self.views["pieces"]
        assert isinstance(board, Board)
        self.board = board
        lay = self.views["lay"]
        assert isinstance(lay, LayPlan)
        self.lay = lay
        sewing = self.views["sewing"]
        assert isinstance(sewing, SewingView)
        self.sewing = sewing
        self._surfaces: dict[str, Surface] = {"pieces": self.board, "lay": self.lay.table}
        self._to_look = (do.fit, do.life_size, do.larger, do.smaller)
        self._lines = do.lines
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self._stack, 1)
        column.addWidget(self.foot)
        self._connect(do)

    def choose(self, name: str) -> None:
        """Show a view."""
        self._stack.setCurrentIndex(list(self.views).index(name))
        self.foot.rest_on(name)
        for action in self._to_look:
            action.setEnabled(name in self._surfaces)
        self._lines.setEnabled(name == "pieces")
        self._show_scale()

    @property
    def view(self) -> str:
        """The name of the view that shows."""
        return list(self.views)[self._stack.currentIndex()]

    def show_docket(self, docket: Docket, unit: Unit) -> None:
        """Show what has been made up, in a unit."""
        for view in self.views.values():
            view.set_unit(unit)
            view.show_docket(docket)

    def light(self, path: str) -> None:
        """Light what a path governs, in every view."""
        for view in self.views.values():
            view.light(path)

    def showEvent(self, event: QShowEvent) -> None:
        super().showEvent(event)
        self.lay.open()

    def hideEvent(self, event: QHideEvent) -> None:
        super().hideEvent(event)
        self.lay.shut()

    def _connect(self, do: Actions) -> None:
        do.fit.triggered.connect(self._fit)
        do.life_size.triggered.connect(self._life_size)
        do.larger.triggered.connect(self._larger)
        do.smaller.triggered.connect(self._smaller)
        do.lines.toggled.connect(self._show_legend)
        by_key = QShortcut(QKeySequence("L"), self.board, context=Qt.ShortcutContext.WidgetShortcut)
        by_key.activated.connect(do.lines.toggle)
        for surface in self._surfaces.values():
            surface.scale_changed.connect(self._show_scale)
        self.foot.advise("")
        self._show_scale()

    def _show_legend(self, on: bool) -> None:
        self.board.legend = on

    @property
    def _surface(self) -> Surface:
        """What is looked at; the board where the view has no scale."""
        return self._surfaces.get(self.view, self.board)

    def _fit(self) -> None:
        self._surface.fit()

    def _life_size(self) -> None:
        self._surface.life_size()

    def _larger(self) -> None:
        self._surface.zoom_in()

    def _smaller(self) -> None:
        self._surface.zoom_out()

    def _show_scale(self) -> None:
        self.foot.show_scale(self._surface.scale_words)
