"""The toolbar: file tools over the form, views over the canvas, Export over Construction."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtGui import QAction, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QWidget

from . import theme
from .actions import Actions
from .columns import columns
from .tokens import SIZE, SPACE
from .tool import chrome, tool
from .widgets.label import Label
from .widgets.views import ViewSwitch


class Toolbar(QWidget):
    """In the three columns of the window."""

    view_chosen = Signal(str)

    def __init__(self, do: Actions, views: Sequence[tuple[str, str]], parent: QWidget) -> None:
        super().__init__(parent)
        chrome(self)
        self.setFixedHeight(theme.px(SIZE.toolbar))
        self._left = self._tools(do.new, do.open, do.save, None, do.undo, do.redo)
        self.heading = self._heading(views)
        self._right = QWidget(self)
        ends = QHBoxLayout(self._right)
        ends.setContentsMargins(SPACE.s, 0, SPACE.s, 0)
        ends.addStretch(1)
        ends.addWidget(tool(do.export, self._right, words=True))
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        row.addWidget(self._left)
        row.addWidget(self.heading, 1)
        row.addWidget(self._right)

    def _tools(self, *actions: QAction | None) -> QWidget:
        place = QWidget(self)
        row = QHBoxLayout(place)
        row.setContentsMargins(SPACE.s, 0, SPACE.s, 0)
        row.setSpacing(2)
        for action in actions:
            if action:
                row.addWidget(tool(action, place))
            else:
                row.addSpacing(SPACE.l)
        row.addStretch(1)
        return place

    def _heading(self, views: Sequence[tuple[str, str]]) -> QWidget:
        """The views to choose from; one alone needs no switch."""
        if len(views) == 1:
            heading = Label(views[0][1], self, "title", bold=True)
            heading.setContentsMargins(SPACE.m, 0, 0, 0)
            policy = heading.sizePolicy()
            policy.setRetainSizeWhenHidden(True)
            heading.setSizePolicy(policy)
            return heading
        switch = ViewSwitch(views, self)
        switch.chosen.connect(self.view_chosen)
        return switch

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        left, right = columns(self.width())
        self._left.setFixedWidth(left + 1)  # the hairline below
        self._right.setFixedWidth(right)
