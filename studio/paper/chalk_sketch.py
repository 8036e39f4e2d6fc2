"""A rectangle to scale with its stations lettered along and numbered down."""

import math

from msgspec import Struct

from studio.draft import Piece
from studio.drawing import Drawing, Ink, Stroke
from studio.drawing.furniture import placed_path
from studio.drawing.lettering import width
from studio.geometry import Point
from studio.units import Unit

from .spread import labelled
from .stations import Stations

_NAME, _FIGURE = 4.0, 3.6
_GUTTER, _ABOVE = 17.0, 8.0
_AT_LEAST = 24.0
"""However low the rectangle, its numbers down have this much room (mm)."""

_THIN: dict[Ink, float] = {"fold": 0.25, "centre": 0.18, "gather": 0.3, "notch": 0.5}
_TICK = 2.6


class Sketch(Struct, frozen=True):
    """A sketch with its top left corner at the origin, its height (mm), and its scale (paper to cloth)."""

    marks: Drawing
    height: float
    scale: float


def sketch(piece: Piece, st: Stations, unit: Unit, room: float, most: float, scale: float = math.inf) -> Sketch:
    """The piece in a `room` mm wide: no higher than `most` mm, and no larger than `scale`."""
    k = min(scale, (room - _GUTTER - 4) / st.width, most / st.height)
    wide, high = st.width * k, st.height * k
    at = Point(_GUTTER + (room - 4 - _GUTTER - wide) / 2, _ABOVE)
    names = labelled(
        [s.name for s in st.along], [at.x + s.distance * k for s in st.along],
        lambda text: width(text, _NAME, "bold") + 1.6, 0, room,
    )  # fmt: skip
    foot = at.y + max(high, _AT_LEAST)
    figures = labelled(
        [s.name for s in st.down], [at.y + s.distance * k for s in st.down],
        lambda text: _FIGURE, at.y - _FIGURE / 2, foot + _FIGURE / 2,
    )  # fmt: skip
    marks = (
        *_inner(piece, at, k),
        *_diagonals(st, at, wide, high, unit),
        *_grain(piece, at, wide, high),
        Stroke(_placed(piece, piece.cut_line.box.left, piece.cut_line.box.top, at, k), "cut"),
        *_names(names, at),
        *_figures(figures, at),
    )
    below = max(at.y + high, figures[-1].at + _FIGURE / 2)
    return Sketch(marks, below, k)


def _placed(piece: Piece, left: float, top: float, at: Point, k: float):  # type: ignore[no-untyped-def]
    return placed_path(piece.cut_line, Point(at.x - left * k, at.y - top * k), k)
