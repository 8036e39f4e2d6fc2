"""Numbers in a picture: how far from the raw edges what is worked on lies, since that is where the tape is put."""

from collections.abc import Iterator
from typing import Final

from msgspec import Struct

from studio.draft import Edge, LineMark, Piece
from studio.draft.making import Shown
from studio.drawing import Drawing, Mark, Words
from studio.drawing.dimension import dimension
from studio.drawing.lettering import width, words_box
from studio.geometry import Box, Path, Point, joined
from studio.units import Unit, write_length
from studio.words import tr

from .room import WORDS, note
from .view import View
from .worked import lit, named, side_of

SAID: Final = {
    "zip stop": "stop", "row stop": "start", "dart": "dart", "pocket": "pocket", "slit": "slit",
    "slit top": "seam ends",
    "stitching": "stitch to here",
}  # fmt: skip
"""What is said of a line that is worked on, in a word."""
_MOST: Final = 3
_BEND: Final = 1.03
"""A length is drawn straight along an edge that is no more than so many times as long."""
_ROOM: Final = 3.4
_LOW: Final = 9.0
"""Across a lower piece than this (mm on the page) names would hide the lines."""


class Side(Struct, frozen=True):
    """The whole side of a piece near which the picture is, walked clockwise; how much lies beyond its line, and beyond
    either end.
    """

    path: Path
    allowance: float
    before: float
    after: float

    def depth(self, p: Point) -> float:
        """How far a place lies in from the cut edge, mm."""
        along, far = self.path.nearest(p)
        out = self.path.direction(along).outward().dot(self.path.at(along).to(p))
        return self.allowance + (-far if out > 0 else far)


def side(piece: Piece, edge: Edge) -> Side:
    """All of the side that an edge is part of: an opening and the seam below it are one."""
    around = list(piece.edges)
    k = around.index(edge)
    first = last = k
    while last - first + 1 < len(around) and _go_on(around[first - 1], around[first]):
        first -= 1
    while last - first + 1 < len(around) and _go_on(around[last], around[(last + 1) % len(around)]):
        last += 1
    run = [around[n % len(around)] for n in range(first, last + 1)]
    return Side(
        joined(e.path for e in run), edge.allowance, around[first - 1].allowance,
        around[(last + 1) % len(around)].allowance,
    )  # fmt: skip


def _go_on(e: Edge, f: Edge) -> bool:
    """Whether one edge runs on from another in the same side."""
    same = e.name.split(" ")[0] == f.name.split(" ")[0]
    return same and e.path.end.distance(f.path.start) < 1e-6


def measured(piece: Piece, shown: Shown, view: View, window: Box, unit: Unit) -> Drawing:
    """Distances from the raw edges, and a word for each mark; only what the window shows, and nothing twice."""
    if shown.near == "whole":
        return tuple(_names(piece, shown, view, window))
    near = side(piece, side_of(piece, shown))
    marks: list[Mark] = []
    taken: list[Box] = []
    for p, deep in _depths(piece, shown, near, view, window):
        way = view.way(near.path.direction(near.path.nearest(p)[0]).outward())
        start, end = view.point(p).along(way, deep * view.scale), view.point(p)
        if _holds(window.grown(1), start):
            _add(marks, taken, dimension(start, end, write_length(deep, unit, bare=True), height=WORDS), window)
    for mark in _bars(piece, shown, view, window):
        along = near.path.nearest(mark.path.at(mark.path.length / 2))[0]
        nearer = along <= near.path.length / 2
        first = near.path.start.y < near.path.end.y if mark.role == "zip stop" else nearer  # a stop, from the waist
        _add(marks, taken, _along_edge(near, along, view, window, unit, from_start=first), window)
    said: set[str] = set()
    for m in lit(piece, shown):
        word = SAID.get(m.role, "")
        if word and word not in said:
            found = _word(tr(word), view.path(m.path), window, taken)
            if found:
                marks.append(found)
                taken.append(words_box(found))
                said.add(word)
    return tuple(marks)


def _names(piece: Piece, shown: Shown, view: View, window: Box) -> Iterator[Mark]:
    """On a whole piece: what the centre and quarter lines are called, where they have room."""
    last = -99.0
    if window.height < _LOW:
        return
    found = [m for m in lit(piece, shown) if m.role in ("centre", "quarter") and m.words is not None]
    for m in sorted(found, key=lambda m: view.point(m.path.start).x):
        at = view.path(m.path).at(m.path.length * view.scale / 2)
        text = tr(m.words.text) if m.words else ""
        half = width(text, WORDS) / 2
        if at.x - half > last + 2 and at.x + half < window.right and at.x - half > window.left:
            yield note(text, at.x, at.y + 1, "centre")
            last = at.x + half


def _depths(piece: Piece, shown: Shown, near: Side, view: View, window: Box) -> Iterator[tuple[Point, float]]:
    """Places on lines that run along the near edge, with how far in they lie; each further along than the last."""
    paths = [e.path for e in named(piece, shown)] + [
        m.path for m in lit(piece, shown) if m.role in ("gather", "hem", "pocket")
    ]
    seen: list[float] = []
    for path in paths:
        place = _seen_at(path, view, window, 0.5 + 0.12 * len(seen))
        if place is None or len(seen) == _MOST:
            continue
        deep = near.depth(place)
        along = near.path.nearest(place)[0]
        if abs(near.path.direction(along).dot(path.direction(path.nearest(place)[0]))) < 0.9:
            continue
        if deep < 1 or any(abs(deep - d) < 0.5 for d in seen):
            continue
        seen.append(deep)
        yield place, deep


def _seen_at(path: Path, view: View, window: Box, share: float) -> Point | None:
    """A place on a path at a share of what the window shows of it."""
    inner = window.grown(-_ROOM)
    inside = [
        k / 64 for k in range(65)
        if _holds(inner, view.point(path.at(path.length * k / 64)))
    ]  # fmt: skip
    if len(inside) < 2:
        return None
    at = inside[0] + (inside[-1] - inside[0]) * min(0.9, share)
    return path.at(path.length * at)


def _holds(box: Box, p: Point) -> bool:
    return box.left <= p.x <= box.right and box.top <= p.y <= box.bottom


def _bars(piece: Piece, shown: Shown, view: View, window: Box) -> list[LineMark]:
    return [
        m for m in lit(piece, shown)
        if m.role in ("row stop", "zip stop") and _holds(window, view.point(m.path.at(m.path.length / 2)))
    ][:1]  # fmt: skip


def _along_edge(
    near: Side, along: float, view: View, window: Box, unit: Unit, *, from_start: bool
) -> Drawing:  # fmt: skip
    """From a raw end of the near side to a place along it, drawn a little way in."""
    whole = near.path.length
    length = along + near.before if from_start else whole - along + near.after
    first, last = (0.0, along) if from_start else (whole, along)
    straight = near.path.at(first).distance(near.path.at(last))
    if abs(last - first) > straight * _BEND:
        return ()
    start = near.path.at(first).along(near.path.direction(first), -near.before if from_start else near.after)
    end = near.path.at(last)
    into = near.path.direction(last).outward()
    deep = _IN / view.scale
    a, b = (view.point(p.along(into, -deep)) for p in (start, end))
    if not (_holds(window.grown(1), a) and _holds(window.grown(1), b)):
        return ()
    if a.x > b.x + 0.1 or (abs(a.x - b.x) <= 0.1 and a.y < b.y):
        a, b = b, a
    return dimension(a, b, write_length(length, unit, bare=True), height=WORDS)


_IN: Final = 13.0


def _add(marks: list[Mark], taken: list[Box], drawn: Drawing, window: Box) -> None:
    """Add a dimension whose words lie in the picture and on no others."""
    boxes = [words_box(m) for m in drawn if isinstance(m, Words)]
    if any(b.meets(t) for b in boxes for t in taken) or any(
        b.joined(window.grown(1)) != window.grown(1) for b in boxes
    ):
        return
    marks += drawn
    taken += boxes


def _word(text: str, path: Path, window: Box, taken: list[Box]) -> Words | None:
    """A word beside a line, at whichever end has room."""
    wide = width(text, WORDS)
    shares = (0.5, 1.0, 0.0) if len(path.runs) > 1 else (1.0, 0.0, 0.5)  # at the point of a dart
    spots = [path.at(path.length * share) for share in shares]
    for p in spots:
        for dx, dy in (
            (1.4, 1.0),
            (-1.4 - wide, 1.0),
            (1.4, -2.0),
            (-1.4 - wide, -2.0),
            (1.4, 4.6),
            (-1.4 - wide, 4.6),
        ):
            found = note(text, p.x + dx, p.y + dy, now=True)
            box = words_box(found)
            if box.joined(window) == window and not any(box.grown(0.4).meets(t) for t in taken):
                return found
    return None
