"""A rectangle to scale with its stations lettered along and numbered down."""

import math
from collections.abc import Iterator, Sequence

from msgspec import Struct

from studio.draft import LineMark, Piece, Spot
from studio.drawing import Drawing, Ink, Mark, Stroke, Words
from studio.drawing.furniture import arrow, disc, placed_path, stroke
from studio.drawing.lettering import width
from studio.drawing.piece import INK_OF
from studio.geometry import Box, Point
from studio.units import Unit, spell
from studio.words import phrase, tr

from .spread import Label, labelled
from .stations import Stations

_NAME, _FIGURE, _SMALL = 4.0, 3.6, 3.2
_GUTTER, _ABOVE, _PAST = 17.0, 8.0, 4.0
_AT_LEAST = 24.0
"""However low the rectangle, the numbers down its side have this much room (mm)."""

_WIDTHS: dict[Ink, float] = {"fold": 0.25, "placement": 0.18, "centre": 0.18, "gather": 0.3, "seam": 0.25, "notch": 0.5}
_TICK = 2.6


class Sketch(Struct, frozen=True):
    """A sketch with its top left corner at the origin, its height (mm), and its scale (paper to cloth)."""

    marks: Drawing
    height: float
    scale: float


class _Scaled(Struct, frozen=True):
    """How the piece lies in the sketch."""

    origin: Point
    k: float

    def place(self, p: Point) -> Point:
        return Point(self.origin.x + p.x * self.k, self.origin.y + p.y * self.k)

    def stroke(self, mark: LineMark, ink: Ink) -> Stroke:
        return Stroke(placed_path(mark.path, self.origin, self.k), ink, _WIDTHS[ink])


def sketch(piece: Piece, st: Stations, unit: Unit, room: float, most: float, scale: float = math.inf) -> Sketch:
    """The piece in a room `room` mm wide: drawn no higher than `most` mm and no larger than `scale`."""
    k = min(scale, (room - _GUTTER - _PAST) / st.width, most / st.height)
    wide, high = st.width * k, st.height * k
    left = _GUTTER + (room - _GUTTER - _PAST - wide) / 2
    box = Box(left, _ABOVE, left + wide, _ABOVE + high)
    along = labelled(
        [s.name for s in st.along], [box.left + s.distance * k for s in st.along],
        lambda text: width(text, _NAME, "bold") + 1.6, 0, room,
    )  # fmt: skip
    down = labelled(
        [s.name for s in st.down], [box.top + s.distance * k for s in st.down],
        lambda text: _FIGURE, box.top - _FIGURE / 2, box.top + max(high, _AT_LEAST) + _FIGURE / 2,
    )  # fmt: skip
    cut = piece.cut_line.box
    on = _Scaled(Point(box.left - cut.left * k, box.top - cut.top * k), k)
    marks = (
        *_carried(piece, on, box),
        *_diagonals(st, box, unit),
        *_grain(piece, box),
        Stroke(placed_path(piece.cut_line, on.origin, k), "cut"),
        *_letters(along, box),
        *_numbers(down, box),
    )
    return Sketch(marks, max(box.bottom, down[-1].at + _FIGURE / 2), k)


def _carried(piece: Piece, on: _Scaled, box: Box) -> Iterator[Mark]:
    """What is carried to the cloth: lines to scale, notches and stops as ticks that can be seen."""
    for e in piece.edges:
        if e.allowance > 0 and not e.hem:
            yield Stroke(placed_path(e.path, on.origin, on.k), "seam", _WIDTHS["seam"])
    for mark in piece.lines:
        at = on.place(mark.path.at(mark.path.length / 2))
        if not _holds(box, at) or mark.role == "direction":
            continue
        if mark.role == "row stop":
            yield stroke("plain", (at.x, box.top), (at.x, min(box.bottom, at.y + _TICK)))
        elif mark.role == "zip stop":
            yield stroke("notch", (at.x - _TICK, at.y), (at.x + _TICK, at.y), width=0.5)
        else:
            yield on.stroke(mark, INK_OF[mark.role])
    for spot in piece.spots:
        at = on.place(spot.at)
        if _holds(box, at):
            yield _spot(spot, at, on.k)


def _holds(box: Box, at: Point) -> bool:
    return box.grown(0.1).meets(Box(*at, *at))


def _spot(spot: Spot, at: Point, k: float) -> Mark:
    if spot.role == "button":
        return Stroke(disc(at, max(0.8, spot.size / 2 * k), "button").path, "button", 0.3)
    if spot.role == "notch":
        tip = at.along(Point(1, 0).turned(spot.turn), _TICK)
        return stroke("notch", (at.x, at.y), (tip.x, tip.y))
    return stroke("button", (at.x, at.y - _TICK / 2), (at.x, at.y + _TICK / 2), width=0.7)


def _diagonals(st: Stations, box: Box, unit: Unit) -> Iterator[Mark]:
    """Both, and their length where there is room for it."""
    yield stroke("note", (box.left, box.top), (box.right, box.bottom))
    yield stroke("note", (box.left, box.bottom), (box.right, box.top))
    text = spell(phrase("both diagonals {d:bare}", d=st.diagonal), unit)
    if box.height > 20 and width(text, 4.4, "semibold") < box.width * 0.7:
        middle = box.centre.moved(0, 1.5)
        yield Words(text, middle, 4.4, "plain", align="centre", face="semibold", patch=True)


def _grain(piece: Piece, box: Box) -> Iterator[Mark]:
    """The grain below the diagonals' crossing, where there is room for it."""
    if box.width < 30 or box.height < 40:
        return
    if grain_along(piece):
        half, y = min(20.0, box.width * 0.12), box.top + box.height * 0.82
        yield from arrow(Point(box.centre.x - half, y), Point(box.centre.x + half, y), "grain", 4, both=True)
        yield Words(tr("grain"), Point(box.centre.x, y - 1.6), _SMALL, align="centre", patch=True)
    else:
        x, y = box.left + box.width * 0.4, box.top + box.height * 0.6
        yield from arrow(Point(x, y), Point(x, y + box.height * 0.25), "grain", 4, both=True)
        yield Words(tr("grain"), Point(x - 1.6, y + box.height * 0.125), _SMALL, turn=-90, align="centre", patch=True)


def grain_along(piece: Piece) -> bool:
    """Whether the grain runs along the edge that the letters stand on."""
    start, end = piece.grain
    return abs(end.x - start.x) > abs(end.y - start.y)


def _letters(labels: Sequence[Label], box: Box) -> Iterator[Mark]:
    """Letters over the rectangle; led to their places where they had to make room for each other."""
    lead = any(a.moved for a in labels)
    for a in labels:
        if lead:
            yield stroke("note", (a.place, box.top - 0.8), (a.at, box.top - 3.4))
        y = box.top - (4.4 if lead else 1.6)
        yield Words(a.text, Point(a.at, y), _NAME, "plain", align="centre", face="bold")


def _numbers(labels: Sequence[Label], box: Box) -> Iterator[Mark]:
    """Numbers at the left of the rectangle, in the same way."""
    lead = any(a.moved for a in labels)
    for a in labels:
        if lead:
            yield stroke("note", (box.left - 0.8, a.place), (box.left - 5.4, a.at))
        at = Point(box.left - (6.2 if lead else 2.2), a.at + _FIGURE * 0.33)
        yield Words(a.text, at, _FIGURE, "plain", align="right", face="bold")
