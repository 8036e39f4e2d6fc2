"""The pieces of a lay plan on paper: outlines to scale, the moves of their templates, what lies on a band, names."""

from collections.abc import Iterator, Sequence
from functools import reduce
from itertools import product

from studio.cloth.placed import Placed
from studio.cloth.traced import traced
from studio.drawing import Drawing, Mark, Stroke, Words, moved
from studio.drawing.furniture import stroke
from studio.drawing.lettering import width, words_box
from studio.geometry import Box, Point, rectangle
from studio.units import spell
from studio.words import phrase, tr

from ..cut_step import CutStep
from .chips import labels, number_alone
from .fit import Fit
from .ground import motifs
from .moves import moves
from .plan import LayPlan
from .spots import around, meets_any, spot

SMALL = 3.2
_CUT, _FOLD = 0.5, 0.2
_SAME = 0.5
"""Lines of a piece nearer than this (mm of cloth) are one."""


def pieces(plan: LayPlan, fit: Fit) -> Drawing:
    """Every piece where it lies, and in what is left over, how large that is."""
    steps = [s for s in plan.steps if s.placed is not None]
    outlines: list[Mark] = []
    words: list[Mark] = []
    taken: list[Box] = []
    flowers = motifs(plan, fit)
    for step in steps:
        assert step.placed is not None
        outlines += _lines(step.placed, fit)
        ticks = moves(step, plan, fit)
        words += ticks
        if named := [words_box(m).grown(0.6) for m in ticks if isinstance(m, Words)]:
            taken.append(reduce(Box.joined, named))
        words += _line_on_band(step, plan, fit, taken, flowers)
    for step in steps:
        assert step.placed is not None
        words += _name(plan, step.placed, fit, taken, flowers)
    return (*outlines, *words, *_left_over(plan, fit, taken, flowers))


def _lines(one: Placed, fit: Fit) -> Iterator[Mark]:
    lines = traced(one)
    yield Stroke(fit.path(lines.cut), "cut", _CUT)
    yield from (Stroke(fit.path(path), "fold", _FOLD) for path in lines.folds)


def _line_on_band(step: CutStep, plan: LayPlan, fit: Fit, taken: list[Box], flowers: Sequence[Box]) -> Iterator[Mark]:
    """The line of a piece that runs along a band, named where there is room beside it and clear of the print; its step
    names it too.
    """
    if step.placed is None or step.on_band is None:
        return
    one, band = step.placed, step.on_band
    a, b = fit.on(Point(one.at.x, band.at)), fit.on(Point(one.at.x + one.along, band.at))
    if all(abs(path.start.y - band.at) > _SAME for path in traced(one).folds):
        yield stroke("fold", a, b, width=_FOLD)
    says = spell(phrase("{l:word}, {y:bare}", l=band.line, y=band.at), plan.said.unit)
    inside = fit.box(_box(one)).grown(-0.5)
    for along, down in product(range(3, max(4, int(b.x - a.x)), 2), (SMALL * 1.05, -0.9)):
        words = Words(says, a.moved(along, down), SMALL, patch=True)
        there = words_box(words)
        if inside.joined(there) == inside and not meets_any(there, (*taken, *flowers)):
            taken.append(there.grown(0.4))
            yield words
            return


def _box(one: Placed) -> Box:
    """The box of a piece on the cloth."""
    return Box(one.at.x, one.at.y, one.at.x + one.along, one.at.y + one.across)


def _name(plan: LayPlan, one: Placed, fit: Fit, taken: list[Box], flowers: Sequence[Box]) -> Drawing:
    """The name of a piece where it has room, clear of the print if it can be; its number where it has none."""
    outline = fit.path(traced(one).cut)
    for label in labels(plan, one):
        clear = spot(outline, label.wide, label.high, (*taken, *flowers))
        at = clear or spot(outline, label.wide, label.high, taken)
        if at is not None:
            taken.append(around(at, label.wide, label.high).grown(0.5))
            return moved(label.marks, *at)
    chip = number_alone(plan.number(one))
    box = outline.box
    shares = (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9)
    places = [Point(box.left + box.width * x, box.top + box.height * y) for x in shares for y in shares]
    free = (p for p in places if not meets_any(around(p, chip.wide, chip.high), taken))
    at = next(free, None)
    if at is None:
        return ()
    taken.append(around(at, chip.wide, chip.high))
    return moved(chip.marks, *at)


def _left_over(plan: LayPlan, fit: Fit, taken: list[Box], flowers: Sequence[Box]) -> Iterator[Mark]:
    """The largest whole pieces of cloth that are left, each with its size near its middle, clear of the print; all
    sizes stand in the words too.
    """
    cloth = fit.cloth
    for rest in plan.left.whole:
        box = fit.box(rest.place)
        box = Box(box.left, box.top, min(box.right, cloth.right), box.bottom)
        size = spell(rest.size(bare=True), plan.said.unit)
        for lines, turn in (((tr("left over"), size), 0), ((f"{tr('left over')} {size}",), -90), ((size,), 0)):
            wide = max(width(line, SMALL) for line in lines) + 1.2
            high = SMALL * 1.3 * len(lines)
            across, down = (high, wide) if turn else (wide, high)
            middle = spot(rectangle(*box), across, down, (*taken, *flowers))
            if middle is not None:
                taken.append(around(middle, across, down))
                for k, line in enumerate(lines):
                    off = (k - (len(lines) - 1) / 2) * SMALL * 1.3 + SMALL * 0.34
                    at = middle.moved(off, 0) if turn else middle.moved(0, off)
                    yield Words(line, at, SMALL, "rule", turn=turn, align="centre", patch=True)
                break
