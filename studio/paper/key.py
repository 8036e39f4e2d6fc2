"""The key to the lines, from the one table of them."""

from studio.drawing import PENS, Drawing, Ink, Mark, Words
from studio.drawing.furniture import arrow, stroke
from studio.drawing.lettering import fitted
from studio.geometry import Point
from studio.words import tr

SHOWN: tuple[Ink, ...] = ("cut", "seam", "fold", "centre", "gather", "grain", "join")

_MOST = 46.0


def key(left: float, top: float, room: float) -> Drawing:
    """Each line with its name under it, in one row."""
    step = min(_MOST, (room + 6) / len(SHOWN))
    marks: list[Mark] = []
    for i, ink in enumerate(SHOWN):
        x, end = left + i * step, left + (i + 1) * step - 6
        if ink == "grain":
            marks += arrow(Point(x, top), Point(end, top), ink, 4, both=True)
        else:
            marks.append(stroke(ink, (x, top), (end, top)))
        text, height = fitted(tr(PENS[ink].words), 3.2, step - 2)
        marks.append(Words(text, Point(x, top + 5), height))
    return tuple(marks)
