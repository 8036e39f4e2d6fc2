"""Where the names stand on the pieces of a lay plan: number and name and which copy, as much of it as a piece holds.

The numbers are those of the board. Where a piece holds no word at all, its number stands on it alone.
"""

from collections.abc import Iterator, Sequence
from typing import Final

from PySide6.QtCore import QRectF, Qt
from PySide6.QtGui import QPainter

from studio.geometry import Box

from .. import theme
from ..board.names import Name
from ..board.pens import advance, face, metrics
from .laid import Drawn

_PAD: Final = 4.0  # px beside the words
_STEPS: Final = (0.5, 0.35, 0.65, 0.2, 0.8, 0.08, 0.92)  # of the length and width of a piece, the middle first


def named(one: Drawn, called: str, number: int, more: str, scale: float) -> Name:
    """The fullest name that lies on the cut piece, level before upright; px from the cloth's corner at this scale.

    `called` is the number and the name, `more` which copy it is.
    """
    return next(_fitting(one, [(called, more), (called, ""), (str(number), "")], scale), None) or _alone(
        one, str(number), scale
    )


def _fitting(one: Drawn, ways: Sequence[tuple[str, str]], k: float) -> Iterator[Name]:
    for name, more in ways:
        wide, high = _size(name, more)
        for size, upright in (((wide, high), False), ((high, wide), True)):
            for at in _spots(one, k, *size):
                if one.cut.contains(QRectF(at.left / k, at.top / k, at.width / k, at.height / k)):
                    yield Name(name, more, at, True, upright)


def _alone(one: Drawn, number: str, k: float) -> Name:
    """A number on a piece that is smaller than it: in the middle of what is cut."""
    size = _size(number, "")
    spots = _spots(one, k, *size, inside=False)
    on = (at for at in spots if one.cut.contains(QRectF(at.centre.x / k, at.centre.y / k, 0.1, 0.1)))
    return Name(number, "", next(on, next(_spots(one, k, *size, inside=False))), True)


def _size(name: str, more: str) -> tuple[float, float]:
    wide = max(advance(name, "title", True), advance(more, "small")) + 2 * _PAD
    return wide, metrics("title", True).height() + (metrics("small").height() if more else 0)


def _spots(one: Drawn, k: float, wide: float, high: float, inside: bool = True) -> Iterator[Box]:
    """Places for a plate, the middle of the piece first; none where a plate that must be `inside` is the larger."""
    box = one.cut.boundingRect()
    if inside and (box.width() * k < wide or box.height() * k < high):
        return
    for down in _STEPS:
        for along in _STEPS:
            x, y = (box.left() + box.width() * along) * k, (box.top() + box.height() * down) * k
            yield Box(x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)


def paint_label(painter: QPainter, one: Name) -> None:
    """The words on their plate; the painter stands at the cloth's corner."""
    box = one.box
    painter.save()
    painter.translate(box.centre.x, box.centre.y)
    wide, high = box.width, box.height
    if one.upright:
        painter.rotate(-90)
        wide, high = high, wide
    plate = QRectF(-wide / 2, -high / 2, wide, high)
    painter.setPen(Qt.PenStyle.NoPen)
    painter.setBrush(theme.colour("tissue", 225))
    painter.drawRoundedRect(plate, 4, 4)
    painter.setBrush(Qt.BrushStyle.NoBrush)
    middle, top, foot = Qt.AlignmentFlag.AlignHCenter, Qt.AlignmentFlag.AlignTop, Qt.AlignmentFlag.AlignBottom
    painter.setPen(theme.colour("ink"))
    painter.setFont(face("title", True))
    painter.drawText(plate, middle | top, one.name)
    if one.more:
        painter.setPen(theme.colour("quiet"))
        painter.setFont(face("small"))
        painter.drawText(plate, middle | foot, one.more)
    painter.restore()
