"""Rules about a print that runs in bands: whether pieces can lie on them."""

import math
from collections.abc import Iterator
from typing import Any

from msgspec.structs import replace

from studio.brief import PrintBand
from studio.brief.across import LEAST
from studio.cloth.ways import grain_down, shown_on
from studio.styles import rack
from studio.words import Phrase, phrase

from .finding import Finding, Worked, tried, within
from .fitting import harmless


def border_runs_along(w: Worked) -> Iterator[Finding]:
    """Bands run along the selvedge, so a panel shows one round its hem only when it is cut along the cloth that lies
    open. The remedy cuts or lays it so, where that fits the cloth and stops nothing else.
    """
    cloth = w.brief.cloth
    for band in cloth.bands:
        pieces = [p for p in w.draft.pieces if shown_on(band, p)]
        if not pieces:
            continue
        if cloth.lies == "folded":
            says = phrase("On folded cloth no piece can be laid on the band at {b}.", b=band.start)
            edit = harmless(w, {"cloth.lies": "open"})
            does = OPEN if edit else None
            yield Finding("border-runs-along", "doubt", says, "cloth.lies", pieces[0].id, edit, does)
            return
        if all(grain_down(p) for p in pieces):
            says = phrase("The band at {b} runs along the selvedge, and {p:word} is cut across the cloth.",
                          b=band.start, p=pieces[0].name)  # fmt: skip
            along = rack.laid(w.brief, "along")
            edit = harmless(w, along) if along else None
            does = phrase("Cut along the cloth") if edit else None
            yield Finding("border-runs-along", "doubt", says, "cloth.bands", pieces[0].id, edit, does)


OPEN = phrase("Lay the cloth open")


def border_on_cloth(w: Worked) -> Iterator[Finding]:
    """What lies beyond a band, hem or seam allowance, must still be on the cloth. The remedy is the hem that is, or the
    band from as far in as the piece can lie.
    """
    for a in w.lay.adrift:
        says = phrase("On its band at {b}, {o} of {p:word} would be off the cloth.",
                      b=a.band.start, o=a.off, p=a.piece.name)  # fmt: skip
        hem = math.floor(w.brief.hem - a.off)
        fits = a.band.by == "hem" and w.brief.seams.hem_kind != "faced" and within(w, "seams.hem", hem)
        edit = {"seams.hem": float(hem)} if fits else None
        if edit and any(b.piece.id == a.piece.id for b in tried(w, edit).lay.adrift):
            edit = None  # it has no hem, or another band asks for more
        does = phrase("Hem {h}", h=hem * 1.0) if edit else None
        if edit is None:
            edit, does = _farther_in(w, a.band)
        yield Finding("border-on-cloth", "doubt", says, "cloth.bands", a.piece.id, edit, does)


def _farther_in(w: Worked, band: PrintBand) -> tuple[dict[str, Any] | None, Phrase | None]:
    """The edit after which a band begins (or ends) as far from its selvedge as all that is laid there needs."""
    laid = [a for a in w.lay.adrift if a.band == band]
    by = math.ceil(max(a.off for a in laid) - 1e-6)
    near = (band.start + band.end) / 2 < w.brief.cloth.washed / 2
    start, end = (band.start + by, band.end) if near else (band.start, band.end - by)
    if end - start < LEAST:
        return None, None
    moved = tuple(replace(b, start=start, end=end) if b == band else b for b in w.brief.cloth.bands)
    edit = {"cloth.bands": moved}
    if {a.piece.id for a in tried(w, edit).lay.adrift} & {a.piece.id for a in laid}:
        return None, None
    return edit, phrase("Band from {b}", b=start) if near else phrase("Band to {b}", b=end)
