"""The map of the sheets: the whole plan, small, with every sheet's name and every piece."""

import math
from collections.abc import Iterator
from itertools import product

from msgspec import Struct

from studio.drawing import Drawing, Mark, Stroke, Words
from studio.drawing.furniture import frame, placed_path
from studio.drawing.lettering import CAPITAL, width
from studio.drawing.lettering import LEAST as _LEAST
from studio.geometry import Box, Point
from studio.words import tr

from .grid import Grid, Sheet
from .plan import PatternPiece, Plan

_NAME, _PIECE = 5.0, 3.4
_LARGEST, _PLATE = 0.4, 1.32
_SIDE, _TOP = 5.5, 4.0


class SheetMap(Struct, frozen=True):
    """The map, and how high it is in mm."""

    drawing: Drawing
    height: float


def sheet_map(plan: Plan, grid: Grid, room: Box) -> SheetMap:
    """The map within `room`, from its top left corner.

    Sheets are named in their corners; along the map's edges where that would leave a piece no room for its number.
    """
    inner = _inner(grid, room, 0, 0)
    named = _named(plan, grid, inner)
    if named is None:
        inner = _inner(grid, room, _SIDE, _TOP)
        numbers = [_number(p, inner, grid) for p in plan.pieces]
        named = [*_along_edges(grid, inner), *numbers]
    k = inner.width / grid.whole.width
    marks: list[Mark] = [
        Stroke(placed_path(p.outline, Point(inner.left, inner.top), k), "plain", fill="tone") for p in plan.pieces
    ]
    marks += [frame("sheet", cell, width=0.35) for cell in _cells(grid, inner).values()]
    return SheetMap((*marks, *named, *_empty(grid, inner)), inner.bottom - room.top)


def _inner(grid: Grid, room: Box, left: float, top: float) -> Box:
    """Where the sheets are drawn: all of the room, less what names along the edges take."""
    whole = grid.whole
    k = min((room.width - left) / whole.width, (room.height - top) / whole.height, _LARGEST)
    return Box(0, 0, whole.width * k, whole.height * k).moved(room.left + left, room.top + top)


def _cells(grid: Grid, inner: Box) -> dict[Sheet, Box]:
    return {s: _scaled(grid.live(s), grid, inner) for s in grid.sheets}


def _named(plan: Plan, grid: Grid, inner: Box) -> list[Mark] | None:
    """Plates with the sheets' names, and the pieces' names off them; None where there is no room for both."""
    cells = _cells(grid, inner)
    plates = _plates(cells)
    names = [_piece_name(_scaled(p.box, grid, inner), p, cells, [box for box, _ in plates]) for p in plan.pieces]
    if not plates or None in names:
        return None
    marks: list[Mark] = []
    for box, name in plates:
        em = box.height / _PLATE
        marks.append(frame("sheet", box, width=0.35, fill="white"))
        marks.append(Words(name, box.centre.moved(0, em * CAPITAL / 2), em, "sheet", align="centre", face="bold"))
    return [*marks, *(n for n in names if n is not None)]


def _number(piece: PatternPiece, inner: Box, grid: Grid) -> Words:
    """The piece's name where it fits; else its number beside it, or over it."""
    whole = _scaled(piece.box, grid, inner)
    if name := _piece_name(whole, piece, _cells(grid, inner), []):
        return name
    beside = Point(whole.right + 2, whole.centre.y)
    return _label(piece.number, beside if beside.x + 1 <= inner.right else whole.centre, patch=True)


def _scaled(box: Box, grid: Grid, inner: Box) -> Box:
    k = inner.width / grid.whole.width
    return Box(*(v * k for v in box)).moved(inner.left, inner.top)


def _plates(cells: dict[Sheet, Box]) -> list[tuple[Box, str]]:
    """A plate with its name in the corner of each sheet, all of one size; none where they would hide the pieces."""
    high, wide = min(c.height for c in cells.values()), min(c.width for c in cells.values())
    longest = max((s.name for s in cells), key=lambda name: width(name, 1, "bold"))
    em = min(_NAME, high / 2.6, 0.75 * wide / (width(longest, 1, "bold") + 0.6))
    if em < _LEAST:
        return []
    plate = max(2 * em, width(longest, em, "bold") + 0.6 * em)
    return [(Box(c.left, c.top, c.left + plate, c.top + em * _PLATE), s.name) for s, c in cells.items()]


def _along_edges(grid: Grid, inner: Box) -> Iterator[Words]:
    """Letters along the top and numbers down the left side, as many as have room."""
    first = [Sheet(0, c) for c in range(grid.columns)]
    cell = _scaled(grid.live(Sheet(0, 0)), grid, inner)
    every = math.ceil((max(width(s.column_name, _LEAST, "bold") for s in first) + 0.4) / cell.width)
    for sheet in first[::every]:
        x = _scaled(grid.live(sheet), grid, inner).centre.x
        if x + width(sheet.column_name, _LEAST, "bold") / 2 <= inner.right + 0.4:
            yield Words(sheet.column_name, Point(x, inner.top - 1), _LEAST, "sheet", align="centre", face="bold")
    every = math.ceil(_LEAST * 0.8 / cell.height)
    for row in range(0, grid.rows, every):
        y = _scaled(grid.live(Sheet(row, 0)), grid, inner).centre.y + _LEAST * CAPITAL / 2
        yield Words(f"{row + 1}", Point(inner.left - 1, y), _LEAST, "sheet", align="right", face="bold")


def _piece_name(whole: Box, piece: PatternPiece, cells: dict[Sheet, Box], plates: list[Box]) -> Words | None:
    """The piece's number and name, or its number, where they fit off the plates: on one sheet, or across sheets."""
    parts = sorted((_common(whole, c) for c in cells.values() if c.meets(whole)), key=lambda b: -b.width * b.height)
    for text in (f"{piece.number}  {piece.name}", piece.number):
        wide, high = width(text, _PIECE, "semibold") + 1.2, _PIECE * CAPITAL + 1.2
        for part in (*parts, whole):
            for x, y in _spots(part, plates):
                spot = Box(x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)
                if _common(spot, part) == spot and not any(spot.meets(p) for p in plates):
                    return _label(text, spot.centre, patch=part is whole and len(parts) > 1)
    return None


def _spots(part: Box, plates: list[Box]) -> Iterator[tuple[float, float]]:
    """Where words may stand in a part of a piece: in the middle, between a plate and the foot, then here and there."""
    under = [(p.bottom + part.bottom) / 2 for p in plates if p.meets(part.grown(-0.1))][:1]
    downs = (part.centre.y, *under, *(part.top + part.height * share for share in (0.65, 0.8, 0.35, 0.2)))
    for down, share in product(downs, (0.5, 0.3, 0.7)):
        yield part.left + part.width * share, down


def _label(text: str, middle: Point, *, patch: bool) -> Words:
    at = middle.moved(0, _PIECE * CAPITAL / 2)
    return Words(text, at, _PIECE, "plain", align="centre", face="semibold", patch=patch)


def _common(a: Box, b: Box) -> Box:
    return Box(max(a.left, b.left), max(a.top, b.top), min(a.right, b.right), min(a.bottom, b.bottom))


def _empty(grid: Grid, inner: Box) -> Iterator[Words]:
    """Places without a sheet say so, where two lines of words fit."""
    lines = (tr("empty,"), tr("not printed"))
    need = max(width(line, _LEAST) for line in lines) + 1
    for row in range(grid.rows):
        for column in range(grid.columns):
            if grid.has(Sheet(row, column)):
                continue
            box = _scaled(grid.live(Sheet(row, column)), grid, inner)
            if box.width >= need and box.height >= 2.6 * _LEAST:
                for i, line in enumerate(lines):
                    at = Point(box.centre.x, box.centre.y + (i - 0.5) * 1.25 * _LEAST + 0.3 * _LEAST)
                    yield Words(line, at, _LEAST, "rule", align="centre")
