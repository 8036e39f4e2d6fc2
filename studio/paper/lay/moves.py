"""The moves of a template, drawn on its piece: a tick where each begins, its number, its distance from the cut end."""

from collections.abc import Iterator

from studio.drawing import Drawing, Mark, Words
from studio.drawing.furniture import stroke
from studio.drawing.lettering import LEAST, width
from studio.geometry import Box, Point
from studio.units import write_length

from ..cut_step import CutStep, Move
from .fit import Fit
from .plan import LayPlan

SMALL = 3.2
_TICK = 2.2
_LINE = SMALL * 1.25
_AIR, _TALL = 2.4, 1.03
"""What words need beside their width (mm), and between lines of their height."""


def moves(step: CutStep, plan: LayPlan, fit: Fit) -> Drawing:
    """Along both edges of the panel; named along the waist edge, where the template is laid."""
    one = step.placed
    if one is None or not step.moves:
        return ()
    box = fit.box(Box(*one.at, one.at.x + one.along, one.at.y + one.across))
    return tuple(_drawn(step.moves, box, plan, fit, waist_below=one.turn == 180))


def _drawn(found: tuple[Move, ...], box: Box, plan: LayPlan, fit: Fit, *, waist_below: bool) -> Iterator[Mark]:
    """The ticks, and beside each what has room between it and the next: the move's number and its distance, on two
    lines or upright; else its number; the steps have them all.
    """
    texts = [write_length(m.begins, plan.said.unit, bare=True) for m in found]
    edge, inward = (box.bottom, -1) if waist_below else (box.top, 1)
    room, pitch = box.height - 2 * _TICK - 2, found[0].wide / fit.ratio
    most = str(found[-1].number)
    flat = pitch > max(width(t, SMALL) for t in texts) + _AIR and room > 2 * _LINE
    upright = pitch > SMALL * _TALL and room > max(width(f"{most}:  {t}", SMALL) for t in texts)
    level = pitch > width(most, SMALL, "bold") + _AIR and room > _LINE
    for move, text in zip(found, texts, strict=True):
        x, way = fit.on(Point(move.begins, 0)).x, 1 if move.ends > move.begins else -1
        for y, down in ((edge, inward), (box.top + box.bottom - edge, -inward)):
            yield stroke("plain", (x, y), (x, y + down * _TICK), width=0.35, colour="accent")
        wide, number = move.wide / fit.ratio, str(move.number)
        if flat and wide > width(text, SMALL) + _AIR:
            yield _beside(text, x, edge, inward, way, 0)
            yield _beside(number, x, edge, inward, way, 1, bold=True)
        elif flat or (level and not upright):
            if wide > width(number, SMALL, "bold") + _AIR:
                yield _beside(number, x, edge, inward, way, 0, bold=True)
        elif upright and wide > SMALL * _TALL:
            yield _upright(f"{number}:  {text}", SMALL, x, edge, inward, way)
        elif wide > LEAST * _TALL and room > width(most, LEAST):
            yield _upright(number, LEAST, x, edge, inward, way)


def _upright(text: str, em: float, x: float, edge: float, inward: int, way: int) -> Words:
    """Words beside a tick, read from the right."""
    at = Point(x + (0.9 * em if way > 0 else -0.3 * em), edge + inward * (_TICK + 1))
    align = "right" if inward > 0 else "left"
    return Words(text, at, em, turn=-90, align=align, colour="accent", patch=True)  # type: ignore[arg-type]


def _beside(text: str, x: float, edge: float, inward: int, way: int, line: int, *, bold: bool = False) -> Words:
    """Words beside a tick, on the first or the second line from the edge."""
    y = edge + (_TICK + 0.8 + 0.75 * SMALL if inward > 0 else -_TICK - 1.4) + inward * line * _LINE
    at, align = Point(x + way * 1.2, y), "left" if way > 0 else "right"
    face = "bold" if bold else "regular"
    return Words(text, at, SMALL, align=align, face=face, colour="accent", patch=True)  # type: ignore[arg-type]
