"""Pieces at true scale on sheets as large as they need: all on one, or each on its own."""

from collections.abc import Sequence
from functools import reduce

from studio.draft import Piece
from studio.drawing import Group, moved
from studio.drawing.arrange import arrange
from studio.geometry import Box

from .page import Page, Size
from .pattern import Said, pattern_piece
from .plan import PatternPiece
from .reach import boxed

ROUND = 10.0
"""White round what is drawn, mm."""


def numbered(pieces: Sequence[Piece]) -> list[tuple[str, Piece]]:
    """Each piece with the number that names it on sheets, map and lay plan."""
    return [(str(k + 1), p) for k, p in enumerate(pieces)]


def one_sheet(pieces: tuple[Piece, ...], said: Said) -> Page:
    """Every piece on one large sheet, as they lie on the table."""
    numbers = {p.id: n for n, p in numbered(pieces)}
    return _page(
        [pattern_piece(one.piece, said.called(numbers[one.piece.id])).moved(*one.at) for one in arrange(pieces)]
    )


def own_sheet(number: str, piece: Piece, said: Said) -> Page:
    """One piece on a sheet of its own size."""
    return _page([pattern_piece(piece, said.called(number))])


def _page(pieces: Sequence[PatternPiece]) -> Page:
    """The pieces on a page that holds them and all their words."""
    drawings = [(*p.drawing, *p.blocks) for p in pieces]
    box = reduce(Box.joined, (b.box for d in drawings for b in boxed(d)))
    dx, dy = ROUND - box.left, ROUND - box.top
    groups = tuple(Group(p.name, moved(d, dx, dy)) for p, d in zip(pieces, drawings, strict=True))
    return Page(Size(box.width + 2 * ROUND, box.height + 2 * ROUND), groups)
