"""True-scale sheets: the plan cut into pages, each with what it needs to find its neighbours.

Trim left and top, glue right and bottom. Names, hints and hatching stand on tabs and waste, never on the piece:
what serves the gluing disappears in the gluing, but for half gauges, whose rungs become a ruler.
"""

from collections.abc import Iterator

from studio.drawing import Drawing, Group, Mark, Words, moved
from studio.drawing.furniture import hatch, stroke
from studio.geometry import Box, Point
from studio.units import Unit, spell
from studio.words import phrase

from .gauge import Half, gauge_on, gauge_places
from .grid import Grid, Join, Sheet, Way
from .page import Page
from .plan import Plan
from .reach import Boxed, boxed, seen, traces
from .sizes import BLEED, WASTE
from .strip import strip

_CORNER = 4.0
_HATCH = 2.2


def sheet_pages(plan: Plan, grid: Grid, title: str, unit: Unit) -> Iterator[Page]:
    """One page for each sheet of the grid, in order."""
    marks = boxed(plan.drawing)
    drawn = tuple(traces(plan.drawing))
    gauges = {j: gauge_places(j, drawn) for j in grid.joins}
    for count, sheet in enumerate(grid.sheets, 1):
        tile = _Tile(grid, sheet, gauges, unit)
        yield Page(grid.page_size(sheet), (*tile.shown(marks), *tile.around(count, title)))


class _Tile:
    """One sheet on its page: the plan shifted so that the sheet's part of it lies between trim and tab."""

    def __init__(self, grid: Grid, sheet: Sheet, gauges: dict[Join, tuple[float, float, float]], unit: Unit) -> None:
        self.grid, self.sheet, self.gauges, self.unit = grid, sheet, gauges, unit
        self.live = grid.live(sheet)
        self.margin = grid.paper.margin
        self.dx = self.margin + WASTE - self.live.left
        self.dy = self.margin + WASTE - self.live.top
        self.box = self.live.moved(self.dx, self.dy)
        self.page = grid.page_size(sheet)
        self.right, self.below = grid.join(sheet, "upright"), grid.join(sheet, "lying")
        self.left = self._join_before(sheet.beside(0, -1), "upright")
        self.above = self._join_before(sheet.beside(-1, 0), "lying")

    def _join_before(self, neighbour: Sheet, way: Way) -> Join | None:
        return self.grid.join(neighbour, way) if self.grid.has(neighbour) else None

    def shown(self, marks: tuple[Boxed, ...]) -> Drawing:
        """The sheet's part of the plan; it bleeds past a join, so that a slip shows no gap."""
        right, below = BLEED if self.right else 0.0, BLEED if self.below else 0.0
        part = Box(self.live.left, self.live.top, self.live.right + right, self.live.bottom + below)
        clip = part.moved(self.dx, self.dy)
        return (Group(f"sheet {self.sheet.name}", moved(seen(marks, part), self.dx, self.dy), clip),)

    def around(self, count: int, title: str) -> Drawing:
        """Everything that is about the paper."""
        glue = self._says("glue, {sheet:word} lies here", self.sheet.beside(1, 0)) if self.below else ""
        return (
            Group("paper", (*self._corners(), *self._edges())),
            Group("trim and glue", (*self._trim(), *self._tab())),
            Group("gauges", tuple(self._gauges())),
            Group("strip", strip(self.grid, self.sheet, count, title, self.unit, glue=glue)),
        )

    def _says(self, text: str, neighbour: Sheet) -> str:
        return spell(phrase(text, sheet=neighbour.name), self.unit)

    def _corners(self) -> Iterator[Mark]:
        """Angles at the safe area: all four printed means that nothing was cut off."""
        wide, high = self.page
        for x, dx in ((self.margin, _CORNER), (wide - self.margin, -_CORNER)):
            for y, dy in ((self.margin, _CORNER), (high - self.margin, -_CORNER)):
                yield stroke("sheet", (x + dx, y), (x, y), (x, y + dy))

    def _edges(self) -> Iterator[Mark]:
        """Join lines that run off past both ends, so that a ruler finds them; a frame where the drawing ends."""
        left, top, right, foot = self.box
        wide, high = self.page
        off = self.margin + 1
        for x, join in ((left, self.left), (right, self.right)):
            if join:
                yield stroke("join", (x, off), (x, high - off))
            else:
                yield from _frame((x, top), (x, foot))
        for y, join in ((top, self.above), (foot, self.below)):
            if join:
                yield stroke("join", (off, y), (wide - off, y))
            else:
                yield from _frame((left, y), (right, y))

    def _trim(self) -> Iterator[Mark]:
        left, top, right, foot = self.box
        text = "cut away, then lay on {sheet:word}"
        if self.left:
            yield hatch(Box(self.margin, top, left, foot), _HATCH)
            says = self._says(text, self.sheet.beside(0, -1))
            yield from (_red(says, self.margin + 3.5, y, 3.2, -90) for y in self._between(self.left))
        if self.above:
            yield hatch(Box(left, self.margin, right, top), _HATCH)
            says = self._says(text, self.sheet.beside(-1, 0))
            yield from (_red(says, x, self.margin + 3.5, 3.2, 0) for x in self._between(self.above))

    def _tab(self) -> Iterator[Mark]:
        if self.right:
            says = self._says("glue, {sheet:word} lies here", self.sheet.beside(0, 1))
            x = self.box.right + (BLEED + self.grid.paper.overlap) / 2 + 1.1
            yield from (_red(says, x, y, 3.6, -90) for y in self._between(self.right))

    def _between(self, join: Join) -> tuple[float, float]:
        """Along a join, half-way between its gauges; on the page."""
        shift = self.dy if join.way == "upright" else self.dx
        first, middle, last = self.gauges[join]
        return (first + middle) / 2 + shift, (middle + last) / 2 + shift

    def _gauges(self) -> Iterator[Mark]:
        halves: tuple[tuple[Half, Join | None], ...] = (
            ("upper", self.left), ("upper", self.above), ("lower", self.right), ("lower", self.below),
        )  # fmt: skip
        for half, join in halves:
            if join:
                for i, at in enumerate(self.gauges[join]):
                    yield from gauge_on(join, at, half, middle=i == 1, dx=self.dx, dy=self.dy)


def _red(text: str, x: float, y: float, height: float, turn: float) -> Words:
    return Words(text, Point(x, y), height, "sheet", turn, "centre", "semibold", patch=True)


def _frame(a: tuple[float, float], b: tuple[float, float]) -> Iterator[Mark]:
    """The frame, with a centring mark across its middle (ISO 5457)."""
    yield stroke("frame", a, b)
    x, y = (a[0] + b[0]) / 2, (a[1] + b[1]) / 2
    yield stroke("gauge", (x - 3, y), (x + 3, y)) if a[0] == b[0] else stroke("gauge", (x, y - 3), (x, y + 3))
