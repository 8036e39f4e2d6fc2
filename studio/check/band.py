"""Rules about the waistband and what closes it."""

import itertools
import math
from collections.abc import Iterator
from typing import Any

from studio.draft.fastening import BUTTON_ROOM, closed_girth, even_places, hole_length, inset, laps
from studio.words import Phrase, phrase

from .finding import Finding, Worked, within

SHAPED = 50.0
"""A band wider than this (mm) is better shaped to the body (common practice, no source)."""
HOLDS = 1.0
"""A closed band this near (mm) to what was meant is right."""


def closed_girth_holds(w: Worked) -> Iterator[Finding]:
    """Closed, the band measures B: with the hole's outer end i from the extension's end and the button b from the
    plain end it closes at B + x − i − b. The remedy puts the button where the band closes true.
    Where the extension is too short to lap at all, it makes it longer.
    """
    off = closed_girth(w.brief) - w.brief.closed
    if abs(off) < HOLDS or not laps(w.brief):
        return
    words = "The band closes {d} too loose." if off > 0 else "The band closes {d} too tight."
    f, place = w.brief.fastening, "fastening.button_inset"
    remedy: dict[str, Any] = {place: None}
    does = phrase("Button where it closes true")
    if f.kind != "buttons" or f.button_inset is None or w.brief.waistband.extension < f.end_inset:
        place, wide = "waistband.extension", math.ceil(inset(w.brief) / 5) * 5.0
        remedy, does = {place: wide, "fastening.button_inset": None}, phrase("Extension {w}", w=wide)
    yield Finding("closed-girth-holds", "doubt", phrase(words, d=abs(off)), place, "waistband", remedy, does)


def hole_inside_extension(w: Worked) -> Iterator[Finding]:
    """The fastening lies on the extension: a hole never reaches past the centre line into the band, and its outer
    end, where the button sits, keeps half the button and 6 mm from the extension's end.

    The remedy is the inset and the extension that hold it, rounded up to 5 mm.
    """
    f, x = w.brief.fastening, w.brief.waistband.extension
    if not laps(w.brief) or w.brief.opening.kind == "wrap":
        return
    if f.kind != "buttons":
        if x < HOOK_LAP:
            says = phrase(NEEDS[f.kind], n=HOOK_LAP, x=x)
            yield _extend(w, says, HOOK_LAP, {})
        return
    hole = hole_length(f.button, f.button_diameter, f.button_height)
    least = f.button_diameter / 2 + BUTTON_ROOM
    place = max(f.end_inset, math.ceil(least - 1e-9))
    if f.end_inset < least - 1e-9:
        says = phrase(
            "The hole starts {i} from the end; a button of {d} wants {n}.", i=f.end_inset, d=f.button_diameter, n=least
        )
    elif x < f.end_inset + hole - 1e-9:
        says = phrase("The buttonhole ends {n} from the extension’s end, past its {x}.", n=f.end_inset + hole, x=x)
    else:
        return
    moved: dict[str, Any] = {"fastening.end_inset": float(place)} if place != f.end_inset else {}
    yield _extend(w, says, max(x, place + hole), moved)


NEEDS = {
    "hook and bar": "A hook and bar need an extension of {n}; this one is {x}.",
    "snap": "A snap needs an extension of {n}; this one is {x}.",
}
HOOK_LAP = 20.0
"""Least extension for a hook and bar, mm (common practice, no source)."""


def _extend(w: Worked, says: Phrase, need: float, remedy: dict[str, Any]) -> Finding:
    """A finding whose remedy is an extension of at least `need`, as far as one can go."""
    wide = math.ceil(need / 5 - 1e-9) * 5.0
    place, on = "waistband.extension", "waistband"
    if not within(w, place, wide):
        return Finding("hole-inside-extension", "doubt", says, place, on)
    remedy = {place: wide, "fastening.button_inset": None} | remedy
    return Finding("hole-inside-extension", "doubt", says, place, on, remedy, phrase("Extension {w}", w=wide))


def button_fits_band(w: Worked) -> Iterator[Finding]:
    """A button leaves 6 mm to the edge of the band beyond its own half, and buttons do not touch each other.

    The remedies: one button in the middle, or a smaller one.
    """
    f, width = w.brief.fastening, w.brief.waistband.width
    if f.kind != "buttons" or not laps(w.brief):
        return
    room = f.button_diameter / 2 + BUTTON_ROOM
    places = even_places(f.count, f.edge_inset, width - f.edge_inset)
    near = min(min(places[0], width - places[0]), min(places[-1], width - places[-1]))
    apart = min((abs(q - p) for p, q in itertools.pairwise(places)), default=math.inf)
    if near >= room - 1e-9 and apart >= f.button_diameter - 1e-9 and places[0] <= places[-1]:
        return
    if 2 * room <= width + 1e-9:
        says = phrase("{n:count} buttons of {d} do not fit a band of {w}.", n=f.count, d=f.button_diameter, w=width)
        yield Finding(
            "button-fits-band", "doubt", says, "fastening.count", "waistband",
            {"fastening.count": 1}, phrase("One button"),
        )  # fmt: skip
        return
    says = phrase("A button of {d} needs a band of {n}; this one is {w}.", d=f.button_diameter, n=2 * room, w=width)
    most = math.floor(width - 2 * BUTTON_ROOM)
    smaller: dict[str, Any] = {"fastening.button_diameter": float(most), "fastening.count": 1}
    remedy = smaller if within(w, "fastening.button_diameter", most) else None
    yield Finding(
        "button-fits-band", "doubt", says, "fastening.button_diameter", "waistband",
        remedy, phrase("Button {d}", d=float(most)) if remedy else None,
    )  # fmt: skip


def band_needs_shape(w: Worked) -> Iterator[Finding]:
    """A straight band wider than 5 cm stands away from the body at its top. The remedy is 5 cm."""
    width = w.brief.waistband.width
    if width > SHAPED + 1e-9 and w.brief.waistband.kind in ("folded", "two-piece"):
        says = phrase(
            "A straight band of {w} stands away at the top; above {m} shape it to the body.", w=width, m=SHAPED
        )
        remedy = {"waistband.width": SHAPED}
        yield Finding(
            "band-needs-shape", "note", says, "waistband.width", "waistband", remedy, phrase("Band {m}", m=SHAPED)
        )


def interfacing_fits(w: Worked) -> Iterator[Finding]:
    """The interfacing lies within the band's cut edges."""
    pieces = {p.id: p for p in w.draft.pieces}
    if "interfacing" not in pieces or "waistband" not in pieces:
        return
    inner, outer = pieces["interfacing"].cut_line.box, pieces["waistband"].cut_line.box
    over = max(outer.left - inner.left, inner.right - outer.right, outer.top - inner.top, inner.bottom - outer.bottom)
    if over > 0.1:
        says = phrase("The interfacing is larger than the band.")
        yield Finding("interfacing-fits", "stop", says, "waistband.interfacing", "interfacing")
