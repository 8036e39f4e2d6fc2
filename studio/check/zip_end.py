"""The rule about where a zip ends: its tail is longer than the opening."""

from collections.abc import Iterator

from msgspec.structs import replace

from studio.brief import OVER_HIPS, Brief
from studio.brief.conditions import ZIPS
from studio.draft.zip import zip_end
from studio.geometry import TOUCH
from studio.styles.style import Edit
from studio.words import Phrase, phrase

from .finding import Finding, Worked, within

STEP = 5
"""A stop is moved by so much (mm)."""


def zip_above_hem(w: Worked) -> Iterator[Finding]:
    """A zip, with the tail that runs on past its stop, ends above the hem that is turned up.

    The remedy is the deepest stop whose zip ends there and still lets the hips through; else a lapped zip, which ends
    at its stop.
    """
    if w.brief.opening.kind not in ZIPS:
        return
    end, most = zip_end(w.brief.opening, w.brief.stop), w.brief.finished_length - w.brief.hem
    if end > most + TOUCH:
        says = phrase("The zip ends {z} down, and the hem is turned up from {m} on.", z=end, m=most)
        edit, does = next(_tries(w, most), (None, None))
        yield Finding("zip-above-hem", "doubt", says, "opening.zip_stop", "skirt", edit, does)


def _tries(w: Worked, most: float) -> Iterator[tuple[Edit, Phrase]]:
    """A shorter stop, or a zip that ends at its own."""
    hips, last = w.brief.body.hip or 0.0, int(min(w.brief.stop, most) // STEP)
    for stop in (float(STEP * k) for k in range(last, 0, -1)):
        passes = w.brief.closed + 2 * stop >= hips + OVER_HIPS - TOUCH
        if not passes or not within(w, "opening.zip_stop", stop):
            break
        if zip_end(w.brief.opening, stop) <= most + TOUCH:
            yield {"opening.zip_stop": stop}, phrase("Zip stop to {s}", s=stop)
            return
    if _lapped_end(w.brief) <= most + TOUCH:
        yield {"opening.kind": "lapped"}, phrase("Lapped zip")


def _lapped_end(brief: Brief) -> float:
    """Where a lapped zip to the same stop would end, mm down."""
    return zip_end(replace(brief.opening, kind="lapped"), brief.stop)
