"""Rules about buttons and holes, hooks and snaps: whether they lie on the band, and down a placket."""

import itertools
import math
from collections.abc import Iterator
from typing import Any

from msgspec.structs import replace

from studio.draft.fastening import BUTTON_ROOM, even_places, held_by, hole_length, laps
from studio.draft.placket import fastening_length, placket_count, placket_step
from studio.words import Phrase, phrase

from .finding import Finding, Worked, within
from .rebanded import contour_fits


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
    if not within(w, place, wide) or not contour_fits(w.brief, {place: wide}):
        return Finding("hole-inside-extension", "doubt", says, place, on)
    remedy = {place: wide, "fastening.button_inset": None} | remedy
    return Finding("hole-inside-extension", "doubt", says, place, on, remedy, phrase("Extension {w}", w=wide))


def button_fits_band(w: Worked) -> Iterator[Finding]:
    """A button leaves 6 mm to the edge of the band beyond its own half, and buttons do not touch each other; down a
    placket, holes keep twice that apart.

    The remedies: one button in the middle, or a smaller one; down a placket, as many as its length takes.
    """
    if held_by(w.brief) != "buttons":
        return
    yield from _across_band(w)
    if w.brief.opening.kind == "placket":
        yield from _down_placket(w)


def _across_band(w: Worked) -> Iterator[Finding]:
    f, width = w.brief.fastening, w.brief.waistband.width
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


def _down_placket(w: Worked) -> Iterator[Finding]:
    n, step, need = placket_count(w.brief), placket_step(w.brief), fastening_length(w.brief) + 2 * BUTTON_ROOM
    if step >= need - 1e-9:
        return
    says = phrase("{n:count} buttons down an opening of {s} leave {g} for each; its hole wants {m}.",
                  n=n, s=w.brief.stop, g=step, m=need)  # fmt: skip
    by_length = replace(w.brief, opening=replace(w.brief.opening, buttons=0))
    fewer: dict[str, Any] | None = {"opening.buttons": 0} if placket_step(by_length) >= need else None
    does = phrase("As many as fit") if fewer else None
    yield Finding("button-fits-band", "doubt", says, "opening.buttons", "placket", fewer, does)
