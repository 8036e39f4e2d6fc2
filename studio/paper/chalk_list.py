"""The chalk list: a rectangle needs no paper, only distances read from one corner, and equal diagonals."""

from collections.abc import Iterator, Sequence

from msgspec import Struct

from studio.draft import Piece
from studio.draft.cutting import cut_words
from studio.draft.gathers import BREAK
from studio.drawing import Mark, Words, moved
from studio.drawing.furniture import paragraph, stroke, tick_box
from studio.drawing.lettering import fitted, wrap
from studio.geometry import Point
from studio.units import Unit, spell, write_length
from studio.words import phrase, tr

from .chalk_pleats import how_to_pleat, is_pleated, pleat_rows
from .chalk_sketch import Sketch, grain_along, sketch
from .page import Page
from .single import Block, Column, body, flow, numbers_are, single, upright
from .sizes import PaperSize
from .stations import SAME, Station, Stations, stations

NEAR = 3.0
"""Diagonals that differ by no more than this (mm) are equal enough (common practice, no source)."""

_SHARES = (0.34, 0.26, 0.18)
"""How much of a page's height the rectangle may take."""

_TEXT, _LEAD, _ROW, _HEADS = 3.6, 4.8, 6.4, 5.0
_NAME, _DISTANCE, _WHAT, _BETWEEN = 9.0, 27.0, 31.0, 8.0
_ASIDE = 24.0


class _Chalked(Struct, frozen=True):
    """A piece with its stations, in the maker's unit, on a page so wide (mm)."""

    piece: Piece
    stations: Stations
    unit: Unit
    wide: float


def chalk_list(
    piece: Piece, title: str, unit: Unit, paper: PaperSize, band: Piece | None = None
) -> tuple[Page, ...]:  # fmt: skip
    """The list of a rectangular piece on upright pages; the band follows below where it fits whole, or on its own."""
    size = upright(paper)
    room = body(size, paper.margin)
    of = f"{tr(piece.name)}, {cut_words(piece)}"
    one = _Chalked(piece, stations(piece), unit, room.width)
    other = _Chalked(band, stations(band), unit, room.width) if band is not None else None
    columns = _columns(one, other, room.height)
    alone: tuple[Page, ...] = ()
    if band is not None and len(columns) > 1:
        columns, alone = _columns(one, None, room.height), chalk_list(band, title, unit, paper)
    pages = []
    for k, column in enumerate(columns):
        right = of if k == 0 else f"{of}, {tr('continued')}"
        foot = (f"{numbers_are(unit)} {_included(piece, unit)}", title)
        pages.append(single(size, paper.margin, tr("Chalk list"), right, moved(column.marks, *room[:2]), foot))
    return (*pages, *alone)


def _columns(one: _Chalked, other: _Chalked | None, height: float) -> list[Column]:
    """The blocks in columns: drawn smaller where that brings all onto one page."""
    found: list[list[Column]] = []
    for share in _SHARES:
        drawn = sketch(one.piece, one.stations, one.unit, one.wide, height * share)
        lists = [_how(one.piece, one.wide), Block(drawn.marks, drawn.height, 5), *_rows(one)]
        if is_pleated(one.piece):
            lists += pleat_rows(one.piece, one.unit, one.wide)
        blocks = [*lists, _proof(_says(one), one.wide), *(_below(other, drawn) if other else ())]
        found.append(flow(blocks, height))
        if len(found[-1]) == 1:
            return found[-1]
    return found[0]


def _below(one: _Chalked, over: Sketch) -> list[Block]:
    """A second piece on a page: a shorter form, to the same scale."""
    drawn = sketch(one.piece, one.stations, one.unit, one.wide, over.height, over.scale)
    says = [(tr("Start"), _lay(one.piece)), *_says(one)]
    return [_rule(one), Block(drawn.marks, drawn.height, 2), *_rows(one), _proof(says, one.wide)]


def _rule(one: _Chalked) -> Block:
    """The title of the second piece on a page, under a rule."""
    marks: tuple[Mark, ...] = (
        stroke("rule", (0, 0), (one.wide, 0)),
        Words(tr(one.piece.name), Point(0, 7), 6.2, "plain", face="serif"),
        Words(
            f"{cut_words(one.piece)}, {tr('drawn to the same scale')}",
            Point(one.wide, 7), 3.2, "rule", align="right",
        ),
    )  # fmt: skip
    return Block(marks, 10, 6)


def _how(piece: Piece, wide: float) -> Block:
    """How a chalk list is read."""
    read = tr(
        "No paper needed: this piece is a rectangle. Pin the tape at the corner A1 and read every distance "
        "from that one end; never add up from mark to mark."
    )
    text = paragraph(f"{read} {_lay(piece)}", 0, 0, wide, 4.4)
    return Block(text.marks, text.below)


def _lay(piece: Piece) -> str:
    """Which side is chalked; a band's ends, and the ways its pleats lie, are not alike from behind."""
    if not _panel(piece) or is_pleated(piece):
        return tr("Lay the cloth right side up.")
    if piece.mirrored:
        return tr("Chalk on the wrong side. On the mirrored one, A1 lies at the right.")
    return tr("Chalk on the wrong side.")


def _panel(piece: Piece) -> bool:
    return piece.row > 0


def _included(piece: Piece, unit: Unit) -> str:
    """Which allowances are in the numbers."""
    rest = max((e.allowance for e in piece.edges if not e.hem), default=0.0)
    hem = max((e.allowance for e in piece.edges if e.hem), default=0.0)
    if hem:
        return spell(phrase("Allowance {a:bare} and hem {h:bare} are included.", a=rest, h=hem), unit)
    return spell(phrase("Allowance {a:bare} is included.", a=rest), unit)


def _rows(one: _Chalked) -> Iterator[Block]:
    """The two lists side by side, a row of each together; the heads come again on a new page."""
    column = (one.wide - _BETWEEN) / 2
    second = column + _BETWEEN
    heads = [
        mark
        for x, name in ((0.0, tr("along")), (second, tr("down")))
        for mark in (
            Words(name, Point(x, 3.4), 3.0, "rule"),
            Words(tr("from A1"), Point(x + _DISTANCE, 3.4), 3.0, "rule", align="right"),
            Words(tr("what"), Point(x + _WHAT, 3.4), 3.0, "rule"),
            stroke("plain", (x, _HEADS), (x + column, _HEADS)),
        )
    ]
    head = Block(tuple(heads), _HEADS)
    for k in range(max(len(one.stations.along), len(one.stations.down))):
        sides = [(0.0, one.stations.along[k : k + 1]), (second, one.stations.down[k : k + 1])]
        high = _ROW + _LEAD * (max(len(_wrapped(s, column)) for _, found in sides for s in found) - 1)
        marks = [m for x, found in sides for s in found for m in _row(s, x, column, high, one.unit)]
        if k:
            yield Block(tuple(marks), high, head=head)
        else:
            yield Block((*heads, *moved(tuple(marks), 0, _HEADS)), _HEADS + high, 7)


def _wrapped(s: Station, column: float) -> Sequence[str]:
    return wrap(s.what, _TEXT, column - _WHAT - 6)


def _row(s: Station, x: float, column: float, high: float, unit: Unit) -> Iterator[Mark]:
    base = _ROW * 0.7
    yield Words(s.name, Point(x, base), _TEXT, "plain", face="semibold")
    distance = write_length(s.distance, unit, bare=True)
    yield Words(distance, Point(x + _DISTANCE, base), _TEXT, "plain", align="right", face="semibold")
    for i, text in enumerate(_wrapped(s, column)):
        yield Words(text, Point(x + _WHAT, base + i * _LEAD), _TEXT, "plain")
    yield tick_box(x + column - 4.6, base)
    yield stroke("rule", (x, high), (x + column, high))


def _says(one: _Chalked) -> list[tuple[str, str]]:
    """What shows that the chalk is right, and what the lists leave unsaid."""
    square = phrase(
        "Measure both diagonals. Equal, and {d:bare}, means square. {near:bare} apart is near enough; more, and one "
        "end leans: draw it again from the selvedge.",
        d=one.stations.diagonal,
        near=NEAR,
    )
    names = one.stations.along if grain_along(one.piece) else one.stations.down
    runs = phrase("The selvedge runs from {a:word} to {b:word}.", a=names[0].name, b=names[-1].name)
    said = [(tr("Square?"), spell(square, one.unit)), (tr("Grain"), spell(runs, one.unit))]
    if is_pleated(one.piece):
        said.append((tr("Pleats"), spell(how_to_pleat(one.piece), one.unit)))
    if _stop_short(one.piece):
        short = phrase("Where rows break or meet a panel seam, stop each {gap:bare} short of it.", gap=BREAK)
        said.append((tr("Rows"), spell(short, one.unit)))
    return said


def _stop_short(piece: Piece) -> bool:
    """Whether any gather row ends elsewhere than on a bar."""
    bars = [m.path.start.x for m in piece.lines if m.role == "row stop"]
    ends = [p.x for m in piece.lines if m.role == "gather" for p in (m.path.start, m.path.end)]
    return any(all(abs(bar - x) > SAME for bar in bars) for x in ends)


def _proof(says: Sequence[tuple[str, str]], wide: float) -> Block:
    """Each with its name in front, kept together."""
    marks: list[Mark] = []
    y = 0.0
    for name, text in says:
        words, height = fitted(name, 4.4, _ASIDE - 2, "semibold")
        told = paragraph(text, _ASIDE, y, wide - _ASIDE, _TEXT)
        marks += (Words(words, Point(0, y + _TEXT * 0.95), height, "plain", face="semibold"), *told.marks)
        y = told.below + 1
    return Block(tuple(marks), y - 1, 5)
