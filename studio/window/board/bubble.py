"""The bubble beside a handle that is held: what is being changed, to how much, and by how much."""

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter

from studio.brief import Brief
from studio.geometry import Box, Point
from studio.styles import rack
from studio.units import Unit, write_length, write_ratio
from studio.words import tr

from .. import theme
from .drag import Drag
from .pens import advance, face, metrics


def bubble_words(drag: Drag, brief: Brief, unit: Unit) -> tuple[str, str, str]:
    """Name, value and change."""
    path = drag.grip.path
    declared, value = rack.declarations(brief)[path], rack.value(brief, path)
    now = drag.shown if value is None else value
    change = now - drag.shown
    if declared.kind == "length":
        return tr(declared.words), write_length(now, unit), write_length(change, unit, bare=True, signed=True)
    return tr(declared.words), f"{write_ratio(now)} ×", ("+" if change > 0 else "") + write_ratio(change)


def bubble_box(at: Point, room: Box, words: str, value: str, change: str) -> Box:
    """Where the bubble of a handle at `at` goes: up and to the right of it, and wholly in the room (px)."""
    figures = advance(value, "title", True) + 8 + advance(change, "small")
    wide = max(figures, advance(words, "small")) + 24
    high = metrics("small").height() + metrics("title", True).height() + 16
    left, top = at.x + 20, at.y - high - 12
    if left + wide > room.right:
        left = at.x - 20 - wide
    if top < room.top:
        top = at.y + 20
    return Box(left, top, left + wide, top + high)


def paint_bubble(painter: QPainter, box: Box, words: str, value: str, change: str) -> None:
    """Name, value and change, in reversed ink."""
    small, title = metrics("small"), metrics("title", True)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(theme.colour("ink"))
    painter.drawRoundedRect(QRectF(box.left, box.top, box.width, box.height), 6, 6)
    painter.setPen(theme.colour("hair"))
    painter.setFont(face("small"))
    x, y = round(box.left) + 12, round(box.top + 7 + small.ascent())
    painter.drawText(QPointF(x, y), words)
    y = round(box.bottom - 8 - title.descent())
    painter.setPen(theme.colour("tissue"))
    painter.setFont(face("title", True))
    painter.drawText(QPointF(x, y), value)
    painter.setFont(face("small"))
    painter.drawText(QPointF(x + advance(value, "title", True) + 8, y), change)
