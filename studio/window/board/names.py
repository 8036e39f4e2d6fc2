"""Names of the pieces: inside a roomy piece, clear of its lines; below a flat one; upright in a slender one."""

from collections.abc import Iterator, Sequence
from typing import Final

from msgspec import Struct
from PySide6.QtCore import QPointF, QRectF
from PySide6.QtGui import QPainter

from studio.draft import Piece
from studio.draft.cutting import cut_words
from studio.drawing.arrange import Laid
from studio.geometry import Box, Point

from .. import theme
from .pens import advance, face, metrics
from .shape import Shape

_ROOMY: Final = 100.0  # px of height from which a piece carries its name
_ACROSS: Final = 0.60  # of the width: where a name stands best
_DOWN: Final = (0.11, 0.18, 0.26, 0.38, 0.5, 0.6, 0.7)  # of the height, the best first
_CLEAR: Final = 6.0  # px between words and lines
_GAP: Final = 6.0  # px below a narrow piece
_MEASURED: Final = 34.0  # px beside a line that is measured inside the piece
_HANDLE: Final = 8.0  # px round a handle


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


def place_names(laid: Sequence[Laid], shapes: Sequence[Shape]) -> tuple[Name, ...]:
    """Where the names go; one that finds no room is left out until the board is larger."""
    pieces = [s.box.moved(o.at.x * s.scale, o.at.y * s.scale) for o, s in zip(laid, shapes, strict=True)]
    placed: list[Name] = []
    for k, (one, drawn) in enumerate(zip(laid, shapes, strict=True)):
        others = pieces[:k] + pieces[k + 1 :]
        for name in _places(one, drawn):
            if not any(name.box.meets(b) for b in (*others, *(n.box for n in placed))):
                placed.append(name)
                break
    return tuple(placed)


def _places(one: Laid, drawn: Shape) -> Iterator[Name]:
    """Where the name of a piece may go, the best place first."""
    piece, own, inner, more = one.piece, drawn.box, drawn.inner, cut_words(one.piece)
    x, y = one.at.x * drawn.scale, one.at.y * drawn.scale
    title, small = metrics("title", True), metrics("small")
    wide, high = max(advance(piece.name, "title", True), advance(more, "small")), title.height() + small.height()
    firm = list(_firm(piece, drawn.scale))
    obstacles = [*firm, *_lines(piece, drawn.scale)]
    crossed: list[Name] = []
    for size, upright in (((wide, high), False), ((high, wide), True)):
        if inner.height >= _ROOMY and inner.width >= size[0] + 2 * _CLEAR and inner.height >= size[1] + 2 * _CLEAR:
            if (free := _inside(drawn, obstacles, *size)) is not None:
                yield Name(piece.name, more, free.moved(x, y), True, upright)
            elif (over := _inside(drawn, firm, *size)) is not None:
                crossed.append(Name(piece.name, more, over.moved(x, y), True, upright, patch=True))
    left, top = x + own.left, y + own.bottom + _GAP
    for says in (more, ""):
        wide = advance(piece.name, "title", True) + (8 + advance(says, "small") if says else 0)
        for start, line in ((left, top), (x + own.right - wide, top), (left, top + title.height() + 2)):
            yield Name(piece.name, says, Box(start, line, start + wide, line + title.height()), False)
    yield from crossed


def _firm(piece: Piece, k: float) -> Iterator[Box]:
    """What a name never covers: the grain and the handles, px from the piece's origin."""
    yield _spanned(*piece.grain, k).grown(3)
    for handle in piece.handles:
        yield _spanned(handle.at, handle.at, k).grown(_HANDLE)


def _lines(piece: Piece, k: float) -> Iterator[Box]:
    """What it keeps clear of where it can: lines, and what is measured inside, px from the piece's origin."""
    for mark in piece.lines:
        if mark.role != "gather":
            yield _spanned(mark.path.start, mark.path.end, k)
    for d in piece.dimensions:
        if d.side == "inside":
            box = _spanned(d.start, d.end, k)
            yield box._replace(right=box.right + _MEASURED)


def _spanned(a: Point, b: Point, k: float) -> Box:
    return Box(min(a.x, b.x) * k, min(a.y, b.y) * k, max(a.x, b.x) * k, max(a.y, b.y) * k)


def _inside(drawn: Shape, obstacles: Sequence[Box], wide: float, high: float) -> Box | None:
    """The place for words of this size that is nearest to the best one, clear of obstacles and of the seam line."""
    room = drawn.inner
    best = room.left + room.width * _ACROSS
    for down in _DOWN:
        top = room.top + room.height * down
        if top + high > room.bottom - _CLEAR:
            break
        met = sorted(o for o in obstacles if o.top < top + high + 2 and o.bottom > top - 2)
        lefts = [room.left, *(o.right for o in met)]
        rights = [*(o.left for o in met), room.right]
        rooms = [(p + _CLEAR, q - _CLEAR - wide) for p, q in zip(lefts, rights, strict=True)]
        tries = (best, room.left + (room.width - wide) / 2)
        fits = sorted({min(max(t, p), q) for t in tries for p, q in rooms if q >= p}, key=lambda at: abs(at - best))
        left = next((at for at in fits if drawn.sewn.contains(QRectF(at - 4, top - 2, wide + 8, high + 4))), None)
        if left is not None:
            return Box(left, top, left + wide, top + high)
    return None


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
