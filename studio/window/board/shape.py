"""A piece as it is drawn at one scale: its painter paths, kept until the piece or the scale changes."""

import itertools
from collections.abc import Iterable
from typing import Final

from msgspec import Struct
from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainterPath

from studio.draft import LineMark, Piece, Spot
from studio.drawing.piece import INK_OF, cut, seams
from studio.geometry import Box, Path, Point

from ..paths import painter_path
from .heads import LONG, add_head
from .pens import Ink

TOLD_APART: Final = 0.6
"""Below this scale (px for each mm) gather rows run into one pale band."""
_NOTCH: Final = 5.0  # least length, px
_STOP: Final = 6.0  # least length of a bar across a line, px
_BUTTON, _HOLE, _BAR = 4.0, 4.5, 3.0  # least half sizes, px
_CROSS: Final = 0.4  # of a button's radius
ORDER: Final[tuple[Ink, ...]] = (
    "gather", "centre", "seam", "placement", "fold", "grain", "cut", "notch", "button", "hole"
)  # fmt: skip
"""From the first painted to the last: faint below firm."""


class Drawn(Struct, eq=False):
    """Strokes of one ink moved by the same numbers, in px from the piece's origin."""

    ink: Ink
    governs: tuple[str, ...]
    path: QPainterPath


class Shape(Struct, eq=False):
    """A piece at a scale, px from its origin: `box` round the cut line, `inner` round the seam line, `sewn` within it.

    `band` is the width (px) of the pale band that its gather rows have become, or 0.
    """

    piece: Piece
    scale: float
    box: Box
    inner: Box
    outline: QPainterPath
    sewn: QPainterPath
    drawn: tuple[Drawn, ...]
    heads: QPainterPath
    band: float


def shape(piece: Piece, scale: float) -> Shape:
    """Draw a piece; what would be too small to see at this scale is drawn larger."""
    strokes: dict[tuple[Ink, tuple[str, ...]], QPainterPath] = {}

    def add(ink: Ink, governs: tuple[str, ...], path: QPainterPath) -> None:
        strokes.setdefault((ink, governs), QPainterPath()).addPath(path)

    for stroke in seams(piece):
        add("seam", stroke.governs, painter_path([stroke.path], scale))
    grain, heads = _grain(piece, scale)
    for mark in piece.lines:
        add(*_line(mark, scale))
        if mark.role == "direction":
            _add_direction(heads, mark.path, scale)
    for spot in piece.spots:
        add(*_spot(spot, scale))
    add("grain", (), grain)
    outline = painter_path([piece.cut_line], scale)
    add("cut", cut(piece).governs, outline)
    box, inner = (Box(*(k * scale for k in p.box)) for p in (piece.cut_line, piece.seam_line))
    drawn = tuple(Drawn(*key, strokes[key]) for key in sorted(strokes, key=lambda key: ORDER.index(key[0])))
    sewn = painter_path([piece.seam_line], scale)
    return Shape(piece, scale, box, inner, outline, sewn, drawn, heads, _band(piece.lines, scale))


def _line(mark: LineMark, scale: float) -> tuple[Ink, tuple[str, ...], QPainterPath]:
    if mark.role == "buttonhole":
        return "hole", mark.governs, _hole(mark.path, scale)
    ink = INK_OF[mark.role]
    if ink == "notch":
        return "notch", mark.governs, _segments(_at_least(mark.path, _STOP, scale))
    drawn: Ink = ink if ink in ("fold", "placement", "centre", "gather", "grain") else "seam"
    return drawn, mark.governs, painter_path([mark.path], scale)


def _add_direction(heads: QPainterPath, path: Path, scale: float) -> None:
    """The head of a pleat's arrow, at the line it is placed on; none where it would be all there is."""
    a, b = _px(path.start, scale), _px(path.end, scale)
    if a.distance(b) > LONG:
        add_head(heads, b, a)


def _spot(mark: Spot, scale: float) -> tuple[Ink, tuple[str, ...], QPainterPath]:
    at = _px(mark.at, scale)
    if mark.role == "notch":
        tip = at.along(Point(1, 0).turned(mark.turn), max(_NOTCH, mark.size * scale))
        return "notch", mark.governs, _segments((at, tip))
    if mark.role == "button":
        r = max(_BUTTON, mark.size / 2 * scale)
        drawn = _segments(*_cross(at, r * _CROSS))
        drawn.addEllipse(QPointF(*at), r, r)
        return "button", mark.governs, drawn
    across, down = _cross(at, max(_HOLE, mark.size / 2 * scale))
    return "hole", mark.governs, _segments(down if mark.role == "bar" else across)


def _cross(at: Point, r: float) -> tuple[tuple[Point, Point], tuple[Point, Point]]:
    return (at.moved(-r, 0), at.moved(r, 0)), (at.moved(0, -r), at.moved(0, r))


def _hole(path: Path, scale: float) -> QPainterPath:
    """A buttonhole, barred at both ends."""
    a, b = _at_least(path, 2 * _HOLE, scale)
    way = a.to(b).unit().outward()
    bar = max(_BAR, 2.5 * scale)
    return _segments((a, b), *((p.along(way, -bar), p.along(way, bar)) for p in (a, b)))


def _at_least(path: Path, least: float, scale: float) -> tuple[Point, Point]:
    """The ends (px) of a straight mark, at least so long (px) about its middle."""
    a, b = _px(path.start, scale), _px(path.end, scale)
    if a.distance(b) >= least:
        return a, b
    middle, way = a.towards(b, 0.5), a.to(b).unit()
    return middle.along(way, -least / 2), middle.along(way, least / 2)


def _grain(piece: Piece, scale: float) -> tuple[QPainterPath, QPainterPath]:
    a, b = (_px(p, scale) for p in piece.grain)
    heads = QPainterPath()
    add_head(heads, a, b)
    add_head(heads, b, a)
    return _segments((a, b)), heads


def _segments(*segments: tuple[Point, Point]) -> QPainterPath:
    drawn = QPainterPath()
    for a, b in segments:
        drawn.moveTo(*a)
        drawn.lineTo(*b)
    return drawn


def _px(at: Point, scale: float) -> Point:
    return Point(at.x * scale, at.y * scale)


def _band(lines: Iterable[LineMark], scale: float) -> float:
    if scale >= TOLD_APART:
        return 0.0
    heights = sorted({m.path.start.y for m in lines if m.role == "gather"})
    if not heights:
        return 0.0
    gaps = [b - a for a, b in itertools.pairwise(heights)]
    return max(3.3, max(gaps, default=0.0) * scale + 0.6)
