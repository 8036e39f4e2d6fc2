"""Names of the pieces: inside a roomy piece, clear of its lines; below a narrow one."""

import itertools
from collections.abc import Iterator, Sequence
from typing import Final

from msgspec import Struct
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter

from studio.draft import Piece
from studio.drawing.arrange import Laid
from studio.geometry import Box
from studio.units import spell
from studio.words import phrase, tr

from .. import theme
from .pens import advance, face, metrics
from .shape import Shape

_ROOMY: Final = (160.0, 120.0)  # px a piece must measure to carry its name
_ACROSS: Final = 0.60  # of the width: where a name would stand best
_DOWN: Final = 0.13  # of the height
_CLEAR: Final = 12.0  # px between words and lines
_GAP: Final = 6.0  # px below a narrow piece


class Name(Struct, frozen=True):
    """A name and what to cut, px from the table's origin; `patch` where lines run below the words."""

    name: str
    more: str
    box: Box
    inside: bool
    patch: bool = False


def cut_words(piece: Piece) -> str:
    """What to cut of a piece, as the trade writes it on the pattern."""
    words = spell(phrase("cut {n:count}", n=piece.cut), "cm")
    if piece.mirrored:
        words += ", " + tr("one mirrored") if piece.cut == 2 else ", " + tr("half of them mirrored")
    if piece.on_fold:
        words += " " + tr("on the fold")
    if piece.cloth == "interfacing":
        words += " " + tr("of interfacing")
    return words


def place_name(one: Laid, shape: Shape) -> Name:
    """Where the name of a piece goes."""
    piece, k = one.piece, shape.scale
    x, y = one.at.x * k, one.at.y * k
    more = cut_words(piece)
    title, small = metrics("title", True), metrics("small")
    wide = max(advance(piece.name, "title", True), advance(more, "small"))
    if shape.box.width >= max(_ROOMY[0], wide + 40) and shape.box.height >= _ROOMY[1]:
        at, free = _between(sorted(_uprights(piece, k)), shape.box, wide)
        top = y + shape.box.top + shape.box.height * _DOWN
        high = title.height() + small.height()
        return Name(piece.name, more, Box(x + at, top, x + at + wide, top + high), True, not free)
    left, top = x + shape.box.left, y + shape.box.bottom + _GAP
    wide = advance(piece.name, "title", True) + 8 + advance(more, "small")
    return Name(piece.name, more, Box(left, top, left + wide, top + title.height()), False)


def _uprights(piece: Piece, k: float) -> Iterator[float]:
    """Where lines run down the piece, px from its origin."""
    yield from (m.path.start.x * k for m in piece.lines if m.role in ("centre", "quarter"))
    yield from (piece.grain[0].x * k for _ in range(1) if piece.grain[0].x == piece.grain[1].x)


def _between(uprights: Sequence[float], box: Box, wide: float) -> tuple[float, bool]:
    """The left edge of words between two lines, as near as may be to where they stand best; and whether they fit."""
    best = box.left + box.width * _ACROSS
    edges = [box.left, *uprights, box.right]
    rooms = [(p + _CLEAR, q - _CLEAR - wide) for p, q in itertools.pairwise(edges)]
    fits = [min(max(best, p), q) for p, q in rooms if q >= p]
    if fits:
        return min(fits, key=lambda at: abs(at - best)), True
    return min(best, box.right - _CLEAR - wide), False


def paint_name(painter: QPainter, one: Name) -> None:
    """Name and words; the painter stands at the table's origin."""
    title = metrics("title", True)
    at = QPointF(round(one.box.left), round(one.box.top + title.ascent()))
    if one.patch:
        painter.fillRect(
            QRectF(QPointF(*one.box[:2]), QPointF(*one.box[2:])).adjusted(-4, -1, 4, 1), theme.colour("tissue")
        )
    painter.setPen(theme.colour("ink"))
    painter.setFont(face("title", True))
    painter.drawText(at, one.name)
    painter.setFont(face("small"))
    if one.inside:
        at.setY(at.y() + metrics("small").height() + 2)
    else:
        at.setX(at.x() + advance(one.name, "title", True) + 8)
    painter.setPen(theme.colour("quiet"))
    painter.drawText(at, one.more)
