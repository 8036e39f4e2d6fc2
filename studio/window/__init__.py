"""The worktable: forms, board and numbers, in Qt, and only here."""

import os
import sys
from pathlib import Path

from studio.trouble import Trouble
from studio.units import spell
from studio.words import phrase, tr

_SCREENS = ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")


def run(file: Path | None) -> int:
    """Open the window on a file, or where the maker left off; 0 once it is closed.

    Raises `Trouble` where there is no screen, or where Qt lacks what it needs of the system.
    """
    if sys.platform not in ("win32", "darwin") and not any(os.environ.get(name) for name in _SCREENS):
        raise Trouble(tr("There is no screen to open a window on; without one, see skirtwright export --help."))
    try:
        from .running import keep_shop
    except ImportError as fault:
        raise Trouble(
            spell(
                phrase(
                    "The window lacks a part of the system ({f:word}); see skirtwright export --help.", f=str(fault)
                ),
                "cm",
            )
        ) from fault
    return keep_shop(file)
