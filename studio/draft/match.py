"""A print that runs on across the seams: panels a whole number of repeats wide, and the marks where motifs meet."""

import math

from studio.brief import Brief
from studio.geometry import Point
from studio.words import phrase

from .marks import notch_depth
from .piece import Spot


def matches_along(brief: Brief, cut: str) -> bool:
    """Whether the motif meets itself across the seams of panels that lie along the cloth."""
    return brief.cloth.match and brief.cloth.repeat is not None and cut == "along"


def matched(brief: Brief, cut: str, flat_width: float, count: int, room: float = math.inf) -> float:
    """The flat width (mm) nearest to what is asked whose `count` panels are whole repeats wide, at least one.

    No panel grows past `room` mm while it has a repeat to give up.
    """
    repeat = brief.cloth.repeat
    if repeat is None or not matches_along(brief, cut):
        return flat_width
    times = max(1, round(flat_width / count / repeat))
    while times > 1 and times * repeat + 2 * brief.seams.allowance > room + 1e-6:
        times -= 1
    return times * repeat * count


def match_marks(brief: Brief, cut: str, wide: float, deep: float, foot: str) -> tuple[Spot, ...]:
    """Notches on the side seams of a straight panel where the motif must meet: at the inner edge of its border, or half
    way down; across the cloth at every repeat up from the hem line.
    """
    cloth, a = brief.cloth, brief.seams.allowance
    if not cloth.match or cloth.repeat is None:
        return ()
    if cut == "along":
        border = next((b for b in cloth.bands if b.holds == "skirt" and foot == "hem"), None)
        high = deep / 2 if border is None else border.end - border.start
        heights = [high if border is None or border.by != "top" else deep - high]
    else:
        heights = [cloth.repeat * k for k in range(1, math.ceil(deep / cloth.repeat))]
    return tuple(
        Spot("notch", Point(x, deep - high), notch_depth(a), turn, side, phrase("match"), ("cloth.repeat",))
        for high in heights
        if a < high < deep - a
        for x, turn, side in ((-a, 0, "left"), (wide + a, 180, "right"))
    )
