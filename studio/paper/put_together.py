"""How the sheets go together, told in three steps, and how the gauges are read."""

from collections.abc import Callable

from msgspec import Struct

from studio.drawing import Drawing, Mark, Words
from studio.drawing.furniture import Paragraph, paragraph, placed
from studio.drawing.lettering import fitted
from studio.geometry import Point
from studio.units import Unit, spell
from studio.words import phrase, tr

from . import joining
from .grid import Grid
from .heading import section
from .plan import Plan

_BODY, _SMALL, _LEAD = 3.6, 3.4, 1.34


class _Step(Struct, frozen=True):
    """One of the things to do, with its drawing."""

    name: str
    says: str
    drawing: Callable[[], Drawing]


def _steps(plan: Plan, grid: Grid, unit: Unit) -> list[_Step]:
    if len(grid.sheets) == 1:
        return []
    long, longest = max((max(p.box.width, p.box.height), p.name) for p in plan.pieces)
    name, _ = fitted(longest, _SMALL, 38, least=_SMALL)
    check = phrase("Last, tape the length of {piece:word}, from cut line to cut line: {long}.", piece=name, long=long)
    tape = spell(check, unit)
    cut = tr("Cut away the hatched strip, left and top. Cut on the red line of dashes and dots.")
    lay = tr(
        "Lay the cut edge on its neighbour so that the red bars meet, as shown below: first in the middle; then share "
        "what is left."
    )
    steps = [_Step(tr("Trim"), cut, joining.trimming), _Step(tr("Match and glue"), lay, joining.matching)]
    if grid.rows == 1:
        return [*steps, _Step(tr("Measure"), tape, joining.one_row)]
    row = tr("Glue each row, then lay row 2 on row 1.")
    return [*steps, _Step(tr("Rows, then rows"), f"{row} {tape}", joining.rows)]


def put_together(
    plan: Plan, grid: Grid, left: float, y: float, wide: float, unit: Unit, *, drawn: bool = True
) -> Paragraph:  # fmt: skip
    """Under a heading whose baseline is y: trimming, matching, then rows, side by side; or that nothing is glued.

    Where room is short they are told and not `drawn`.
    """
    steps = _steps(plan, grid, unit)
    marks: list[Mark] = [
        section(tr("Put together") if steps else tr("Nothing to glue: cut out on the thick lines."), left, y)
    ]
    below = y
    room = (min(wide, 230.0) - 2 * 6) / 3
    high = joining.HEIGHT + 4 if drawn else 0.0
    for i, step in enumerate(steps):
        x = left + i * (room + 6)
        marks += placed(step.drawing(), Point(x, y + 4)) if drawn else ()
        head = Point(x, y + high + 4)
        marks.append(Words(f"{i + 1}  {step.name}", head, _BODY, "plain", face="semibold"))
        says = paragraph(step.says, x, head.y + 1.5, room, _SMALL, lead=_LEAD)
        marks += says.marks
        below = max(below, says.below)
    return Paragraph(tuple(marks), below)


def gauge_reading(left: float, y: float, wide: float, unit: Unit) -> Drawing:
    """The bars as they should meet, and one tooth of the comb out."""
    apart = tr("1 cm") if unit == "cm" else tr("a little over 3/8 in")
    good = spell(phrase("Good: the bars make one line, their cross strokes {apart:word} apart.", apart=apart), unit)
    out = tr("Not yet: the right sheet lies one tooth of the comb too low. Slide it up.")
    half = min(wide / 2, 90.0)
    marks: list[Mark] = []
    for i, (teeth, says) in enumerate(((0, good), (1, out))):
        x = left + i * half + 12
        marks += placed(joining.gauge_read(teeth), Point(x, y + 6))
        marks += paragraph(says, x + 14, y - 0.6, half - 28, 3.2).marks
    return tuple(marks)
