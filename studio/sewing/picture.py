"""The small picture beside a step: the very piece that is worked on, what is sewn now in the accent.

Pieces are drafted as seen from their right side; seen from the wrong side they are mirrored, and tinted. A part of a
piece runs out of the picture.
"""

from collections.abc import Iterable, Iterator
from typing import Final

from msgspec import Struct
from msgspec.structs import replace

from studio.brief import Brief
from studio.draft import Draft, Edge, Piece, Spot
from studio.draft.making import Making, Shown
from studio.drawing import Drawing, Group, Mark, Stroke, Words
from studio.drawing.furniture import head, placed_path, stroke
from studio.drawing.lettering import fitted
from studio.drawing.piece import INK_OF
from studio.drawing.pleat_section import pleat_section
from studio.geometry import Box, Path, Point, circle
from studio.units import Unit
from studio.words import tr

ROOM: Final = Box(0, 0, 66, 45)
"""The room a picture takes, mm."""
CLOTH: Final = Box(2.5, 2, 63.5, 38)
"""Where the cloth lies in it; its name stands below."""
_PART: Final = 420.0  # mm of a long edge that a part shows
_LEAST: Final = 110.0  # mm of cloth across a part at least
_ROUND: Final = 0.12  # of the part, shown around what matters
_NAME: Final = 3.2
_THIN: Final = 0.22
_NOTCH: Final = 1.6


def picture(making: Making, draft: Draft, brief: Brief | None = None, unit: Unit = "cm") -> Drawing:
    """What a step works on, in a room of 66 by 45 mm; nothing for a step that shows no piece.

    With its brief, laid pleats are shown in section.
    """
    if brief is not None and making.key == "pleats":
        return pleat_section(brief, draft, unit)
    shown = making.shows
    if shown is None or not shown.piece:
        return ()
    piece = draft.piece(shown.piece)
    part = _part(piece, shown)
    if mirrored := not shown.right_side:
        part = Box(-part.right, part.top, -part.left, part.bottom)
    scale = min(CLOTH.width / part.width, CLOTH.height / part.height)
    at = Point(CLOTH.centre.x - part.centre.x * scale, CLOTH.centre.y - part.centre.y * scale)
    draws = _Draws(at, scale, mirrored)
    marks = tuple(_marks(piece, shown, draws, making.key))
    cloth = Group("cloth", marks, None if shown.near == "whole" else _window(part, at, scale))
    side = "" if piece.cloth == "interfacing" else f", {tr('right side') if shown.right_side else tr('wrong side')}"
    words, height = fitted(tr(piece.name) + side, _NAME, CLOTH.width)
    return (cloth, Words(words, Point(ROOM.centre.x, 43.2), height, align="centre", colour="grey"))


def _window(part: Box, at: Point, scale: float) -> Box:
    """Where the part lies in the picture; beyond it the cloth is left out."""
    x, y = part.width * scale / 2, part.height * scale / 2
    middle = Point(part.centre.x * scale + at.x, part.centre.y * scale + at.y)
    return Box(middle.x - x, middle.y - y, middle.x + x, middle.y + y)


def _part(piece: Piece, shown: Shown) -> Box:
    """The part of the piece to show, mm: all of it, or what lies around the edges named."""
    whole = piece.cut_line.box
    if shown.near == "whole":
        return whole
    focus = _around([e.path for e in _edges(piece, shown)]) or _band_of(whole, shown)
    if shown.near in ("top", "foot") and focus.width > _PART:
        focus = Box(focus.left, focus.top, focus.left + _PART, focus.bottom)
    near = [b for m in piece.lines if m.role in shown.roles and (b := m.path.box).meets(focus.grown(_LEAST))]
    for box in near:
        low = max(box.left, focus.left - _LEAST), min(box.right, focus.right + _LEAST)
        focus = focus.joined(Box(low[0], box.top, max(low), box.bottom))
    focus = focus.grown(_ROUND * max(focus.width, focus.height) + piece.edges[0].allowance)
    return _shaped(focus, whole.grown(4))


def _shaped(focus: Box, whole: Box) -> Box:
    """A part as wide for its height as the picture is, kept on the cloth where the cloth is large enough."""
    wide, shape = max(focus.width, _LEAST), CLOTH.width / CLOTH.height
    high = max(focus.height, wide / shape)
    wide = max(wide, high * shape)
    left = _kept(focus.centre.x - wide / 2, wide, whole.left, whole.right)
    top = _kept(focus.centre.y - high / 2, high, whole.top, whole.bottom)
    return Box(left, top, left + wide, top + high)


def _kept(start: float, size: float, low: float, high: float) -> float:
    """A stretch moved onto another, or set about its middle where it is longer."""
    return (low + high - size) / 2 if size >= high - low else min(max(start, low), high - size)


def _around(paths: Iterable[Path]) -> Box | None:
    box: Box | None = None
    for path in paths:
        box = path.box.joined(box) if box else path.box
    return box


def _band_of(whole: Box, shown: Shown) -> Box:
    """Where no edge is named: a quarter of the piece along the side it is near."""
    left, top, right, bottom = whole
    match shown.near:
        case "top":
            return Box(left, top, right, top + whole.height / 4)
        case "foot":
            return Box(left, bottom - whole.height / 4, right, bottom)
        case "left":
            return Box(left, top, left + whole.width / 4, bottom)
    return Box(right - whole.width / 4, top, right, bottom)


def _edges(piece: Piece, shown: Shown) -> tuple[Edge, ...]:
    return tuple(e for e in piece.edges if e.name in shown.edges)


class _Draws(Struct, frozen=True):
    """How millimetres of cloth become those of the picture."""

    at: Point
    scale: float
    mirrored: bool

    def path(self, path: Path) -> Path:
        """A path in the picture."""
        return placed_path(path.flipped(0) if self.mirrored else path, self.at, self.scale)

    def point(self, p: Point) -> Point:
        """A point in the picture."""
        return Point((-p.x if self.mirrored else p.x) * self.scale + self.at.x, p.y * self.scale + self.at.y)


def _marks(piece: Piece, shown: Shown, draws: _Draws, key: str) -> Iterator[Mark]:
    """The cloth, what is on it in thin black, then what is worked on now."""
    outline = draws.path(piece.cut_line)
    yield Stroke(outline, "plain", fill="white" if shown.right_side else "tone", bare=True)
    for e in piece.edges:
        if e.allowance > 0:
            yield Stroke(draws.path(e.path), "seam", _THIN)
    lit = [m for m in piece.lines if m.role in shown.roles]
    for m in piece.lines:
        if m not in lit and m.role != "direction":
            yield Stroke(draws.path(m.path), INK_OF[m.role], _THIN)
    yield Stroke(outline, "cut", 0.45)
    for spot in piece.spots:
        yield _spot(spot, draws, now=key in FASTENS)
    if key == "cut":
        yield from _grain(*(draws.point(p) for p in piece.grain))
    for m in lit:
        yield Stroke(
            draws.path(m.path), "gather" if m.role == "gather" else "plain", _LIT[m.role == "gather"], "accent"
        )
    for e in _edges(piece, shown):
        yield Stroke(draws.path(e.path), "plain", 0.8, "accent")


FASTENS: Final = ("fastening", "placket fastening")
"""Steps that work on buttons, hooks and snaps."""
_LIT: Final = (0.5, 0.3)


def _grain(start: Point, end: Point) -> Iterator[Mark]:
    """The grain line in the accent, with heads at both ends."""
    way = start.to(end)
    yield stroke("grain", start, end, colour="accent", width=0.5)
    for tip, degrees in ((end, way.degrees), (start, way.degrees + 180)):
        yield replace(head(tip, degrees, 2.0, "grain"), fill="accent")


def _spot(spot: Spot, draws: _Draws, *, now: bool) -> Mark:
    """A notch as a short line into the cloth, whatever the scale; anything round in its size."""
    at = draws.point(spot.at)
    if spot.role == "notch":
        into = Point(1, 0).turned(spot.turn)
        way = Point(-into.x, into.y) if draws.mirrored else into
        return stroke("notch", at, at.along(way, min(_NOTCH, max(spot.size * draws.scale, _NOTCH / 2))), width=0.4)
    round_ = circle(at, max(spot.size * draws.scale / 2, 0.4))
    if now and spot.role != "drill":
        return Stroke(round_, "button", 0.5, "accent")
    return Stroke(round_, "button", _THIN)
