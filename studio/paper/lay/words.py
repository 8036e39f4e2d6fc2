"""The words of a lay plan on paper: what it takes, steps with boxes to tick, cautions beside a bar, what is left."""

from collections.abc import Callable, Iterator
from functools import partial
from typing import TypeAlias

from studio.drawing import Mark, Words, moved
from studio.drawing.furniture import paragraph, stroke, tick_box
from studio.drawing.lettering import width
from studio.geometry import Point
from studio.units import spell, write_length
from studio.words import phrase, tr

from ..cut_step import CutStep
from ..heading import section
from ..single import Block
from .chips import key_to_arrows, number_alone
from .plan import LayPlan

Made: TypeAlias = Callable[[float], Block]
"""A block for a column so wide (mm)."""

_LEAD, _ROW = 1.28, 1.42
_BOX, _NUMBER = 5.0, 6.2
_HEADING = 8.0
_TOGETHER = 12
"""So many moves are kept together; as many stand in a row as divide it."""


def words(plan: LayPlan, em: float) -> Iterator[Made]:
    """Everything said beside the plan, in order; `em` is the height of its lettering (mm)."""
    yield partial(_lead, plan, em)
    number = 0
    for step in plan.steps:
        if step.caution:
            yield partial(_caution, plan, step, em)
            continue
        number += 1
        yield partial(_step, plan, step, number, em)
        for start in range(0, len(step.moves), _TOGETHER):
            yield partial(_moves, plan, step, start, em)
    if plan.besides:
        yield partial(_besides, plan, em)


def _lead(plan: LayPlan, em: float, wide: float) -> Block:
    """What cloth it is and what the plan takes of it, and what the arrows mean."""
    told = paragraph(" ".join(plan.lead), 0, -0.8, wide, em, lead=_LEAD)
    key = key_to_arrows(wide)
    return Block((*told.marks, *moved(key.marks, 0, told.below + 1.2)), told.below + 1.6 + key.high)


def _caution(plan: LayPlan, step: CutStep, em: float, wide: float) -> Block:
    """Beside a bar, in italics."""
    text = " ".join(spell(s, plan.said.unit) for s in step.says)
    told = paragraph(text, 4.2, 0, wide - 4.2, min(em, 3.4), lead=_LEAD, face="italic")
    return Block((stroke("plain", (1, 0.2), (1, told.below - 0.6), width=0.7), *told.marks), told.below, 2.4)


def _step(plan: LayPlan, step: CutStep, number: int, em: float, wide: float) -> Block:
    """A box to tick, the step's number, its piece's number, its words; the first has the heading of them all."""
    top = _HEADING if number == 1 else 0.0
    base, left = top + 0.95 * em, _BOX + _NUMBER
    marks: list[Mark] = [section(tr("Cut in this order"), 0, 4.2)] if top else []
    marks += [tick_box(0, base), Words(str(number), Point(left - 1.8, base), em, "plain", align="right", face="bold")]
    if step.placed is not None:
        chip = number_alone(plan.number(step.placed))
        marks += moved(chip.marks, left + chip.wide / 2, base - 0.33 * em)
        left += chip.wide + 1.6
    text = " ".join(spell(s, plan.said.unit) for s in step.says)
    told = paragraph(text, left, top, wide - left, em, lead=_LEAD)
    return Block((*marks, *told.marks), told.below, 4.0 if top else 1.4)


def _moves(plan: LayPlan, step: CutStep, start: int, em: float, wide: float) -> Block:
    """Some moves of the template, each with a box to tick, its number, and where it begins."""
    unit, left, top = plan.said.unit, _BOX + _NUMBER, 0.0
    marks: list[Mark] = []
    if start == 0:
        told = paragraph(tr("The template’s moves, and where each begins:"), left, 0, wide - left, em, lead=_LEAD)
        marks += told.marks
        top = told.below + 0.4
    shown = step.moves[start : start + _TOGETHER]
    figures = width(str(len(step.moves)), em, "bold")
    longest = max(width(write_length(m.begins, unit, bare=True), em) for m in step.moves)
    cell = _BOX + figures + 2 + longest + 4
    count = max(n for n in (1, 2, 3, 4, 6) if n == 1 or n * cell - 4 <= wide - left)
    for k, move in enumerate(shown):
        x, base = left + k % count * cell, top + 0.95 * em + k // count * em * _ROW
        number = Point(x + _BOX + figures, base)
        marks += [
            tick_box(x, base),
            Words(str(move.number), number, em, "plain", align="right", face="bold", colour="accent"),
            Words(write_length(move.begins, unit, bare=True), number.moved(2, 0), em, "plain"),
        ]  # fmt: skip
    below = top + -(-len(shown) // count) * em * _ROW
    if shown[-1].narrow:
        says = spell(phrase("Move {n:count} is only {w} wide.", n=shown[-1].number, w=shown[-1].wide), unit)
        told = paragraph(says, left, below, wide - left, em, lead=_LEAD)
        marks += told.marks
        below = told.below
    return Block(tuple(marks), below, 0.8 if start == 0 else 0.0)


def _besides(plan: LayPlan, em: float, wide: float) -> Block:
    """What is left over."""
    marks: list[Mark] = [stroke("rule", (0, 0), (wide, 0))]
    below = 1.6
    for text in plan.besides:
        told = paragraph(text, 0, below, wide, em, lead=_LEAD)
        marks += told.marks
        below = told.below + 0.4
    return Block(tuple(marks), below, 4.4)
