"""How large a lay plan is drawn, where the cloth lies on the page, and what is left of it for words."""

from collections.abc import Iterator
from typing import Final

from msgspec import Struct
from msgspec.structs import replace

from studio.geometry import Box, Path, Point

from ...drawing.furniture import placed_path
from .plan import LayPlan

SERIES: Final = (10, 20, 50, 100, 200, 500, 1000)
"""Reductions: the cloth is so many times larger than its drawing (ISO 5455, recommended scales, from memory)."""
ABOVE, BELOW = 4.5, 10.8
"""Room for words over the cloth, and for distances and words under it, mm."""
HIGHER = 3.0
"""The cloth begins so much above where the words of a page do (mm)."""
BEYOND = 100.0
"""Where the whole cloth has no room, so much is drawn past the plan (mm), and its end torn."""
LEAST, HANDY, MOST, BETWEEN = 62.0, 84.0, 125.0, 8.0
"""A column of words: how narrow it may be, and each of several; how wide; how far from the next (mm)."""
LOW = 42.0
"""Words stand under the cloth where there is so much room (mm)."""


class Fit(Struct, frozen=True):
    """The scale, where the cloth's corner lies on the page, and how much of its length is drawn (mm of cloth)."""

    ratio: int
    at: Point
    length: float
    width: float
    torn: bool
    layouts: tuple[tuple[Box, ...], ...] = ()
    """Ways to set words on the first page: their columns in order, the best way first."""

    @property
    def cloth(self) -> Box:
        """The cloth on the page."""
        return Box(0, 0, self.length / self.ratio, self.width / self.ratio).moved(*self.at)

    def on(self, p: Point) -> Point:
        """A place of the cloth on the page."""
        return self.at.moved(p.x / self.ratio, p.y / self.ratio)

    def path(self, path: Path) -> Path:
        """A path on the cloth, on the page."""
        return placed_path(path, self.at, 1 / self.ratio)

    def box(self, box: Box) -> Box:
        """A rectangle of the cloth on the page."""
        return Box(*self.on(Point(box.left, box.top)), *self.on(Point(box.right, box.bottom)))


def fit(plan: LayPlan, body: Box, left: float, right: float, over: float) -> Fit:
    """The largest scale of the series at which the plan fits in a page's body: with words at its right if they have
    room, else over the whole width.

    What is written round the cloth takes `left` and `right` mm beside it, and `over` mm above it, however short it is.
    """
    room = Box(body.left, body.top - HIGHER, body.right, body.bottom)
    short = min(plan.length, plan.lay.length + BEYOND)
    for ratio in SERIES:
        for column in (LEAST + BETWEEN, 0.0):
            wide = room.width - left - column
            if not _fits(short / ratio, wide, right, over) or plan.lay.width / ratio > room.height - ABOVE - BELOW:
                continue
            whole = _fits(plan.length / ratio, wide, right, over)
            at = Point(room.left + left, room.top + ABOVE)
            drawn = Fit(ratio, at, plan.length if whole else short, plan.lay.width, not whole)
            edge = max(drawn.cloth.right + right, at.x + over)
            return replace(drawn, layouts=tuple(_layouts(drawn.cloth, body, edge)))
    raise AssertionError("no cloth is so long")


def _fits(long: float, wide: float, right: float, over: float) -> bool:
    return max(long + right, over) <= wide


def columns(room: Box) -> tuple[Box, ...]:
    """A room parted into columns of words."""
    count = max(1, int((room.width + BETWEEN) / (HANDY + BETWEEN)))
    wide = (room.width - (count - 1) * BETWEEN) / count
    wide, step = min(wide, MOST), wide + BETWEEN
    return tuple(Box(room.left + k * step, room.top, room.left + k * step + wide, room.bottom) for k in range(count))


def _layouts(cloth: Box, room: Box, edge: float) -> Iterator[tuple[Box, ...]]:
    """What the cloth leaves of the first page: at the right of `edge`, under it, both from left to right, nothing."""
    start, top = edge + BETWEEN, cloth.bottom + BELOW + 4
    beside, under = room.right - start >= LEAST, room.bottom - top >= LOW
    right = columns(Box(start, room.top, room.right, room.bottom)) if beside else ()
    if beside:
        yield right
    if under:
        yield columns(Box(room.left, top, room.right, room.bottom))
    if beside and under and edge - room.left >= LEAST:
        yield (*columns(Box(room.left, top, edge, room.bottom)), *right)
    yield ()
