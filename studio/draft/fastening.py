"""Buttons and holes, hooks and bars: where they sit on a band, and how long a hole must be."""

import math

from studio.brief import Brief
from studio.brief.conditions import BANDS
from studio.geometry import Point, line
from studio.words import phrase

from .piece import Handle, LineMark, Spot

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


def inset(brief: Brief) -> float:
    """From the band's overlapping end to where the pull comes: a hole's outer end, the hook's, or the snap, mm."""
    match brief.fastening.kind:
        case "buttons":
            return brief.fastening.end_inset
        case "snap":
            return SNAP_INSET
    return HOOK_INSET


def hook_count(width: float) -> int:
    """How many hooks and bars a band of that width takes."""
    return max(1, math.ceil(width / HOOK_EVERY))


def button_place(brief: Brief) -> float:
    """From the plain end to the button or bar, mm: b = x − i, unless the maker has set it by hand."""
    f = brief.fastening
    if f.kind == "buttons" and f.button_inset is not None:
        return f.button_inset
    return max(0.0, _over(brief) - inset(brief))


def closed_girth(brief: Brief) -> float:
    """What the closed band measures, mm: B + x − i − b, from the hole's outer end or the hook to button or bar; B
    where no ends lap.
    """
    if not laps(brief):
        return brief.closed
    return brief.closed + _over(brief) - inset(brief) - button_place(brief)


def laps(brief: Brief) -> bool:
    """Whether the band has ends that lap over each other and are fastened."""
    return brief.waistband.kind in BANDS and brief.opening.kind != "none"


def _over(brief: Brief) -> float:
    """How far one end of the band lies over the other, mm: the extension, or a wrap's overlap."""
    return brief.band_length - brief.closed


def fasten(brief: Brief) -> tuple[list[LineMark], list[Spot], list[Handle]]:
    """Marks and handles of the fastening on a straight band whose outer half lies from the fold (y = w) to 2w."""
    f, band = brief.fastening, brief.waistband
    if not laps(brief):
        return [], [], []
    end, top = brief.band_length, band.width
    plain = button_place(brief)
    if f.kind != "buttons":
        on = ("fastening.kind", "waistband.extension")
        n, x = hook_count(band.width), end - HOOK_INSET - HOOK / 2
        heights = even_places(n, top + band.width / (2 * n), top + band.width * (1 - 1 / (2 * n)))
        if f.kind == "snap":
            places = [(end - SNAP_INSET, "snap, underneath"), (plain, "snap")]
            return (
                [],
                [Spot("snap", Point(p, y), SNAP, words=phrase(w), governs=on) for p, w in places for y in heights],
                [],
            )
        hooks = [Spot("hook", Point(x, y), HOOK, words=phrase("hook, underneath"), governs=on) for y in heights]
        bars = [Spot("bar", Point(plain, y), HOOK, words=phrase("bar"), governs=on) for y in heights]
        return [], [*hooks, *bars], []
    heights = even_places(f.count, top + f.edge_inset, top + band.width - f.edge_inset)
    long = hole_length(f.button, f.button_diameter, f.button_height)
    placed = ("fastening.button_inset", "fastening.count", "fastening.edge_inset", "fastening.button_diameter")
    holed = ("fastening.end_inset", "fastening.count", "fastening.edge_inset", "fastening.button_height")
    outer = end - f.end_inset
    holes = [
        LineMark("buttonhole", line(outer - long, y, outer, y), phrase("buttonhole {l}", l=long), holed)
        for y in heights
    ]
    buttons = [
        Spot(
            "button",
            Point(plain, y),
            f.button_diameter,
            words=phrase("button {d}", d=f.button_diameter),
            governs=placed,
        )
        for y in heights
    ]
    handles = [
        Handle("fastening.button_inset", Point(plain, heights[-1]), "x", 1.0),
        Handle("fastening.end_inset", Point(outer, heights[-1]), "x", -1.0),
    ]
    if f.count > 1:
        handles.append(Handle("fastening.edge_inset", Point(plain, heights[0]), "y", 1.0))
    return holes, buttons, handles
