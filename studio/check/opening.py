"""Rules about getting into the skirt: the opening, the zip, the stop."""

import math
from collections.abc import Iterator

from studio.draft.panel import zip_stop
from studio.draft.zip import shortest_zip, too_long, zip_sold
from studio.words import phrase, tr

from .finding import Finding, Worked, within

OVER_HIPS = 20.0
"""The opening must be larger than the hip by 20 to 40 mm (common practice, no source)."""
HAND_CLOSE = 20.0
"""Below the stop the seam needs this much (mm) to be sewn at all (common practice, no source)."""


def opening_passes_hips(w: Worked) -> Iterator[Finding]:
    """The ring that goes over the hips is the closed band and twice the zip stop; it must be 2 cm more than they are.

    The skirt just below the stop must pass them too. The remedy is the shortest stop that passes, rounded up to
    5 mm, or the fullness that passes. With no hip measurement the rule can only say so.
    """
    hip, closed = w.brief.body.hip, w.brief.closed
    if hip is None:
        says = phrase("Without a hip measurement the opening cannot be checked.")
        yield Finding("opening-passes-hips", "note", says, "body.hip")
        return
    need, ring = hip + OVER_HIPS, closed + 2 * zip_stop(w.brief)
    if ring < need - 1e-9:
        stop = math.ceil((need - closed) / 2 / 5 - 1e-9) * 5.0
        fits = within(w, "opening.zip_stop", stop) and stop <= w.brief.finished_length - HAND_CLOSE
        says = phrase("The opening lets {r} through; hips of {h} need {n}.", r=ring, h=hip, n=need)
        yield Finding(
            "opening-passes-hips", "doubt", says, "opening.zip_stop", "skirt",
            {"opening.zip_stop": stop} if fits else None, phrase("Zip stop to {s}", s=stop) if fits else None,
        )  # fmt: skip
    girth = w.draft.fact("flat_width")
    if girth < need - 1e-9:
        fullness = math.ceil(need / closed * 20 - 1e-9) / 20
        says = phrase("The skirt measures {g} round; hips of {h} need {n}.", g=girth, h=hip, n=need)
        fits = within(w, "skirt.fullness", fullness)
        yield Finding(
            "opening-passes-hips", "stop", says, "skirt.fullness", "skirt",
            {"skirt.fullness": fullness, "skirt.panels": 0} if fits else None,
            phrase("Fullness {f:ratio}", f=fullness) if fits else None,
        )  # fmt: skip


def stop_above_hem(w: Worked) -> Iterator[Finding]:
    """The opening ends above the hem, with at least 2 cm of seam below it."""
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
    need = ALLOWS[kind]
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
    need = shortest_zip(w.brief.opening, zip_stop(w.brief))
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
