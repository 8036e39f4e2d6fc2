"""The grid of sheets: which there are, what each is called, and where they join."""

import math
from collections.abc import Iterator
from typing import Literal, NamedTuple, TypeAlias

from msgspec import Struct

from studio.geometry import Box

from .page import Size
from .plan import Plan
from .reach import Trace, trace, traces
from .sizes import PaperSize

_LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"
_HAIR = 0.5
"""A piece that reaches no further than this (mm) into a sheet does not need it."""

Way: TypeAlias = Literal["upright", "lying"]


class Sheet(NamedTuple):
    """A place on the grid, counted from nought."""

    row: int
    column: int

    @property
    def name(self) -> str:
        """Row, then letter: 1A, 2C; never letter first, since A4 is also a paper."""
        return f"{self.row + 1}{self.column_name}"

    @property
    def column_name(self) -> str:
        """A, B, C ... without I and O (ISO 5457); after Z come AA, AB."""
        letters, left = "", self.column
        while left >= 0:
            letters = _LETTERS[left % 24] + letters
            left = left // 24 - 1
        return letters

    def beside(self, rows: int, columns: int) -> "Sheet":
        """The neighbour that many rows down and columns to the right."""
        return Sheet(self.row + rows, self.column + columns)


class Join(NamedTuple):
    """Where a sheet meets the next: to its right (upright) or below it (lying), in the plan's mm."""

    way: Way
    place: float
    start: float
    end: float


class Grid(Struct, frozen=True):
    """Sheets of one paper laid over a plan; empty ones are left out."""

    paper: PaperSize
    plan_size: Size
    rows: int
    columns: int
    sheets: tuple[Sheet, ...]

    def has(self, sheet: Sheet) -> bool:
        """Whether this sheet is printed."""
        return sheet in self.sheets

    def live(self, sheet: Sheet) -> Box:
        """What a sheet shows of the plan, mm. The last page of a roll is no longer than the plan."""
        wide, high = self.paper.live
        left, top = sheet.column * wide, sheet.row * high
        foot = min(top + high, max(self.plan_size.height, top + 1)) if self.paper.roll else top + high
        return Box(left, top, left + wide, foot)

    def page_size(self, sheet: Sheet) -> Size:
        """The paper that a sheet is printed on, mm."""
        high = self.live(sheet).height + self.paper.spent if self.paper.roll else self.paper.height
        return Size(self.paper.width, high)

    @property
    def whole(self) -> Size:
        """All sheets together, mm."""
        last = self.live(Sheet(self.rows - 1, self.columns - 1))
        return Size(last.right, last.bottom)

    def join(self, sheet: Sheet, way: Way) -> Join | None:
        """The join to the right of a sheet, or below it; None where the drawing ends."""
        live = self.live(sheet)
        if way == "upright":
            return Join(way, live.right, live.top, live.bottom) if self.has(sheet.beside(0, 1)) else None
        return Join(way, live.bottom, live.left, live.right) if self.has(sheet.beside(1, 0)) else None

    @property
    def joins(self) -> Iterator[Join]:
        """Every join between two printed sheets."""
        for sheet in self.sheets:
            for way in ("upright", "lying"):
                if join := self.join(sheet, way):
                    yield join


def cut_up(plan: Plan, paper: PaperSize) -> Grid:
    """The sheets that a plan needs: those which a piece's true outline, or a mark, really reaches."""
    wide, high = paper.live
    size = plan.size
    rows, columns = (max(1, math.ceil(s / live - 1e-9)) for s, live in ((size.height, high), (size.width, wide)))
    grid = Grid(paper, size, rows, columns, ())
    needed: set[Sheet] = set()
    for piece in plan.pieces:
        for t in (trace(piece.outline, solid=True), *traces(piece.drawing), *traces(piece.blocks)):
            needed.update(s for s in _under(t, grid) if s not in needed and t.touches(grid.live(s).grown(-_HAIR)))
    rows, columns = (1 + max((s[i] for s in needed), default=0) for i in (0, 1))
    return Grid(paper, size, rows, columns, tuple(sorted(needed)))


def _under(t: Trace, grid: Grid) -> Iterator[Sheet]:
    wide, high = grid.paper.live
    for row in range(max(0, int(t.box.top // high)), min(grid.rows - 1, int(t.box.bottom // high)) + 1):
        for column in range(max(0, int(t.box.left // wide)), min(grid.columns - 1, int(t.box.right // wide)) + 1):
            yield Sheet(row, column)
