"""Pieces as the planner knows them: outlines with the ways they may lie; and its plans as places of the pieces."""

from collections.abc import Iterable

from msgspec import Struct

from studio.brief import Cloth, Held
from studio.draft import Piece
from studio.geometry import Line, Point
from studio.geometry.cover import cover

from .placed import Lay, Placed
from .plan.problem import Grid, Part, Plan, Problem, Spot
from .plan.problem import Way as PlanWay
from .ways import Ways, on_cloth, phase_point, turned_over, ways

NEAR = 1.0
"""What is laid in a piece's place reaches at most about twice so far past its curves (mm)."""


class Task(Struct, frozen=True):
    """What is to be laid: the planner's problem, and the pieces it stands for."""

    problem: Problem
    lies: tuple[Ways, ...]
    cloth: Cloth

    @property
    def exact(self) -> bool:
        """Whether every piece is laid as it is: straight on all sides."""
        return all(isinstance(c, Line) for one in self.lies for c in one.piece.cut_line.curves)

    @property
    def whole(self) -> bool:
        """Whether all of it can be laid."""
        from .plan.misfits import misfits  # brings numpy with it

        return bool(self.problem.parts) and not misfits(self.problem)


def task(pieces: Iterable[Piece], cloth: Cloth) -> Task:
    """The pieces of the main cloth as a problem for the planner; mm from the inner edge of the first selvedge."""
    lies = tuple(ways(p, cloth) for p in pieces if p.cloth == "main")
    parts = tuple(_part(one, cloth) for one in lies)
    held = {
        (s.part, s.copy): s
        for one in lies
        for h in reversed(cloth.held)
        if h.piece == one.piece.id and on_cloth(h, one, cloth)
        for s in (_spot(h, one, cloth),)
    }
    kept = tuple(held.values())
    return Task(Problem(cloth.usable, parts, cloth.gap, cloth.lies == "folded", kept), lies, cloth)


def laid(found: Plan, task: Task, least: float = 0.0) -> Lay:
    """A plan of the planner's as places of the pieces; no plan is shorter than `least` mm, however that is known.

    Where pieces are curved, others a little larger were laid in their place: what is proven of those is not of these.
    """
    cloth, folded = task.cloth, task.problem.folded
    lies = {one.piece.id: one for one in task.lies}
    shift = 0.0 if folded else cloth.selvedge
    placed = tuple(_placed(s, lies[s.part], shift, folded) for s in sorted(found.spots, key=lambda s: (s.x, s.y)))
    adrift = tuple(a for one in task.lies for a in one.adrift)
    bound = min(max(found.bound if task.exact else 0.0, least), found.length)
    return Lay(cloth.seen, found.length, bound, placed, (), adrift, folded, found.length - bound < 0.01)


def spots(lay: Lay, task: Task) -> tuple[Spot, ...]:
    """A lay of the task's pieces as the planner knows it."""
    lies = {one.piece.id: one for one in task.lies}
    return tuple(
        _spot(Held(p.piece.id, p.copy, p.at.x, p.at.y, p.turn, p.mirrored), lies[p.piece.id], task.cloth)  # type: ignore[arg-type]
        for p in lay.placed
    )


def _part(lies: Ways, cloth: Cloth) -> Part:
    """The outline of a piece, or of its half with the fold on top, and how it may lie."""
    piece, way = lies.piece, lies.ways[0]
    flat = cover(piece.cut_line if lies.half else piece.as_cut, NEAR)
    if lies.half:
        origin = Placed(piece, 0, Point(0, 0), way.turn, way.mirrored, half=True)
        outline = tuple((p.x, p.y) for p in map(origin.on_cloth, flat))
        both = (PlanWay(0),) if cloth.one_way else (PlanWay(0), PlanWay(180))
        return Part(piece.id, outline, both, piece.cut, grid=_grid(piece, cloth, origin), fold=True)
    grid = _grid(piece, cloth, None)
    found = tuple(PlanWay(w.turn, w.across) for w in lies.ways)
    return Part(piece.id, tuple((p.x, p.y) for p in flat), found, piece.cut, piece.mirrored, grid)


def _grid(piece: Piece, cloth: Cloth, laid: Placed | None) -> Grid | None:
    """The repeat that a point of the piece is tied to, as its outline is given: `laid`, where it was turned before."""
    at = phase_point(piece, cloth)
    if at is None or cloth.repeat is None:
        return None
    at = laid.on_cloth(at) if laid else at
    return Grid(cloth.repeat, cloth.offset, (at.x, at.y))


def _placed(spot: Spot, lies: Ways, shift: float, folded: bool) -> Placed:
    at, paired = Point(spot.x, spot.y + shift), lies.paired
    if lies.half:  # its outline was turned before it was laid; its other half is it turned over along the cloth
        way = lies.ways[0]
        turn = (way.turn + 180) % 360 if spot.mirrored else way.turn
        return Placed(lies.piece, spot.copy, at, turn, way.mirrored != spot.mirrored, half=True, layers=2)
    copy = spot.copy * 2 if paired else spot.copy
    return Placed(lies.piece, copy, at, spot.turn, spot.mirrored, layers=2 if folded and paired else 1)


def _spot(held: Held, lies: Ways, cloth: Cloth) -> Spot:
    """Where a held copy lies, as the planner counts."""
    shift = 0.0 if cloth.lies == "folded" else cloth.selvedge
    copy = held.copy // 2 if lies.paired else held.copy
    if lies.half:
        return Spot(held.piece, copy, held.x, 0.0, 0, held.over != lies.ways[0].mirrored)
    return Spot(held.piece, copy, held.x, held.y - shift, held.turn, turned_over(lies, copy, held.over))
