"""A piece as it is drawn at one scale: its painter paths, kept until the piece or the scale changes."""

from collections.abc import Iterable
from typing import Final

from msgspec import Struct
from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainterPath

from studio.draft import LineMark, Piece, Spot
from studio.drawing.piece import INK_OF, cut, seams
from studio.geometry import Box, Path, Point

from .heads import add_head
from .paths import painter_path
from .pens import Ink

TOLD_APART: Final = 0.6
"""Below this scale (px for each mm) gather rows run into one pale band."""
_NOTCH: Final = 5.0  # least length, px
_STOP: Final = 6.0  # least length of a bar across a line, px
_BUTTON, _HOLE, _BAR = 4.0, 4.5, 3.0  # least half sizes, px


class Drawn(Struct, eq=False):
    """Strokes of one ink moved by the same numbers, in px from the piece's origin."""

    ink: Ink
    governs: tuple[str, ...]
    path: QPainterPath


class Shape(Struct, eq=False):
    """A piece at a scale; `band` is the width (px) of the pale band that its gather rows have become, or 0."""

    piece: Piece
    scale: float
    box: Box
    outline: QPainterPath
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
    for mark in piece.lines:
        add(*_line(mark, scale))
    for spot in piece.spots:
        add(*_spot(spot, scale))
    grain, heads = _grain(piece, scale)
    add("grain", (), grain)
    outline = painter_path([piece.cut_line], scale)
    add("cut", cut(piece).governs, outline)
    box = piece.cut_line.box
    return Shape(
        piece, scale, Box(*(k * scale for k in box)), outline,
        tuple(Drawn(*key, path) for key, path in strokes.items()), heads, _band(piece.lines, scale),
    )  # fmt: skip


def _line(mark: LineMark, scale: float) -> tuple[Ink, tuple[str, ...], QPainterPath]:
    if mark.role == "buttonhole":
        return "hole", mark.governs, _hole(mark.path, scale)
    ink = INK_OF[mark.role]
    if ink == "notch":
        return "notch", mark.governs, _at_least(mark.path, _STOP, scale)
    return ink if ink in ("fold", "centre", "gather") else "seam", mark.governs, painter_path([mark.path], scale)


def _spot(mark: Spot, scale: float) -> tuple[Ink, tuple[str, ...], QPainterPath]:
    at, drawn = Point(mark.at.x * scale, mark.at.y * scale), QPainterPath()
    if mark.role == "notch":
        tip = at.along(Point(1, 0).turned(mark.turn), max(_NOTCH, mark.size * scale))
        _segments(drawn, (at, tip))
        return "notch", mark.governs, drawn
    if mark.role == "button":
        r = max(_BUTTON, mark.size / 2 * scale)
        drawn.addEllipse(QPointF(*at), r, r)
        for dx, dy in ((r * 0.4, 0.0), (0.0, r * 0.4)):
            _segments(drawn, (at.moved(-dx, -dy), at.moved(dx, dy)))
        return "button", mark.governs, drawn
    r = max(_HOLE, mark.size / 2 * scale)
    way = Point(0, r) if mark.role == "bar" else Point(r, 0)
    _segments(drawn, (at.moved(-way.x, -way.y), at.moved(*way)))
    return "hole", mark.governs, drawn


def _hole(path: Path, scale: float) -> QPainterPath:
    """A buttonhole, barred at both ends."""
    drawn = _at_least(path, 2 * _HOLE, scale)
    way = path.start.to(path.end).unit().outward()
    bar = max(_BAR, 2.5 * scale)
    for p in (Point(*drawn.pointAtPercent(0).toTuple()), Point(*drawn.currentPosition().toTuple())):
        _segments(drawn, (p.along(way, -bar), p.along(way, bar)))
    return drawn


def _at_least(path: Path, least: float, scale: float) -> QPainterPath:
    """A straight mark, drawn at least so long (px) about its middle."""
    a, b = (Point(p.x * scale, p.y * scale) for p in (path.start, path.end))
    long = a.distance(b)
    drawn = QPainterPath()
    if long < least:
        middle, way = a.towards(b, 0.5), a.to(b).unit()
        a, b = middle.along(way, -least / 2), middle.along(way, least / 2)
    _segments(drawn, (a, b))
    return drawn


def _grain(piece: Piece, scale: float) -> tuple[QPainterPath, QPainterPath]:
    a, b = (Point(p.x * scale, p.y * scale) for p in piece.grain)
    line, heads = QPainterPath(), QPainterPath()
    _segments(line, (a, b))
    add_head(heads, a, b)
    add_head(heads, b, a)
    return line, heads


def _segments(drawn: QPainterPath, *segments: tuple[Point, Point]) -> None:
    for a, b in segments:
        drawn.moveTo(*a)
        drawn.lineTo(*b)


def _band(lines: Iterable[LineMark], scale: float) -> float:
    if scale >= TOLD_APART:
        return 0.0
    heights = sorted({m.path.start.y for m in lines if m.role == "gather"})
    if not heights:
        return 0.0
    gaps = [b - a for a, b in zip(heights, heights[1:], strict=False)]
    return max(3.3, max(gaps, default=0.0) * scale + 0.6)
