"""The cover of the booklet: what the skirt is called, for whom, how it is made, and its finished numbers."""

from collections.abc import Iterator, Sequence

from studio.brief import Brief
from studio.draft import Draft, Notion
from studio.drawing import Drawing, Mark, Words
from studio.drawing.furniture import stroke
from studio.drawing.lettering import fitted, wrap
from studio.geometry import Box, Point
from studio.sewing import laid_flat
from studio.styles import rack
from studio.units import Unit, spell, write_length
from studio.words import phrase, tr

from .page import Size
from .pattern import Said
from .reach import boxed
from .single import numbers_are

_TITLE, _LINES = 19.0, 3
_LEAD = 18.0
_LABEL, _VALUE = 3.2, 4.0
_FACTS = 44.0
_INSET = 9.0


def cover(draft: Draft, notions: Sequence[Notion], said: Said, size: Size, margin: float) -> Drawing:
    """The first page."""
    wide = size.width - 2 * margin
    marks, y = _title(said.brief, margin, wide)
    made = list(_made(said.brief, Point(margin, y + 9), wide))
    marks += made
    foot = size.height - _FACTS
    room = Box(margin + _INSET, y + 20 + len(made) * 1.6, size.width - margin - _INSET, foot - 14)
    drawn = laid_flat(said.brief, draft, room)
    marks += drawn
    below = max(b.box.bottom for b in boxed(drawn)) + 6
    marks.append(Words(tr("laid flat"), Point(size.width / 2, below), _LABEL, "rule", align="centre"))
    marks += _facts(draft, notions, said, margin, wide, foot)
    return tuple(marks)


def _title(brief: Brief, left: float, wide: float) -> tuple[list[Mark], float]:
    """The title in large letters, on at most three lines; and where it ends (mm)."""
    title = brief.title or tr("A skirt")
    em = _TITLE
    while len(lines := wrap(title, em, wide, "serif")) > _LINES and em > _TITLE / 3:
        em *= 0.88
    marks: list[Mark] = []
    y = 34.0
    for k, line in enumerate(lines[: _LINES + 1]):
        shown, height = fitted(line, em, wide, "serif")
        y = 34.0 + k * em * _LEAD / _TITLE
        marks.append(Words(shown, Point(left, y), height, "plain", face="serif"))
    if brief.who:
        y += 11
        shown, height = fitted(spell(phrase("for {who:word}", who=brief.who), "cm"), 6.2, wide, "serif")
        marks.append(Words(shown, Point(left, y), height, "plain", face="serif"))
    return marks, y


def _made(brief: Brief, at: Point, wide: float) -> Iterator[Mark]:
    """How it is made, in a few words."""
    found = list(_ways(brief))
    for k, (label, value) in enumerate(found):
        x, y = at.x + k % 2 * wide / 2, at.y + 6 + k // 2 * 6.2
        yield Words(label, Point(x, y), _LABEL, "rule")
        shown, height = fitted(value, _VALUE, wide / 2 - 26)
        yield Words(shown, Point(x + 24, y), height, "plain")


def _ways(brief: Brief) -> Iterator[tuple[str, str]]:
    yield tr("skirt"), tr(rack.style_of(brief))
    yield tr("band"), tr(brief.waistband.kind)
    opening = tr(brief.opening.kind)
    if brief.opening.kind != "none":
        opening = f"{opening}, {tr(brief.opening.place)}"
    yield tr("opening"), opening
    if rack.applies(brief, rack.declarations(brief)["fastening.kind"]):
        yield tr("fastening"), tr(brief.fastening.kind)
    if brief.pockets.kind != "none":
        yield tr("pockets"), tr(brief.pockets.kind)
    if brief.lining.kind != "none":
        yield tr("lining"), tr(brief.lining.kind)
    yield tr("hem"), tr(brief.seams.hem_kind)


def _facts(
    draft: Draft, notions: Sequence[Notion], said: Said, left: float, wide: float, y: float
) -> Iterator[Mark]:  # fmt: skip
    """The finished numbers, in a row at the foot."""
    brief, unit = said.brief, said.unit
    yield stroke("plain", (left, y), (left + wide, y))
    found = list(_numbers(brief, draft, notions, unit))
    step = wide / len(found)
    for k, (label, value) in enumerate(found):
        shown, height = fitted(value, 9, step - 3, "semibold")
        yield Words(label, Point(left + k * step, y + 6), _LABEL, "rule")
        yield Words(shown, Point(left + k * step, y + 16), height, "plain", face="semibold")
    yield stroke("rule", (left, y + 20), (left + wide, y + 20))
    yield Words(numbers_are(unit), Point(left, y + 26), _LABEL, "rule")
    yield Words("Skirtwright", Point(left + wide, y + 26), _LABEL, "rule", align="right")


def _numbers(
    brief: Brief, draft: Draft, notions: Sequence[Notion], unit: Unit
) -> Iterator[tuple[str, str]]:  # fmt: skip
    yield tr("waist, made"), write_length(draft.fact("closed_girth"), unit, bare=True)
    yield tr("length"), write_length(brief.finished_length, unit, bare=True)
    if brief.waistband.depth:
        yield tr("band"), write_length(brief.waistband.depth, unit, bare=True)
    if draft.has("hem_sweep"):
        yield tr("hem, round"), write_length(draft.fact("hem_sweep"), unit, bare=True)
    cloth = next((n for n in notions if n.what == "cloth"), None)
    if cloth is not None:
        yield tr("cloth to buy"), spell(phrase("{l:buy}", l=cloth.sizes["needed"]), unit)
