"""The edges of a wrap where a panel's centre is drawn on past the opening's place."""

from msgspec.structs import replace

from studio.brief import Brief
from studio.geometry import Line, Path, line
from studio.words import phrase

from .marks import notch_on, quarter_name
from .piece import LineMark
from .shape import Shape


def lap(brief: Brief) -> float:
    """What each edge of a wrap goes on past the centre, mm; at the side the whole skirt is wider instead."""
    return 0.0 if brief.opening.place == "side" else brief.over / 2


def lapped(brief: Brief, shape: Shape) -> Shape:
    """A wrap's edge: the centre goes on straight by half the overlap, and where it lies is marked."""
    by = lap(brief)
    top, foot = shape.top.end, shape.hem.start
    waist = Path((*shape.top.curves, Line(top, top.moved(by, 0))))
    hem = Path((Line(foot.moved(by, 0), foot), *shape.hem.curves))
    words = phrase(quarter_name(brief, 0))
    notch = notch_on(waist, waist.length - by, brief.seams.allowance, "waist", ("opening.overlap",))
    return replace(
        shape, top=waist, hem=hem, right=line(*top.moved(by, 0), *foot.moved(by, 0)),
        lines=(*shape.lines, LineMark("centre", line(*top, *foot), words)), spots=(*shape.spots, notch),
    )  # fmt: skip
