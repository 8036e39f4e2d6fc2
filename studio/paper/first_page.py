"""The first page: measured before anything is cut, it proves the scale; then it shows how the sheets go together."""

from collections.abc import Callable, Sequence

from msgspec import Struct

from studio.drawing import Drawing, Mark, Words
from studio.drawing.furniture import paragraph, placed, stroke
from studio.drawing.lettering import fitted
from studio.geometry import Box, Point
from studio.units import Unit, spell
from studio.words import phrase, tr

from . import joining
from .grid import Grid
from .heading import HEAD, heading, page_room
from .key import key
from .measuring import card, squares, what_readings_mean
from .page import Page, Size
from .plan import Plan
from .sheet_map import map_height, sheet_map

_BODY, _SMALL, _LEAD = 3.6, 3.4, 1.34
_SQUARES = 107.0
_CARD = (86.3, 54.4)
_MAP, _LARGE_MAP = 53.0, 90.0
_TALL = 270.0
"""Paper narrower than this has one column, mm."""

_MOST_WIDE, _MOST_HIGH, _ROLL_HIGH = 390.0, 240.0, 215.0
_KEY = 10.5
_TO_DO = 80.0
"""Room for the joining and the gauges under the map of a tall page, mm."""


class _Step(Struct, frozen=True):
    """One of the things to do, with its drawing."""

    name: str
    says: str
    drawing: Callable[[], Drawing]


def first_page(plan: Plan, grid: Grid, title: str, unit: Unit) -> Page:
    """Measure this page first: squares, card, map of the sheets, how to join them, and the key to the lines."""
    size = grid.page_size(grid.sheets[0])
    if grid.paper.roll:
        size = Size(size.width, _ROLL_HIGH)
    room = page_room(size, grid.paper.margin)
    room = Box(room.left, room.top, min(room.right, room.left + _MOST_WIDE), min(room.bottom, room.top + _MOST_HIGH))
    head = heading(tr("Measure this page first"), f"{title}, {grid.paper.name}", room)
    marks, below = (_tall if size.width < _TALL else _wide)(room, plan, grid, unit)
    return Page(size, (*head, *marks, *_foot(room, min(below, room.bottom - _KEY))))


def _wide(room: Box, plan: Plan, grid: Grid, unit: Unit) -> tuple[list[Mark], float]:
    """Two columns: what to measure at the left, what to do at the right."""
    marks: list[Mark] = []
    left, y = room.left, room.top + HEAD + 5
    told = paragraph(_how_to_print(), left, y, _SQUARES)
    y = told.below + 4
    marks += [*told.marks, *squares(left, y)]
    y += 55
    marks += card(left + 0.35, y)
    y += _CARD[1] + 2.6
    means = paragraph(what_readings_mean(unit), left, y, _SQUARES + 1, lead=1.3)
    edges = paragraph(_edges(grid), left, means.below, _SQUARES + 1, lead=1.3)
    marks += [*means.marks, *edges.marks]

    left, y = room.left + 120, room.top + HEAD + 5
    wide = room.right - left
    spare = room.height - 180
    most = min(_LARGE_MAP, _MAP + max(0.0, spare))
    marks.append(_section(_map_title(grid), left, y + 3))
    marks += sheet_map(plan, grid, Box(left, y + 7, room.right, y + 7 + most))
    y += 7 + map_height(grid, wide, most) + 8
    y = _put_together(marks, _steps(plan, grid, unit), left, y, wide)
    if len(grid.sheets) > 1:
        y = min(room.bottom - 28, y + 12)
        marks.append(stroke("rule", (left, y - 5.5), (room.right, y - 5.5)))
        marks += _reading(left, y, wide, unit)
        y += 18
    return marks, max(edges.below, y) + 2


def _tall(room: Box, plan: Plan, grid: Grid, unit: Unit) -> tuple[list[Mark], float]:
    """One column: squares, card and map, then what to do."""
    marks: list[Mark] = []
    left, y = room.left, room.top + HEAD + 5
    aside = left + _SQUARES + 6
    marks += squares(left, y)
    told = paragraph(_how_to_print(), aside, y - 1, room.right - aside, _SMALL)
    marks += [
        *told.marks,
        *paragraph(what_readings_mean(unit), aside, told.below + 2, room.right - aside, _SMALL).marks,
    ]
    y += 56
    marks += card(left + 0.35, y)
    edges = paragraph(_edges(grid), left, y + _CARD[1] + 3, _CARD[0])
    marks += edges.marks
    aside = left + _CARD[0] + 6
    marks.append(_section(_map_title(grid), aside, y + 3))
    most = max(_MAP, room.bottom - _KEY - _TO_DO - y - 6)
    marks += sheet_map(plan, grid, Box(aside, y + 6, room.right, y + 6 + most))
    y = max(edges.below, y + 6 + map_height(grid, room.right - aside, most)) + 8
    y = _put_together(marks, _steps(plan, grid, unit), left, y, room.width)
    if len(grid.sheets) > 1:
        marks += _reading(left, y + 5, room.width, unit)
        y += 21
    return marks, y + 2


def _section(text: str, left: float, baseline: float) -> Words:
    return Words(text, Point(left, baseline), 4.4, "plain", face="semibold")


def _how_to_print() -> str:
    return tr(
        "Print at 100 % (actual size), never “fit”. Put a ruler on both squares, along and across: "
        "a paper feed can stretch one way only."
    )


def _edges(grid: Grid) -> str:
    corners = tr("Four corner angles there? Then the whole sheet was printed.")
    if len(grid.sheets) == 1:
        return corners
    edges = tr("Never match sheets by their paper edges: a printer may set the picture a little off.")
    return f"{edges} {corners}"


def _map_title(grid: Grid) -> str:
    if len(grid.sheets) == 1:
        return tr("Map of the one sheet")
    return spell(phrase("Map of the {n:count} sheets", n=len(grid.sheets)), "cm")


def _steps(plan: Plan, grid: Grid, unit: Unit) -> list[_Step]:
    if len(grid.sheets) == 1:
        return []
    longest = max(plan.pieces, key=lambda p: p.box.width)
    name, _ = fitted(longest.name, _SMALL, 38, least=_SMALL)
    tape = spell(
        phrase(
            "Last, tape {piece:word} across, from cut line to cut line: {long}.", piece=name, long=longest.box.width
        ),
        unit,
    )
    cut = tr("Cut away the hatched strip, left and top. Cut on the red line of dashes and dots.")
    lay = tr("Lay the cut edge on its neighbour. Middle gauge first; share what is left between the outer two.")
    steps = [_Step(tr("Trim"), cut, joining.trimming), _Step(tr("Match and glue"), lay, joining.matching)]
    if grid.rows == 1:
        return [*steps, _Step(tr("Measure"), tape, joining.one_row)]
    row = tr("Glue each row, then lay row 2 on row 1.")
    return [*steps, _Step(tr("Rows, then rows"), f"{row} {tape}", joining.rows)]


def _put_together(marks: list[Mark], steps: Sequence[_Step], left: float, y: float, wide: float) -> float:
    """The steps side by side; returns where the next thing may stand."""
    marks.append(_section(tr("Put together") if steps else tr("Nothing to glue: cut out on the thick lines."), left, y))
    below = y
    room = (min(wide, 230.0) - 2 * 6) / 3
    for i, step in enumerate(steps):
        x = left + i * (room + 6)
        marks += placed(step.drawing(), Point(x, y + 4))
        head = Point(x, y + 4 + joining.HEIGHT + 4)
        marks.append(Words(f"{i + 1}  {step.name}", head, _BODY, "plain", face="semibold"))
        says = paragraph(step.says, x, head.y + 1.5, room, _SMALL, lead=_LEAD)
        marks += says.marks
        below = max(below, says.below)
    return below


def _reading(left: float, y: float, wide: float, unit: Unit) -> Drawing:
    """The gauge read right, and one tooth out."""
    apart = tr("1 cm") if unit == "cm" else tr("ten teeth")
    good = spell(phrase("Bars meet. Good: the two rungs stand {apart:word} apart.", apart=apart), unit)
    out = tr("One tooth out: the upper sheet lies one tooth too low.")
    half = min(wide / 2, 90.0)
    marks: list[Mark] = []
    for i, (teeth, says) in enumerate(((0, good), (1, out))):
        x = left + i * half + 12
        marks += placed(joining.gauge_read(teeth), Point(x, y + 6))
        marks += paragraph(says, x + 14, y - 0.6, half - 28, 3.2).marks
    return tuple(marks)


def _foot(room: Box, y: float) -> Drawing:
    return (stroke("rule", (room.left, y), (room.right, y)), *key(room.left, y + 5.5, room.width))
