"""The worktable: forms, board and numbers, in Qt, and only here."""

import os
import sys
from pathlib import Path

from studio.trouble import Trouble
from studio.words import tr

_SCREENS = ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")


def run(file: Path | None) -> int:
    """Open the window on a file, or where the maker left off; 0 once it is closed.

    Raises `Trouble` where there is no screen, or where Qt lacks what it needs of the system.
    """
    without = tr("without one, see skirtwright export --help.")
    if sys.platform not in ("win32", "darwin") and not any(os.environ.get(name) for name in _SCREENS):
        raise Trouble(f"{tr('There is no screen to open a window on;')} {without}")
    try:
        from .running import keep_shop
    except ImportError as fault:
        raise Trouble(f"{tr('The window lacks a part of the system')} ({fault}); {without}") from fault
    return keep_shop(file)
