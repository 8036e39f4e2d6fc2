"""From the first second to the last: the application, the shop, and what happens when something breaks."""

import gc
import sys
import traceback
from pathlib import Path
from types import TracebackType
from typing import TYPE_CHECKING

from PySide6.QtCore import QStandardPaths, QTimer
from PySide6.QtWidgets import QApplication

from studio.trouble import Trouble
from studio.words import tr

from . import theme
from .settings import Settings
from .window import Window

if TYPE_CHECKING:
    from .shop import Shop

LOG = "faults.log"
LARGEST = 1_000_000
"""Bytes of log; after that it begins anew, so that a fault at every painting cannot fill the disk."""
_SETTLED = 300  # ms after the window shows


def keep_shop(file: Path | None) -> int:
    """Open the window and stay until it is closed: bare at first, and furnished as soon as it shows."""
    gc.disable()  # nothing made while opening is waste
    app = application()
    settings = Settings()
    window = bare(settings)
    app.processEvents()
    shop = furnished(settings, window)
    sys.excepthook = Faults(shop)
    shop.open(file)
    QTimer.singleShot(_SETTLED, gc.enable)
    return app.exec()


def bare(settings: Settings) -> Window:
    """The window where it stood last, in its colours, with nothing in it yet."""
    theme.wear(settings.wish)
    window = Window()
    if settings.geometry is not None:
        window.restoreGeometry(settings.geometry)
    window.show()
    return window


def furnished(settings: Settings, window: Window) -> "Shop":
    """Everything in its place."""
    from .shop import Shop  # brings the whole house with it

    return Shop(settings, window)


def application() -> QApplication:
    """The application, named so that its settings are found again."""
    app = QApplication.instance() or QApplication(sys.argv[:1])
    assert isinstance(app, QApplication)
    app.setOrganizationName("Skirtwright")
    app.setApplicationName("Skirtwright")
    app.setApplicationDisplayName("Skirtwright")
    return app


class Faults:
    """What is not foreseen is one sentence for the maker, and all of it in a log for whoever mends it."""

    def __init__(self, shop: "Shop") -> None:
        self._shop = shop

    def __call__(self, kind: type[BaseException], fault: BaseException, trace: TracebackType | None) -> None:
        """Take an exception that nothing else has taken."""
        if not issubclass(kind, Exception):
            sys.__excepthook__(kind, fault, trace)
            return
        if isinstance(fault, Trouble):  # it has its own sentence
            self._shop.say(str(fault))
            return
        write_log("".join(traceback.format_exception(kind, fault, trace)))
        self._shop.say(
            tr("Something went wrong here; your skirt is as it was. Save it under another name to be safe.")
        )  # fmt: skip


def write_log(text: str) -> None:
    """Add a fault to the log; a log that cannot be written is no second fault."""
    folder = Path(QStandardPaths.writableLocation(QStandardPaths.StandardLocation.AppDataLocation))
    try:
        folder.mkdir(parents=True, exist_ok=True)
        log = folder / LOG
        full = log.exists() and log.stat().st_size > LARGEST
        with log.open("w" if full else "a", encoding="utf-8", errors="replace") as file:
            file.write(f"{text}\n")
    except OSError:
        return
