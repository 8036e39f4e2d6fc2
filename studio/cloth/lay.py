"""A lay plan at a glance: every piece laid by its box, as little length as simple rules find.

Quick enough for each keystroke, and sound: it keeps to the grain, the bands of the print, the repeat, the fold and the
gap. Shorter plans, by the pieces' true shapes, are another matter. The bound is true: no plan can be shorter.
"""

import math
from collections.abc import Iterable, Iterator

from msgspec import Struct

from studio.brief import Cloth
from studio.draft import Piece
from studio.geometry import Point

from .placed import Lay, Placed
from .ways import Way, Ways, on_cloth, phase, too_wide, turned_over, ways

NEAR = 0.01
"""A plan that is longer than any must be by less than this (mm) cannot be bettered with shears."""
Profile = list[tuple[float, float, float]]
"""From, to across the cloth, and the length used there (mm)."""


class _Copy(Struct, frozen=True):
    lies: Ways
    number: int
    along: float
    across: float
    mark: float | None

    @property
    def bound_to_place(self) -> bool:
        return self.lies.ways[0].across is not None

    def bound_to_hand(self, way: Way) -> bool:
        """Whether a way is not one of its own: the maker's hand has put it there."""
        return way not in self.lies.ways

    @property
    def over(self) -> bool:
        """Whether this copy is turned over where no hand has put it."""
        return turned_over(self.lies, self.number, asked=False)


_Spot = tuple[_Copy, Way, Point]


def lay_out(pieces: Iterable[Piece], cloth: Cloth) -> Lay:
    """Lay every copy of the pieces cut from the main cloth, between the selvedges."""
    wide, lies = cloth.usable, [ways(p, cloth) for p in pieces if p.cloth == "main"]
    misfits = too_wide((one.piece for one in lies), cloth)
    unfit = {p.id for p in misfits}
    fitting = [c for one in lies if one.piece.id not in unfit for c in _copies(one, cloth)]
    held = [(c, way, at) for c in fitting for way, at in _held(c, cloth)]
    free = [c for c in fitting if not any(c is one for one, _, _ in held)]
    bound = least(fitting, wide, cloth)
    spots, length = list(held), math.inf
    for turns in _orders(free):
        plan = _skyline(held, turns, wide, cloth, length)
        if plan is not None:
            spots, length = plan
        if length - bound < NEAR:
            break
    folded = cloth.lies == "folded"
    shift = 0.0 if folded else cloth.selvedge
    placed = tuple(_placed(c, way, at.moved(0, shift), folded) for c, way, at in spots)
    adrift = tuple(a for one in lies for a in one.adrift)
    proven = not misfits and abs(length - bound) < NEAR  # shorter than can be is what is held on top of another
    return Lay(cloth.seen, length, min(length, bound), placed, misfits, adrift, folded, proven)


def _orders(copies: list[_Copy]) -> Iterator[list[_Copy]]:
    """What is bound to its place first, then the longest, the widest or the largest first; no order twice."""
    sizes = (lambda c: (-c.along, -c.across), lambda c: (-c.across, -c.along), lambda c: (-c.along * c.across,))
    turns = (sorted(range(len(copies)), key=lambda k: (not copies[k].bound_to_place, *s(copies[k]))) for s in sizes)
    return ([copies[k] for k in order] for order in dict.fromkeys(map(tuple, turns)))


def least(copies: list[_Copy], wide: float, cloth: Cloth) -> float:
    """The longest piece, the true area, or what must follow one another where it crosses one line along the cloth.

    Only rectangles surely cross a line all along, and only those that no hand has turned.
    """
    loose = [c for c in copies if not _held(c, cloth)]
    longest = max((c.along for c in loose), default=0.0)
    area = sum(c.lies.area for c in copies) / wide
    kept = [
        (*_surely(c, wide), c.along)
        for c in loose
        if c.lies.piece.rectangular and (len(c.lies.ways) == 1 or not c.bound_to_place)
    ]
    lines = {top for top, bottom, _ in kept if bottom - top > 1e-6}
    follow = ([a for top, bottom, a in kept if top <= y + 1e-6 < bottom - 1e-6] for y in lines)
    return max(longest, area, *(sum(one) + cloth.gap * (len(one) - 1) for one in follow), 0.0)


def _surely(c: _Copy, wide: float) -> tuple[float, float]:
    """The part of the width that the copy covers wherever it lies."""
    start = c.lies.ways[0].across
    return (wide - c.across, c.across) if start is None else (start, start + c.across)


def _copies(lies: Ways, cloth: Cloth) -> list[_Copy]:
    box, down = lies.box, lies.ways[0].turn % 180 == 90
    along, wide = (box.height, box.width) if down else (box.width, box.height)
    mark = phase(lies.piece, cloth)
    return [_Copy(lies, k, along, wide, mark) for k in range(lies.spots)]


def _placed(c: _Copy, way: Way, at: Point, folded: bool) -> Placed:
    piece, paired = c.lies.piece, c.lies.paired
    over = way.mirrored if c.bound_to_hand(way) else way.mirrored or c.over
    return Placed(
        piece, c.number * (2 if paired else 1), at, way.turn, over, c.lies.half,
        2 if folded and (paired or c.lies.half) else 1,
    )  # fmt: skip


def _held(c: _Copy, cloth: Cloth) -> list[tuple[Way, Point]]:
    """Where the maker holds this copy, if anywhere on the cloth."""
    piece, pair = c.lies.piece, 2 if c.lies.paired else 1
    shift = 0.0 if cloth.lies == "folded" else cloth.selvedge
    found = []
    for h in cloth.held:
        if h.piece == piece.id and h.copy // pair == c.number and on_cloth(h, c.lies, cloth):
            y = 0.0 if c.lies.half else h.y - shift
            found.append((Way(h.turn, turned_over(c.lies, c.number, h.over), y), Point(h.x, y)))
    return found[:1]


def _skyline(
    held: list[_Spot], copies: list[_Copy], wide: float, cloth: Cloth, under: float
) -> tuple[list[_Spot], float] | None:  # fmt: skip
    """What is held where it is, then each copy in turn to the place nearest the cut end, first selvedge first; and how
    long that is. None as soon as it is not shorter than `under`.
    """
    gap, profile = cloth.gap, [(0.0, wide + cloth.gap, 0.0)]
    spots, long = list(held), 0.0
    for c, way, at in held:
        along, across = (c.along, c.across) if _as_free(c, way) else (c.across, c.along)
        to = max(at.x + along + gap, _reach(profile, at.y, across + gap))
        profile = _raised(profile, at.y, at.y + across + gap, to)
        long = max(long, at.x + along)
    for c in copies:
        found = [(_started(c, way, _reach(profile, y, c.across + gap), cloth), y, k)
                 for k, way in _tried(c) for y in _heights(profile, c, way, wide, gap)]  # fmt: skip
        x, y, k = min(found)
        way = c.lies.ways[k] if c.bound_to_place else _hem_out(c, c.lies.ways, y, wide)
        start = _started(c, way, x, cloth)
        long = max(long, start + c.along)
        if long >= under:
            return None
        spots.append((c, way, Point(start, y)))
        profile = _raised(profile, y, y + c.across + gap, start + c.along + gap)
    return spots, long


def _as_free(c: _Copy, way: Way) -> bool:
    """Whether a copy lies with its grain along the cloth, as it does unless the maker has turned it."""
    return way.turn % 180 == c.lies.ways[0].turn % 180


def _tried(c: _Copy) -> list[tuple[int, Way]]:
    """The ways worth trying: all bands, but one of those that have the same box."""
    return list(enumerate(c.lies.ways))[: None if c.bound_to_place else 1]


def _heights(profile: Profile, c: _Copy, way: Way, wide: float, gap: float) -> list[float]:
    if way.across is not None:
        return [way.across]
    last = wide - c.across
    tops = {y0 for y0, _, _ in profile} | {y1 - c.across - gap for _, y1, _ in profile}
    return [min(max(0.0, y), max(0.0, last)) for y in tops if -1e-6 <= y <= last + 1e-6]


def _hem_out(c: _Copy, free: tuple[Way, ...], y: float, wide: float) -> Way:
    """A panel along the cloth lies with its hem towards the nearer selvedge, where a border is."""
    hemmed = any(e.name == "hem" for e in c.lies.piece.edges)
    turned = hemmed and free[0].turn == 0 and y + c.across / 2 < wide / 2
    return next((w for w in free if turned and w.turn == 180), free[0])


def _started(c: _Copy, way: Way, x: float, cloth: Cloth) -> float:
    """The first start at or after x that has the motif where it must be."""
    if c.mark is None or cloth.repeat is None:
        return x
    away = (way.turn == 90) if way.turn % 180 else (way.turn == 180) != c.over
    mark = c.along - c.mark if away else c.mark
    first = cloth.offset - mark
    return first + math.ceil((x - first) / cloth.repeat - 1e-9) * cloth.repeat


def _reach(profile: Profile, y: float, across: float) -> float:
    return max([x for y0, y1, x in profile if y0 < y + across - 1e-6 and y1 > y + 1e-6])


def _raised(profile: Profile, top: float, bottom: float, to: float) -> Profile:
    kept = [
        part
        for y0, y1, x in profile
        for part in ((y0, min(y1, top), x), (max(y0, bottom), y1, x))
        if part[1] - part[0] > 1e-6
    ]
    return sorted([*kept, (top, bottom, to)])
