"""A plain table of the booklet: heads over a line, rows between thin ones, and headings of its parts."""

from collections.abc import Sequence

from msgspec import Struct

from studio.drawing import Align, Face, Mark, Words
from studio.drawing.furniture import paragraph, stroke, tick_box
from studio.drawing.lettering import wrap
from studio.geometry import Point

from .booklet_flow import Part

_TEXT, _ROW, _LEAD, _HEADS = 3.6, 6.4, 4.6, 6.0
_BETWEEN = 3.0


class Column(Struct, frozen=True):
    """The head of a column, how wide it is (mm; 0: what is left), and how its words stand."""

    head: str
    wide: float
    align: Align = "left"
    face: Face = "regular"
    ticks: bool = False


def heading(text: str, wide: float) -> Part:
    """The heading of a part of the booklet, over a line."""
    words = Words(text, Point(0, 7.6), 6.2, "plain", face="serif")
    return Part((words, stroke("plain", (0, 10.6), (wide, 10.6))), 13.0, 7.0, heading=True)


def table(columns: Sequence[Column], rows: Sequence[Sequence[str]], wide: float) -> Part:
    """Rows of words under their heads; what is too long for its column goes on below."""
    places = _places(columns, wide)
    marks: list[Mark] = []
    y = 0.0
    if any(c.head for c in columns):
        for c, (left, room) in zip(columns, places, strict=True):
            marks.append(_cell(c.head, c, left, room, 3.6, grey=True))
        y = _HEADS
        marks.append(stroke("plain", (0, y - 0.8), (wide, y - 0.8)))
    for row in rows:
        y = _row(marks, columns, row, places, y)
        marks.append(stroke("rule", (0, y), (wide, y)))
    return Part(tuple(marks), y)


def _row(
    marks: list[Mark], columns: Sequence[Column], row: Sequence[str], places: Sequence[tuple[float, float]], y: float
) -> float:  # fmt: skip
    """One row from `y` down, and where it ends, mm."""
    most = 1
    for c, words, (left, room) in zip(columns, row, places, strict=True):
        if c.ticks:
            marks.append(tick_box(left, y + 4.3, 4.0))
            continue
        lines = wrap(words, _TEXT, room, c.face) if words else []
        most = max(most, len(lines))
        marks += [_cell(line, c, left, room, y + 4.3 + k * _LEAD) for k, line in enumerate(lines)]
    return y + _ROW + (most - 1) * _LEAD


def text(words: str, wide: float, height: float = 3.6, gap: float = 3.0) -> Part:
    """A paragraph."""
    told = paragraph(words, 0, 0, wide, height, ink="plain")
    return Part(told.marks, told.below, gap)


def _places(columns: Sequence[Column], wide: float) -> list[tuple[float, float]]:
    """Where each column begins and how much room its words have, mm."""
    rest = wide - sum(c.wide for c in columns)
    widths = [c.wide or rest for c in columns]
    lefts = [sum(widths[:k]) for k in range(len(widths))]
    return [
        (left, w - (_BETWEEN if k < len(widths) - 1 else 0))
        for k, (left, w) in enumerate(zip(lefts, widths, strict=True))
    ]


def _cell(words: str, column: Column, left: float, room: float, base: float, *, grey: bool = False) -> Words:
    """Words in a column, in small grey ones where they are its head."""
    x = left + {"left": 0.0, "centre": room / 2, "right": room}[column.align]
    if grey:
        return Words(words, Point(x, base), 3.0, "rule", align=column.align)
    return Words(words, Point(x, base), _TEXT, "plain", align=column.align, face=column.face)
