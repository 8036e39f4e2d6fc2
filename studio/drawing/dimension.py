"""A measured distance, in the manner of ISO 129-1: a thin line, slim heads, words above the line."""

import math

from studio.geometry import Point

from .furniture import head, stroke
from .lettering import width
from .mark import Drawing, Mark, Words

_HEAD, _SLIM, _SHORT = 2.2, 0.17, 7.0


def dimension(
    start: Point, end: Point, words: str, *, off: float = 0.0, height: float = 3.2, patch: bool = True
) -> Drawing:  # fmt: skip
    """The distance from `start` to `end`, drawn `off` mm to the right of the way, with lines that lead to it.

    Heads where there is room, oblique strokes below 7 mm; words too wide for it stand past the far end. The words
    read from below or from the right.
    """
    along = start.to(end).unit()
    aside = Point(-along.y, along.x)
    a, b = start.along(aside, off), end.along(aside, off)
    marks: list[Mark] = []
    if off:
        over = math.copysign(1.2, off)
        for near, far in ((start, a), (end, b)):
            marks.append(stroke("dimension", near.along(aside, over * 0.7), far.along(aside, over)))
    degrees = math.degrees(math.atan2(along.y, along.x))
    if a.distance(b) >= _SHORT:
        marks += [stroke("dimension", a, b), head(a, degrees + 180, _HEAD, "dimension", _SLIM)]
        marks.append(head(b, degrees, _HEAD, "dimension", _SLIM))
    else:
        marks.append(stroke("dimension", a.along(along, -1.2), b.along(along, 1.2)))
        oblique = along.turned(-45)
        marks += [
            stroke("dimension", p.along(oblique, -1.3), p.along(oblique, 1.3), width=0.3) for p in (a, b)
        ]  # fmt: skip
    if words:
        marks.append(_words(a, b, along, degrees, words, height, patch))
    return tuple(marks)


def _words(a: Point, b: Point, along: Point, degrees: float, words: str, height: float, patch: bool) -> Words:
    turn = degrees - 180 if degrees > 89.99 else degrees + 180 if degrees < -90.01 else degrees
    above = Point(0, -1).turned(turn)
    wide = width(words, height)
    if wide + 1 <= a.distance(b):
        at = a.towards(b, 0.5).along(above, height * 0.32)
    else:
        at = b.along(along, 2 + wide / 2).along(above, -height * 0.33)
    return Words(words, at, height, "dimension", turn, "centre", patch=patch)
