"""Painting the measured lines, in the manner of ISO 129-1: thin lines, slim heads, words on the line."""

from collections.abc import Sequence

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QPainter, QPainterPath

from studio.geometry import Point

from .. import theme
from .dimensions import GAP, TAIL, Measured, spanned
from .heads import add_head
from .pens import LINES, advance, face, metrics


def paint_dimensions(painter: QPainter, dimensions: Sequence[Measured], lit: str) -> None:
    """All of them, the lit one last; the painter stands at the table's origin."""
    for is_lit in (False, True):
        chosen = [d for d in dimensions if (d.path == lit) == is_lit]
        if chosen:
            _paint_lines(painter, chosen, is_lit)
            _paint_words(painter, chosen, is_lit)


def _paint_lines(painter: QPainter, dimensions: Sequence[Measured], lit: bool) -> None:
    line = LINES["dimension"]
    thin, firm = line.width, line.width + (1 if lit else 0)
    bars, heads = list[QRectF](), QPainterPath()
    for d in dimensions:
        way = d.start.to(d.end).unit()
        reach = TAIL if d.outside else 0.0
        for foot, end in zip(d.feet, (d.start, d.end), strict=True):
            bars.append(_bar(foot, end.along(foot.to(end).unit(), GAP), thin))
        bars.append(_bar(d.start.along(way, -reach), d.end.along(way, reach), firm))
        add_head(heads, d.start, d.start.along(way, -1.0 if d.outside else 1.0))
        add_head(heads, d.end, d.end.along(way, 1.0 if d.outside else -1.0))
    colour = theme.colour("accent" if lit else line.token)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing, False)  # upright and level: sharp without, and faster
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(colour)
    painter.drawRects(bars)
    painter.setRenderHint(QPainter.RenderHint.Antialiasing)
    painter.fillPath(heads, colour)


def _bar(a: Point, b: Point, width: float) -> QRectF:
    """An upright or level line as the bar it is."""
    box, half = spanned(a, b), width / 2
    return QRectF(box.left, box.top, box.width, box.height).adjusted(-half, -half, half, half)


def _paint_words(painter: QPainter, dimensions: Sequence[Measured], lit: bool) -> None:
    painter.setFont(face("small", lit))
    colour = theme.colour("accent" if lit else "ink")
    for d in dimensions:
        box = QRectF(QPointF(d.box.left, d.box.top), QPointF(d.box.right, d.box.bottom))
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(theme.colour("plate" if lit else "tissue" if d.inside else "board"))
        if lit:
            painter.drawRoundedRect(box, 3, 3)
        else:
            painter.drawRect(box)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(colour)
        base = (metrics("small", lit).ascent() - metrics("small", lit).descent()) / 2
        half = advance(d.words, "small", lit) / 2
        if not d.upright:
            painter.drawText(QPointF(round(box.center().x() - half), round(box.center().y() + base)), d.words)
            continue
        painter.save()
        painter.translate(round(box.center().x() + base), round(box.center().y() + half))
        painter.rotate(-90)
        painter.drawText(QPointF(0, 0), d.words)
        painter.restore()
