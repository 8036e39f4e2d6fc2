"""Where things lie on a rectangle, read from one corner: letters along, numbers down, never added up.

The corner A1 is where the two raw edges meet, at the left end of the edge that is drawn on top. Everything is read
off the drafted piece: its edges, lines and spots.
"""

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise

from msgspec import Struct

from studio.draft import Edge, LineMark, Piece
from studio.draft.gathers import BREAK
from studio.draft.piece import Role
from studio.geometry import TOUCH
from studio.units import spell
from studio.words import phrase, tr

SAME = 0.05
"""Marks nearer than this (mm) are one station: chalk is thicker."""

LETTERS = "ABCDEFGHJKLMNPQRSTUVWXYZ"
"""No I and no O: in chalk they are figures."""

CUT, SEAM, LINE, NOTCH, FASTENING, ROW = range(6)


class Station(Struct, frozen=True):
    """A place on the tape: its name, how far from A1 (mm), and what is there."""

    name: str
    distance: float
    what: str


class Stations(Struct, frozen=True):
    """Everything to chalk on a rectangle `width` by `height` mm, cut edges included."""

    along: tuple[Station, ...]
    down: tuple[Station, ...]
    width: float
    height: float

    @property
    def diagonal(self) -> float:
        """Both diagonals of a true rectangle, mm (Pythagoras)."""
        return float((self.width**2 + self.height**2) ** 0.5)


class _Found(Struct, frozen=True):
    at: float
    rank: int
    words: str


def stations(piece: Piece) -> Stations:
    """The stations of a rectangular piece, in order from A1; marks off the piece have none."""
    box = piece.cut_line.box
    across = [_Found(f.at - box.left, f.rank, f.words) for f in _across(piece)]
    along = _named(across, box.width, [letters(k) for k in range(len(across))])
    below = [_Found(f.at - box.top, f.rank, f.words) for f in _below(piece, along)]
    down = _named(below, box.height, [str(k + 1) for k in range(len(below))])
    return Stations(along, down, box.width, box.height)


def letters(k: int) -> str:
    """Name of the k-th station along: A to Z without I and O, then AA, AB and on."""
    more, last = divmod(k, len(LETTERS))
    return (letters(more - 1) if more else "") + LETTERS[last]


def _named(found: Iterable[_Found], size: float, names: Sequence[str]) -> tuple[Station, ...]:
    """Places within the piece in order, those on top of each other as one."""
    groups: list[list[_Found]] = []
    for f in sorted(found, key=lambda f: f.at):
        if not -SAME <= f.at <= size + SAME:
            continue
        if groups and f.at - groups[-1][0].at <= SAME:
            groups[-1].append(f)
        else:
            groups.append([f])
    merged = []
    for name, group in zip(names, groups, strict=False):
        ranked = sorted(group, key=lambda f: f.rank)
        merged.append(Station(name, ranked[0].at, _said(ranked)))
    return tuple(merged)


def _said(ranked: Iterable[_Found]) -> str:
    """Each thing once, the rows after a semicolon."""
    words = list(dict.fromkeys((f.rank == ROW, f.words) for f in ranked))
    marks, rows = (", ".join(w for row, w in words if row is late) for late in (False, True))
    return "; ".join(part for part in (marks, rows) if part)


def _across(piece: Piece) -> Iterator[_Found]:
    box = piece.cut_line.box
    yield from (_Found(x, CUT, tr("cut edge")) for x in (box.left, box.right))
    sides = [e for e in piece.edges if abs(e.path.start.x - e.path.end.x) < TOUCH]
    opening = [e.path.start.x for e in sides if e.sews_to == "zip"]
    for e in sides:
        if e.allowance > 0:
            yield _Found(e.path.start.x, SEAM, _side(piece, e, opening))
    for mark in piece.lines:
        if mark.role in ("centre", "quarter") and mark.words is not None:
            yield _Found(mark.path.start.x, LINE, tr(mark.words.text))
        elif mark.role == "buttonhole":
            inner, outer = sorted((mark.path.start.x, mark.path.end.x))
            yield _Found(inner, FASTENING, tr("buttonhole, inner end"))
            yield _Found(outer, FASTENING, tr("buttonhole, outer end"))
        elif mark.role == "row stop":
            yield _Found(mark.path.start.x, ROW, _rows_run(starts=mark.path.start.x < box.centre.x))
    for spot in piece.spots:
        if spot.role != "notch":
            yield _Found(spot.at.x, FASTENING, tr(spot.role))
        elif abs(spot.turn) == 90:
            yield _Found(spot.at.x, NOTCH, tr("notch"))
    yield from _row_ends(piece, [e.path.start.x for e in sides])


def _side(piece: Piece, e: Edge, opening: Sequence[float]) -> str:
    """What the seam at a side is: the opening's, the one across from it, or another."""
    if any(abs(x - e.path.start.x) < TOUCH for x in opening):
        return tr("opening seam")
    if e.sews_to == f"{piece.id}/{e.name}":
        return tr("seam across from the opening")
    if e.sews_to:
        return tr("panel seam")
    return spell(phrase("seam, {end:word}", end=tr(e.words.text)), "cm") if e.words else tr("seam")


def _rows_run(*, starts: bool) -> str:
    return tr("rows start") if starts else tr("rows stop")


def _row_ends(piece: Piece, sides: Sequence[float]) -> Iterator[_Found]:
    """Where the gather rows start, break and stop; what keeps the thread's distance from a seam belongs to it."""
    runs = sorted((m.path.start.x, m.path.end.x) for m in _top_row(piece))
    gaps = [(p[1], q[0]) for p, q in pairwise(runs)]
    for stop, start in gaps:
        if start - stop <= 2 * BREAK + SAME:
            yield _Found((stop + start) / 2, ROW, tr("rows break"))
        else:
            yield _Found(stop, ROW, _rows_run(starts=False))
            yield _Found(start, ROW, _rows_run(starts=True))
    for x, starts in ((runs[0][0], True), (runs[-1][1], False)) if runs else ():
        seam = next((s for s in sides if abs(s - x) <= BREAK + SAME), x)
        yield _Found(seam, ROW, _rows_run(starts=starts))


def _top_row(piece: Piece) -> list[LineMark]:
    rows = [m for m in piece.lines if m.role == "gather"]
    top = min((m.path.start.y for m in rows), default=0.0)
    return [m for m in rows if abs(m.path.start.y - top) < TOUCH]


def _below(piece: Piece, along: Sequence[Station]) -> Iterator[_Found]:
    box = piece.cut_line.box
    lying = sorted((e for e in piece.edges if abs(e.path.start.y - e.path.end.y) < TOUCH), key=lambda e: e.path.start.y)
    for y, edge in ((box.top, lying[0]), (box.bottom, lying[-1])):
        level = [e for e in lying if abs(e.path.start.y - edge.path.start.y) < TOUCH]
        name = max(level, key=lambda e: e.path.length).name
        yield _Found(y, CUT, spell(phrase("{edge:word}, raw edge", edge=tr(name)), "cm"))
    for e in lying:
        if e.allowance > 0 and not e.hem and e.words is not None:
            yield _Found(e.path.start.y, SEAM, tr(e.words.text))
    for mark in piece.lines:
        if mark.role in ("fold", "hem", "first turn", "gather") and mark.words is not None:
            yield _Found(mark.path.start.y, ROW if mark.role == "gather" else LINE, tr(mark.words.text))
        elif mark.role in _LEVELS:
            yield _Found(mark.path.start.y, LINE, tr(_LEVELS[mark.role]))
    yield from _fastened(piece, along)


_LEVELS: dict[Role, str] = {"hip": "hip line", "stitching": "pleats stitched down to here"}


def _fastened(piece: Piece, along: Sequence[Station]) -> Iterator[_Found]:
    """Zip stops, holes, buttons, hooks and bars, each with the letters it lies at."""
    left = piece.cut_line.box.left
    places: dict[tuple[str, float], list[str]] = {}
    for mark in piece.lines:
        ends = sorted((mark.path.start.x - left, mark.path.end.x - left))
        if mark.role == "zip stop":
            places.setdefault(("zip stop", mark.path.start.y), []).append(_at((ends[0] + ends[1]) / 2, along))
        elif mark.role == "buttonhole":
            run = phrase("{a:word} to {b:word}", a=_at(ends[0], along), b=_at(ends[1], along))
            places.setdefault(("buttonhole", mark.path.start.y), []).append(spell(run, "cm"))
    for spot in piece.spots:
        if spot.role != "notch":
            places.setdefault((spot.role, spot.at.y), []).append(_at(spot.at.x - left, along))
    for (what, y), where in places.items():
        at = f" {tr('and')} ".join(dict.fromkeys(where))
        words = {
            "zip stop": phrase("zip stop, at {at:word}", at=at),
            "buttonhole": phrase("buttonhole {at:word}", at=at),
        }.get(what, phrase("{what:word} at {at:word}", what=tr(what), at=at))
        yield _Found(y, FASTENING, spell(words, "cm"))


def _at(distance: float, along: Sequence[Station]) -> str:
    """The letter at a distance."""
    return next((s.name for s in along if abs(s.distance - distance) <= SAME), "–")
