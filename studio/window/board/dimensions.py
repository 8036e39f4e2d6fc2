"""Measured lines: where each stands beside its piece, clear of the others."""

from collections.abc import Iterator, Sequence
from typing import Final

from msgspec import Struct

from studio.draft.piece import Dimension, Side
from studio.drawing.arrange import Laid
from studio.geometry import Box, Point
from studio.units import Unit, spell

from .heads import LONG
from .pens import advance, metrics
from .shape import Shape

GAP: Final = 4.0
"""Px from the piece to the lines that lead to a measured line, and their reach beyond it."""
TAIL: Final = 12.0
"""Px that a measured line goes on beyond heads from outside."""
_OFF: Final = 20.0  # px from the piece to the first line
_STACK: Final = 22.0  # px from line to line
_LEVELS: Final = 3
_SHORT: Final = 34.0  # px; below it the heads come from outside
_PAD: Final = 5.0  # px beside words
OUT: Final[dict[Side, Point]] = {
    "above": Point(0, -1),
    "below": Point(0, 1),
    "left": Point(-1, 0),
    "right": Point(1, 0),
    "inside": Point(1, 0),
}
"""Which way each side lies."""


class Measured(Struct, frozen=True):
    """A dimension as it stands: all in px from the table's origin."""

    path: str
    words: str
    start: Point
    end: Point
    feet: tuple[Point, Point]
    box: Box  # of the words
    outside: bool  # heads come from outside
    upright: bool
    inside: bool

    @property
    def reach(self) -> Box:
        """The room that line and heads take."""
        box = spanned(self.start, self.end)
        if not self.outside:
            return box.grown(2)
        dx, dy = (0.0, TAIL) if self.upright else (TAIL, 0.0)
        return Box(box.left - dx, box.top - dy, box.right + dx, box.bottom + dy).grown(2)

    @property
    def span(self) -> Box:
        """The room that line, heads and the lines that lead to it take."""
        return self.reach.joined(spanned(*self.feet))

    @property
    def leads(self) -> tuple[Box, Box]:
        """The lines that lead to it from what it measures."""
        return spanned(self.feet[0], self.start), spanned(self.feet[1], self.end)

    def caught(self, at: Point) -> bool:
        """Whether a point (px) is on the words or the line."""
        here = Box(*at, *at)
        return here.meets(self.box.grown(3)) or here.meets(self.reach.grown(4))


def place_dimensions(
    laid: Sequence[Laid], shapes: Sequence[Shape], taken: Sequence[Box], unit: Unit
) -> tuple[Measured, ...]:  # fmt: skip
    """Every dimension that finds room, each in the nearest place that is free.

    Shorter ones come first, so that they lie inside longer ones. `taken` are the boxes (px) of names. One that
    finds no room is left out until the board is larger.
    """
    pieces = [s.box.moved(o.at.x * s.scale, o.at.y * s.scale) for o, s in zip(laid, shapes, strict=True)]
    words, lines = list(taken), list[Box]()
    placed: list[Measured] = []
    wanted = [(one, k, d) for k, one in enumerate(laid) for d in one.piece.dimensions]
    for one, k, d in sorted(wanted, key=lambda w: w[2].start.distance(w[2].end)):
        others = pieces[:k] + pieces[k + 1 :]
        for m in _places(d, one, pieces[k], shapes[k].scale, spell(d.words, unit)):
            clear = m.box.grown(1)
            met = _meets(clear, others) or _meets(m.span, others) or _meets(clear, words) or _meets(clear, lines)
            if not met and not any(_meets(line, words) for line in (m.reach, *m.leads)):
                placed.append(m)
                words.append(m.box)
                lines += (m.reach, *m.leads)
                break
    return tuple(placed)


def spanned(a: Point, b: Point) -> Box:
    """The upright box from one point to another."""
    return Box(min(a.x, b.x), min(a.y, b.y), max(a.x, b.x), max(a.y, b.y))


def _meets(box: Box, others: Sequence[Box]) -> bool:
    return any(box.meets(o) for o in others)


def _places(d: Dimension, one: Laid, own: Box, k: float, words: str) -> Iterator[Measured]:
    """Where a dimension may stand, the best place first."""
    out = OUT[d.side]
    a, b = (Point((p.x + one.at.x) * k, (p.y + one.at.y) * k) for p in (d.start, d.end))
    upright = out.y == 0
    wide, high = advance(words, "small", True) + 2 * _PAD, metrics("small", True).height() + 1
    size = (high, wide) if upright else (wide, high)
    long = a.distance(b)
    short = long < _SHORT
    for level in range(_LEVELS):
        off = _OFF + level * _STACK
        first = _edge(d.side, own, a)
        start, end = (_crisp(_moved_to(p, out, first + off)) for p in (a, b))
        feet = (_crisp(_moved_to(a, out, first + GAP)), _crisp(_moved_to(b, out, first + GAP)))
        for at in _words_at(start, end, out, long, wide, high, short):
            box = Box(at.x - size[0] / 2, at.y - size[1] / 2, at.x + size[0] / 2, at.y + size[1] / 2)
            yield Measured(d.path, words, start, end, feet, box, short, upright, d.side == "inside")


def _edge(side: Side, own: Box, at: Point) -> float:
    """How far out the piece reaches on this side, measured along the way out."""
    return {"above": -own.top, "below": own.bottom, "left": -own.left, "right": own.right, "inside": at.x}[side]


def _moved_to(p: Point, out: Point, far: float) -> Point:
    """The point with its place along the way out changed to `far`."""
    return Point(out.x * far, p.y) if out.y == 0 else Point(p.x, out.y * far)


def _crisp(p: Point) -> Point:
    """In the middle of a pixel, so that a thin upright or level line is sharp."""
    return Point(round(p.x - 0.5) + 0.5, round(p.y - 0.5) + 0.5)


def _words_at(
    start: Point, end: Point, out: Point, long: float, wide: float, high: float, short: bool
) -> Iterator[Point]:  # fmt: skip
    """Middles of the words: on the line where they fit, else past its free end, else beyond it."""
    middle, way = start.towards(end, 0.5), start.to(end).unit()
    if not short and wide + 2 * LONG + 4 <= long:
        yield middle
        return
    if short:
        past = TAIL + 4 + wide / 2
        ends = (end.along(way, past), start.along(way, -past))
        yield from ends[::-1] if out.x < 0 or out.y < 0 else ends
    aside = (wide - long) / 2
    for shift in (0.0, aside, -aside):
        yield middle.along(out, high / 2 + 2).along(way, shift)
