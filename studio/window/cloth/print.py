"""The cloth as it is painted, at any scale: its ground, the bands of its print, and which way their motifs stand."""

import math
from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QPointF, QRectF, Qt
from PySide6.QtGui import QColor, QPainter, QPen

from studio.brief import Cloth, PrintBand
from studio.drawing.motif import motif, places, starts, step_of

from .. import theme
from ..paths import painter_path
from .pictures import scaled

_BAND: Final = 70  # alpha of a band's tint
_MOTIF: Final = 130
_LIT: Final = 46
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


def paint_lit(painter: QPainter, bands: Sequence[PrintBand], start: float, end: float) -> None:
    """Bands in hand, from `start` to `end` along the cloth (mm): a tint over the print, and a line along each edge."""
    edge = QPen(theme.colour("accent"), 2)
    edge.setCosmetic(True)
    for band in bands:
        painter.fillRect(QRectF(start, band.start, end - start, band.end - band.start), theme.colour("accent", _LIT))
        painter.setPen(edge)
        for y in (band.start, band.end):
            painter.drawLine(QPointF(start, y), QPointF(end, y))


def _paint_picture(painter: QPainter, cloth: Cloth, start: float, end: float, scale: float) -> bool:
    """The photograph, whole repeats of it after one another from the first motif; False where it is not here."""
    seen = scaled(cloth.photo, math.ceil(cloth.washed * scale * painter.device().devicePixelRatio()))
    if seen.isNull():
        return False
    mm = cloth.width * (1 - cloth.shrinkage) / seen.height()  # of a dot along the cloth; the wash takes its share
    long = seen.width() * mm
    step = math.floor(long / cloth.repeat) * cloth.repeat if cloth.repeat and cloth.repeat <= long else long
    painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
    for at in starts(cloth, step, start, end):
        painter.drawImage(QRectF(at, 0, step, cloth.washed), seen, QRectF(0, 0, step / mm, seen.height()))
    return True


def _paint_motifs(
    painter: QPainter, cloth: Cloth, band: PrintBand, start: float, end: float, scale: float
) -> None:  # fmt: skip
    step = step_of(cloth, band)
    if step * scale < _FEW or (end - start) / step > _MOST:
        return
    flower = painter_path(motif(cloth, band), 1)
    painter.setPen(QPen(theme.colour("accent", _MOTIF), 0))
    painter.setBrush(theme.colour("accent", _BAND))
    for at in places(cloth, band, start, end):
        painter.drawPath(flower.translated(QPointF(*at)))
    painter.setBrush(Qt.BrushStyle.NoBrush)


def veil() -> QColor:
    """What is laid over the print where no piece will be cut from it."""
    return theme.colour("board", 150)
