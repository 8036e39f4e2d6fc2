"""A cut through the finished waist: the band folded over its seam, and what closes it inside."""

from collections.abc import Callable, Iterator
from typing import Final

from studio.brief import Brief
from studio.draft import Draft
from studio.drawing import Drawing, Mark
from studio.drawing.dimension import dimension
from studio.drawing.furniture import frame, stroke
from studio.geometry import Box, Point
from studio.units import Unit, write_length
from studio.words import tr

from .folds import cloth, folded, stitched
from .room import CLOTH, THIN, WORDS, caption, fit, note

BELOW: Final = 6.0
"""How much of the skirt is drawn below the seam, mm on the page."""
_X: Final = 31.0
_OVER: Final = 1.2
"""The inside reaches so far (mm on the page) past the seam."""
_SEAM: Final = 2.0
_ROLL: Final = 6.0
_TURNED: Final = 1.8


def band_cut(brief: Brief, draft: Draft, unit: Unit) -> Drawing:
    """The waist at true size where it fits: outside at the left, inside at the right."""
    kind = brief.waistband.kind
    high = brief.waistband.facing_depth if kind == "faced" else brief.waistband.depth
    room = CLOTH._replace(bottom=CLOTH.bottom - BELOW)
    scale = fit(3, high, room, most=2.0)
    top = CLOTH.top + (room.height - high * scale) / 2 * (kind != "faced")
    return (
        *_BANDS[kind](brief, scale, top, unit),
        note(tr("outside"), _X - 6, CLOTH.top + 3.4, "right"),
        caption(tr("a cut through the waist"), scale=scale),
    )


def _measure(top: float, foot: float, length: float, unit: Unit, x: float = _X + 24) -> Drawing:
    return dimension(Point(x, foot), Point(x, top), write_length(length, unit, bare=True), height=WORDS)


def _skirt(top: float) -> Mark:
    """The skirt, hanging from its raw edge at `top`."""
    return cloth(folded(Point(_X + 1.0, top), 90, CLOTH.bottom - top), 0.4)


def _seam(y: float) -> Mark:
    """The waist seam, sewn before."""
    return stroke("plain", (_X - 0.6, y), (_X + 1.6, y), width=0.4)


def _folded(brief: Brief, scale: float, top: float, unit: Unit) -> Iterator[Mark]:
    w = brief.waistband.depth * scale
    a = min(brief.seams.allowance * scale, w * 0.75)
    seam = top + w
    strip = folded(
        Point(_X, seam - a), 90, a - _SEAM / 2, (1, _SEAM), w - _SEAM / 2 - _ROLL / 2, (1, _ROLL),
        w - _ROLL / 2 + _OVER - _TURNED / 2, (1, _TURNED), a - _TURNED / 2,
    )  # fmt: skip
    yield _skirt(seam - a)
    yield cloth(strip)
    yield _seam(seam - 0.6)
    yield note(tr("fold"), _X + 8, top + 1.6)
    yield from _closing(seam)
    yield from _measure(top, seam, brief.waistband.depth, unit)
    if a >= 6 and a == brief.seams.allowance * scale:
        yield from _measure(seam - a, seam, brief.seams.allowance, unit, _X + 14)


def _closing(seam: float) -> Iterator[Mark]:
    """What closes the inside: a slip stitch from the turned edge into the seam."""
    yield stitched(((_X + 4.9, seam + 0.2), (_X + 1.0, seam - 0.6)))
    yield note(tr("slip-stitch"), _X + 8, seam + 4.4, now=True)
    yield note(tr("waist seam"), _X - 6, seam + 0.6, "right")


def _in_two(brief: Brief, scale: float, top: float, unit: Unit) -> Iterator[Mark]:
    w = brief.waistband.depth * scale
    a = min(brief.seams.allowance * scale, w * 0.75)
    seam, bend = top + w, 1.4
    yield _skirt(seam - a)
    yield cloth(folded(
        Point(_X, seam - a), 90, a - _SEAM / 2, (1, _SEAM), w - _SEAM / 2 - bend / 2, (1, bend), a - bend / 2,
    ))  # fmt: skip
    yield cloth(folded(
        Point(_X + 0.6, top + a), 270, a - bend, (1, 3.4), w - bend + _OVER - _TURNED / 2, (1, _TURNED),
        a - _TURNED / 2,
    ), 0.4)  # fmt: skip
    yield _seam(seam - 0.6)
    yield note(tr("seam"), _X + 8, top + 1.6)
    yield from _closing(seam)
    yield note(tr("facing"), _X + 8, seam - w / 2 + 1)
    yield from _measure(top, seam, brief.waistband.depth, unit)


def _casing(brief: Brief, scale: float, top: float, unit: Unit) -> Iterator[Mark]:
    w = brief.waistband.depth * scale
    a = min(brief.seams.allowance * scale, w * 0.4)
    seam, wide = top + w, brief.waistband.elastic * scale
    yield _skirt(seam - a)
    strip = folded(
        Point(_X, seam - a), 90, a - _SEAM / 2, (1, _SEAM), w - _SEAM / 2 - _ROLL / 2, (1, _ROLL),
        w - _ROLL / 2 + _OVER - _TURNED / 2, (1, _TURNED), a - _TURNED / 2,
    )  # fmt: skip
    yield cloth(strip)
    lies = top + max(1.0, (w - wide) / 2)
    yield frame("plain", Box(_X - 1.2, lies, _X - 0.2, min(lies + wide, seam - 1)), width=THIN, fill="grey")
    yield _seam(seam - 0.6)
    yield stitched(((_X - 4, seam - 0.2), (_X + 6, seam - 0.2)))
    yield note(tr("stitch down"), _X + 8, seam + 4.4, now=True)
    yield note(tr("elastic"), _X - 6, top + w / 2 + 1, "right")
    yield note(tr("fold"), _X + 8, top + 1.6)
    yield from _measure(top, seam, brief.waistband.depth, unit)


def _faced(brief: Brief, scale: float, top: float, unit: Unit) -> Iterator[Mark]:
    deep = brief.waistband.facing_depth * scale
    a = min(brief.seams.allowance * scale, deep * 0.6)
    bend, edge = 1.4, top + 0.5
    skirt = folded(Point(_X, edge + a), 270, a - bend / 2, (-1, bend), CLOTH.bottom - edge - bend / 2)
    yield cloth(skirt)
    yield cloth(folded(Point(_X + 0.9, edge + a), 270, a - bend / 2, (1, bend + 0.6), deep - bend), 0.4)
    yield stroke("plain", (_X - 0.5, edge + 1.6), (_X + 1.4, edge + 1.6), width=0.4)
    held = edge + 1.6 + 2.0 * scale
    yield stitched(((_X - 0.6, held), (_X + 4.6, held)))
    yield note(tr("understitch"), _X + 8, held + 1.4, now=True)
    yield note(tr("facing"), _X + 8, edge + deep * 0.6)
    yield from _measure(edge, edge + deep, brief.waistband.facing_depth, unit, _X + 28)


_BANDS: Final[dict[str, Callable[[Brief, float, float, Unit], Iterator[Mark]]]] = {
    "folded": _folded, "two-piece": _in_two, "contour": _in_two, "elastic": _casing, "bound": _folded, "faced": _faced,
}  # fmt: skip
