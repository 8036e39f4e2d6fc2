"""The strip at the foot of every sheet: its name, a small map, what it belongs to, and a scale to measure."""

from studio.drawing import Colour, Drawing, Face, Ink, Mark, Words
from studio.drawing.furniture import frame, stroke
from studio.drawing.lettering import fitted, width
from studio.geometry import Box, Point
from studio.units import Unit, spell
from studio.words import phrase, tr

from .grid import Grid, Sheet
from .page import Size
from .sizes import BLEED

_NAME, _SMALL = 8.5, 3.2


def strip(grid: Grid, sheet: Sheet, count: int, title: str, unit: Unit, *, glue: str = "") -> Drawing:
    """The foot of one sheet, on its page; `count` is its number among the sheets, `glue` what to write on the tab."""
    paper = grid.paper
    left = paper.margin + 5
    page = grid.page_size(sheet)
    right, foot = page.width - paper.margin - paper.overlap, page.height - paper.margin
    room = min(8.0, paper.overlap - BLEED)
    wide = right - left > 200
    name = min(_NAME, room * 1.0625)
    marks: list[Mark] = [_red(sheet.name, left + 2, foot - 0.6, name, face="bold")]
    x = left + 2 + max(width(sheet.name, name, "bold"), 11.0 * name / _NAME) + 3
    room_for_map = Box(x, foot - room + 1, x + (40 if wide else 14), foot - 0.4)
    marks += small_map(grid, sheet, room_for_map)
    x += grid.columns * _cell(grid, room_for_map).width + 3
    of = phrase(
        "sheet {n:count} of {all:count}, {paper:word}, print at 100 %",
        n=count, all=len(grid.sheets), paper=paper.name,
    )  # fmt: skip
    says = spell(of, unit)
    long = width(says, _SMALL)
    marks.append(_red(says, x, foot - 0.6, _SMALL))
    bar = right - 61
    if room > 7:
        text, height = fitted(title, _SMALL, max(long, min(90.0, bar - x - 50)), "semibold")
        marks.append(_red(text, x, foot - 4.1, height, face="semibold"))
        long = max(long, width(text, height, "semibold"))
    marks += scale_bar(bar, foot - 0.8, unit)
    if glue:
        marks.append(_glue(glue, x + long, bar, foot, room))
    return tuple(marks)


def _red(text: str, x: float, y: float, height: float, face: Face = "regular") -> Words:
    return Words(text, Point(x, y), height, "sheet", face=face)


def _glue(text: str, start: float, bar: float, foot: float, room: float) -> Words:
    """On the tab between words and scale; above the scale where a narrow sheet has no other room."""
    wide = width(text, 3.6, "semibold")
    beside = bar - start > wide + 6 or room < 7
    at = Point((start + bar) / 2, foot - 1.6) if beside else Point(bar + 25, foot - 4.7)
    return Words(text, at, 3.6, "sheet", align="centre", face="semibold", patch=True)


def small_map(grid: Grid, here: Sheet, room: Box) -> list[Mark]:
    """All sheets as small cells within `room`, this one filled."""
    wide, high = _cell(grid, room)
    top = room.bottom - high * grid.rows
    return [
        frame(
            "sheet",
            Box(0, 0, wide, high).moved(room.left + s.column * wide, top + s.row * high),
            width=min(0.25, wide / 8),
            fill="accent" if s == here else None,
        )
        for s in grid.sheets
    ]


def _cell(grid: Grid, room: Box) -> Size:
    wide = min(4.6, room.width / grid.columns, room.height / grid.rows * 4.6 / 3.1)
    return Size(wide, wide * 3.1 / 4.6)


def scale_bar(left: float, baseline: float, unit: Unit, ink: Ink = "sheet", colour: Colour | None = None) -> Drawing:
    """Five centimetres, or two inches, to put a ruler on."""
    long, parts = (50.0, 5) if unit == "cm" else (50.8, 4)
    marks: list[Mark] = [stroke(ink, (left, baseline), (left + long, baseline), colour=colour)]
    for i in range(parts + 1):
        x, high = left + long * i / parts, 3.0 if i in (0, parts) else 1.8
        marks.append(stroke(ink, (x, baseline), (x, baseline - high), colour=colour))
    words = tr("5 cm") if unit == "cm" else tr("2 in")
    return (*marks, Words(words, Point(left + long + 1.2, baseline), 3.2, ink, colour=colour))
