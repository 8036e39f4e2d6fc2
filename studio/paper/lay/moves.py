"""The moves of a template, drawn on its piece: a tick where each begins, its number, its distance from the cut end."""

from collections.abc import Iterator

from studio.drawing import Drawing, Mark, Words
from studio.drawing.furniture import stroke
from studio.drawing.lettering import width
from studio.geometry import Box, Point
from studio.units import write_length

from ..cut_step import CutStep, Move
from .fit import Fit
from .plan import LayPlan

SMALL = 3.2
_TICK = 2.2
_LINE = SMALL * 1.25


def moves(step: CutStep, plan: LayPlan, fit: Fit) -> Drawing:
    """Along both edges of the panel; named along the waist edge, where the template is laid."""
    one = step.placed
    if one is None or not step.moves:
        return ()
    box = fit.box(Box(*one.at, one.at.x + one.along, one.at.y + one.across))
    return tuple(_drawn(step.moves, box, plan, fit, waist_below=one.turn == 180))


def _drawn(found: tuple[Move, ...], box: Box, plan: LayPlan, fit: Fit, *, waist_below: bool) -> Iterator[Mark]:
    """Number over distance where both fit between two ticks; turned upright where they are close; else the number, or
    only the tick: the steps have them all.
    """
    texts = [write_length(m.begins, plan.said.unit, bare=True) for m in found]
    edge, inward = (box.bottom, -1) if waist_below else (box.top, 1)
    room, pitch = box.height - 2 * _TICK - 2, found[0].wide / fit.ratio
    longest = max(width(t, SMALL) for t in texts)
    both = longest + width(f"{found[-1].number}:  ", SMALL)
    flat, upright = pitch > longest + 2.4 and room > 2 * _LINE, pitch > SMALL * 1.15 and room > both
    alone = pitch > width(str(found[-1].number), SMALL, "bold") + 2.4 and room > _LINE
    for move, text in zip(found, texts, strict=True):
        x, way = fit.on(Point(move.begins, 0)).x, 1 if move.ends > move.begins else -1
        for y, down in ((edge, inward), (box.top + box.bottom - edge, -inward)):
            yield stroke("plain", (x, y), (x, y + down * _TICK), width=0.35, colour="accent")
        wide, number = move.wide / fit.ratio, str(move.number)
        if flat and wide > width(text, SMALL) + 2.4:
            yield _beside(text, x, edge, inward, way, 0)
            yield _beside(number, x, edge, inward, way, 1, bold=True)
        elif flat or (not upright and alone):
            if wide > width(number, SMALL, "bold") + 2.4:
                yield _beside(number, x, edge, inward, way, 0, bold=True)
        elif upright and wide > SMALL * 1.15:
            at = Point(x + (1.2 * SMALL if way > 0 else -0.45 * SMALL), edge + inward * (_TICK + 1))
            align = "right" if inward > 0 else "left"
            yield Words(f"{number}:  {text}", at, SMALL, turn=-90, align=align, colour="accent", patch=True)  # type: ignore[arg-type]


def _beside(text: str, x: float, edge: float, inward: int, way: int, line: int, *, bold: bool = False) -> Words:
    """Words beside a tick, on the first or the second line from the edge."""
    y = edge + (_TICK + 0.8 + 0.75 * SMALL if inward > 0 else -_TICK - 1.4) + inward * line * _LINE
    at, align = Point(x + way * 1.2, y), "left" if way > 0 else "right"
    face = "bold" if bold else "regular"
    return Words(text, at, SMALL, align=align, face=face, colour="accent", patch=True)  # type: ignore[arg-type]
