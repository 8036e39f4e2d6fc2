"""Rules about the lining."""

import math
from collections.abc import Iterator

from msgspec.structs import replace

from studio.draft.lining import CLOSING, FLARE, lining_block, lining_length, lining_room
from studio.draft.stride import hang_of, stride_girth
from studio.words import Phrase, phrase

from .finding import Finding, Worked, within

USUAL = 25.0
"""A lining ends 2 to 2.5 cm above the skirt's hem (mm; common practice, no source)."""
LEFT = 50.0
"""Less lining than this (mm) is none."""
ROUGHLY = 1.1
"""An A-line lining's hem is less than so many times what is reckoned from a straight one's."""
NONE = phrase("No lining")


def lining_can_hang(w: Worked) -> Iterator[Finding]:
    """A lining hangs closed under the skirt; under a wrap it would show. The remedy leaves it out."""
    if w.brief.lining.kind != "none" and w.brief.opening.kind == "wrap":
        says = phrase("A wrap opens where a lining would hang closed.")
        yield Finding("lining-can-hang", "stop", says, "lining.kind", "skirt", {"lining.kind": "none"}, NONE)


def lining_leaves_length(w: Worked) -> Iterator[Finding]:
    """At least 5 cm of lining is left below the waist. The remedy is the usual length, or none where that is none."""
    length, shorter = w.brief.finished_length, w.brief.lining.shorter
    if not _lined(w) or length - shorter >= LEFT:
        return
    says = phrase("A lining shorter by {s} leaves nothing of a skirt of {l}.", s=shorter, l=length)
    usual = length - USUAL >= LEFT
    remedy = {"lining.shorter": USUAL} if usual else {"lining.kind": "none"}
    does = phrase("Lining shorter by {s}", s=USUAL) if usual else NONE
    yield Finding("lining-leaves-length", "doubt", says, "lining.shorter", "lining-back", remedy, does)


def lining_lets_step(w: Worked) -> Iterator[Finding]:
    """A lining too must open as far as a step does. The remedy is an A-line one, where that is wide enough and no
    wider than the skirt; elsewhere its sides are left open below the knee.
    """
    if not _lined(w):
        return
    hang, height = hang_of(w.brief.body, lining_length(w.brief)), w.brief.body.height
    if hang is None or height is None:
        return
    need, sweep = stride_girth(height, hang), lining_block(w.brief).hem_sweep
    if sweep >= need - 1e-9:
        return
    remedy, does = None, None
    text = "A lining of {s} round the hem is short of a stride of {n}: leave its sides open below the knee."
    if _flared_steps(w, need):
        remedy, does = {"lining.kind": "A-line"}, phrase("A-line lining")
        text = "A lining of {s} round the hem is short of a stride of {n}."
    yield Finding("lining-lets-step", "note", phrase(text, s=sweep, n=need), "lining.kind", "lining-back", remedy, does)


def _flared_steps(w: Worked, need: float) -> bool:
    """Whether an A-line lining opens far enough and is about no wider than the skirt; it is drafted only where that may
    be so. A dart closed gives the hem about its angle over the lining's length, a side its flare.
    """
    cut, length = lining_block(w.brief), lining_length(w.brief)
    angles = sum(h.degrees for q in (cut.front, cut.back) for h in q.drawn.hinges)
    about = cut.hem_sweep + 4 * FLARE + 2 * CLOSING * math.radians(angles) * length
    if w.brief.lining.kind == "A-line" or not need / ROUGHLY <= about <= w.draft.fact("hem_sweep"):
        return False
    return lining_block(replace(w.brief, lining=replace(w.brief.lining, kind="A-line"))).hem_sweep >= need


def lining_fits_cloth(w: Worked) -> Iterator[Finding]:
    """Each piece of a lining fits between the selvedges of its cloth. The remedy is cloth just so wide."""
    if not _lined(w):
        return
    room = lining_room(w.brief)
    widths = {
        p.id: p.cut_line.box.width * (2 if p.on_fold else 1) for p in w.draft.pieces if p.id.startswith("lining-")
    }
    widest = max(widths, key=widths.__getitem__)
    wide = widths[widest]
    if wide <= room + 1e-6:
        return
    says = phrase("This piece is {w} wide; the lining cloth holds {r}.", w=wide, r=room)
    least = math.ceil((wide + 2 * w.brief.cloth.selvedge) / 10 - 1e-6) * 10.0
    fits = within(w, "lining.width", least)
    does: Phrase | None = phrase("Lining cloth {w} wide", w=least) if fits else None
    remedy = {"lining.width": least} if fits else None
    yield Finding("lining-fits-cloth", "doubt", says, "lining.width", widest, remedy, does)


def _lined(w: Worked) -> bool:
    """Whether a lining was drafted."""
    return w.brief.lining.kind != "none" and w.brief.opening.kind != "wrap"
