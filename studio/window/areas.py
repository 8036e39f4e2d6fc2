"""From one area of the window to the next by key, each taken up where it was left."""

from collections.abc import Iterator, Sequence

from PySide6.QtCore import QObject, Qt
from PySide6.QtWidgets import QApplication, QWidget


class Areas(QObject):
    """The areas in the order of the eye; one with nothing in it to take in hand is passed over."""

    def __init__(self, areas: Sequence[QWidget], parent: QObject) -> None:
        super().__init__(parent)
        self._areas = areas

    def next(self) -> None:
        """Go to the next area."""
        self._go(1)

    def before(self) -> None:
        """Go to the one before."""
        self._go(-1)

    def _go(self, way: int) -> None:
        here = _place(QApplication.focusWidget(), self._areas)
        for step in range(1, len(self._areas) + 1):
            if _enter(self._areas[(here + way * step) % len(self._areas)]):
                return


def _place(now: QWidget | None, areas: Sequence[QWidget]) -> int:
    """The area that holds the focus; the last where none does."""
    return next((k for k, a in enumerate(areas) if now and (a is now or a.isAncestorOf(now))), len(areas) - 1)


def _enter(area: QWidget) -> bool:
    """Take up the area where it was left, or at its first control; whether there is one."""
    for widget in (area.focusWidget(), *_controls(area)):
        if widget and widget.isVisible() and widget.isEnabled() and widget.focusPolicy() & Qt.FocusPolicy.TabFocus:
            widget.setFocus(Qt.FocusReason.ShortcutFocusReason)
            return True
    return False


def _controls(area: QWidget) -> Iterator[QWidget]:
    """The area and what is in it, in the order of Tab."""
    widget: QWidget | None = area
    while widget is not None:
        if widget is area or area.isAncestorOf(widget):
            yield widget
        widget = widget.nextInFocusChain()
        if widget is area:
            return
