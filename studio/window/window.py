"""The window: toolbar, first sheet or worktable, and the notice over them."""

from pathlib import Path
from typing import Any

from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QCloseEvent, QDragEnterEvent, QDropEvent, QKeySequence, QShortcut
from PySide6.QtWidgets import QMainWindow, QStackedWidget, QVBoxLayout, QWidget

from studio.check import Finding
from studio.styles import rack
from studio.units import Unit
from studio.words import tr
from studio.workroom import Docket

from . import icons, theme
from .about import About
from .actions import Actions
from .areas import Areas
from .canvas import VIEWS
from .choosing import SUFFIX, documents
from .desk import Desk
from .export_sheet import ExportSheet
from .files import Files, file_stem
from .guides import HowToMeasure, HowToRead
from .menus import RecentMenu, fill_menus
from .notice import Notice
from .settings import Settings
from .start import Start
from .theme import Wish
from .toolbar import Toolbar
from .widgets.strokes import hairline
from .worktable import Worktable
