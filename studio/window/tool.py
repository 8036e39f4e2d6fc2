"""A tool: an action as a button of the toolbar or the foot."""

from PySide6.QtCore import QSize, Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QToolButton, QWidget

from . import theme

_SIDE = 32  # px
_ICON = 20


def tool(action: QAction, parent: QWidget, *, words: bool = False) -> QToolButton:
    """A button for an action, with its words beside it or not."""
    button = QToolButton(parent)
    button.setDefaultAction(action)
    button.setIconSize(QSize(theme.px(_ICON), theme.px(_ICON)))
    button.setMinimumSize(theme.px(_SIDE), theme.px(_SIDE))
    button.setFocusPolicy(Qt.FocusPolicy.TabFocus)
    button.setAccessibleName(action.text().replace("&", "").removesuffix("…"))
    if words:
        button.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextBesideIcon)
    return button


def chrome(area: QWidget) -> None:
    """Give an area the ground of tools and strips."""
    area.setObjectName("chrome")
    area.setAttribute(Qt.WidgetAttribute.WA_StyledBackground)
