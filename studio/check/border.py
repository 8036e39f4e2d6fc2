"""Rules about a print that runs in bands: whether pieces can lie on them, and whether a motif stays whole."""

import math
from collections.abc import Iterator
from typing import Any

from msgspec.structs import replace

from studio.brief import PrintBand
from studio.brief.across import LEAST
from studio.cloth.placed import Placed
from studio.cloth.ways import grain_down, shown_on, ways
from studio.draft import Piece
from studio.styles import rack
from studio.words import Phrase, phrase, tr

from .finding import Finding, Worked, within

WHOLE = 0.5
"""A motif that loses less than this (mm) at a line is whole."""


def border_runs_along(w: Worked) -> Iterator[Finding]:
    """Bands run along the selvedge, so a panel shows one round its hem only when it is cut along the cloth that lies
    open. The remedy cuts it so.
    """
    cloth = w.brief.cloth
    for band in cloth.bands:
        pieces = [p for p in w.draft.pieces if shown_on(band, p)]
        if not pieces:
            continue
        if cloth.lies == "folded":
            says = phrase("On folded cloth no piece can be laid on the band at {b}.", b=band.start)
            yield Finding("border-runs-along", "doubt", says, "cloth.lies", pieces[0].id, {"cloth.lies": "open"}, OPEN)
            return
        if all(grain_down(p) for p in pieces):
            says = phrase("The band at {b} runs along the selvedge, and {p:word} is cut across the cloth.",
                          b=band.start, p=pieces[0].name)  # fmt: skip
            cuts = "skirt.cut" in rack.declarations(w.brief)
            edit = {"skirt.cut": "along", "skirt.panels": 0} if cuts else None
            does = phrase("Cut along the cloth") if cuts else None
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
        does = phrase("Hem {h}", h=hem * 1.0) if fits else None
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
    cloth = rack.edit(w.brief, edit).cloth
    if any(ways(a.piece, cloth).adrift for a in laid):
        return None, None
    return edit, phrase("Band from {b}", b=start) if near else phrase("Band to {b}", b=end)


def motif_inside_face(w: Worked) -> Iterator[Finding]:
    """No seam, fold or hem line runs through a band that the piece is to show. The remedy is the waistband's width
    that holds it, or the place that frees it.
    """
    seen: set[tuple[str, float]] = set()
    for placed in () if w.lay.folded else w.lay.placed:
        if grain_down(placed.piece):
            continue
        for band in w.brief.cloth.bands:
            if not shown_on(band, placed.piece) or (placed.piece.id, band.start) in seen:
                continue
            cut = [(name, y) for name, y in _lines(placed) if band.start + WHOLE < y < band.end - WHOLE]
            if not cut or not _touches(placed, band):
                continue
            seen.add((placed.piece.id, band.start))
            name, y = cut[0]
            text = "The {l:word} of {p:word} cuts the band at {b}, {d} from its edge."
            d = min(y - band.start, band.end - y)
            says = phrase(text, l=tr(name), p=placed.piece.name, b=band.start, d=d)
            edit, does = _freed(w, placed, band)
            yield Finding("motif-inside-face", "doubt", says, "cloth.bands", placed.piece.id, edit, does)


def _freed(w: Worked, placed: Placed, band: PrintBand) -> tuple[dict[str, Any] | None, Phrase | None]:
    """The edit after which the piece shows the whole band."""
    high, wide = band.end - band.start, w.brief.waistband.width
    if placed.piece.row == 0 and high > wide + WHOLE:
        tall = math.ceil(high / 5 - 1e-9) * 5.0
        return (
            ({"waistband.width": tall}, phrase("Waistband {t} wide", t=tall))
            if within(w, "waistband.width", tall)
            else (None, None)
        )
    by = "face centre" if placed.piece.row == 0 else "hem"
    if band.by == by:
        return None, None
    moved = tuple(replace(b, by=by) if b == band else b for b in w.brief.cloth.bands)
    does = phrase("Lay the band’s face on it") if placed.piece.row == 0 else phrase("Lay the hem on its edge")
    return {"cloth.bands": moved}, does


def _touches(placed: Placed, band: PrintBand) -> bool:
    return placed.at.y < band.end and placed.at.y + placed.across > band.start


def _lines(placed: Placed) -> list[tuple[str, float]]:
    """The lines that bound what a piece shows, and where they lie across the cloth, mm from its first edge."""
    piece: Piece = placed.piece
    found = [(e.name, e.path.start) for e in piece.edges if e.name in ("waist", "top", "hem", "foot")]
    found += [("fold", m.path.start) for m in piece.lines if m.role == "fold"]
    return [(name, placed.on_cloth(at).y) for name, at in found]
