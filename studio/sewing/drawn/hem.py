"""A cut through the hem, as its allowance is turned."""

from collections.abc import Callable, Iterator
from typing import Final

from studio.brief import Brief
from studio.draft import Draft
from studio.drawing import Drawing, Mark
from studio.drawing.dimension import dimension
from studio.geometry import Point
from studio.units import Unit, write_length
from studio.words import tr

from .folds import cloth, folded, stitched
from .room import CLOTH, WORDS, caption, fit, note

ABOVE: Final = 4.0
"""How much of the skirt is drawn above its hem, mm on the page."""
_X: Final = 26.0
_APART: Final = 3.2
_SEWN: Final = 2.0
"""Stitching lies so far (mm on the cloth) from the fold it holds."""


def hem_cut(brief: Brief, draft: Draft, unit: Unit) -> Drawing:
    """The hem at true size where it fits: right side at the left, wrong side at the right."""
    deep = _deep(brief)
    scale = fit(3, deep, CLOTH._replace(bottom=CLOTH.bottom - ABOVE), most=4.0)
    foot = CLOTH.top + ABOVE + deep * scale
    marks = tuple(_HEMS[brief.seams.hem_kind](brief, scale, foot, unit))
    return (
        *marks,
        note(tr("right side"), _X - 3, CLOTH.top + 4, "right"),
        note(tr("wrong side"), _X + 8, CLOTH.top + 4),
        caption(tr("a cut through the hem"), scale=scale),
    )


def _deep(brief: Brief) -> float:
    """How deep the finished hem is, mm."""
    seams = brief.seams
    match seams.hem_kind:
        case "faced":
            return seams.hem_facing
        case "narrow":
            return brief.hem / 2
        case "turned twice" if 0 < brief.first_turn < brief.hem:
            return brief.hem - brief.first_turn
    return brief.hem


def _measure(x: float, top: float, foot: float, length: float, unit: Unit) -> Drawing:
    """A length up from the fold, read from the right."""
    return dimension(Point(x, foot), Point(x, top), write_length(length, unit, bare=True), height=WORDS)


def _twice(brief: Brief, scale: float, foot: float, unit: Unit) -> Iterator[Mark]:
    first, deep = brief.first_turn, _deep(brief)
    if brief.seams.hem_kind == "narrow":
        first = brief.hem / 2
    elif not 0 < first < brief.hem:
        yield from _once(brief, scale, foot, unit)
        return
    top = foot - deep * scale
    bend = _APART / 2
    skirt = folded(
        Point(_X, CLOTH.top), 90, foot - CLOTH.top - bend, (-1, _APART), max(0.2, deep * scale - bend - bend / 2),
        (-1, bend), max(0.2, min(first * scale, deep * scale - bend) - bend / 2),
    )  # fmt: skip
    yield cloth(skirt)
    held = top + min(_SEWN * scale, deep * scale / 3)
    yield stitched(((_X - 2.2, held), (_X + _APART + 2.2, held)))
    yield note(tr("stitch"), _X - 4, held + 1, "right", now=True)
    yield note(tr("hem line"), _X - 3, foot + 0.6, "right")
    yield from _measure(_X + 20, top, foot, deep, unit)
    if first * scale >= 3 and first < deep:
        yield from _measure(_X + 11, top, top + first * scale, first, unit)


def _once(brief: Brief, scale: float, foot: float, unit: Unit) -> Iterator[Mark]:
    deep = brief.hem
    top, bend = foot - deep * scale, _APART / 2
    yield cloth(folded(Point(_X, CLOTH.top), 90, foot - CLOTH.top - bend, (-1, _APART), deep * scale - bend))
    yield stitched(((_X, top - 1.5), (_X + _APART, top + 1.5), (_X, top + 4.0)))
    yield note(tr("catch-stitch"), _X + 8, max(top + 3, CLOTH.top + 8), now=True)
    yield note(tr("hem line"), _X - 3, foot + 0.6, "right")
    yield from _measure(_X + 26, top, foot, deep, unit)


def _faced(brief: Brief, scale: float, foot: float, unit: Unit) -> Iterator[Mark]:
    deep, a = brief.seams.hem_facing, brief.seams.allowance
    bend = 1.2
    raw = min(a, deep * 0.8) * scale
    yield cloth(folded(Point(_X, CLOTH.top), 90, foot - CLOTH.top - bend / 2, (-1, bend), raw))
    facing = folded(
        Point(_X + 2.6, foot - raw - 1), 90, raw, (-1, bend + 1), deep * scale - bend,
    )  # fmt: skip
    yield cloth(facing, 0.4)
    yield stitched(((_X + 0.4, foot - 2.2), (_X + 3.4, foot - 2.2)))
    top = foot - deep * scale
    yield stitched(((_X, top - 0.5), (_X + 4.8, top + 1.5), (_X, top + 3.5)))
    yield note(tr("facing"), _X + 8, foot - deep * scale / 2 + 1)
    yield note(tr("catch"), _X + 8, max(top + 2.5, CLOTH.top + 8), now=True)
    yield note(tr("hem line"), _X - 3, foot + 0.6, "right")
    yield from _measure(_X + 26, top, foot, deep, unit)


_HEMS: Final[dict[str, Callable[[Brief, float, float, Unit], Iterator[Mark]]]] = {
    "turned twice": _twice, "narrow": _twice, "single": _once, "faced": _faced,
}  # fmt: skip
