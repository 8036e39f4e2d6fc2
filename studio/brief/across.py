"""Bands across a cloth: what keeps one from lying where it was typed, and where one more may lie."""

import math
from collections.abc import Iterator, Sequence
from typing import Final

from ..units import Unit
from ..words import Phrase, phrase
from .bands import MOST, usual_hold
from .brief import Brief
from .records import Cloth, PrintBand

TOUCH: Final = 25.4 / 16
"""Half of what is shown of an inch (mm): bands that lie over each other by no more only touch."""
LEAST: Final = 3.0
"""A band narrower than this (mm) was a slip of the hand, or is taken away."""
_BROAD: Final = 200.0
_FACE: Final = 20.0
"""What one more band measures across (mm): a border at most, a waistband's face at least."""


def amiss(start: float, end: float, others: Sequence[PrintBand], cloth: Cloth) -> Phrase | None:
    """What is wrong with a band from here to there (mm) beside the others, in a sentence; None where it may lie."""
    if end <= start:
        return phrase("A band goes from less to more, not from {a:bare} to {b}.", a=start, b=end)
    if end > cloth.washed + TOUCH:
        text = "After the wash the cloth ends at {w}." if cloth.shrinkage_across else "The cloth ends at {w}."
        return phrase(text, w=cloth.washed)
    over = next((b for b in others if start < b.end - TOUCH and b.start < end - TOUCH), None)
    return phrase("It would lie over the band from {a:bare} to {b}.", a=over.start, b=over.end) if over else None


def next_band(brief: Brief, shown: Sequence[str], unit: Unit) -> PrintBand | None:
    """One more band, for the first of what is `shown` that has none yet; None where there is no room, or are enough.

    It lies along the first selvedge, where no band is in that half of the cloth, or along the other, as far in as hem
    or seam allowance need; else in the widest gap.
    """
    bands, cloth = brief.cloth.bands, brief.cloth
    if len(bands) >= MOST:
        return None
    holds = next((one for one in shown if not any(b.holds == one for b in bands)), "nothing")
    step = 10.0 if unit == "cm" else 25.4 / 2
    first, last = cloth.selvedge, cloth.washed - cloth.selvedge
    wide = max(brief.waistband.depth, _FACE) if holds == "waistband" else math.ceil(_BROAD / step) * step
    beyond = brief.hem if holds == "skirt" else brief.seams.allowance
    near, far = math.ceil((first + beyond) / step) * step, math.floor((last - beyond - wide) / step) * step
    half = cloth.washed / 2
    if near + wide <= half and all(b.start >= half for b in bands):
        start, end = near, near + wide
    elif far >= half and all(b.end <= half for b in bands):
        start, end = far, far + wide
    else:
        a, b = max(_gaps(bands, first, last), key=lambda gap: gap[1] - gap[0])
        wide = min(wide, b - a)
        start = min(max(a, math.floor((a + b - wide) / 2 / step) * step), b - wide)
        end = start + wide
    return PrintBand(start, end, holds, usual_hold(holds)) if end - start >= LEAST else None  # type: ignore[arg-type]


def _gaps(bands: Sequence[PrintBand], first: float, last: float) -> Iterator[tuple[float, float]]:
    """Where no band lies between the selvedges, mm; the last may be nothing wide."""
    reached = first
    for band in sorted(bands, key=lambda b: b.start):
        if band.start > reached:
            yield reached, min(band.start, last)
        reached = max(reached, band.end)
    yield reached, max(reached, last)
