"""Rules about the skirt itself: gathers, seams, hem, stride."""

import math
from collections.abc import Iterator
from itertools import accumulate

from studio.draft import notches, walked
from studio.draft.seam import WALKS
from studio.draft.stride import hang_of, stride_girth
from studio.styles import rack
from studio.words import phrase, tr

from .finding import Finding, Worked, edit_words
from .sewable import banded


def seams_walk(w: Worked) -> Iterator[Finding]:
    """Both sides of every seam are equally long to 0.1 mm once gathers are drawn up."""
    pieces = {p.id: p for p in w.draft.pieces}
    for seam in w.draft.seams:
        off = abs(walked(seam.one, pieces) - walked(seam.other, pieces))
        if off > WALKS:
            says = phrase("The two sides of the {s:word} seam differ by {d}.", s=tr(seam.name), d=off)
            yield Finding("seams-walk", "stop", says, "skirt.style", seam.one[0].piece)


def notches_meet(w: Worked) -> Iterator[Finding]:
    """Round the waist, and between tiers, every notch meets a notch or a join on the other side, to 0.1 mm."""
    pieces = {p.id: p for p in w.draft.pieces}
    for seam in w.draft.seams:
        if seam.name not in ("waist", "tier"):
            continue
        for side, other in ((seam.other, seam.one), (seam.one, seam.other)):
            there = [*notches(other, pieces), 0.0, *accumulate(walked((part,), pieces) for part in other)]
            lost = [n for n in notches(side, pieces) if min(abs(n - t) for t in there) > WALKS]
            if lost:
                text = "The notch at {n} of the {s:word} seam meets none on the other side."
                yield Finding("notches-meet", "stop", phrase(text, n=lost[0], s=tr(seam.name)), "skirt.style", "skirt")


def length_leaves_a_skirt(w: Worked) -> Iterator[Finding]:
    """With the band counted in the length, at least 5 cm of skirt is left below it."""
    skirt = w.brief.skirt
    left = skirt.length - w.brief.waistband.depth
    if skirt.length_includes_band and left < 50:
        says = phrase("The band takes {w} of a length of {l}.", w=w.brief.waistband.depth, l=skirt.length)
        remedy = {"skirt.length_includes_band": False}
        yield Finding(
            "length-leaves-a-skirt", "stop", says, "skirt.length", "skirt", remedy, phrase("Measure below the band")
        )


def first_turn_inside_hem(w: Worked) -> Iterator[Finding]:
    """The first turn is less than the hem, and at most half of it lies flat. The remedy halves it."""
    hem, turn = w.brief.hem, w.brief.first_turn
    if turn > hem / 2 + 1e-9:
        says = phrase("A first turn of {t} is more than half a hem of {h}.", t=turn, h=hem)
        half = math.floor(hem / 2)
        remedy = {"seams.first_turn": float(half)}
        yield Finding(
            "first-turn-inside-hem",
            "doubt",
            says,
            "seams.first_turn",
            "skirt",
            remedy,
            phrase("First turn {h}", h=half * 1.0),
        )


def stride(w: Worked) -> Iterator[Finding]:
    """The hem must open as far as a step does.

    Needed girth: 2 · step · (leg − h) / leg + the leg's girth at h, where h is how high the hem hangs, the step is
    0.413 of the height and the leg 0.53 of it. The girths of thigh, knee, calf and ankle are the means of 260
    women (Heinz et al. 2003). With a slit it is the place where the slit ends that must open so far. A model, not a
    measurement: try a long narrow skirt on before you hem it.
    """
    length = w.brief.finished_length
    shut = w.draft.fact("closed_to") if w.draft.has("closed_to") else length
    hang, height = hang_of(w.brief.body, shut), w.brief.body.height
    if hang is None or height is None:
        return
    need = stride_girth(height, hang)
    sweep = w.draft.fact("hem_sweep") if shut == length else rack.girth(w.brief, shut)
    if sweep >= need - 1e-9:
        return
    text = "A hem of {s} is short of a stride of {n} at this length."
    if shut < length:
        text = "Where the slit ends the skirt measures {s}; a stride needs {n} there."
    remedy = banded(w, rack.widened(w.brief, need))
    where = next(iter(remedy)) if remedy else "skirt.length"
    does = edit_words(w.brief, remedy) if remedy else None
    yield Finding("stride", "doubt", phrase(text, s=sweep, n=need), where, "skirt", remedy, does)
