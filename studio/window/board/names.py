"""The name of a piece on the board, and how it is painted."""

from msgspec import Struct
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter

from studio.geometry import Box

from .. import theme
from .pens import advance, face, metrics


class Name(Struct, frozen=True):
    """A name and what to cut, px from the table's origin; on one line where it stands below its piece.

    `upright` when it reads from the right; `patch` where lines run below the words.
    """

    name: str
    more: str
    box: Box
    inside: bool
    upright: bool = False
    patch: bool = False


def paint_name(painter: QPainter, one: Name) -> None:
    """Name and words; the painter stands at the table's origin."""
    title, box = metrics("title", True), one.box
    if one.patch:
        area = QRectF(box.left, box.top, box.width, box.height)
        painter.fillRect(area.adjusted(-4, -2, 4, 2), theme.colour("tissue"))
    painter.save()
    if one.upright:
        painter.translate(round(box.left), round(box.bottom))
        painter.rotate(-90)
    else:
        painter.translate(round(box.left), round(box.top))
    at = QPointF(0, round(title.ascent()))
    painter.setPen(theme.colour("ink"))
    painter.setFont(face("title", True))
    painter.drawText(at, one.name)
    if one.inside:
        at.setY(at.y() + round(metrics("small").height()) + 2)
    else:
        at.setX(advance(one.name, "title", True) + 8)
    painter.setPen(theme.colour("quiet"))
    painter.setFont(face("small"))
    painter.drawText(at, one.more)
    painter.restore()
