"""A page as a picture, at true scale when the viewer heeds the density written in it."""

import math
import pathlib

from PySide6.QtGui import QImage, QPainter

from studio.files import beside
from studio.trouble import Trouble
from studio.words import tr

from .page import Page, Size
from .pdf import application, paint

MOST = 100_000_000
"""A picture has no more dots than this: three bytes each are held while it is painted."""


def density(size: Size, wanted: float) -> float:
    """Dots per mm that a picture of this size (mm) can have: as wanted, or as many as stay below 100 million dots.

    A whole number of dots a metre, since that is what the file can say.
    """
    most = math.sqrt(MOST / (size.width * size.height)) * 0.9999
    return max(1, math.floor(min(wanted, most) * 1000)) / 1000


def write_png(path: pathlib.Path, page: Page, dots_per_mm: float = 8.0) -> float:
    """Write a page as PNG; returns the dots per mm it has, fewer than asked where it would be too large.

    Raises `Trouble` for a picture that cannot be painted, `OSError` for the disk.
    """
    application()
    fine = density(page.size, dots_per_mm)
    wide, high = (max(1, math.ceil(v * fine - 1e-6)) for v in page.size)
    image = QImage(wide, high, QImage.Format.Format_RGB888)
    if image.isNull():
        raise Trouble(tr("There is not enough memory for this picture; choose a coarser one."))
    image.fill(0xFFFFFFFF)
    image.setDotsPerMeterX(round(fine * 1000))
    image.setDotsPerMeterY(round(fine * 1000))
    with QPainter(image) as painter:
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.scale(fine, fine)
        paint(painter, page.drawing, page.box)
    with beside(path) as fresh:
        if not image.save(str(fresh), "PNG"):  # type: ignore[call-overload]
            raise Trouble(tr("The picture cannot be written; is the disk full?"))
    return fine
