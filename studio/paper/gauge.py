"""Gauges: the marks by which two sheets are matched, three on each join.

The lower sheet, which carries the tab, has a comb of 1 mm teeth and a bar that runs 3 mm past the join; the upper
sheet's half begins at its cut edge. Together they are one bar whose rungs stand 10 mm apart: bars in line means
matched along the join, rungs 10 apart matched across it, and a slip is read in teeth.
"""

from collections.abc import Iterable, Sequence
from typing import Literal, TypeAlias

from studio.drawing import Drawing, Mark
from studio.drawing.furniture import disc, placed, stroke
from studio.geometry import Box, Point

from .grid import Join
from .reach import Trace

Half: TypeAlias = Literal["lower", "upper"]

REACH = 9.4
"""How far a gauge reaches from the join, mm: the middle one's dot."""

_ROOM = 6.0
_FAR = 60
_ENDS = {"upright": 22.0, "lying": 30.0}
_APART = 18.0


def gauge(half: Half, *, middle: bool = False) -> Drawing:
    """Half a gauge on an upright join at x = 0, whose bar is y = 0."""
    side = -1 if half == "lower" else 1
    marks: list[Mark] = [
        stroke("gauge", (-7, 0), (3, 0)) if half == "lower" else stroke("gauge", (0, 0), (7, 0)),
        stroke("gauge", (side * 5, -3), (side * 5, 3), width=0.35),
    ]
    if half == "lower":
        marks += [stroke("sheet", (-2.4, tooth), (0, tooth)) for tooth in (-3, -2, -1, 1, 2, 3)]
    if middle:
        marks.append(disc(Point(side * 8.3, 0), 1.1, "gauge", fill="accent"))
    return tuple(marks)


def gauge_on(join: Join, at: float, half: Half, *, middle: bool, dx: float, dy: float) -> Drawing:
    """Half a gauge on a join of the plan, `at` mm along it, on a page that shows the plan shifted by dx and dy."""
    place = Point(join.place, at) if join.way == "upright" else Point(at, join.place)
    return placed(gauge(half, middle=middle), place.moved(dx, dy), turn=0 if join.way == "upright" else 90)


def gauge_places(join: Join, drawn: Iterable[Trace]) -> tuple[float, float, float]:
    """Where along a join its gauges stand (mm): near its ends and in its middle, slid 6 mm clear of lines and words."""
    long = join.end - join.start
    near = min(_ENDS[join.way], long / 4)
    spans = _crossing(join, drawn)
    places: list[float] = []
    for wanted in ((join.start + join.end) / 2, join.start + near, join.end - near):
        places.append(_clear(wanted, spans, places, join))
    middle, first, last = places
    return first, middle, last


def _crossing(join: Join, drawn: Iterable[Trace]) -> list[tuple[float, float]]:
    """The stretches of a join that lines and words cover; lines that run along it cannot be helped."""
    strip = Box(join.place - REACH, join.start, join.place + REACH, join.end)
    if join.way == "lying":
        strip = Box(join.start, join.place - REACH, join.end, join.place + REACH)
    spans = []
    for t in drawn:
        for box in _parts(t, strip):
            first, last = (box.top, box.bottom) if join.way == "upright" else (box.left, box.right)
            if t.solid or last - first < (join.end - join.start) / 3:
                spans.append((first, last))
    return spans


def _parts(t: Trace, strip: Box) -> Iterable[Box]:
    """The chords of a run that enter the strip, as boxes; words and fills as one."""
    if not t.box.meets(strip):
        return
    if t.solid:
        yield t.box
        return
    for a, b in zip(t.points, t.points[1:], strict=False):
        chord = Trace((a, b), Box(min(a.x, b.x), min(a.y, b.y), max(a.x, b.x), max(a.y, b.y)))
        if chord.touches(strip):
            yield chord.box


def _clear(wanted: float, spans: Sequence[tuple[float, float]], taken: Sequence[float], join: Join) -> float:
    """The place nearest to `wanted` that is clear of the spans, or failing that, near the fewest of them."""
    edge = min(10.0, (join.end - join.start) / 8)
    best = (len(spans) + 1, 0.0, wanted)
    for far in range(_FAR + 1):
        for place in (wanted - far, wanted + far):
            if not join.start + edge <= place <= join.end - edge or any(abs(place - t) < _APART for t in taken):
                continue
            near = sum(a - _ROOM < place < b + _ROOM for a, b in spans)
            best = min(best, (near, float(far), place))
        if not best[0]:
            break
    return best[2]
