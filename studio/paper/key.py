"""The key to the lines, from the one table of them."""

import math

from studio.drawing import PENS, Drawing, Ink, Mark, Words
from studio.drawing.furniture import arrow, stroke
from studio.drawing.lettering import fitted
from studio.geometry import Point
from studio.words import tr

SHOWN: tuple[Ink, ...] = ("cut", "seam", "fold", "centre", "gather", "grain", "join")

_MOST, _LEAST = 46.0, 24.0
_ROW = 9.5


def _in_a_row(room: float) -> int:
    return len(SHOWN) if (room + 6) / len(SHOWN) >= _LEAST else math.ceil(len(SHOWN) / 2)


def key_height(room: float) -> float:
    """How high the key is in a room so wide, mm."""
    return 6.5 + (math.ceil(len(SHOWN) / _in_a_row(room)) - 1) * _ROW


def key(left: float, top: float, room: float) -> Drawing:
    """Each line with its name under it, in one row, or in two where the room is narrow."""
    row = _in_a_row(room)
    step = min(_MOST, (room + 6) / row)
    marks: list[Mark] = []
    for i, ink in enumerate(SHOWN):
        x, y = left + i % row * step, top + i // row * _ROW
        end = x + step - 6
        if ink == "grain":
            marks += arrow(Point(x, y), Point(end, y), ink, 4, both=True)
        else:
            marks.append(stroke(ink, (x, y), (end, y)))
        text, height = fitted(tr(PENS[ink].words), 3.2, step - 4)
        marks.append(Words(text, Point(x, y + 5), height))
    return tuple(marks)
