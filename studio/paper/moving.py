"""Moving the template: every place it is laid down, small, with the running totals that the tape must show."""

import math
from itertools import accumulate, pairwise

from studio.drawing import Mark, Words
from studio.drawing.furniture import frame, paragraph, stroke
from studio.drawing.lettering import width, words_box
from studio.geometry import TOUCH, Box, Point
from studio.units import Unit, spell, write_length
from studio.words import phrase, tr

from .cut_out import CutOut
from .spread import spread
from .template import Moves

_TITLE, _TEXT, _TOTAL, _NUMBER = 4.4, 3.4, 3.0, 4.2
_CELL, _TALL, _LOW = 10.0, 20.0, 8.0
_TOTALS = 5.0
_LEAST = 80.0


def moving(step: Moves, unit: Unit, wide: float) -> CutOut:
    """The moves side by side, in as many rows as `wide` mm ask for; their widths are to scale, their height is not."""
    moves = [step.width] * (step.count - 1) + [step.last]
    totals = [write_length(t, unit, bare=True) for t in accumulate(moves)]
    cell = max(_CELL, max(width(t, _TOTAL, "bold") for t in totals) + 1.6)
    row = min(step.count, max(1, math.floor((wide - cell) / cell)))
    tall = _TALL if step.count <= row else _LOW
    marks: list[Mark] = [Words(tr("Moving the template"), Point(0, 3.4), _TITLE, "plain", face="semibold")]
    y = 6.5
    for first in range(0, step.count, row):
        part = moves[first : first + row]
        edges = [0.0, *accumulate(cell * m / step.width for m in part)]
        for k, (a, b) in enumerate(pairwise(edges)):
            short = part[k] < step.width - TOUCH
            marks.append(frame("plain", Box(a, y, b, y + tall), width=0.25, fill="tone" if short else None))
            number = str(first + k + 1)
            if width(number, _NUMBER, "semibold") + 1 <= b - a:
                at = Point((a + b) / 2, y + tall / 2 + _NUMBER * 0.33)
                marks.append(Words(number, at, _NUMBER, "plain", align="centre", face="semibold"))
        marks.append(stroke("cut", (0, y), (edges[-1], y)))
        shown = totals[first : first + row]
        sizes = [width(t, _TOTAL, "bold") + 1 for t in shown]
        places = spread(edges[1:], sizes, 0, edges[-1] + cell + 2)
        for k, (text, x) in enumerate(zip(shown, places, strict=True)):
            last = first + k + 1 == step.count
            at = Point(x, y + tall + _TOTALS - 1.2)
            marks.append(Words(text, at, _TOTAL, "plain", align="centre", face="bold" if last else "regular"))
        y += tall + _TOTALS + 1
    across = max(_LEAST, *(words_box(m).right for m in marks if isinstance(m, Words)))
    says = paragraph(_says(step, unit), 0, y + 0.5, across, _TEXT, lead=1.28)
    return CutOut("moving the template", (*marks, *says.marks), across, says.below)


def _says(step: Moves, unit: Unit) -> str:
    says = tr(
        "The thick edge is the chalked waist line. After each move read the running total on the tape, and correct "
        "there: then no error grows."
    )
    if step.last < step.width - TOUCH:
        says += " " + spell(phrase("Move {n:count} is {l:bare} wide.", n=step.count, l=step.last), unit)
    return says
