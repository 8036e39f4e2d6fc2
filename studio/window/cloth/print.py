"""The cloth as it is painted, at any scale: its ground, the bands of its print, and which way their motifs stand."""

import math
from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPainterPath, QPen, QTransform

from studio.brief import Cloth, PrintBand

from .. import theme
from .pictures import scaled

_BAND: Final = 70  # alpha of a band's tint
_MOTIF: Final = 130
_FEW: Final = 3.0  # px; closer motifs are not told apart
_MOST: Final = 4000
"""Motifs painted at most."""


def paint_print(painter: QPainter, cloth: Cloth, start: float, end: float, scale: float) -> None:
    """The print from `start` to `end` along the cloth (mm); the painter stands at the cut end's first edge, in mm."""
    painter.fillRect(QRectF(start, 0, end - start, cloth.washed), theme.colour("tissue"))
    if cloth.photo and _paint_picture(painter, cloth, start, end, scale):
        return
    for band in cloth.bands:
        painter.fillRect(QRectF(start, band.start, end - start, band.end - band.start), theme.colour("plate"))
        _paint_motifs(painter, cloth, band, start, end, scale)


def _paint_picture(painter: QPainter, cloth: Cloth, start: float, end: float, scale: float) -> bool:
    """The photograph, whole repeats of it after one another; False where it is not here."""
    seen = scaled(cloth.photo, math.ceil(cloth.washed * scale * painter.device().devicePixelRatio()))
    if seen.isNull():
        return False
    mm = cloth.washed / seen.height()
    long = seen.width() * mm
    step = math.floor(long / cloth.repeat) * cloth.repeat if cloth.repeat and cloth.repeat <= long else long
    painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
    for k in range(math.floor(start / step), math.ceil(end / step)):
        painter.drawImage(QRectF(k * step, 0, step, cloth.washed), seen, QRectF(0, 0, step / mm, seen.height()))
    return True


def _paint_motifs(
    painter: QPainter, cloth: Cloth, band: PrintBand, start: float, end: float, scale: float
) -> None:  # fmt: skip
    """A flower a repeat, on a stem that says which way the motif stands; a round one where it stands either way."""
    high = band.end - band.start
    step = cloth.repeat or max(high, 20.0)
    if step * scale < _FEW or (end - start) / step > _MOST:
        return
    size = min(high, step) * 0.86
    motif = _round(size) if band.tops == "either" else _upright(size, up=band.tops == "first")
    painter.setPen(QPen(theme.colour("accent", _MOTIF), 0))
    painter.setBrush(theme.colour("accent", _BAND))
    middle = (band.start + band.end) / 2
    for k in range(math.floor((start - cloth.offset) / step), math.ceil((end - cloth.offset) / step)):
        painter.drawPath(motif.translated(QPointF(cloth.offset + (k + 0.5) * step, middle)))
    painter.setBrush(Qt.BrushStyle.NoBrush)


def _upright(high: float, *, up: bool) -> QPainterPath:
    """About its middle, its head towards the first edge of the cloth where `up`."""
    way = -1.0 if up else 1.0
    drawn = QPainterPath()
    drawn.moveTo(0, -way * high / 2)
    drawn.lineTo(0, way * high * 0.1)
    drawn.addEllipse(QPointF(0, way * high * 0.28), high * 0.16, high * 0.2)
    for side in (-1, 1):
        drawn.moveTo(0, -way * high * 0.3)
        drawn.quadTo(side * high * 0.26, -way * high * 0.22, side * high * 0.2, way * high * 0.02)
        drawn.quadTo(side * high * 0.04, -way * high * 0.1, 0, -way * high * 0.3)
    return drawn


def _round(high: float) -> QPainterPath:
    """Six petals round a middle."""
    drawn = QPainterPath()
    for k in range(6):
        petal = QPainterPath()
        petal.addEllipse(QPointF(0, -high * 0.3), high * 0.11, high * 0.17)
        drawn.addPath(QTransform().rotate(60 * k).map(petal))
    drawn.addEllipse(QPointF(0, 0), high * 0.1, high * 0.1)
    return drawn


def veil() -> QColor:
    """What is laid over the print where no piece will be cut from it."""
    return theme.colour("board", 150)
