"""A pair of hands for the tests of widgets: putting them in a window, and a record of what they say."""

from typing import Any

from PySide6.QtCore import SignalInstance
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from studio.brief import Brief, Declared, declared
from studio.styles.gathered import Gathered
from studio.window.widgets.entry import Entry

DECLARED: dict[str, Declared] = {d.path: d for d in (*declared(Gathered, "skirt"), *declared(Brief))}


def put(qtbot: QtBot, *widgets: QWidget) -> None:
    """Show widgets in the window they were made for, in front of everything."""
    window = widgets[0].parentWidget()
    layout = window.layout()
    assert layout is not None
    for widget in widgets:
        layout.addWidget(widget)
    with qtbot.waitExposed(window):
        window.show()
    window.activateWindow()
    qtbot.waitUntil(window.isActiveWindow)


class Heard:
    """What a field has said, in order."""

    def __init__(self, entry: Entry) -> None:
        """Listen to a field from now on."""
        self.changed = _record(entry.changed)
        self.finished = _record(entry.finished)
        self.lit = _record(entry.lit)

    @property
    def values(self) -> list[Any]:
        """The values sent, without their paths."""
        return [value for _, value in self.changed]


def _record(signal: SignalInstance) -> list[Any]:
    heard: list[Any] = []

    def hear(*said: Any) -> None:
        heard.append(said if len(said) > 1 else said[0])

    signal.connect(hear)
    return heard
