"""Buttons and holes, hooks and bars, snaps: where they sit on a band, and how long a hole must be."""

import math

from studio.brief import Brief
from studio.brief.conditions import BANDS

HOOK_INSET = 3.0
"""A hook lies 1/8 in back from the overlap's edge (New Mexico State Univ. Extension C-232)."""
HOOK_EVERY = 40.0
"""A band wider than this (mm) takes a second hook and bar (common practice, no source)."""
SNAP_INSET = 10.0
"""The middle of a snap lies this far (mm) from the band's end: its own width (common practice, no source)."""
SNAP = 10.0
"""A snap is this wide, mm (common practice, no source)."""
HOOK = 8.0
"""A hook or bar is drawn this long, mm."""
BUTTON_ROOM = 6.0
"""Cloth to be left between button and edge, 1/4 in (Assn of Sewing and Design Professionals, standards)."""


def hole_length(shape: str, diameter: float, height: float) -> float:
    """Length of a buttonhole, mm.

    Flat: diameter and thickness (Univ. of Minnesota Extension Bulletin 576, 1965). Domed and ball: the handbooks
    disagree, so the longest of 1 1/4 diameters (Watson, Textiles and Clothing), half the girth of the ball, and
    diameter and thickness.
    """
    if shape == "flat":
        return diameter + height
    return max(1.25 * diameter, math.pi * diameter / 2, diameter + height)


def even_places(count: int, first: float, last: float) -> list[float]:
    """Places of `count` buttons from `first` to `last`, evenly apart; one alone sits in the middle."""
    if count == 1:
        return [(first + last) / 2]
    return [first + (last - first) * k / (count - 1) for k in range(count)]


def held_by(brief: Brief) -> str:
    """What holds the ends: what the maker chose, where there is a band for it; "hook and eye" where ends only meet,
    "hook and bar" where an edge without a band laps and is to be buttoned; "" where there are no ends.
    """
    if not ends(brief):
        return ""
    if not laps(brief):
        return "hook and eye"
    kind = brief.fastening.kind
    return "hook and bar" if kind == "buttons" and brief.waistband.kind not in BANDS else kind


def ends(brief: Brief) -> bool:
    """Whether the waist has ends to be fastened: a casing with elastic is a ring."""
    return brief.opening.kind != "none" and brief.waistband.kind != "elastic"


def laps(brief: Brief) -> bool:
    """Whether the ends lie over each other; where there is no band they only do so in a wrap."""
    return ends(brief) and (brief.waistband.kind in BANDS or brief.opening.kind == "wrap")


def inset(brief: Brief) -> float:
    """From the overlapping end to where the pull comes: a hole's outer end, the hook's, or the snap, mm."""
    match held_by(brief):
        case "buttons":
            return brief.fastening.end_inset
        case "snap":
            return SNAP_INSET
    return HOOK_INSET


def hook_count(width: float) -> int:
    """How many hooks and bars a band of that width takes."""
    return max(1, math.ceil(width / HOOK_EVERY))


def button_place(brief: Brief) -> float:
    """From the plain end to the button, bar or eye, mm: b = x − i, unless the maker has set it by hand. An eye stands
    out past the end as far as its hook lies back.
    """
    f, held = brief.fastening, held_by(brief)
    if held == "hook and eye":
        return -HOOK_INSET
    if held == "buttons" and f.button_inset is not None:
        return f.button_inset
    return max(0.0, over(brief) - inset(brief))


def closed_girth(brief: Brief) -> float:
    """What the closed band measures, mm: B + x − i − b, from the hole's outer end or the hook to button or bar; where
    no ends are fastened B, or what the elastic draws it in to.
    """
    if brief.waistband.kind == "elastic":
        return elastic_girth(brief)
    if not ends(brief):
        return brief.closed
    return brief.closed + over(brief) - inset(brief) - button_place(brief)


def elastic_girth(brief: Brief) -> float:
    """Round the elastic once it is joined, mm."""
    return brief.body.waist - brief.waistband.elastic_less


def over(brief: Brief) -> float:
    """How far one end lies over the other, mm: the extension, or a wrap's overlap."""
    return brief.band_length - brief.closed
