"""What to have ready and what to cut: the page that goes to the shop and to the cutting table."""

from collections.abc import Iterable, Iterator, Sequence

from studio.draft import Notion, Piece
from studio.draft.cutting import cut_words
from studio.drawing import Mark, Words, moved
from studio.drawing.furniture import paragraph, stroke, tick_box
from studio.drawing.lettering import fitted
from studio.geometry import Point
from studio.units import Unit, spell
from studio.words import tr

from .heading import section
from .page import Page
from .pattern import Said, cut_size
from .single import Block, body, flow, numbers_are, single, upright
from .sizes import PaperSize
from .template import comes_as

_TEXT, _ROW, _LEAD, _TICK = 3.6, 6.4, 1.34, 7.0
_SHARES = (0.0, 0.06, 0.36, 0.64, 0.82)
"""Where the columns begin, as a share of the page's width."""


def ready_pages(
    numbered: Sequence[tuple[str, Piece]], notions: Iterable[Notion], said: Said, paper: PaperSize
) -> Iterator[Page]:  # fmt: skip
    """Everything to buy or to find, and every piece with how many are cut and how it comes on paper."""
    size = upright(paper)
    room = body(size, paper.margin)
    foot = (numbers_are(said.unit), said.brief.title)
    blocks = [*_to_have(notions, said.unit, room.width), *_to_cut(numbered, said, room.width)]
    for column in flow(blocks, room.height):
        marks = moved(column.marks, *room[:2])
        yield single(size, paper.margin, tr("To have ready and to cut"), said.brief.title, marks, foot)


def shopping_pages(lines: Iterable[str], besides: Iterable[str], said: Said, paper: PaperSize) -> Iterator[Page]:
    """What to buy, a box to tick at each line, and below what is left over and what the skirt weighs."""
    size = upright(paper)
    room = body(size, paper.margin)
    foot = (numbers_are(said.unit), said.brief.title)
    told = (paragraph(line, 0, 1.2, room.width, _TEXT, lead=_LEAD) for line in besides)
    blocks = [*_ticked(lines, room.width), *(Block(t.marks, max(_ROW, t.below + 0.6), 2) for t in told)]
    for column in flow(blocks, room.height):
        yield single(size, paper.margin, tr("What to buy"), said.brief.title, moved(column.marks, *room[:2]), foot)


def _to_have(notions: Iterable[Notion], unit: Unit, wide: float) -> Iterator[Block]:
    yield _head(tr("To have ready"), (), wide)
    yield from _ticked((spell(n.words, unit) for n in notions), wide)


def _ticked(lines: Iterable[str], wide: float) -> Iterator[Block]:
    for line in lines:
        told = paragraph(line, _TICK, 1.2, wide - _TICK, _TEXT, lead=_LEAD)
        yield _ruled((tick_box(0, 4.6), *told.marks), max(_ROW, told.below + 0.6), wide)


def _to_cut(numbered: Sequence[tuple[str, Piece]], said: Said, wide: float) -> Iterator[Block]:
    heads = (tr("no."), tr("piece"), tr("cut"), tr("size, cut"), tr("on paper"))
    head = _head(tr("To cut"), heads, wide)
    yield Block(head.marks, head.height, 8)
    for number, piece in numbered:
        how = comes_as(piece, said.brief.paper.panels)
        row = (number, piece.name, cut_words(piece), cut_size(piece, said.unit), tr(how))
        block = _ruled(_cells(row, 4.6, _TEXT, wide), _ROW, wide)
        yield Block(block.marks, block.height, head=head)


def _head(title: str, heads: Sequence[str], wide: float) -> Block:
    """The name of a list over a line, with the heads of its columns."""
    high = 11.0 if heads else 6.0
    return Block(
        (section(title, 0, 3.6), *_cells(heads, 9.4, 3.0, wide), stroke("plain", (0, high), (wide, high))), high
    )


def _cells(row: Sequence[str], base: float, em: float, wide: float) -> tuple[Mark, ...]:
    ends = (*_SHARES[1:], 1.0)
    found = []
    for text, start, end in zip(row, _SHARES, ends, strict=False):
        shown, height = fitted(text, em, (end - start) * wide - 2)
        found.append(Words(shown, Point(start * wide, base), height, "plain"))
    return tuple(found)


def _ruled(marks: tuple[Mark, ...], high: float, wide: float) -> Block:
    return Block((*marks, stroke("rule", (0, high), (wide, high))), high)
