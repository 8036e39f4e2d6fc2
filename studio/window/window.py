"""The window: toolbar above, the first sheet or the worktable below, and a notice over them when there is one."""

from typing import Any

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QCloseEvent, QDragEnterEvent, QDropEvent
from PySide6.QtWidgets import QMainWindow, QStackedWidget, QVBoxLayout, QWidget

from studio.styles import rack
from studio.units import Unit
from studio.words import tr
from studio.workroom import Docket

from . import icons, theme
from .actions import Actions
from .areas import Areas
from .canvas import VIEWS
from .choosing import SUFFIX
from .menus import RecentMenu, fill_menus
from .notice import Notice
from .start import Start
from .toolbar import Toolbar
from .widgets.strokes import hairline
from .worktable import Worktable
