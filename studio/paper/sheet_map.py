"""The map of the sheets: the whole plan, small, with every sheet's name and every piece."""

import math
from collections.abc import Iterator
from itertools import product

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


def map_height(grid: Grid, wide: float, most: float) -> float:
    """How high a map is that is no wider than `wide` and no higher than `most`, mm."""
    return _inner(grid, Box(0, 0, wide, most)).bottom


def sheet_map(plan: Plan, grid: Grid, room: Box) -> Drawing:
    """The map within `room`, from its top left corner; its sheets are named in their corners or along its edges."""
    inner = _inner(grid, room)
    k = inner.width / grid.whole.width
    marks: list[Mark] = [
        Stroke(placed_path(p.outline, Point(inner.left, inner.top), k), "plain", fill="tone") for p in plan.pieces
    ]
    cells = {s: _scaled(grid.live(s), k, inner) for s in grid.sheets}
    marks += [frame("sheet", cell, width=0.35) for cell in cells.values()]
    plates = _plates(cells)
    for box, name in plates:
        marks.append(frame("sheet", box, width=0.35, fill="white"))
        em = box.height / _PLATE
        marks.append(Words(name, box.centre.moved(0, em * CAPITAL / 2), em, "sheet", align="centre", face="bold"))
    if not plates:
        marks += _along_edges(grid, k, inner)
    for piece in plan.pieces:
        marks.append(_piece_name(piece, k, inner, cells, [box for box, _ in plates]))
    return (*marks, *_empty(grid, k, inner))


def _inner(grid: Grid, room: Box) -> Box:
    """Where the sheets are drawn: all of the room, or less what names along the edges take."""
    whole = grid.whole
    for left, top in ((0.0, 0.0), (_SIDE, _TOP)):
        k = min((room.width - left) / whole.width, (room.height - top) / whole.height, _LARGEST)
        inner = Box(0, 0, whole.width * k, whole.height * k).moved(room.left + left, room.top + top)
        if _plates({s: _scaled(grid.live(s), k, inner) for s in grid.sheets}):
            break
    return inner


def _scaled(box: Box, k: float, inner: Box) -> Box:
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


def _along_edges(grid: Grid, k: float, inner: Box) -> Iterator[Words]:
    """Letters along the top and numbers down the left side, as many as have room."""
    first = [Sheet(0, c) for c in range(grid.columns)]
    cell = _scaled(grid.live(Sheet(0, 0)), k, inner)
    every = math.ceil((max(width(s.column_name, _LEAST, "bold") for s in first) + 0.4) / cell.width)
    for sheet in first[::every]:
        x = _scaled(grid.live(sheet), k, inner).centre.x
        if x + width(sheet.column_name, _LEAST, "bold") / 2 <= inner.right + 0.4:
            yield Words(sheet.column_name, Point(x, inner.top - 1), _LEAST, "sheet", align="centre", face="bold")
    every = math.ceil(_LEAST * 0.8 / cell.height)
    for row in range(0, grid.rows, every):
        y = _scaled(grid.live(Sheet(row, 0)), k, inner).centre.y + _LEAST * CAPITAL / 2
        yield Words(f"{row + 1}", Point(inner.left - 1, y), _LEAST, "sheet", align="right", face="bold")


def _piece_name(piece: PatternPiece, k: float, inner: Box, cells: dict[Sheet, Box], plates: list[Box]) -> Words:
    """The piece's number and name, where they fit off the plates: on one sheet, across sheets; else its number."""
    whole = _scaled(piece.box, k, inner)
    parts = sorted((_common(whole, c) for c in cells.values() if c.meets(whole)), key=lambda b: -b.width * b.height)
    for text in (f"{piece.number}  {piece.name}", piece.number):
        wide, high = width(text, _PIECE, "semibold") + 1.5, _PIECE * 1.1
        for part in (*parts, whole):
            for along, down in product((0.5, 0.3, 0.7), (0.5, 0.6, 0.7, 0.75, 0.8, 0.35, 0.2)):
                x, y = part.left + part.width * along, part.top + part.height * down
                spot = Box(x - wide / 2, y - high / 2, x + wide / 2, y + high / 2)
                if _common(spot, part) == spot and not any(spot.meets(p) for p in plates):
                    return _label(text, spot.centre, patch=part is whole and len(parts) > 1)
    for x in (whole.right + 2, whole.left - 2):
        spot = Box(x - 1, whole.centre.y - 2, x + 1, whole.centre.y + 2)
        if not any(spot.meets(p) for p in plates):
            return _label(piece.number, spot.centre, patch=True)
    return _label(piece.number, whole.centre, patch=True)


def _label(text: str, middle: Point, *, patch: bool) -> Words:
    at = middle.moved(0, _PIECE * CAPITAL / 2)
    return Words(text, at, _PIECE, "plain", align="centre", face="semibold", patch=patch)


def _common(a: Box, b: Box) -> Box:
    return Box(max(a.left, b.left), max(a.top, b.top), min(a.right, b.right), min(a.bottom, b.bottom))


def _empty(grid: Grid, k: float, room: Box) -> Iterator[Words]:
    """Places without a sheet say so, where two lines of words fit."""
    lines = (tr("empty,"), tr("not printed"))
    need = max(width(line, _LEAST) for line in lines) + 1
    for row in range(grid.rows):
        for column in range(grid.columns):
            if grid.has(Sheet(row, column)):
                continue
            box = _scaled(grid.live(Sheet(row, column)), k, room)
            if box.width >= need and box.height >= 2.6 * _LEAST:
                for i, line in enumerate(lines):
                    at = Point(box.centre.x, box.centre.y + (i - 0.5) * 1.25 * _LEAST + 0.3 * _LEAST)
                    yield Words(line, at, _LEAST, "rule", align="centre")
