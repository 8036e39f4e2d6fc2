"""Same plate, same thing: what is in hand, or under the pointer, is lit wherever it appears."""

from collections.abc import Sequence

from PySide6.QtCore import QObject

from .canvas import Canvas
from .form import Form


class Lights(QObject):
    """`take` says what is in hand, `point` what the pointer is on; the pointer goes before, for as long as it stays."""

    def __init__(self, forms: Sequence[Form], canvas: Canvas, parent: QObject) -> None:
        super().__init__(parent)
        self._forms, self._canvas = forms, canvas
        self._in_hand = self._pointed = ""

    @property
    def path(self) -> str:
        """What is lit; "" for nothing."""
        return self._pointed or self._in_hand

    def take(self, path: str) -> None:
        """A field is taken in hand, or put down with ""."""
        self._in_hand = path
        self._show()

    def point(self, path: str) -> None:
        """The pointer rests on a path's handle, line or finding, or leaves it with ""."""
        self._pointed = path
        self._show()

    def _show(self) -> None:
        self._canvas.light(self.path)
        for form in self._forms:
            form.light(self.path)
        self._canvas.foot.advise("".join(form.hint(self.path) for form in self._forms))
