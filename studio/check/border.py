"""Rules about a print that runs in bands: whether pieces can lie on them."""

import math
from collections.abc import Iterator

from msgspec.structs import replace

from studio.brief import PrintBand
from studio.brief.across import LEAST
from studio.brief.bands import LINES
from studio.brief.hems import NARROW
from studio.cloth.placed import Adrift
from studio.cloth.ways import left_bare
from studio.styles import rack
from studio.styles.style import Edit
from studio.words import Phrase, phrase, tr

from .finding import Finding, Worked, hem_edit, tried, within
from .fitting import harmless


def border_runs_along(w: Worked) -> Iterator[Finding]:
    """Bands run along the selvedge, so a panel shows one round its hem only when it is cut along the cloth that lies
    open. The remedy cuts or lays it so, where that fits the cloth and stops nothing else.
    """
    cloth = w.brief.cloth
    for band, piece in left_bare(w.draft.pieces, cloth):
        if cloth.lies == "folded":
            says = phrase("On folded cloth no piece can be laid on the print’s band at {b}.", b=band.start)
            edit = harmless(w, {"cloth.lies": "open"})
            does = OPEN if edit else None
            yield Finding("border-runs-along", "doubt", says, "cloth.lies", piece.id, edit, does)
            return
        says = phrase("The print’s band at {b} runs along the selvedge, and {p:word} is cut across the cloth.",
                      b=band.start, p=piece.name)  # fmt: skip
        along = rack.laid(w.brief, "along")
        edit = harmless(w, along) if along else None
        does = phrase("Cut along the cloth") if edit else None
        yield Finding("border-runs-along", "doubt", says, "cloth.bands", piece.id, edit, does)


OPEN = phrase("Lay the cloth open")


def border_on_cloth(w: Worked) -> Iterator[Finding]:
    """What lies beyond a band, hem or seam allowance, must still be on the cloth. The remedy is the hem that is:
    shallower, or faced; else the piece is laid as far in on its band as it needs.
    """
    for a in w.lay.adrift:
        says = phrase("On the print’s band at {b}, {o} of {p:word} would be off the cloth.",
                      b=a.band.start, o=a.off, p=a.piece.name)  # fmt: skip
        mends = (way for way in _hems(w, a) if not any(b.band == a.band for b in tried(w, way[0]).lay.adrift))
        edit, does = next(mends, None) or _farther_in(w, a.band) or (None, None)
        yield Finding("border-on-cloth", "doubt", says, "cloth.bands", a.piece.id, edit, does)


def _hems(w: Worked, a: Adrift) -> Iterator[tuple[Edit, Phrase]]:
    """A hem that takes less of the cloth beyond the band: shallower, but first faced where it would be narrower than a
    narrow hem.
    """
    deep = float(math.floor(w.brief.hem - max(b.off for b in w.lay.adrift if b.band == a.band)))
    if a.band.by != "hem" or w.brief.seams.hem_kind == "faced":
        return
    edits: list[tuple[Edit, Phrase]] = []
    if within(w, "seams.hem", deep):
        edits.append((hem_edit(w.brief, deep), phrase("Hem {h}", h=deep)))
    faced: Edit = {"seams.hem_kind": "faced"}
    edits.insert(0 if deep < NARROW else 1, (faced, phrase("Faced hem")))
    yield from ((edit, does) for one, does in edits if (edit := harmless(w, one)))


def _farther_in(w: Worked, band: PrintBand) -> tuple[Edit, Phrase] | None:
    """The edit after which what is laid on a band begins as far from the selvedge as it needs: the band counts from
    there (or up to there), and the rest of it is beyond the line.
    """
    laid = [a for a in w.lay.adrift if a.band == band]
    by = math.ceil(max(a.off for a in laid) - 1e-6)
    near = (band.start + band.end) / 2 < w.brief.cloth.washed / 2
    start, end = (band.start + by, band.end) if near else (band.start, band.end - by)
    if end - start < LEAST:
        return None
    moved = tuple(replace(b, start=start, end=end) if b == band else b for b in w.brief.cloth.bands)
    edit = {"cloth.bands": moved}
    if {a.piece.id for a in tried(w, edit).lay.adrift} & {a.piece.id for a in laid}:
        return None
    return edit, phrase("Lay the {l:word} at {b}", l=tr(LINES[band.by]), b=start if near else end)
