"""Paths of the draft as Qt paints them: straight lines, arcs and cubics stay what they are."""

from collections.abc import Iterable

from PySide6.QtCore import QRectF
from PySide6.QtGui import QPainterPath

from studio.geometry import Arc, Line, Path


def painter_path(paths: Iterable[Path], scale: float) -> QPainterPath:
    """Paths in mm as one painter path in px, `scale` px for each mm."""
    drawn = QPainterPath()
    for path in paths:
        start = path.start
        drawn.moveTo(start.x * scale, start.y * scale)
        for c in path.curves:
            if isinstance(c, Line):
                drawn.lineTo(c.end.x * scale, c.end.y * scale)
            elif isinstance(c, Arc):
                r = c.radius * scale
                circle = QRectF(c.centre.x * scale - r, c.centre.y * scale - r, 2 * r, 2 * r)
                drawn.arcTo(circle, -c.first, -c.sweep)  # Qt turns the other way round
            else:
                drawn.cubicTo(*(k * scale for p in (c.leave, c.arrive, c.end) for k in p))
        if path.closed:
            drawn.closeSubpath()
    return drawn
