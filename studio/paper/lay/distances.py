"""Distances of a lay plan, each from one end: across from the first edge, along from the squared end.

Running dimensions from a common origin, in the manner of ISO 129-1: what is read on a tape laid once, never added up.
"""

from collections.abc import Callable, Iterator, Sequence

from studio.drawing import Mark, Words
from studio.drawing.furniture import disc, stroke
from studio.drawing.lettering import width
from studio.geometry import Point
from studio.units import write_length

from ..spread import spread
from .fit import Fit
from .plan import LayPlan

SMALL = 3.2
_SAME = 1.0
"""Places nearer to each other than this (mm of cloth) are one."""
_ASIDE = 6.0
"""A number stands no farther than this from its place (mm)."""
_TICK, _LEAD = 1.2, 3.0


def across(plan: LayPlan, fit: Fit) -> Iterator[Mark]:
    """At the left: how far each piece lies from the first edge, and how wide the cloth is."""
    places = _across(plan)
    ys = [fit.on(Point(0, y)).y for y in places]
    x, box = fit.cloth.left - 0.5, fit.cloth
    kept = _labelled(places, ys, lambda mm: SMALL * 1.12, (box.top - 2.5, box.bottom + 2.5), (0.0, plan.lay.width))
    yield from _axis([(x, y) for y in ys], (-1, 0))
    for k, at in kept:
        text = write_length(places[k], plan.said.unit, bare=True)
        yield stroke("dimension", (x - _TICK, ys[k]), (x - _TICK - _LEAD, at))
        yield Words(text, Point(x - _TICK - _LEAD - 0.6, at + SMALL * 0.33), SMALL, "dimension", align="right")


def along(plan: LayPlan, fit: Fit) -> Iterator[Mark]:
    """Under the cloth: how far each piece begins and ends from the squared end, and where the cloth ends."""
    unit, box = plan.said.unit, fit.cloth
    ends = () if fit.torn else (plan.length,)
    places = _apart([0.0, plan.lay.length, *ends, *(x for p in plan.lay.placed for x in (p.at.x, p.at.x + p.along))])
    xs = [fit.on(Point(x, 0)).x for x in places]
    y, takes = box.bottom + 0.5, plan.lay.length

    def wide(mm: float) -> float:
        return width(write_length(mm, unit, bare=True), SMALL, "semibold") + 1.6

    kept = _labelled(places, xs, wide, (box.left - 4, box.right + 4), (0.0, takes))
    yield from _axis([(x, y) for x in xs], (0, 1))
    for k, at in kept:
        text = write_length(places[k], unit, bare=True)
        yield stroke("dimension", (xs[k], y + _TICK), (at, y + _TICK + 1.8))
        last = abs(places[k] - takes) < _SAME
        face, ink = ("semibold", "plain") if last else ("regular", "dimension")
        yield Words(text, Point(at, y + _TICK + 4.4), SMALL, ink, align="centre", face=face)  # type: ignore[arg-type]


def room_for_across(plan: LayPlan) -> float:
    """How much room the distances take at the left of the cloth, mm."""
    texts = [write_length(y, plan.said.unit, bare=True) for y in _across(plan)]
    return max(width(t, SMALL) for t in texts) + _TICK + _LEAD + 1.8


def _across(plan: LayPlan) -> list[float]:
    return _apart([0.0, plan.lay.width, *(y for p in plan.lay.placed for y in (p.at.y, p.at.y + p.across))])


def _apart(places: Sequence[float]) -> list[float]:
    """Places in order, each once."""
    found: list[float] = []
    for place in sorted(places):
        if not found or place - found[-1] > _SAME:
            found.append(place)
    return found


def _labelled(
    places: Sequence[float], at: Sequence[float], long: Callable[[float], float], room: tuple[float, float],
    first: Sequence[float],
) -> list[tuple[int, float]]:  # fmt: skip
    """Which places are written, and where each stands: the first ones, then every one that no other pushes far aside.

    The steps have them all.
    """
    order = sorted(range(len(places)), key=lambda k: (min(abs(places[k] - f) for f in first) > _SAME, k))
    kept: list[int] = []
    stand: list[float] = []
    for k in order:
        tried = sorted((*kept, k))
        sizes = [long(places[j]) for j in tried]
        if sum(sizes) > room[1] - room[0]:
            continue
        there = spread([at[j] for j in tried], sizes, *room)
        if not kept or max(abs(y - at[j]) for j, y in zip(tried, there, strict=True)) <= _ASIDE:
            kept, stand = tried, there
    return list(zip(kept, stand, strict=True))


def _axis(ticks: Sequence[tuple[float, float]], way: tuple[int, int]) -> Iterator[Mark]:
    """A dot at the common origin, and a tick at each place along the edge of the cloth."""
    yield disc(Point(*ticks[0]), 0.7, "dimension", "black")
    for x, y in ticks[1:]:
        yield stroke("dimension", (x, y), (x + way[0] * _TICK, y + way[1] * _TICK), width=0.25)
