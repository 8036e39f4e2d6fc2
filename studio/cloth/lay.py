"""A first lay plan: every piece laid on the grain, as little length as simple rules find.

The cloth runs along x from its cut end, and y goes across it from the first selvedge. Pieces lie by their boxes;
a better plan by shape, print and fold is another matter. The bound below is true: no plan can be shorter.
"""

from collections.abc import Iterable

from msgspec import Struct

from studio.brief import Cloth
from studio.draft import Piece
from studio.geometry import Point


class Placed(Struct, frozen=True):
    """One copy of a piece on the cloth: corner of its box nearest the origin (mm).

    Where mirrored, it is turned over first; then it is turned by 0, 90 or 180 degrees, clockwise on the page.
    """

    piece: Piece
    copy: int
    at: Point
    turn: int
    mirrored: bool

    def on_cloth(self, p: Point) -> Point:
        """Where a point of the piece falls on the cloth."""
        box = self.piece.as_cut.box
        x, y = (box.right - p.x if self.mirrored else p.x - box.left), p.y - box.top
        match self.turn:
            case 90:
                return self.at.moved(box.height - y, x)
            case 180:
                return self.at.moved(box.width - x, box.height - y)
        return self.at.moved(x, y)


class Lay(Struct, frozen=True):
    """A plan: width and length of cloth it takes (mm), the least any plan could take, and what does not fit."""

    width: float
    length: float
    bound: float
    placed: tuple[Placed, ...]
    misfits: tuple[Piece, ...] = ()

    @property
    def proven(self) -> bool:
        """Whether no plan can be shorter."""
        return not self.misfits and self.length - self.bound < 1e-6


class _Copy(Struct, frozen=True):
    piece: Piece
    number: int
    turn: int
    along: float
    across: float

    @property
    def mirrored(self) -> bool:
        """Whether this copy is turned over: every other one of a mirrored pair."""
        return self.piece.mirrored and self.number % 2 == 1


def lay_out(pieces: Iterable[Piece], cloth: Cloth) -> Lay:
    """Lay every copy of the pieces cut from the main cloth, between the selvedges."""
    room = cloth.width - 2 * cloth.selvedge
    copies = [c for p in pieces if p.cloth == "main" for c in _copies(p)]
    fitting = [c for c in copies if c.across <= room + 1e-6]
    misfits = tuple({c.piece.id: c.piece for c in copies if c.across > room + 1e-6}.values())
    orders = (lambda c: (-c.along, -c.across), lambda c: (-c.across, -c.along), lambda c: (-c.along * c.across,))
    plans = (_skyline(sorted(fitting, key=order), room) for order in orders)
    spots, length = min(plans, key=lambda plan: plan[1])
    placed = tuple(
        Placed(c.piece, c.number, at.moved(0, cloth.selvedge), _turn(c, at, room), c.mirrored) for c, at in spots
    )
    return Lay(cloth.width, length, _bound(fitting, room), placed, misfits)


def grain_down(piece: Piece) -> bool:
    """Whether the grain runs down the piece, so that it is laid turned a quarter."""
    start, end = piece.grain
    return abs(end.y - start.y) > abs(end.x - start.x)


def across(piece: Piece) -> float:
    """How much of the cloth's width the piece takes with its grain along the cloth, mm."""
    box = piece.as_cut.box
    return box.width if grain_down(piece) else box.height


def _copies(piece: Piece) -> list[_Copy]:
    down, box = grain_down(piece), piece.as_cut.box
    along, wide = (box.height, box.width) if down else (box.width, box.height)
    return [_Copy(piece, k, 90 if down else 0, along, wide) for k in range(piece.cut)]


def _turn(c: _Copy, at: Point, room: float) -> int:
    """A panel along the cloth lies with its hem towards the nearer selvedge, where a border is."""
    hemmed = any(e.hem for e in c.piece.edges)
    return 180 if hemmed and c.turn == 0 and at.y + c.across / 2 < room / 2 else c.turn


def _skyline(copies: list[_Copy], room: float) -> tuple[list[tuple[_Copy, Point]], float]:
    """Each copy in turn to the place nearest the cut end, first selvedge first."""
    profile = [(0.0, room, 0.0)]  # from, to across the cloth, and the length used there
    spots: list[tuple[_Copy, Point]] = []
    for c in copies:
        starts = {y0 for y0, _, _ in profile} | {y1 - c.across for _, y1, _ in profile}
        x, y = min((_reach(profile, y, c.across), y) for y in starts if -1e-6 <= y <= room - c.across + 1e-6)
        y = max(0.0, y)
        spots.append((c, Point(x, y)))
        profile = _raised(profile, y, y + c.across, x + c.along)
    return spots, max((x for _, _, x in profile), default=0.0)


def _reach(profile: list[tuple[float, float, float]], y: float, across: float) -> float:
    return max(x for y0, y1, x in profile if y0 < y + across - 1e-6 and y1 > y + 1e-6)


def _raised(
    profile: list[tuple[float, float, float]], top: float, bottom: float, to: float
) -> list[tuple[float, float, float]]:
    kept = [
        part
        for y0, y1, x in profile
        for part in ((y0, min(y1, top), x), (max(y0, bottom), y1, x))
        if part[1] - part[0] > 1e-6
    ]
    return sorted([*kept, (top, bottom, to)])


def _bound(copies: list[_Copy], room: float) -> float:
    """The longest piece, the area, or the pieces too wide to lie beside each other: whichever is longest."""
    longest = max((c.along for c in copies), default=0.0)
    area = sum(c.along * c.across for c in copies) / room
    follow = sum(c.along for c in copies if c.across > room / 2 + 1e-6)
    return max(longest, area, follow)
