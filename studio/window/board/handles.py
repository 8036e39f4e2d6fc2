"""Handles: finding the one under the pointer, and painting them."""

from collections.abc import Iterable, Sequence
from typing import Final, Literal, TypeAlias

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QPainter, QPen, QPolygonF

from studio.drawing.arrange import Laid
from studio.geometry import Point

from .. import theme
from .drag import Grip

State: TypeAlias = Literal["rest", "lit", "hover", "held"]
CATCH: Final = 14.0
"""How near (px) the pointer must come."""
_RING, _LARGE, _HALO = 5.0, 6.0, 13.0
_HALO_ALPHA: Final = 56
_POINT: Final = (3.0, 5.5, 4.5)  # of the two ways: gap from the ring, length, half its foot


def grips(laid: Iterable[Laid]) -> tuple[Grip, ...]:
    """Every handle on the table."""
    return tuple(
        Grip(one.piece.id, h.path, h.at.moved(*one.at), h.axis, h.gain, h.drawn_as)
        for one in laid
        for h in one.piece.handles
    )


def nearest(found: Sequence[Grip], at: Point, scale: float) -> Grip | None:
    """The handle within reach of a point (px from the table's origin)."""
    near = [(at.distance(Point(g.at.x * scale, g.at.y * scale)), k) for k, g in enumerate(found)]
    far, k = min(near, default=(CATCH + 1, -1))
    return found[k] if far <= CATCH else None


def paint_handle(painter: QPainter, at: QPointF, axis: str, state: State) -> None:
    """At rest a ring; with its two ways when lit or hovered; filled while held."""
    accent, tissue = theme.colour("accent"), theme.colour("tissue")
    r = _LARGE if state in ("hover", "held") else _RING
    painter.save()
    painter.translate(at)
    if axis == "y":
        painter.rotate(90)
    if state in ("hover", "held"):
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(theme.colour("accent", _HALO_ALPHA))
        painter.drawEllipse(QPointF(0, 0), _HALO, _HALO)
    painter.setPen(QPen(tissue, 4))
    painter.drawEllipse(QPointF(0, 0), r, r)
    painter.setBrush(accent if state == "held" else tissue)
    painter.setPen(QPen(accent, 2))
    painter.drawEllipse(QPointF(0, 0), r, r)
    if state != "rest":
        painter.setBrush(accent)
        painter.setPen(QPen(tissue, 1.5, j=Qt.PenJoinStyle.RoundJoin))
        gap, long, half = _POINT
        for way in (1, -1):
            x = way * (r + gap)
            painter.drawPolygon(QPolygonF([QPointF(x, -half), QPointF(x + way * long, 0), QPointF(x, half)]))
    painter.restore()
