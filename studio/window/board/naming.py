"""Where the names of the pieces go: inside a roomy piece, clear of its lines; below a flat one; upright in or beside a
slender one.

Each stands behind the piece's number; where there is no room for a name at all, the number stands alone.
"""

from collections.abc import Iterable, Iterator, Sequence
from functools import reduce
from typing import Final

from msgspec.structs import replace
from PySide6.QtCore import QRectF

from studio.draft import Piece
from studio.draft.cutting import cut_words
from studio.drawing.arrange import Laid
from studio.geometry import Box, Point
from studio.words import tr

from .names import Name
from .pens import advance, metrics
from .shape import Shape

_ROOMY: Final = 100.0  # px of height from which a piece carries its name
_ACROSS: Final = 0.60  # of the width: where a name stands best
_DOWN: Final = (0.11, 0.18, 0.26, 0.38, 0.5, 0.6, 0.7)  # of the height, the best first
_CLEAR: Final = 6.0  # px between words and lines
_GAP: Final = 6.0  # px below a narrow piece
_MEASURED: Final = 34.0  # px beside a line that is measured inside the piece
_HANDLE: Final = 8.0  # px round a handle
_LOWEST: Final = 2  # lines below a piece that its name may stand on
_STANDS: Final = 1.2  # of a piece's height: the longest name that stands upright beside it
_ROUND: Final = 56.0  # px round all pieces, within which names stand


def place_names(laid: Sequence[Laid], shapes: Sequence[Shape]) -> tuple[Name, ...]:
    """Where the names go, each clear of the others and of other pieces; then what to cut, where that has room too."""
    pieces = [s.box.moved(o.at.x * s.scale, o.at.y * s.scale) for o, s in zip(laid, shapes, strict=True)]
    room = reduce(Box.joined, pieces).grown(_ROUND) if pieces else Box(0, 0, 0, 0)
    placed: list[Name] = []
    for k, (one, drawn) in enumerate(zip(laid, shapes, strict=True)):
        taken = (*pieces[:k], *pieces[k + 1 :], *(n.box for n in placed))
        places = list(_places(one, drawn))
        placed.append(next((n for n in places if _free(n.box, room, taken)), places[-1]))
    for k, one in enumerate(laid):
        fuller = _fuller(placed[k], cut_words(one.piece))
        if _free(fuller.box, room, (*pieces, *(n.box for n in placed[:k] + placed[k + 1 :]))):
            placed[k] = fuller
    return tuple(placed)


def _free(box: Box, room: Box, taken: Iterable[Box]) -> bool:
    return room.holds(box) and not any(box.meets(b) for b in taken)


def _fuller(one: Name, more: str) -> Name:
    """A name outside its piece, with what to cut behind it."""
    if one.inside or " " not in one.name:
        return one
    wide = 8 + advance(more, "small")
    if one.upright:
        return replace(one, more=more, box=one.box._replace(top=one.box.top - wide))
    return replace(one, more=more, box=one.box._replace(right=one.box.right + wide))


def _places(one: Laid, drawn: Shape) -> Iterator[Name]:
    """Where the name of a piece may go, the best place first: inside with what to cut, else round it without.

    Its number alone, near it or at last on it, where there is no room for a name.
    """
    called = f"{one.number} {tr(one.piece.name)}"
    inside, crossed = _within(one, drawn, called)
    yield from inside
    own, thick = drawn.box.moved(one.at.x * drawn.scale, one.at.y * drawn.scale), metrics("title", True).height()
    below, above, wide = own.bottom + _GAP, own.top - _GAP - thick, advance(called, "title", True)
    for line in range(_LOWEST):
        top = below + line * (thick + 2)
        for left in (own.left, own.right - wide, own.centre.x - wide / 2):
            yield Name(called, "", Box(left, top, left + wide, top + thick), False)
    yield from crossed
    for left in (own.left, own.right - wide, own.centre.x - wide / 2):
        yield Name(called, "", Box(left, above, left + wide, above + thick), False)
    for name in (called, str(one.number)):
        wide = advance(name, "title", True)
        for left in (own.right + _GAP, own.left - _GAP - thick):
            if wide <= _STANDS * own.height:
                yield Name(name, "", Box(left, own.top, left + thick, own.top + wide), False, upright=True)
    for left, top in (
        (own.left, below),
        (own.left, above),
        (own.right + _GAP, own.top),
        (own.centre.x - wide / 2, own.centre.y - thick / 2),
    ):
        yield Name(name, "", Box(left, top, left + wide, top + thick), False, patch=True)


def _within(one: Laid, drawn: Shape, called: str) -> tuple[list[Name], list[Name]]:
    """Places in a roomy piece: clear of its lines, and over them; level first, then upright."""
    inner, more, x, y = drawn.inner, cut_words(one.piece), one.at.x * drawn.scale, one.at.y * drawn.scale
    wide, high = max(advance(called, "title", True), advance(more, "small")), metrics("title", True).height()
    high += metrics("small").height()
    firm = list(_firm(one.piece, drawn.scale))
    obstacles = [*firm, *_lines(one.piece, drawn.scale)]
    clear, crossed = list[Name](), list[Name]()
    for size, upright in (((wide, high), False), ((high, wide), True)):
        if inner.height >= _ROOMY and inner.width >= size[0] + 2 * _CLEAR and inner.height >= size[1] + 2 * _CLEAR:
            if (free := _inside(drawn, obstacles, *size)) is not None:
                clear.append(Name(called, more, free.moved(x, y), True, upright))
            elif (over := _inside(drawn, firm, *size)) is not None:
                crossed.append(Name(called, more, over.moved(x, y), True, upright, patch=True))
    return clear, crossed


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
