"""What meets what along a seam: both sides laid out straight to one scale, notch to notch."""

from collections.abc import Iterator, Sequence
from itertools import pairwise, takewhile
from typing import Final

from msgspec import Struct

from studio.draft import Draft, Piece
from studio.draft.seam import Part, Seam
from studio.drawing import Colour, Drawing, Mark
from studio.drawing.furniture import frame, stroke
from studio.drawing.lettering import width
from studio.geometry import Box, Point
from studio.units import Unit, write_length
from studio.words import tr

from .room import CLOTH, THIN, WORDS, caption, note

_UPPER: Final = Box(CLOTH.left, 8.0, CLOTH.right, 12.5)
_LOWER: Final = Box(CLOTH.left, 26.5, CLOTH.right, 33.0)
_NEAR: Final = 0.2
"""Places nearer than this (mm) are one."""


class Met(Struct, frozen=True):
    """A place on a side of a seam: mm along it as it lies flat, and where that comes to be once it is sewn."""

    flat: float
    sewn: float


class Run(Struct, frozen=True):
    """One side of a seam laid straight: its length flat, its notches and joins in order, and what is laid in pleats."""

    length: float
    met: tuple[Met, ...]
    joins: tuple[float, ...]
    closes: tuple[tuple[float, float], ...]


def run(side: Sequence[Part], pieces: dict[str, Piece]) -> Run:
    """A side of a seam, its edges end to end."""
    flat = sewn = 0.0
    met, joins, closes = [Met(0.0, 0.0)], [], []
    for part in side:
        edge = pieces[part.piece].edge(part.edge)
        long, drawn = edge.path.length, edge.sewn
        for spot in pieces[part.piece].spots:
            if spot.role == "notch" and spot.on == part.edge:
                along = edge.path.nearest(spot.at)[0]
                at = edge.sewn_at(along)
                met.append(Met(flat + (long - along if part.back else along), sewn + (drawn - at if part.back else at)))
        for start, end in edge.closes:
            closes.append((flat + long - end, flat + long - start) if part.back else (flat + start, flat + end))
        flat, sewn = flat + long, sewn + drawn
        joins.append(flat)
        met.append(Met(flat, sewn))
    return Run(flat, tuple(sorted(met, key=lambda m: m.flat)), tuple(joins[:-1]), tuple(closes))


def meeting(draft: Draft, seam: Seam, unit: Unit) -> Drawing:
    """The two sides of a seam, the one below with its fullness, joined where they are pinned."""
    pieces = {p.id: p for p in draft.pieces}
    one, other = run(seam.one, pieces), run(seam.other, pieces)
    upper, lower = (other, one) if seam.name == "waist" else (one, other)
    sides = (seam.other, seam.one) if seam.name == "waist" else (seam.one, seam.other)
    names = [_name(side, pieces) for side in sides]
    scale = CLOTH.width / max(upper.length, lower.length)
    pins = list(_pins(upper, lower))
    return (
        *_bar(upper, _UPPER, scale, "white"),
        *_bar(lower, _LOWER, scale, "tone"),
        *_drawn_to(pins, upper, lower, scale),
        *_numbers([a for a, _ in pins], upper, _UPPER.top - 1.2, scale, unit),
        *_numbers([b for _, b in pins], lower, _LOWER.bottom + 3.4, scale, unit),
        note(names[0], CLOTH.centre.x, _UPPER.bottom - 1.2, "centre"),
        note(names[1], CLOTH.centre.x, _LOWER.bottom - 2.1, "centre"),
        *_called(sides[0], pins, upper, lower, pieces, scale),
        caption(tr("laid flat; grey is taken up") if lower.closes else tr("laid flat, pinned where the lines meet")),
    )


def _name(side: Sequence[Part], pieces: dict[str, Piece]) -> str:
    """What a side is called: by the words that the names of its pieces begin with."""
    if side[0].piece.startswith("facing-"):
        return tr("facing")
    names = [pieces[p.piece].name.split(" ") for p in side]
    same = [words[0] for words in takewhile(lambda words: len(set(words)) == 1, zip(*names, strict=False))]
    return " ".join(same).rstrip(",") or tr("skirt")


def _called(
    side: Sequence[Part], pins: Sequence[tuple[float, float]], upper: Run, lower: Run, pieces: dict[str, Piece],
    scale: float,
) -> Iterator[Mark]:  # fmt: skip
    """What the centres and quarters are called, on the lines between."""
    names: dict[float, str] = {}
    flat = 0.0
    for part in side:
        edge = pieces[part.piece].edge(part.edge)
        for m in pieces[part.piece].lines:
            if m.role in ("centre", "quarter") and m.words is not None:
                end = min((m.path.start, m.path.end), key=lambda p: edge.path.nearest(p)[1])
                along, far = edge.path.nearest(end)
                if far < 1:
                    names[flat + (edge.path.length - along if part.back else along)] = m.words.text
        flat += edge.path.length
    last = -99.0
    for a, b in pins:
        text = next((tr(words) for at, words in names.items() if abs(at - a) < _NEAR), "")
        x = (_left(upper, scale) + a * scale + _left(lower, scale) + b * scale) / 2
        half = width(text, WORDS) / 2
        if text and x - half > max(last + 1, CLOTH.left) and x + half < CLOTH.right:
            yield note(text, x, (_UPPER.bottom + _LOWER.top) / 2 + 1, "centre")
            last = x + half


def _left(side: Run, scale: float) -> float:
    return CLOTH.centre.x - side.length * scale / 2


def _bar(side: Run, room: Box, scale: float, fill: Colour) -> Iterator[Mark]:
    """A side as a strip, its joins, and what pleats take up hatched by lines."""
    left = _left(side, scale)
    yield frame("plain", Box(left, room.top, left + side.length * scale, room.bottom), width=0.35, fill=fill)
    for at in side.joins:
        x = left + at * scale
        yield stroke("seam", (x, room.top), (x, room.bottom), width=THIN)
    for start, end in side.closes:
        a, b = left + start * scale, left + end * scale
        yield frame("plain", Box(a, room.top, b, room.top + 1.2), fill="grey", bare=True)


def _pins(upper: Run, lower: Run) -> Iterator[tuple[float, float]]:
    """Places that are pinned: where a notch or an end above meets one below, both as they lie flat."""
    for m in upper.met:
        best = min(lower.met, key=lambda n: abs(n.sewn - m.sewn))
        if abs(best.sewn - m.sewn) < _NEAR:
            yield m.flat, best.flat


def _drawn_to(pins: Sequence[tuple[float, float]], upper: Run, lower: Run, scale: float) -> Iterator[Mark]:
    above, below = _left(upper, scale), _left(lower, scale)
    for a, b in pins:
        start, end = Point(above + a * scale, _UPPER.bottom), Point(below + b * scale, _LOWER.top)
        yield stroke("plain", start.moved(0, -1.6), start, width=0.5)
        yield stroke("plain", end, end.moved(0, 1.6), width=0.5)
        yield stroke("plain", start, end, width=0.35, colour="accent")


def _numbers(places: Sequence[float], side: Run, y: float, scale: float, unit: Unit) -> Iterator[Mark]:
    """How far it is from pin to pin, where there is room to say so."""
    left = _left(side, scale)
    unique = [p for k, p in enumerate(places) if k == 0 or p - places[k - 1] > _NEAR]
    for a, b in pairwise(unique):
        text = write_length(b - a, unit, bare=True)
        if width(text, WORDS) + 1 < (b - a) * scale:
            yield note(text, left + (a + b) / 2 * scale, y, "centre")
