"""Both ends of the band, one beside the other: as they are sewn, and finished, with what each carries."""

import math
from collections.abc import Callable, Iterator, Sequence
from typing import Final

from msgspec import Struct
from msgspec.structs import replace

from studio.draft import Draft, LineMark, Piece, Spot
from studio.drawing import Colour, Drawing, Group, Mark, Stroke
from studio.drawing.dimension import dimension
from studio.drawing.furniture import stroke
from studio.geometry import Box, Line, Point, polyline
from studio.units import Unit, write_length
from studio.words import tr

from .part import spotted
from .room import CLOTH, EDGE, ROOM, SEWN, THIN, WORDS, caption, note, now
from .torn import torn
from .view import View

_ROOM: Final = Box(CLOTH.left, 8.5, CLOTH.right, 30.0)
_BETWEEN: Final = 4.0
_HALF: Final = (CLOTH.width - _BETWEEN) / 2
_OUT: Final = 8.0
_CLIP: Final = 12.0
_BREAK, _FAR, _GAP, _TOOTH = 12.0, 10.0, 0.9, 2.0
"""A band is broken so far in from its end, what is sewn on far in is drawn so near the middle; how wide the break is
and how tall its teeth; mm on the page.
"""
_LONG: Final = 400.0
"""Longer than any end shown, mm on the page."""


class End(Struct, frozen=True):
    """One end of a band, in its half of the picture: the piece, where its finished upper corner is, and how far the
    piece is turned so that its end stands upright; then where on the page that corner lies, and how large. From
    `broken` mm in, `left_out` mm of the band are not drawn.
    """

    piece: Piece
    corner: Point
    turn: float
    right: bool
    at: Point
    scale: float
    broken: float = math.inf
    left_out: float = 0.0

    @property
    def sign(self) -> int:
        """The way into the band, on the page."""
        return -1 if self.right else 1

    def place(self, p: Point) -> Point:
        """How far in from the end (x) and down from the top edge (y) a place on the piece is, mm; along a curved band
        from its plain end.
        """
        waist = self.piece.edge("waist").path
        if not self.right and not all(isinstance(c, Line) for c in waist.curves):
            along, up = waist.nearest(p)
            return Point(waist.length - along, _height(self.piece) - up)
        q = p.turned(-self.turn, self.corner)
        return Point(self.corner.x - q.x if self.right else q.x - self.corner.x, q.y - self.corner.y)

    def on_page(self, x: float, y: float) -> Point:
        """A place so far in from the end and down from the top edge (mm), on the page."""
        return Point(self.at.x + self.sign * self.drawn(x) * self.scale, self.at.y + y * self.scale)

    def drawn(self, x: float) -> float:
        """How far in from the end a place is drawn (mm), what is left out taken away."""
        return x if x < self.broken else max(self.broken, x - self.left_out)


def finished_ends(draft: Draft, unit: Unit, *, holes: bool) -> Drawing:
    """The plain end at the left and the end that laps over at the right; with what is worked on in the accent."""
    high = _height(_band(draft))

    def drawn(end: End) -> Iterator[Mark]:
        end = end if holes else _broken(end)
        yield from _cloth(end, high, "white", out=0.0, above=0.0, below=0.0)
        yield from _gap(end, high)
        yield Group("fastened", tuple(_fastened(end, high, unit, holes=holes)), ROOM)  # a button may miss its band

    return _both(draft, high, _overhang(draft), drawn, tr("finished band, from outside"))


def _broken(end: End) -> End:
    """The plain end with a stretch left out, where what is sewn to it lies further in than there is room for."""
    half = end.piece.edge("waist").path.length / 2
    places = [end.place(s.at).x for s in end.piece.spots if s.role not in ("notch", "drill")]
    far = max((x for x in places if (_HALF - 2) / end.scale < x < half), default=0.0)
    if end.right or not far:
        return end
    return replace(end, broken=_BREAK / end.scale, left_out=far - (_HALF - _FAR) / end.scale)


def _gap(end: End, high: float) -> Iterator[Mark]:
    """Two jagged lines across the band, nothing between them."""
    if math.isinf(end.broken):
        return
    top, foot, x = end.at.y - 0.4, end.at.y + high * end.scale + 0.4, end.on_page(end.broken, 0).x
    n = max(3, round((foot - top) / _TOOTH))
    one, other = (
        [Point(x + by + (k % 2 - 0.5), top + (foot - top) * k / n) for k in range(n + 1)] for by in (-_GAP, _GAP)
    )
    yield Stroke(polyline([*one, *other[::-1], one[0]]), "plain", fill="white", bare=True)
    yield from (Stroke(polyline(jagged), "plain", THIN) for jagged in (one, other))


def _overhang(draft: Draft) -> float:
    """How far anything stands out past the plain end, as an eye does, mm."""
    band = _band(draft)
    end = _end(band, "plain end", Point(0, 0), 1.0, right=False)
    out = [spot.size / 2 - end.place(spot.at).x for spot in band.spots if spot.role != "notch"]
    return max(0.0, *out, 0.0)


def sewn_ends(draft: Draft, unit: Unit) -> Drawing:
    """The ends folded right sides in, with the seams that close them."""
    band = _band(draft)
    high, a = _height(band), band.edge("plain end").allowance
    above = 0.0 if _fold(band) else a

    def drawn(end: End) -> Iterator[Mark]:
        yield from _cloth(end, high, "tone", out=a, above=above, below=a)
        yield from _closed(end, high, a, unit)

    return _both(draft, high + above + a, a, drawn, tr("right sides in"), above)


def _band(draft: Draft) -> Piece:
    return next(p for p in draft.pieces if p.id == "waistband")


def _fold(piece: Piece) -> LineMark | None:
    return next((m for m in piece.lines if m.role == "fold"), None)


def _height(piece: Piece) -> float:
    """How high the finished band is, mm."""
    tall = piece.edge("plain end").path.length
    return tall / 2 if _fold(piece) else tall


def _both(
    draft: Draft, high: float, out: float, drawn: Callable[[End], Iterator[Mark]], says: str, above: float = 0.0
) -> Drawing:  # fmt: skip
    """Both ends drawn in their halves, `high` mm of cloth in height, `out` mm beyond the finished end and `above` mm
    over its top.
    """
    piece = _band(draft)
    tall = max(high, *(s.size for s in piece.spots if s.role != "notch"), 0.0)  # a large button on a narrow band
    scale = next((s for s in (1.0, 0.5) if tall * s <= _ROOM.height), _ROOM.height / tall)
    top = _ROOM.centre.y - high * scale / 2 + above * scale
    left = _end(piece, "plain end", Point(CLOTH.left + out * scale, top), scale, right=False)
    right = _end(piece, "extension end", Point(CLOTH.right - out * scale, top), scale, right=True)
    lapped = any(e.name == "extension" for e in piece.edges)
    return (
        *drawn(left),
        *drawn(right),
        note(tr("plain end"), CLOTH.left, 5.6),
        note(tr("extension") if lapped else tr("end on top"), CLOTH.right, 5.6, "right"),
        caption(says, scale=scale),
    )


def _end(piece: Piece, name: str, at: Point, scale: float, *, right: bool) -> End:
    """The end of that name, its corner where the finished band's top edge is."""
    path = piece.edge(name).path if right else piece.edge(name).path.reversed()
    corner = path.at(path.length / 2) if _fold(piece) else path.start
    return End(piece, corner, path.direction(0).degrees - 90, right, at, scale)


def _cloth(end: End, high: float, fill: Colour, *, out: float, above: float, below: float) -> Iterator[Mark]:
    """The outline of one end, torn where the band goes on; a fold above is thin and not cut."""
    a, b = end.on_page(-out, -above), end.on_page(-out, high + below)
    inner = (CLOTH.left if not end.right else CLOTH.right) + end.sign * _HALF
    far = end.at.x + end.sign * _LONG
    corners = [Point(far, a.y), a, b, Point(far, b.y), Point(far, a.y)]
    window = Box(min(a.x, inner), a.y - 0.01, max(a.x, inner), b.y + 0.01)
    folded = below > 0 and above == 0
    held: list[Mark] = [
        Stroke(polyline(corners), "plain", fill=fill, bare=True),
        stroke("fold" if folded else "cut", (inner, a.y), a, width=THIN if folded else EDGE),
        stroke("cut", a, b, (inner, b.y), width=EDGE),
        *_lap_line(end, a.y, b.y),
        *torn(corners if end.right else corners[::-1], window),
    ]
    yield Group("end", tuple(held), window.grown(0.8))


def _lap_line(end: End, top: float, foot: float) -> Iterator[Mark]:
    """Where the opening lies under the extension."""
    if end.right and (lap := _lap(end.piece)):
        x = end.on_page(lap, 0).x
        yield stroke("centre", (x, top), (x, foot), width=THIN)


def _lap(piece: Piece) -> float:
    return next((e.path.length for e in piece.edges if e.name == "extension"), 0.0)


def _closed(end: End, high: float, a: float, unit: Unit) -> Iterator[Mark]:
    """The seam across the end, and along the lower edge under an extension."""
    corners = [end.on_page(0, 0), end.on_page(0, high)]
    lap = _lap(end.piece) if end.right else 0.0
    if lap:
        corners.append(end.on_page(min(lap, (_HALF - 2) / end.scale - a), high))
    yield now(polyline(corners))
    tip = end.on_page(-a * 0.95, high + a * 0.2), end.on_page(a * 0.1, high + a * 0.95)
    if lap:
        yield stroke("plain", *tip, width=0.35, colour="accent")
    foot = end.on_page(0, high + a).y
    if lap:
        yield from _distances(end, foot, (lap,), unit)
        if (lap / 2 + a) * end.scale > _CLIP:  # beside the number below the extension
            yield note(tr("clip"), end.on_page(-a, 0).x, foot + 4.4 + 3.6, "right", now=True)
    elif not end.right:
        yield note(tr("fold") if _fold(end.piece) else tr("seam"), CLOTH.left + 8, end.at.y + 4.0)


def _fastened(end: End, high: float, unit: Unit, *, holes: bool) -> Iterator[Mark]:
    """Holes or what is sewn on, with their distances from the end."""
    far: list[float] = []
    colour: Colour | None = "accent" if holes else None
    for m in end.piece.lines:
        a, b = end.place(m.path.start), end.place(m.path.end)
        if m.role != "buttonhole" or not (_shown(end, a) and _shown(end, b)):
            continue
        p, q = end.on_page(*a), end.on_page(*b)
        wide = SEWN if holes else 0.4
        yield stroke("plain", p, q, width=wide, colour=colour)
        for tip in (p, q):
            yield stroke("plain", tip.moved(0, -1.4), tip.moved(0, 1.4), width=wide, colour=colour)
        far = sorted((a.x, b.x))
    for spot in end.piece.spots if not holes else ():
        place = end.place(spot.at)
        if spot.role not in ("notch", "drill") and _shown(end, place):
            yield from _sewn_on(end, spot, end.on_page(*place))
            far = far or [place.x - (spot.size / 2 if spot.role == "hook" else 0.0)]
    yield from _distances(end, end.on_page(0, high).y, far[:2], unit)


def _shown(end: End, place: Point) -> bool:
    return -_OUT <= end.drawn(place.x) * end.scale <= _HALF - 2


def _sewn_on(end: End, spot: Spot, at: Point) -> Sequence[Mark]:
    view = View(Point(at.x - spot.at.x * end.scale, at.y - spot.at.y * end.scale), end.scale, False)
    return spotted(spot, view, now=True)


def _distances(end: End, foot: float, far: Sequence[float], unit: Unit) -> Iterator[Mark]:
    """From the end in, one length after the other, below the band."""
    y, before = foot + 4.4, 0.0
    for x in far:
        p, q = sorted((end.on_page(before, 0).x, end.on_page(x, 0).x))
        if x > before and q - p > 0.5:
            for edge in (p, q):
                yield stroke("dimension", (edge, foot + 0.8), (edge, y + 1.0))
            yield from dimension(Point(p, y), Point(q, y), "", height=WORDS)
            yield note(write_length(x - before, unit, bare=True), (p + q) / 2, y + 3.6, "centre")
            before = x
