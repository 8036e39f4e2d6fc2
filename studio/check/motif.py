"""The rule about a print that runs in bands: whether a piece shows its motif whole."""

import math
from collections.abc import Iterator
from typing import NamedTuple

from msgspec.structs import replace

from studio.brief import PrintBand
from studio.cloth.placed import Placed
from studio.cloth.ways import grain_down, shown_on
from studio.draft import Piece
from studio.styles.style import Edit
from studio.words import Phrase, phrase, tr

from .finding import Finding, Worked, tried, within
from .fitting import harmless
from .on_band import off_its_band, taken_off

WHOLE = 0.5
"""A motif that loses less than this (mm) at a line is whole."""


class _Cut(NamedTuple):
    """A piece, the band that one of its lines cuts, the line, and how far that lies from the band's edge (mm)."""

    piece: Piece
    band: PrintBand
    line: str
    off: float


def motif_inside_face(w: Worked) -> Iterator[Finding]:
    """No seam, fold or hem line runs through a band that the piece is to show. The remedy is the waistband's width
    that holds it, or the place that frees it. A piece that a hand has taken off its band is laid back, or let go.
    """
    yield from off_its_band(w, "motif-inside-face", taken_off(w))
    for cut in _cuts(w):
        text = "The {l:word} of {p:word} cuts the print’s band at {b}, {d} from its edge."
        says = phrase(text, l=tr(cut.line), p=cut.piece.name, b=cut.band.start, d=cut.off)
        edit, does = _freed(w, cut) or (None, None)
        yield Finding("motif-inside-face", "doubt", says, "cloth.bands", cut.piece.id, edit, does)


def _cuts(w: Worked) -> list[_Cut]:
    """Every band that a line of what is to show it cuts, but of what a hand has taken off it."""
    found: dict[tuple[str, float], _Cut] = {}
    taken = [i.placed for i in taken_off(w)]
    for placed in () if w.lay.folded else w.lay.placed:
        if grain_down(placed.piece) or any(placed is one for one in taken):
            continue
        for band in (b for b in w.brief.cloth.bands if shown_on(b, placed.piece) and _touches(placed, b)):
            cut = [(name, y) for name, y in _lines(placed) if band.start + WHOLE < y < band.end - WHOLE]
            for name, y in cut[:1]:
                one = _Cut(placed.piece, band, name, min(y - band.start, band.end - y))
                found.setdefault((placed.piece.id, band.start), one)
    return list(found.values())


def _freed(w: Worked, cut: _Cut) -> tuple[Edit, Phrase] | None:
    """The first edit after which no line of the piece cuts a band."""
    for edit, does in _ways(w, cut):
        mends = harmless(w, edit)
        if mends and not any(c.piece.id == cut.piece.id for c in _cuts(tried(w, mends))):
            return mends, does
    return None


def _ways(w: Worked, cut: _Cut) -> Iterator[tuple[Edit, Phrase]]:
    banded, high = cut.piece.row == 0, cut.band.end - cut.band.start
    wider: Edit = {}
    tall = math.ceil(high / 5 - 1e-9) * 5.0
    if banded and high > w.brief.waistband.width + WHOLE and within(w, "waistband.width", tall):
        wider = {"waistband.width": tall}
        yield wider, phrase("Waistband {t} wide", t=tall)
    by = "face centre" if banded else "hem"
    if cut.band.by != by:
        moved = {"cloth.bands": tuple(replace(b, by=by) if b == cut.band else b for b in w.brief.cloth.bands)}
        yield moved, phrase("Lay the waistband’s face on it") if banded else phrase("Lay the hem on its edge")
        if wider:
            yield {**wider, **moved}, phrase("Waistband {t} wide, its face on the print’s band", t=tall)


def _touches(placed: Placed, band: PrintBand) -> bool:
    return placed.at.y < band.end and placed.at.y + placed.across > band.start


def _lines(placed: Placed) -> list[tuple[str, float]]:
    """The lines that bound what a piece shows, and where they lie across the cloth, mm from its first edge."""
    piece: Piece = placed.piece
    found = [(e.name, e.path.start) for e in piece.edges if e.name in ("waist", "top", "hem", "foot")]
    found += [("fold", m.path.start) for m in piece.lines if m.role == "fold"]
    return [(name, placed.on_cloth(at).y) for name, at in found]
