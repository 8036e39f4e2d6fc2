"""The small things every sheet is furnished with: straight strokes, arrow heads, hatching, paragraphs, tick boxes.

Each returns marks in millimetres and knows nothing of skirts; `placed` turns and scales a drawing.
"""

import math
from collections.abc import Iterable

from msgspec import Struct
from msgspec.structs import replace

from studio.geometry import Arc, Box, Cubic, Curve, Line, Path, Point, circle, polyline, rectangle

from .ink import Colour, Ink
from .lettering import wrap
from .mark import Drawing, Face, Group, Mark, Stroke, Words

TURN_OF_HEAD = 0.28
"""Half the width of an arrow head as a share of its length: 5 by 2.8 on a grain line."""


def stroke(ink: Ink, *points: Point | tuple[float, float], width: float = 0.0, colour: Colour | None = None) -> Stroke:
    """Straight lines from point to point."""
    return Stroke(polyline(Point(*p) for p in points), ink, width, colour)


def frame(
    ink: Ink, box: Box, *, radius: float = 0.0, width: float = 0.0, colour: Colour | None = None,
    fill: Colour | None = None, bare: bool = False,
) -> Stroke:  # fmt: skip
    """A rectangle, with round corners where a radius is given."""
    path = _rounded(box, radius) if radius else rectangle(*box)
    return Stroke(path, ink, width, colour, fill, bare)


def _rounded(box: Box, r: float) -> Path:
    left, top, right, foot = box
    sides = (
        ((left + r, top), (right - r, top), (right - r, top + r), 270),
        ((right, top + r), (right, foot - r), (right - r, foot - r), 0),
        ((right - r, foot), (left + r, foot), (left + r, foot - r), 90),
        ((left, foot - r), (left, top + r), (left + r, top + r), 180),
    )
    curves: list[Curve] = []
    for start, end, centre, first in sides:
        curves += [Line(Point(*start), Point(*end)), Arc(Point(*centre), r, first, 90)]
    return Path(tuple(curves))


def disc(centre: Point, radius: float, ink: Ink, fill: Colour | None = None) -> Stroke:
    """A circle: filled and without a line when a fill is given, else a line."""
    return Stroke(circle(centre, radius), ink, fill=fill, bare=fill is not None)


def head(tip: Point, degrees: float, size: float, ink: Ink, slim: float = TURN_OF_HEAD) -> Stroke:
    """A filled arrow head of `size` mm whose tip points along `degrees` (clockwise from the right)."""
    a = math.radians(degrees)
    back, aside = Point(-math.cos(a), -math.sin(a)), Point(-math.sin(a), math.cos(a))
    foot = tip.along(back, size)
    left, right = foot.along(aside, size * slim), foot.along(aside, -size * slim)
    return Stroke(polyline((tip, left, right, tip)), ink, fill=_colour_of(ink), bare=True)


def _colour_of(ink: Ink) -> Colour:
    return Stroke(Path(()), ink).line_colour


def arrow(start: Point, end: Point, ink: Ink, size: float = 5.0, *, both: bool = False) -> Drawing:
    """A line with a head at its end, or at both ends: a grain line has both."""
    angle = _angle(start, end)
    inner = start.along(start.to(end).unit(), size / 2 if both else 0)
    line = Stroke(polyline((inner, end.along(end.to(start).unit(), size / 2))), ink)
    heads = (head(end, angle, size, ink), *((head(start, angle + 180, size, ink),) if both else ()))
    return (line, *heads)


def _angle(start: Point, end: Point) -> float:
    return math.degrees(math.atan2(end.y - start.y, end.x - start.x))


def hatch(box: Box, step: float, ink: Ink = "waste", width: float = 0.0) -> Group:
    """Hatching at 45 degrees, as separate short lines that end on the box."""
    lines: list[Mark] = []
    wide, high = box.width, box.height
    for i in range(1, math.ceil((wide + high) / step - 1e-9)):
        c = i * step
        over = (box.left + min(c, wide), box.top + max(0.0, c - wide))
        down = (box.left + max(0.0, c - high), box.top + min(c, high))
        lines.append(stroke(ink, over, down, width=width))
    return Group("hatching", tuple(lines))


class Paragraph(Struct, frozen=True):
    """Lines of words, and where the next thing may stand (y in mm)."""

    marks: Drawing
    below: float


def paragraph(
    text: str, left: float, top: float, room: float, height: float = 3.6, *, lead: float = 1.34,
    face: Face = "regular", colour: Colour | None = None, ink: Ink = "note",
) -> Paragraph:  # fmt: skip
    """Words broken to `room` mm, the first line's top at `top`; `lead` is the line's height in ems."""
    lines = wrap(text, height, room, face)
    marks = tuple(
        Words(line, Point(left, top + height * (0.95 + i * lead)), height, ink, face=face, colour=colour)
        for i, line in enumerate(lines)
        if line
    )
    return Paragraph(marks, top + len(lines) * height * lead)


def tick_box(left: float, baseline: float, side: float = 3.6) -> Stroke:
    """A square to tick, standing on the line of the words beside it."""
    return frame("plain", Box(left, baseline + 0.4 - side, left + side, baseline + 0.4), width=0.3)


def placed(drawing: Iterable[Mark], at: Point, scale: float = 1.0, turn: float = 0.0) -> Drawing:
    """A drawing made about the origin, scaled, turned clockwise by `turn` degrees, and set down at `at`.

    Words scale too; line widths do not, unless a stroke states its own.
    """
    return tuple(_placed(m, at, scale, turn) for m in drawing)


def _placed(mark: Mark, at: Point, scale: float, turn: float) -> Mark:
    if isinstance(mark, Stroke):
        return replace(mark, path=placed_path(mark.path, at, scale, turn), width=mark.width * scale)
    if isinstance(mark, Words):
        return replace(
            mark, at=_point(mark.at, at, scale, turn), height=mark.height * scale, turn=mark.turn + turn
        )  # fmt: skip
    if mark.clip and turn % 90:
        raise ValueError("A clipped drawing can only be turned by quarters.")
    clip = mark.clip and placed_path(rectangle(*mark.clip), at, scale, turn).box
    return Group(mark.name, placed(mark.marks, at, scale, turn), clip)


def placed_path(path: Path, at: Point, scale: float = 1.0, turn: float = 0.0) -> Path:
    """A path scaled and turned about the origin, then moved to `at`."""
    return Path(tuple(_curve(c, at, scale, turn) for c in path.curves))


def _curve(c: Curve, at: Point, scale: float, turn: float) -> Curve:
    if isinstance(c, Line):
        return Line(_point(c.start, at, scale, turn), _point(c.end, at, scale, turn))
    if isinstance(c, Arc):
        return Arc(_point(c.centre, at, scale, turn), c.radius * scale, c.first + turn, c.sweep)
    return Cubic(*(_point(p, at, scale, turn) for p in (c.start, c.leave, c.arrive, c.end)))


def _point(p: Point, at: Point, scale: float, turn: float) -> Point:
    scaled = Point(p.x * scale, p.y * scale)
    return (scaled.turned(turn) if turn else scaled).moved(at.x, at.y)
