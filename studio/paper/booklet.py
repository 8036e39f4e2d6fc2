"""The booklet: everything there is to know of one skirt, from the measurements to the last press, to be printed."""

from collections.abc import Iterator, Sequence

from studio.brief.records import Paper
from studio.draft import Draft, Notion
from studio.drawing import Drawing, Words, moved
from studio.drawing.furniture import stroke
from studio.drawing.lettering import fitted
from studio.geometry import Point
from studio.sewing import sewing_order
from studio.units import Unit

from .booklet_cover import cover
from .booklet_flow import Part, columns
from .booklet_lists import cut_chart, lines_and_marks, measurements, next_time, take_care, to_buy
from .booklet_steps import steps
from .page import Page, Size
from .pattern import Said
from .sizes import SHEETS

SIDE, TOP, FOOT = 18.0, 18.0, 20.0
"""White at the sides, at the top and at the foot of a page, mm."""


def booklet(draft: Draft, notions: Sequence[Notion], said: Said) -> tuple[Page, ...]:
    """The booklet of a draft, upright pages; each paper is laid out by itself, nothing is scaled."""
    size = booklet_size(said.brief.paper, said.unit)
    wide = size.width - 2 * SIDE
    flow = columns(_parts(draft, notions, said, wide), size.height - TOP - FOOT)
    first = Page(size, cover(draft, notions, said, size, SIDE))
    return (first, *(_page(size, marks, said.brief.title, n) for n, marks in enumerate(flow, 2)))


def booklet_size(paper: Paper, unit: Unit) -> Size:
    """A4 or US Letter as the maker prints; for a larger paper, the one that goes with the maker's unit."""
    if paper.size in ("A4", "US Letter"):
        return SHEETS[paper.size]
    return SHEETS["A4" if unit == "cm" else "US Letter"]


def _parts(draft: Draft, notions: Sequence[Notion], said: Said, wide: float) -> Iterator[Part]:
    yield from measurements(draft, said, wide)
    yield from to_buy(notions, said, wide)
    yield from cut_chart(draft, said, wide)
    yield from lines_and_marks(draft, wide)
    yield from take_care(wide)
    yield from steps(sewing_order(said.brief, draft), draft, said, wide)
    yield from next_time(wide)


def _page(size: Size, marks: Drawing, title: str, number: int) -> Page:
    """A page with what it belongs to and its number at the foot."""
    base = size.height - 11
    shown, height = fitted(title, 3.0, size.width - 2 * SIDE - 20)
    foot = (
        stroke("rule", (SIDE, base - 5), (size.width - SIDE, base - 5)),
        Words(shown, Point(SIDE, base), height, "rule"),
        Words(str(number), Point(size.width - SIDE, base), 3.6, "plain", align="right", face="semibold"),
    )
    return Page(size, (*moved(marks, SIDE, TOP), *foot))
