"""What names a piece on a lay plan: an arrow to its top, its number on a black square, its name, which copy it is."""

from collections.abc import Iterator
from typing import Final

from msgspec import Struct

from studio.cloth.placed import Placed
from studio.cloth.which import which_copy, which_layers
from studio.drawing import Drawing, Mark, Words
from studio.drawing.furniture import arrow, frame, placed
from studio.drawing.lettering import width
from studio.geometry import Box, Point
from studio.units import spell
from studio.words import tr

from .plan import LayPlan

_TO_TOP: Final = {0: Point(0, -1), 90: Point(1, 0), 180: Point(0, 1), 270: Point(-1, 0)}
_SIZES: Final = (5.0, 4.2, 3.4, 3.0)
"""Heights of a name (mm), the largest that has room first."""
_MORE, _GAP = 3.2, 1.6


class Label(Struct, frozen=True):
    """Marks about the middle of a box of that size (mm)."""

    marks: Drawing
    wide: float
    high: float


def labels(plan: LayPlan, one: Placed) -> Iterator[Label]:
    """Ways to name a piece, the best to read first: with what is particular about it, without, upright, its number."""
    number, name, more = plan.number(one), tr(one.piece.name), _more(plan, one)
    for says in dict.fromkeys((more, "")):
        for em in _SIZES:
            for turn in (0, -90):
                yield _label(number, name, says, em, one.turn, turn)
    yield number_alone(number)


def number_alone(number: str) -> Label:
    """The number on its square."""
    side = max(4.0, width(number, 3.2, "bold") + 1.4)
    return Label(tuple(_chip(number, -side / 2, side, 4.0, 3.2)), side, 4.0)


def key_to_arrows(wide: float) -> Label:
    """A grain line and the arrow beside a name with what they mean, from the origin down; on two lines where a column
    is narrow.
    """
    grain, top = tr("grain, along the selvedge"), tr("towards a piece’s top")
    start, down = 13.0 + width(grain, _MORE) + 8, 0.0
    if start + 2.6 + width(top, _MORE) > wide:
        start, down = 5.5, 5.6
    at = 13.0 if down else start + 2.6
    marks = (
        *arrow(Point(0, 2.4), Point(11, 2.4), "grain", 3.4, both=True), Words(grain, Point(13, 3.5), _MORE),
        *arrow(Point(start, 4.4 + down), Point(start, 0.2 + down), "plain", 2.6),
        Words(top, Point(at, 3.5 + down), _MORE),
    )  # fmt: skip
    return Label(marks, wide, 4.6 + down)


def _more(plan: LayPlan, one: Placed) -> str:
    """Which copy, and what is particular about it."""
    copy = which_copy(one)
    parts = [spell(copy, plan.said.unit)] if copy else []
    if layers := which_layers(one, folded=plan.lay.folded):
        parts.append(layers)
    if one.mirrored and not one.half:
        parts.append(tr("turned over"))
    if plan.held(one):
        parts.append(tr("held"))
    return ", ".join(parts)


def _label(number: str, name: str, more: str, em: float, lies: int, turn: int) -> Label:
    """On one line, and what is particular under it; the arrow keeps its way however the words are turned."""
    chip_high = em * 1.25
    side = max(chip_high, width(number, em, "bold") + 0.3 * em)
    line = chip_high + _GAP + side + _GAP + width(name, em, "semibold")
    wide = max(line, width(more, _MORE))
    high = chip_high + (_MORE * 1.3 if more else 0.0)
    x, y = -line / 2, -high / 2 + chip_high / 2
    way = _TO_TOP[lies].turned(-turn)
    middle, reach = Point(x + chip_high / 2, y), chip_high * 0.46
    marks: list[Mark] = [*arrow(middle.along(way, -reach), middle.along(way, reach), "plain", chip_high * 0.5)]
    marks += _chip(number, x + chip_high + _GAP, side, chip_high, em, y)
    marks.append(
        Words(name, Point(x + chip_high + 2 * _GAP + side, y + em * 0.34), em, "plain", face="semibold", patch=True)
    )
    if more:
        foot = Point(0, high / 2 - _MORE * 0.3)
        marks.append(Words(more, foot, _MORE, "plain", align="centre", patch=True))
    turned = placed(marks, Point(0, 0), 1, turn) if turn else tuple(marks)
    return Label(turned, high if turn else wide, wide if turn else high)


def _chip(number: str, left: float, wide: float, high: float, em: float, y: float = 0.0) -> Iterator[Mark]:
    yield frame("plain", Box(left, y - high / 2, left + wide, y + high / 2), fill="black", bare=True)
    at = Point(left + wide / 2, y + em * 0.34)
    yield Words(number, at, em, "plain", align="centre", face="bold", colour="white")
