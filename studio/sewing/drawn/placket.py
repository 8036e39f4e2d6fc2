"""A level cut through a buttoned opening: the over strip out past its edge, the under strip turned inside."""

from collections.abc import Iterator
from typing import Final

from studio.draft import Draft
from studio.draft.placket import OVER, UNDER
from studio.drawing import Drawing, Mark, Stroke
from studio.drawing.dimension import dimension
from studio.drawing.furniture import stroke
from studio.geometry import Path, Point
from studio.units import Unit, write_length
from studio.words import tr

from .folds import CLOTH_LINE, cloth, folded, stitched
from .room import CLOTH, WORDS, caption, fit, note

_SIDE: Final = 13.0
"""So much of the skirt is drawn on both sides, mm on the page."""
_APART: Final = 1.3
"""How far apart layers are drawn, mm on the page."""
_TOP, _BETWEEN, _STITCH = 14.0, 4.5, 1.4
"""Where the over edge lies, how far the under one is drawn below it, how far from a seam it is stitched."""


def placket_cut(draft: Draft, unit: Unit) -> Drawing:
    """Outside above, inside below; each strip in the accent, with how far it reaches from the opening's edge."""
    over, under = draft.piece(OVER), draft.piece(UNDER)
    a, wide = over.edge("facing").allowance, over.edge("end").path.length / 2
    scale = fit(wide, 1, CLOTH._replace(right=CLOTH.right - 2 * _SIDE))
    edge = CLOTH.centre.x - wide * scale / 2
    low = _TOP + 4 * _APART + _BETWEEN
    return (
        *_over(edge, _TOP, wide * scale, a * scale),
        *_under(edge, low, under.edge("end").path.length / 2 * scale, under.edge("facing").allowance * scale),
        *_measure(edge, _TOP - 3.4, wide, scale, unit),
        note(tr("outside"), CLOTH.left, CLOTH.top + 3.4),
        note(tr("inside"), CLOTH.left, low + 5 * _APART + 3.4),
        note(tr("over"), CLOTH.left, _TOP + 4.2),
        note(tr("under"), CLOTH.right, low + 4.2, "right"),
        caption(tr("a cut across the opening"), scale=scale),
    )


def _over(x: float, y: float, wide: float, a: float) -> Iterator[Mark]:
    """Skirt from the left to the seam, both allowances in the strip, the strip folded in half past it."""
    g = _APART
    yield stroke("plain", (CLOTH.left, y), (x - 0.8, y), (x + 0.4, y + 2 * g), (x + a, y + 2 * g), width=CLOTH_LINE)
    yield _strip(folded(Point(x + a, y + g), 180, a, (1, g), wide - 2 * g, (1, 4 * g), wide - 2 * g, (1, g), a))
    yield stitched(((x + _STITCH, y - 1), (x + _STITCH, y + 4 * g + 1)))


def _under(x: float, y: float, wide: float, a: float) -> Iterator[Mark]:
    """Skirt from the right to its edge, the strip folded in half inside it."""
    g = _APART
    yield cloth(folded(Point(CLOTH.right, y), 180, CLOTH.right - x, (-1, g), a))
    yield _strip(folded(Point(x + a, y + 2 * g), 180, a, (-1, 3 * g), wide - g, (-1, 2 * g), wide - g, (-1, g), a))
    yield stitched(((x + _STITCH, y - 1), (x + _STITCH, y + 5 * g + 1)))


def _strip(path: Path) -> Stroke:
    return Stroke(path, "plain", CLOTH_LINE, "accent")


def _measure(x: float, y: float, wide: float, scale: float, unit: Unit) -> Iterator[Mark]:
    yield from dimension(Point(x, y), Point(x + wide * scale, y), write_length(wide, unit, bare=True), height=WORDS)
