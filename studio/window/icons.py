"""The icons: a 20 unit square, strokes of 1.5 with round ends, no fills.

Kept as path data and stroked at whatever size and density is asked, in the ink worn at that moment.
Save goes into the tray, Export comes out of it.
"""

from functools import lru_cache
from typing import Final

from PySide6.QtCore import QByteArray, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QIcon, QIconEngine, QPainter, QPixmap
from PySide6.QtSvg import QSvgRenderer

from studio.styles import rack

from . import theme

DRAWN: Final[dict[str, str]] = {  # SVG path data
    "new": "M5 2.5h7l3.5 3.5v11.5h-10.5z M12 2.5v3.5h3.5 M10.2 9.2v5 M7.7 11.7h5",
    "open": "M2.5 15.5v-11h5l1.8 2h7.2v2.5 M2.5 15.5l2.6-6.5h12.9l-2.6 6.5z",
    "save": "M10 2.5v9 M6.3 8l3.7 3.7l3.7-3.7 M3 12v5h14v-5",
    "undo": "M7 4l-4 4l4 4 M3.3 8h8.2a4.3 4.3 0 0 1 0 8.6h-4",
    "redo": "M13 4l4 4l-4 4 M16.7 8h-8.2a4.3 4.3 0 0 0 0 8.6h4",
    "export": "M10 12v-9 M6.3 6.4l3.7-3.7l3.7 3.7 M6 9h-2.5v8h13v-8h-2.5",
    "fit": "M2.5 6.5v-4h4 M13.5 2.5h4v4 M17.5 13.5v4h-4 M6.5 17.5h-4v-4 M6.5 7.5h7v5h-7z",
    "plus": "M10 4.5v11 M4.5 10h11",
    "minus": "M4.5 10h11",
    "life": "M2.5 5.5h15v9h-15z M5.5 5.5v3 M8.5 5.5v4.5 M11.5 5.5v3 M14.5 5.5v4.5",
    "lines": "M2.5 5h15 M2.5 10h4 M9 10h4 M15.5 10h2 M2.5 15h1 M6.5 15h1 M10.5 15h1 M14.5 15h1",
    "reset": "M4.2 6.5a7 7 0 1 1 -1 5 M3.3 3v4h4",
    "remove": "M5 5l10 10 M15 5l-10 10",
    "fold": "M7.5 5l5 5l-5 5",
    "unfold": "M5 7.5l5 5l5-5",
    "tick": "M4.5 10.5l3.8 3.8l7.2-8.4",
}
_STROKE: Final = 1.5
_SILHOUETTE: Final = 1.2  # shown larger, so drawn finer


def svg(name: str, shade: str) -> str:
    """An icon as an SVG document, stroked in a colour (#RRGGBB)."""
    silhouette = name in rack.RACK
    drawn = rack.RACK[name].icon if silhouette else DRAWN[name]
    width = _SILHOUETTE if silhouette else _STROKE
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 20 20">'
        f'<g fill="none" stroke="{shade}" stroke-width="{width}" stroke-linecap="round" stroke-linejoin="round">'
        f'<path d="{drawn}"/></g></svg>'
    )


@lru_cache(maxsize=256)
def _stroked(name: str, shade: str) -> QSvgRenderer:
    return QSvgRenderer(QByteArray(svg(name, shade).encode()))


def paint(painter: QPainter, name: str, box: QRectF, token: str) -> None:
    """Stroke an icon into a box, in the colour of a token."""
    _stroked(name, getattr(theme.current(), token)).render(painter, box)


class _Strokes(QIconEngine):
    """Draws an icon when it is asked for, so that no bitmap is kept and a change of theme needs no new icon."""

    def __init__(self, name: str) -> None:
        super().__init__()
        self._name = name

    def paint(self, painter: QPainter, rect: QRect, mode: QIcon.Mode, state: QIcon.State) -> None:
        token = "off" if mode == QIcon.Mode.Disabled else "accent" if state == QIcon.State.On else "ink"
        paint(painter, self._name, QRectF(rect), token)

    def pixmap(self, size: QSize, mode: QIcon.Mode, state: QIcon.State) -> QPixmap:
        picture = QPixmap(size)
        picture.fill(Qt.GlobalColor.transparent)
        with QPainter(picture) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            self.paint(painter, picture.rect(), mode, state)
        return picture

    def clone(self) -> QIconEngine:
        return _Strokes(self._name)


def icon(name: str) -> QIcon:
    """An icon for a button or an action."""
    return QIcon(_Strokes(name))
