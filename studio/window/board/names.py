"""Names of the pieces: inside a roomy piece, clear of its lines; below a narrow one."""

from collections.abc import Iterator, Sequence
from typing import Final

from msgspec import Struct
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter

from studio.draft import Piece
from studio.drawing.arrange import Laid
from studio.geometry import Box, Point
from studio.units import spell
from studio.words import phrase, tr

from .. import theme
from .pens import advance, face, metrics
from .shape import Shape

_ROOMY: Final = 100.0  # px of height from which a piece carries its name
_ACROSS: Final = 0.60  # of the width: where a name stands best
_DOWN: Final = (0.13, 0.42, 0.68)  # of the height, the best first
_CLEAR: Final = 10.0  # px between words and lines
_GAP: Final = 6.0  # px below a narrow piece
_MEASURED: Final = 34.0  # px beside a line that is measured inside the piece


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
    piece, own = one.piece, shape.box
    x, y = one.at.x * shape.scale, one.at.y * shape.scale
    more = cut_words(piece)
    title, small = metrics("title", True), metrics("small")
    wide, high = max(advance(piece.name, "title", True), advance(more, "small")), title.height() + small.height()
    if own.width >= wide + 3 * _CLEAR and own.height >= _ROOMY:
        best, free = _inside(own, list(_obstacles(piece, shape.scale)), wide, high)
        return Name(piece.name, more, best.moved(x, y), True, not free)
    left, top = x + own.left, y + own.bottom + _GAP
    wide = advance(piece.name, "title", True) + 8 + advance(more, "small")
    return Name(piece.name, more, Box(left, top, left + wide, top + title.height()), False)


def _obstacles(piece: Piece, k: float) -> Iterator[Box]:
    """What a name keeps clear of: upright lines, the grain, lines measured inside; px from the piece's origin."""
    for mark in piece.lines:
        if mark.role in ("centre", "quarter"):
            yield _spanned(mark.path.start, mark.path.end, k)
    yield _spanned(*piece.grain, k).grown(4)
    for d in piece.dimensions:
        if d.side == "inside":
            box = _spanned(d.start, d.end, k)
            yield box._replace(right=box.right + _MEASURED)


def _spanned(a: Point, b: Point, k: float) -> Box:
    return Box(min(a.x, b.x) * k, min(a.y, b.y) * k, max(a.x, b.x) * k, max(a.y, b.y) * k)


def _inside(own: Box, obstacles: Sequence[Box], wide: float, high: float) -> tuple[Box, bool]:
    """The place for words of this size that is nearest to the best one, and whether it is clear of all lines."""
    best = own.left + own.width * _ACROSS
    for down in _DOWN:
        top = own.top + own.height * down
        met = sorted(o for o in obstacles if o.top < top + high + 4 and o.bottom > top - 4)
        lefts = [own.left, *(o.right for o in met)]
        rights = [*(o.left for o in met), own.right]
        rooms = [(p + _CLEAR, q - _CLEAR - wide) for p, q in zip(lefts, rights, strict=True)]
        fits = [min(max(best, p), q) for p, q in rooms if q >= p]
        if fits:
            left = min(fits, key=lambda at: abs(at - best))
            return Box(left, top, left + wide, top + high), True
    left, top = min(best, own.right - _CLEAR - wide), own.top + own.height * _DOWN[0]
    return Box(left, top, left + wide, top + high), False


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
