"""A piece, or a part of it near one of its sides: what is on it in black, what is worked on now in the accent."""

from collections.abc import Iterator, Sequence
from typing import Final

from msgspec.structs import replace

from studio.brief import Brief
from studio.draft import Edge, LineMark, Piece, Spot
from studio.draft.making import Making, Shown
from studio.drawing import Colour, Drawing, Group, Ink, Mark, Stroke
from studio.drawing.furniture import head, stroke
from studio.drawing.piece import INK_OF
from studio.geometry import Box, Path, Point, circle, offset
from studio.units import Unit
from studio.words import tr

from .measured import measured
from .room import CLOTH, EDGE, SEWN, THIN, around, caption, fit, note
from .tape import taped
from .torn import torn
from .view import View, looking_at, opened
from .worked import lit, named, side_of

_CORNER: Final = 36.0
"""At least so much of the cloth (mm) is shown about a corner."""
_PART: Final = 420.0
"""No more than this of a long edge is shown (mm), unless it is sewn from end to end."""
_OUT: Final = 3.0
"""White between the cut edge and the picture's edge, mm on the page."""
_NOTCH: Final = 1.6
_CROWDED: Final = 16
"""More lines than this are told apart only where a part is drawn larger."""
QUIET: Final = ("direction", "gather", "row stop", "pleat fold", "placement", "stitching")
"""Lines that are only drawn when they are worked on."""


def part(
    making: Making, shown: Shown, piece: Piece, brief: Brief | None, unit: Unit, over: Path | None = None
) -> Drawing:  # fmt: skip
    """The picture of a step that works on one piece; `over` is the outline of what is laid on it now."""
    piece = opened(piece)
    if shown.near == "whole" and len(lit(piece, shown)) > _CROWDED:
        shown = replace(shown, near="top")
    mirrored = not shown.right_side
    box = piece.cut_line.box if shown.near == "whole" else _focus(piece, shown)
    scale = fit(box.width, box.height) if shown.near != "whole" else _whole(box)
    if shown.near != "whole":
        box = _spread(box, scale, piece.cut_line.box.grown(_OUT / scale))
    view = looking_at(box, CLOTH, scale, mirrored=mirrored)
    window = view.box(box)
    tape = taped(piece, shown, view, brief) if making.key == "zip" else ()
    cloth = (*_cloth(making, shown, piece, view), *tape, *(_over(over, view) if over else ()))
    edges = () if shown.near == "whole" else tuple(torn(view.path(piece.cut_line).flat(0.1), window))
    side = tr("right side") if shown.right_side else tr("wrong side")
    says = (tr(piece.name), *(() if piece.cloth == "interfacing" else (side,)))
    return (
        Group("cloth", (*cloth, *edges), window.grown(0.5)),
        *([note(tr("interfacing"), window.centre.x, window.centre.y + 1, "centre", now=True)] if over else []),
        *measured(piece, shown, view, window, unit),
        caption(*says, scale=scale if shown.near != "whole" else 0.0),
    )


def _over(outline: Path, view: View) -> Iterator[Mark]:
    """What is laid on the piece."""
    path = view.path(outline)
    yield Stroke(path, "plain", SEWN, "accent", fill="white")


def _whole(box: Box) -> float:
    """A whole piece is drawn as large as fits, and no larger than it is."""
    return min(1.0, CLOTH.width / box.width, CLOTH.height / box.height)


def _focus(piece: Piece, shown: Shown) -> Box:
    """What has to be seen, mm: the edges named, or the corner where what is worked on begins, with short marks near."""
    whole, edges = piece.cut_line.box, named(piece, shown)
    if shown.near in ("left", "right"):
        focus = around([e.path.box for e in edges]) if edges else _along(whole, shown)
    else:
        focus = _corner(piece, shown)
    reach = _CORNER if shown.near in ("left", "right") else _PART
    for mark in lit(piece, shown):
        box = mark.path.box
        if max(box.width, box.height) < _PART / 2 and box.meets(focus.grown(reach)):
            focus = focus.joined(box)
    for spot in piece.spots:
        if spot.role != "notch" and shown.near in ("left", "right"):
            here = Box(*spot.at, *spot.at).grown(spot.size)
            focus = focus.joined(here) if here.meets(focus.grown(_CORNER)) else focus
    if shown.near in ("top", "foot") and (many := _first_few(piece, shown, focus)):
        focus = focus.joined(many)
    return _with_raw_edge(piece, focus, shown)


def _along(whole: Box, shown: Shown) -> Box:
    """Where no edge is named at a side: its whole height."""
    x = whole.left if shown.near == "left" else whole.right
    return Box(x, whole.top, x, whole.bottom)


def _corner(piece: Piece, shown: Shown) -> Box:
    """The end of the near edge at which what is worked on begins: where a row stops, or else its first end."""
    near = side_of(piece, shown)
    ends = [near.path.start, near.path.end]
    stops = [m.path.start for m in lit(piece, shown) if m.role == "row stop"]
    at = min(ends, key=lambda p: min((p.distance(s) for s in stops), default=p.x))
    return Box(*at, *at)


def _first_few(piece: Piece, shown: Shown, focus: Box) -> Box | None:
    """Where long lines cross the near edge, as pleats do: the first few of them."""
    tall = [m.path for m in lit(piece, shown) if m.path.box.height >= _PART / 2 > m.path.box.width]
    if not tall:
        return None
    near = sorted((p.start for p in tall), key=lambda p: abs(p.x - focus.centre.x))[:_FEW]
    xs = [p.x for p in near]
    high = (max(xs) - min(xs)) * CLOTH.height / CLOTH.width
    return Box(min(xs), focus.top, max(xs), focus.top + high * 0.8)


_FEW: Final = 7


def _with_raw_edge(piece: Piece, focus: Box, shown: Shown) -> Box:
    """What has to be seen, with a little cloth around it; out past the cut edges where they are near."""
    a = max(e.allowance for e in piece.edges)
    whole, near = piece.cut_line.box, a + 10.0
    inner = _INNER if shown.near in ("top", "foot") else a + _INNER
    out = _MARGIN * max(focus.width, focus.height) + 1

    def side(at: float, edge: float, sign: int) -> float:
        return edge + sign * out if abs(at - edge) <= near else at + sign * inner

    return Box(
        side(focus.left, whole.left, -1), side(focus.top, whole.top, -1), side(focus.right, whole.right, 1),
        side(focus.bottom, whole.bottom, 1),
    )  # fmt: skip


_MARGIN: Final = 0.04
_INNER: Final = 9.0


def _spread(box: Box, scale: float, whole: Box) -> Box:
    """A part as large as the picture has room for, kept on the cloth where the cloth is large enough."""
    wide, high = CLOTH.width / scale, CLOTH.height / scale
    left = _kept(box.centre.x - wide / 2, wide, whole.left, whole.right)
    top = _kept(box.centre.y - high / 2, high, whole.top, whole.bottom)
    spread = Box(left, top, left + wide, top + high)
    return Box(
        max(spread.left, whole.left), max(spread.top, whole.top), min(spread.right, whole.right),
        min(spread.bottom, whole.bottom),
    )  # fmt: skip


def _kept(start: float, size: float, low: float, high: float) -> float:
    """A stretch moved onto another, or set about its middle where it is longer."""
    return (low + high - size) / 2 if size >= high - low else min(max(start, low), high - size)


FASTENS: Final = ("fastening", "placket fastening")
"""Steps that sew on what holds the ends."""
RAW: Final = ("neaten",)
"""Steps that work on the cut edges themselves."""


def _cloth(making: Making, shown: Shown, piece: Piece, view: View) -> Iterator[Mark]:
    """The cloth, what is on it in thin black, then what is worked on now."""
    outline = view.path(piece.cut_line)
    yield Stroke(outline, "plain", fill="white" if shown.right_side else "tone", bare=True)
    for e in piece.edges:
        if e.allowance > 0 and e.name not in shown.edges:
            yield Stroke(view.path(e.path), "seam", THIN)
    worked = lit(piece, shown)
    for m in piece.lines:
        if m not in worked and m.role not in QUIET:
            yield from _line(m, view, INK_OF[m.role], THIN)
    yield Stroke(outline, "cut", EDGE)
    for spot in piece.spots:
        yield from spotted(spot, view, now=making.key in FASTENS)
    for m in worked:
        yield from _line(m, view, "gather" if m.role == "gather" else "plain", 0.5, now=True)
    for e in named(piece, shown):
        yield Stroke(view.path(_sewn(e, making)), "plain" if making.key in RAW else "seam", SEWN, "accent")


def _sewn(edge: Edge, making: Making) -> Path:
    """The line that is worked on along an edge: its seam line, or its cut edge where that is neatened."""
    return offset(edge.path, edge.allowance) if making.key in RAW else edge.path


def _line(mark: LineMark, view: View, ink: Ink, width: float, *, now: bool = False) -> Iterator[Mark]:
    """A marked line; a direction has a head at its end."""
    path = view.path(mark.path)
    yield Stroke(path, ink, width, "accent" if now else None)
    if mark.role == "direction":
        tip = head(path.end, path.direction(path.length).degrees, 2.2, "plain")
        yield Stroke(tip.path, "plain", fill="accent", bare=True)


def spotted(spot: Spot, view: View, *, now: bool) -> Sequence[Mark]:
    """A notch as a short line into the cloth, whatever the scale; anything round in its size."""
    at = view.point(spot.at)
    if spot.role == "notch":
        into = view.way(Point(1, 0).turned(spot.turn))
        return (stroke("notch", at, at.along(into, max(spot.size * view.scale, _NOTCH)), width=0.4),)
    colour: Colour | None = "accent" if now else None
    width, r = 0.5 if now else THIN, max(spot.size * view.scale / 2, 0.4)
    if spot.role in ("hook", "bar"):
        way = Point(1, 0) if spot.role == "hook" else Point(0, 1)
        return (stroke("plain", at.along(way, -r), at.along(way, r), width=width * 1.6, colour=colour),)
    found = [Stroke(circle(at, r), "button", width, colour)]
    if spot.role == "button" and r > _EYES:
        eyes = [at.moved(x, y) for x in (-0.9, 0.9) for y in (-0.9, 0.9)]
        found += [Stroke(circle(eye, 0.35), "button", width, colour) for eye in eyes]
    return found


_EYES: Final = 2.5
"""A button of less than this radius (mm on the page) is drawn without its eyes."""
