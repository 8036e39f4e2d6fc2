"""The first page: measured before anything is cut, it proves the scale; then it shows how the sheets go together."""

from studio.drawing import Drawing, Mark
from studio.drawing.furniture import paragraph, stroke
from studio.geometry import Box, Point
from studio.units import Unit, spell
from studio.words import phrase, tr

from .grid import Grid
from .heading import HEAD, MARGIN, heading, page_room, section
from .key import key, key_height, signs, signs_height, signs_of
from .measuring import card, squares, what_readings_mean
from .page import Page, Size
from .plan import Plan
from .put_together import gauge_reading, put_together
from .sheet_map import sheet_map

_SMALL = 3.4
_SQUARES = 107.0
_CARD = (86.3, 54.4)
_MAP, _LARGE_MAP = 53.0, 90.0
_TWO_COLUMNS = Size(240.0, 178.0)
"""A page with less room than this has one column, mm."""

_MOST_WIDE, _MOST_HIGH = 390.0, 267.0
_TO_DO = 84.0
"""Room for the joining and the gauges under the map of a page of one column, mm."""

_ASIDE, _LEAST_MAP = 55.0, 20.0
_ASIDE_CARD = 27.0
"""Room for the marks beside the card, mm."""


def first_page(plan: Plan, grid: Grid, title: str, unit: Unit) -> Page:
    """Measure this page first: squares, card, map of the sheets, how to join them, and the key to the lines."""
    size = _page_size(grid)
    room = page_room(size, grid.paper.margin)
    room = Box(room.left, room.top, min(room.right, room.left + _MOST_WIDE), min(room.bottom, room.top + _MOST_HIGH))
    head = heading(tr("Measure this page first"), f"{title}, {grid.paper.name}", room)
    marks, below = (_wide if _takes_two_columns(room) else _tall)(room, plan, grid, unit)
    shown = _shown(plan)
    return Page(size, (*head, *marks, *_foot(shown, room, min(below, room.bottom - _key(shown, room)))))


def _shown(plan: Plan) -> frozenset[str]:
    """The marks that the key has to explain."""
    return frozenset(sign for p in plan.pieces for sign in p.signs)


def _page_size(grid: Grid) -> Size:
    """The paper as the sheets lie on it, or upright where wide margins leave it too low; a short piece of a roll."""
    wide, high = grid.page_size(grid.sheets[0])
    if not grid.paper.roll:
        lies = Size(wide, high)
        upright = Size(min(lies), max(lies))
        return lies if _takes_two_columns(page_room(lies, grid.paper.margin)) else upright
    edges = 2 * max(MARGIN, grid.paper.margin)
    low = Size(wide, _TWO_COLUMNS.height + 8 + edges)
    return low if _takes_two_columns(page_room(low, grid.paper.margin)) else Size(wide, _MOST_HIGH + edges)


def _takes_two_columns(room: Box) -> bool:
    return room.width >= _TWO_COLUMNS.width and room.height >= _TWO_COLUMNS.height


def _wide(room: Box, plan: Plan, grid: Grid, unit: Unit) -> tuple[list[Mark], float]:
    """Two columns: what to measure at the left, what to do at the right."""
    marks: list[Mark] = []
    left, y = room.left, room.top + HEAD + 5
    told = paragraph(_how_to_print(), left, y, _SQUARES)
    y = told.below + 4
    marks += [*told.marks, *squares(left, y)]
    y += 55
    marks += card(left + 0.35, y)
    shown = _shown(plan)
    step = min(10.5, (_CARD[1] + 2) / max(1, len(signs_of(shown))))
    marks += signs(shown, Point(left + _CARD[0] + 3, y + min(6.0, step)), Point(0, step), _ASIDE_CARD)
    y += _CARD[1] + 2.6
    means = paragraph(what_readings_mean(unit), left, y, _SQUARES + 1, lead=1.3)
    edges = paragraph(_edges(grid), left, means.below, _SQUARES + 1, lead=1.3)
    marks += [*means.marks, *edges.marks]

    left, y = room.left + 120, room.top + HEAD + 5
    wide = room.right - left
    spare = room.height - 180
    most = min(_LARGE_MAP, _MAP + max(0.0, spare))
    marks.append(section(_map_title(grid), left, y + 3))
    sheets = sheet_map(plan, grid, Box(left, y + 7, room.right, y + 7 + most))
    marks += sheets.drawing
    y += 7 + sheets.height + 8
    joined = put_together(plan, grid, left, y, wide, unit)
    marks += joined.marks
    y = joined.below
    if len(grid.sheets) > 1:
        y = min(room.bottom - 28, y + 12)
        marks.append(stroke("rule", (left, y - 5.5), (room.right, y - 5.5)))
        marks += gauge_reading(left, y, wide, unit)
        y += 18
    return marks, max(edges.below, y) + 2


def _tall(room: Box, plan: Plan, grid: Grid, unit: Unit) -> tuple[list[Mark], float]:
    """One column: squares, card and map, then what to do. Very wide margins leave no room for the card."""
    marks: list[Mark] = []
    left, y = room.left, room.top + HEAD + 5
    aside = left + _SQUARES + 6
    narrow = room.right - aside < _ASIDE
    at, wide = (left, room.width) if narrow else (aside, room.right - aside)
    told = paragraph(_how_to_print(), at, y - 1, wide, _SMALL)
    means = paragraph(what_readings_mean(unit), at, told.below + 2, wide, _SMALL)
    marks += [*told.marks, *means.marks]
    y = means.below + 3 if narrow else y
    marks += squares(left, y)
    y += 56
    at, below = left, y
    if not narrow:
        marks += card(left + 0.35, y)
        at, below = left + _CARD[0] + 6, y + _CARD[1] + 3
    edges = paragraph(_edges(grid), left, below, room.width if narrow else _CARD[0])
    marks += edges.marks
    y = edges.below + 2 if narrow else y
    marks.append(section(_map_title(grid), at, y + 3))
    shown = _shown(plan)
    most = max(_LEAST_MAP, room.bottom - _key(shown, room) - signs_height(shown) - _TO_DO - y - 6)
    sheets = sheet_map(plan, grid, Box(at, y + 6, room.right, y + 6 + most))
    marks += sheets.drawing
    y = max(edges.below, y + 6 + sheets.height) + 8
    joined = put_together(plan, grid, left, y, room.width, unit, drawn=not narrow)
    marks += joined.marks
    y = joined.below
    if len(grid.sheets) > 1:
        marks += gauge_reading(left, y + 5, room.width, unit)
        y += 20
    if signs_of(shown):
        each = min(36.0, room.width / max(5, len(signs_of(shown))))
        marks += signs(shown, Point(left, y + 4), Point(each, 0), each)
        y += signs_height(shown)
    return marks, y + 2


def _how_to_print() -> str:
    return tr(
        "Print at 100 % (actual size), never “fit”. Put a ruler on both squares, along and across: "
        "a paper feed can stretch one way only."
    )


def _edges(grid: Grid) -> str:
    corners = tr("Small angles in all four corners: nothing was cut off.")
    if len(grid.sheets) == 1:
        return corners
    edges = tr("Never match sheets by their paper edges: a printer may set the picture a little off.")
    return f"{edges} {corners}"


def _map_title(grid: Grid) -> str:
    if len(grid.sheets) == 1:
        return tr("Map of the one sheet")
    return spell(phrase("Map of the {n:count} sheets", n=len(grid.sheets)), "cm")


def _key(shown: frozenset[str], room: Box) -> float:
    return 5.5 + key_height(shown, room.width)


def _foot(shown: frozenset[str], room: Box, y: float) -> Drawing:
    return (stroke("rule", (room.left, y), (room.right, y)), *key(shown, room.left, y + 5.5, room.width))
