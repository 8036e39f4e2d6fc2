"""Arrow heads: closed, filled, 30 degrees (ISO 129-1, from memory)."""

import math
from typing import Final

from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainterPath, QPolygonF

from studio.geometry import Point

LONG: Final = 8.0
"""Length of a head, px."""
_HALF: Final = math.tan(math.radians(15)) * LONG


def add_head(to: QPainterPath, tip: Point, tail: Point) -> None:
    """Add the head of an arrow that comes from `tail` and ends at `tip` (px)."""
    back = tip.to(tail).unit()
    foot, aside = tip.along(back, LONG), back.outward()
    corners = (tip, foot.along(aside, _HALF), foot.along(aside, -_HALF), tip)
    to.addPolygon(QPolygonF([QPointF(*p) for p in corners]))
    to.closeSubpath()
