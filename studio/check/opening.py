"""Rules about getting into the skirt: the opening, the zip, the stop."""

import math
from collections.abc import Iterator

from msgspec.structs import replace

from studio.brief import OVER_HIPS, Brief
from studio.brief.conditions import ZIPS
from studio.draft.zip import shortest_zip, too_long, zip_sold
from studio.styles import rack
from studio.styles.style import Edit
from studio.words import phrase, tr

from .finding import Finding, Worked, edit_words, within
from .rebanded import NAMES, rebanded
from .sewable import banded

HAND_CLOSE = 20.0
"""Below the stop the seam needs this much (mm) to be sewn at all (common practice, no source)."""


def opening_passes_hips(w: Worked) -> Iterator[Finding]:
    """The ring that goes over the hips is the closed band and twice the zip stop; it must be 2 cm more than they are.

    The skirt must hold them where they are, and just below the stop it must pass them too, where the stop is above
    them. A skirt without an opening must pass them at the waist. The remedy is the shortest stop that passes both,
    rounded up to 5 mm, the edit that widens the skirt, or elastic. With no hip measurement the rule can only say so.
    """
    hip, kind = w.brief.body.hip, w.brief.opening.kind
    if hip is None:
        says = phrase("Without a hip measurement the opening cannot be checked.")
        yield Finding("opening-passes-hips", "note", says, "body.hip")
        return
    need = hip + OVER_HIPS
    if kind == "wrap":
        return
    if kind == "none" or w.brief.waistband.kind == "elastic":
        yield from _waist_passes(w, hip, need)
        yield from _girth_holds(w, hip, need)
        return
    held = [_stopped(w, f, need) for f in _girth_holds(w, hip, need)]
    yield from held
    if not any("opening.zip_stop" in (f.remedy or {}) for f in held):
        yield from _opening_passes(w, hip, need, held)


def _waist_passes(w: Worked, hip: float, need: float) -> Iterator[Finding]:
    if w.brief.waist_seam < need - 1e-9:
        says = phrase("With no opening the waist lets {r} through; hips of {h} need {n}.",
                      r=w.brief.waist_seam, h=hip, n=need)  # fmt: skip
        remedy = {**rebanded(w.brief, "elastic"), **rack.by_cloth(w.brief)}  # more cloth may want more panels
        yield Finding("opening-passes-hips", "stop", says, "opening.kind", "skirt", remedy, NAMES["elastic"])


def _girth_holds(w: Worked, hip: float, need: float) -> Iterator[Finding]:
    """Where the hips are, the skirt must hold them."""
    girth = rack.girth(w.brief, w.brief.hip_depth)
    if girth < need - 1e-9:
        says = phrase("The skirt measures {g} round; hips of {h} need {n}.", g=girth, h=hip, n=need)
        remedy = banded(w, rack.cleared(w.brief, need))
        where, does = (next(iter(remedy)), edit_words(w.brief, remedy)) if remedy else ("body.hip", None)
        yield Finding("opening-passes-hips", "stop", says, where, "skirt", remedy, does)


def _stopped(w: Worked, held: Finding, need: float) -> Finding:
    """The finding that the skirt is too narrow; where the wider one wants a deeper opening too, both in one edit."""
    if held.remedy is None:
        return held
    after = rack.edit(w.brief, held.remedy)
    stop = _least_stop(after, need)
    if stop <= after.stop or not _fits(w, after, stop):
        return held
    return replace(held, remedy={**held.remedy, "opening.zip_stop": stop})


def _opening_passes(w: Worked, hip: float, need: float, held: list[Finding]) -> Iterator[Finding]:
    """Band and opening, and just below the stop the skirt, must go over the hips: one finding for what wants the deeper
    stop. The skirt is not asked where it is too narrow for them anyway.
    """
    ring, girth = w.brief.closed + 2 * w.brief.stop, rack.girth(w.brief, w.brief.stop)
    tight = ring < need - 1e-9
    narrow = not held and w.brief.stop < w.brief.hip_depth - LEVEL and girth < need - 1e-9
    if not tight and not narrow:
        return
    stop = _ring_stop(w.brief, need) if held else _least_stop(w.brief, need)
    says = phrase("The opening lets {r} through; hips of {h} need {n}.", r=ring, h=hip, n=need)
    if narrow and (not tight or stop > _ring_stop(w.brief, need)):
        says = phrase("The skirt measures {g} round below the opening; hips of {h} need {n}.", g=girth, h=hip, n=need)
    remedy = _deeper(w, stop, need, held)
    does = phrase("Zip stop to {s}", s=stop) if remedy else None
    yield Finding("opening-passes-hips", "doubt", says, "opening.zip_stop", "skirt", remedy, does)


def _deeper(w: Worked, stop: float, need: float, held: list[Finding]) -> Edit | None:
    """The edit to a deeper stop, if there is room for one; what hangs lower for it may want ease."""
    if not _fits(w, w.brief, stop):
        return None
    edit = {"opening.zip_stop": stop}
    after = rack.edit(w.brief, edit)
    if held or rack.girth(after, after.hip_depth) >= need - 1e-9:
        return edit
    wider = banded(w, rack.cleared(after, need))
    return None if wider is None else {**edit, **wider}


def _ring_stop(brief: Brief, need: float) -> float:
    """The shortest stop (mm) whose opening lets so much through with the band, to 5 mm up."""
    return math.ceil((need - brief.closed) / 2 / 5 - 1e-9) * 5.0


def _least_stop(brief: Brief, need: float) -> float:
    """The shortest stop (mm) that passes the hips, ring and skirt below it; as it is, if that does."""
    depth = brief.hip_depth
    stop = brief.stop if brief.closed + 2 * brief.stop >= need - 1e-9 else _ring_stop(brief, need)
    if stop >= depth - LEVEL or _girth_at(brief, stop) >= need - 1e-9:
        return stop
    steps = (5.0 * k for k in range(math.ceil(stop / 5), math.ceil(depth / 5) + 1))
    return next((s for s in steps if s >= depth - LEVEL or _girth_at(brief, s) >= need), depth)


def _girth_at(brief: Brief, stop: float) -> float:
    """Girth just below an opening that ended there: what hangs below it may change with it."""
    return rack.girth(rack.edit(brief, {"opening.zip_stop": stop}), stop)


def _fits(w: Worked, brief: Brief, stop: float) -> bool:
    """Whether there is room for a stop so deep above the hem."""
    return within(w, "opening.zip_stop", stop) and stop <= brief.finished_length - HAND_CLOSE


LEVEL = 20.0
"""An opening that ends no more than this (mm) above the hips is passed by them (common practice, no source)."""


def stop_above_hem(w: Worked) -> Iterator[Finding]:
    """The opening ends above the hem, with at least 2 cm of seam below it."""
    if w.brief.opening.kind in ("wrap", "none"):
        return
    most = math.floor((w.brief.finished_length - HAND_CLOSE) / 5) * 5.0
    stop = w.brief.opening.zip_stop
    if stop > w.brief.finished_length - HAND_CLOSE + 1e-9:
        says = phrase(
            "The zip stop at {s} leaves no seam above the hem, which is {l} down.", s=stop, l=w.brief.finished_length
        )
        fits = within(w, "opening.zip_stop", most)
        yield Finding(
            "stop-above-hem", "stop", says, "opening.zip_stop", "skirt",
            {"opening.zip_stop": most} if fits else None, phrase("Zip stop to {s}", s=most) if fits else None,
        )  # fmt: skip


ALLOWS = {"invisible": 10.0, "lapped": 15.0, "centred": 10.0}
"""Least seam allowance each zip can be sewn into, mm: a lap is stitched 10 to 13 from its fold (common practice,
no source)."""


def allowance_holds_zip(w: Worked) -> Iterator[Finding]:
    """The seam allowance is wide enough to sew the zip into. The remedy is the least that is."""
    kind, have = w.brief.opening.kind, w.brief.seams.allowance
    need = ALLOWS.get(kind, 0.0)
    if have < need - 1e-9:
        says = phrase("A {k:word} zip wants a seam allowance of {n}; this one is {h}.", k=tr(kind), n=need, h=have)
        remedy = {"seams.allowance": need}
        yield Finding(
            "allowance-holds-zip", "doubt", says, "seams.allowance", "skirt", remedy, phrase("Allowance {n}", n=need)
        )


def zip_long_enough(w: Worked) -> Iterator[Finding]:
    """A zip on hand reaches the stop; an invisible one runs on 25 mm past it. A longer one is shortened.

    The remedy for one too short is to buy another.
    """
    have = w.brief.opening.zip_on_hand
    if w.brief.opening.kind not in ZIPS:
        return
    need = shortest_zip(w.brief.opening, w.brief.stop)
    if have is not None and have < need - 1e-9:
        says = phrase("The zip on hand is {h}; this opening needs {n}.", h=have, n=need)
        buy = zip_sold(need)
        remedy = {"opening.zip_on_hand": None}
        yield Finding(
            "zip-long-enough", "doubt", says, "opening.zip_on_hand", "skirt", remedy, phrase("Buy {z}", z=buy)
        )
    elif have is not None and too_long(have, need):
        says = phrase(
            "The zip on hand is {m} longer than it need be: bar-tack it at {n} and cut below.", m=have - need, n=need
        )
        yield Finding("zip-long-enough", "note", says, "opening.zip_on_hand", "skirt")
