"""A step of the booklet: its number and a box to tick, its picture, its words, and what to mind beside them."""

from collections.abc import Iterator, Sequence

from studio.draft import Draft
from studio.draft.making import Making
from studio.drawing import Mark, Words, moved
from studio.drawing.furniture import frame, paragraph, stroke
from studio.drawing.lettering import fitted
from studio.geometry import Box, Point
from studio.sewing import CAUTIONS, ROOM, cautions, picture
from studio.units import spell
from studio.words import tr

from .booklet_flow import Part
from .booklet_table import heading
from .pattern import Said

NUMBER = 16.0
"""Room of the number and the box to tick, mm."""
_BESIDE = 6.0
_TEXT, _LEAD = 3.8, 5.2 / 3.8
_WARN, _WARN_LEAD = 3.4, 4.6 / 3.4
_AIR = 0.9
_BELOW = 5.8


def steps(order: Sequence[Making], draft: Draft, said: Said, wide: float) -> Iterator[Part]:
    """All steps, in order."""
    yield heading(tr("Sewing order"), wide)
    for number, (step, warned) in enumerate(zip(order, cautions(order), strict=True), 1):
        yield _step(number, step, warned, draft, said, wide)


def _step(number: int, step: Making, warned: Sequence[str], draft: Draft, said: Said, wide: float) -> Part:
    drawn = picture(step, draft, said.brief, said.unit)
    left = NUMBER + (ROOM.width + _BESIDE if drawn else 0.0)
    marks: list[Mark] = [
        Words(str(number), Point(0, 10.5), 11, "plain", face="serif", colour="accent"),
        frame("plain", Box(0.3, 15, 5.3, 20)),
        *moved(drawn, NUMBER, 1.6),
    ]
    words, foot = _told(step, warned, said, left, wide - left)
    height = max(foot, ROOM.height + 1.6 if drawn else 21.0) + _BELOW
    rule = stroke("rule", (0, -0.6), (wide, -0.6))
    return Part((*marks, *words), height, loose=True, over=(rule,) if number > 1 else ())


def _told(step: Making, warned: Sequence[str], said: Said, left: float, room: float) -> tuple[list[Mark], float]:
    """The words of a step, and how far down they reach (mm)."""
    title, height = fitted(step.title, 4.8, room, "semibold")
    marks: list[Mark] = [Words(title, Point(left, 7.6), height, "plain", face="semibold")]
    y = 11.4
    for sentence in step.says:
        told = paragraph(spell(sentence, said.unit), left, y, room, _TEXT, lead=_LEAD, ink="plain")
        marks += told.marks
        y = told.below + _AIR
    for name in warned:
        y += 1.4
        words = spell(CAUTIONS[name], said.unit)
        told = paragraph(words, left + 5, y, room - 5, _WARN, lead=_WARN_LEAD, face="italic", ink="plain")
        marks += [*told.marks, stroke("plain", (left + 0.8, y), (left + 0.8, told.below - 0.6), width=0.7)]
        y = told.below
    return marks, y
