"""The lay plan as pages: the cloth to scale first, and the order of cutting beside, under or after it."""

from collections.abc import Iterator

from studio.drawing import Drawing, Mark, moved
from studio.geometry import Box
from studio.units import spell
from studio.words import phrase, tr

from ..page import Page, Size
from ..single import body, lying, numbers_are, single
from ..sizes import PaperSize
from .distances import across, along, room_for_across
from .fit import Fit, columns, fit
from .ground import bands, edges_named, ground, room_for_bands, room_over
from .pieces import pieces
from .plan import LayPlan
from .words import Made, words

_SIZES = (3.6, 3.4, 3.2)
"""Heights of lettering tried (mm): smaller only where that saves a page."""


def lay_pages(plan: LayPlan, paper: PaperSize) -> Iterator[Page]:
    """A plan on pages that lie: as few as its words need, nothing on top of anything."""
    size = lying(paper)
    room = body(size, paper.margin)
    drawn = fit(plan, room, room_for_across(plan), room_for_bands(plan), room_over(plan))
    first, *more = min((_poured(plan, at, room, em) for em in _SIZES for at in drawn.layouts), key=len)
    cloth = (*ground(plan, drawn), *pieces(plan, drawn), *edges_named(plan, drawn),
             *across(plan, drawn), *along(plan, drawn), *bands(plan, drawn))  # fmt: skip
    yield _page(size, paper, plan, drawn, (*cloth, *first), plan.said.brief.title)
    for marks in more:
        yield _page(size, paper, plan, drawn, marks, f"{plan.said.brief.title}, {tr('continued')}")


def _page(size: Size, paper: PaperSize, plan: LayPlan, drawn: Fit, marks: Drawing, of: str) -> Page:
    foot = (f"{numbers_are(plan.said.unit)} {_measured(plan)} {_scale(plan, drawn)}", plan.said.brief.title)
    return single(size, paper.margin, tr("Lay plan"), of, marks, foot)


def _measured(plan: LayPlan) -> str:
    if plan.lay.folded:
        return tr("Across from the fold, along from the squared cut end.")
    return tr("Across from the first selvedge, along from the squared cut end.")


def _scale(plan: LayPlan, drawn: Fit) -> str:
    text = "Scale 1:{r:count}: 1 cm here is {r:count} cm of cloth."
    if plan.said.unit == "in":
        text = "Scale 1:{r:count}: 1 in here is {r:count} in of cloth."
    return spell(phrase(text, r=drawn.ratio), plan.said.unit)


def _poured(plan: LayPlan, areas: tuple[Box, ...], room: Box, em: float) -> list[Drawing]:
    """The words of each page, the first page's columns first; a block is never cut."""
    rest = list(words(plan, em))
    pages: list[Drawing] = []
    while rest or not pages:
        marks: list[Mark] = []
        for area in areas:
            filled, rest = _filled(area, rest, whole=bool(pages))
            marks += filled
        pages.append(tuple(marks))
        areas = columns(room)
    return pages


def _filled(area: Box, rest: list[Made], *, whole: bool) -> tuple[list[Mark], list[Made]]:
    """As many blocks as a column holds, and the others; a column of a `whole` page holds at least one."""
    marks: list[Mark] = []
    y = area.top
    for k, made in enumerate(rest):
        block = made(area.width)
        top = y + (block.gap if marks else 0.0)
        if top + block.height > area.bottom and (marks or not whole):
            return marks, rest[k:]
        marks += moved(block.marks, area.left, top)
        y = top + block.height
    return marks, []
