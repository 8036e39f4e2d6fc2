"""A facing for a skirt's waist: the top of a panel copied, its darts closed, and drawn from its other side.

The sides are copied as they are and cut off at the facing's depth, measured along them, so that the facings join as
the panels do. The lower edge is parallel to the waist where that meets both cuts, as under straight and circular
waists; elsewhere it is a curve that leaves both sides square. A panel's darts are closed; pleats and gathers stay in
the copy, for a facing cannot have them and a finding says so.
"""

import math
from collections.abc import Iterable
from itertools import pairwise

from msgspec import Struct
from msgspec.structs import replace

from studio.geometry import TOUCH, Cubic, Path, Point, joined, offset
from studio.units import spell
from studio.words import Phrase, phrase

from .cut_line import cut_line
from .marks import notch_on
from .piece import PARTS, Dimension, Edge, Piece, Spot
from .turned_over import edges_over, spots_over

MOST = 0.8
"""A facing covers at most this share of a panel's side."""
NEAR = 0.5
"""A dart's legs end within this (mm) of the place where it is closed."""


class _Top(Struct, frozen=True):
    """The top of a panel with its darts closed: the waist, and both sides down from it."""

    waist: Path
    right: Path
    left: Path


def facing(piece: Piece, depth: float) -> Piece:
    """The facing of a panel's waist edge, `depth` mm deep; its sides bear the names of its own left and right."""
    waist = piece.edge("waist")
    around = _clockwise_from(piece.edges, waist)
    right, left = _side(around[1:]), _side([replace(e, path=e.path.reversed()) for e in reversed(around[1:])])
    deep = min(depth, most_depth(piece))
    shut, darts = _closed(piece, waist, joined(e.path for e in right), joined(e.path for e in left))
    shut = _upright(shut, right[0].fold)
    down, up = shut.right.split(deep)[0], shut.left.split(deep)[0].reversed()
    closes = () if darts else waist.closes
    drawn = (
        replace(waist, path=shut.waist, closes=closes, sews_to=f"{piece.id}/waist", words=phrase("seam, turned in")),
        _cut(right[0], "left", down),
        Edge("lower", _lower(shut.waist, down, up, deep), 0.0, words=phrase("lower edge, neatened")),
        _cut(left[0], "right", up),
    )
    notches = [
        notch_on(shut.waist, _beside(waist, waist.path.nearest(s.at)[0], darts), waist.allowance, "waist", s.governs)
        for s in piece.spots
        if s.role == "notch" and s.on == "waist"
    ]
    return facing_piece(piece, f"facing-{piece.id}", phrase("{p:word}, waist facing", p=piece.name), drawn, deep,
                        "waistband.facing_depth", notches)  # fmt: skip


def facing_piece(
    panel: Piece, id: str, name: Phrase, drawn: tuple[Edge, ...], deep: float, path: str, notches: Iterable[Spot] = ()
) -> Piece:  # fmt: skip
    """The facing of a panel's edge: as many as there are panels, seen from inside and on the panel's grain.

    It is `drawn` as it lies on the panel, clockwise from the edge that is faced, `deep` mm, by the number at `path`.
    """
    faced = drawn[0].path
    x = faced.box.centre.x
    edges = edges_over(drawn, x)
    side = next(e.path for e in edges if e.name == "right")
    start, end = _grain(panel, faced, deep)
    depth = Dimension(path, side.start, side.end, "right", phrase("{d:bare}", d=deep))
    return Piece(
        id=id, name=spell(name, "cm"), edges=edges, cut_line=cut_line(edges),
        grain=(start.flipped(x), end.flipped(x)), spots=spots_over(notches, x), dimensions=(depth,),
        cut=panel.cut, mirrored=panel.mirrored, row=PARTS,
    )  # fmt: skip


def _grain(panel: Piece, faced: Path, deep: float) -> tuple[Point, Point]:
    """The panel's own grain, so that both give alike, in the middle of the facing and no longer than lies on it."""
    middle = faced.length / 2
    along = faced.direction(middle)
    way = panel.grain[0].to(panel.grain[1]).unit()
    at = faced.at(middle).along(along.outward(), -deep / 2)
    reach = min(60.0, faced.length / 6, 0.4 * deep / max(abs(way.cross(along)), 0.01))
    return at.along(way, -reach), at.along(way, reach)


def most_depth(piece: Piece) -> float:
    """The deepest facing that a panel's sides have room for, mm."""
    around = _clockwise_from(piece.edges, piece.edge("waist"))
    sides = (_side(around[1:]), _side([*reversed(around[1:])]))
    return MOST * min(sum(e.path.length for e in side) for side in sides)


def _clockwise_from(edges: tuple[Edge, ...], first: Edge) -> list[Edge]:
    at = edges.index(first)
    return [*edges[at:], *edges[:at]]


def _side(edges: Iterable[Edge]) -> list[Edge]:
    """The edges of one side, from the waist down to the hem or foot."""
    found: list[Edge] = []
    for e in edges:
        if e.name.split(" ")[0] not in ("right", "left"):
            break
        found.append(e)
    return found


END = phrase("end")
"""What a side of a facing is at the opening."""


def _cut(side: Edge, name: str, path: Path) -> Edge:
    """A side of the facing, from the panel's side above the cut."""
    words = side.words if side.fold else phrase("seam") if side.sews_to not in ("zip", "placket", "") else END
    return Edge(name, path, side.allowance, words=words, fold=side.fold)


def _closed(piece: Piece, waist: Edge, right: Path, left: Path) -> tuple[_Top, bool]:
    """The top with every dart closed about its point, and whether there were any; what lies right of a dart turns."""
    points = [_point(piece, waist.path.at(a), waist.path.at(b)) for a, b in waist.closes]
    if not points or None in points:
        return _Top(waist.path, right, left), False
    places = [0.0, *(s for pair in waist.closes for s in pair), waist.path.length]
    kept = [_between(waist.path, a, b) for a, b in pairwise(places)][::2]
    block = list(kept[-1].curves)
    for k in range(len(points) - 1, -1, -1):
        point, (a, b) = points[k], waist.closes[k]
        assert point is not None
        turn = point.to(waist.path.at(a)).degrees - point.to(waist.path.at(b)).degrees
        block = [*kept[k].curves, *(c.turned(turn, point) for c in block)]
        right = right.turned(turn, point)
    return _Top(Path(tuple(block)), right, left), True


def _upright(top: _Top, fold: bool) -> _Top:
    """Turned so that a right side on the fold stands upright again, once darts beside it have been closed."""
    turn = 90 - top.right.direction(0).degrees if fold else 0.0
    if abs(turn) < 1e-9:
        return top
    about = top.right.start
    return _Top(top.waist.turned(turn, about), top.right.turned(turn, about), top.left.turned(turn, about))


def _between(path: Path, start: float, end: float) -> Path:
    """The stretch of a path between two places along it."""
    rest = path.split(start)[1] if start > TOUCH else path
    return rest.split(end - start)[0] if end < path.length - TOUCH else rest


def _point(piece: Piece, p: Point, q: Point) -> Point | None:
    """The point of the dart whose legs end at p and q."""
    for mark in piece.lines:
        a, b = mark.path.start, mark.path.end
        if mark.role == "dart" and min(max(a.distance(p), b.distance(q)), max(a.distance(q), b.distance(p))) < NEAR:
            return mark.path.curves[0].end
    return None


def _beside(waist: Edge, along: float, darts: bool) -> float:
    """Where a place along the waist edge lies once the darts are closed, its gathers let out."""
    return waist.sewn_at(along) * waist.ratio if darts else along


def _lower(waist: Path, down: Path, up: Path, deep: float) -> Path:
    """From the right cut to the left one: parallel to the waist, or else square to both sides, as near a circle as a
    cubic comes.
    """
    start, end = down.end, up.start
    parallel = offset(waist, -deep).reversed()
    if parallel.start.distance(start) < TOUCH and parallel.end.distance(end) < TOUCH:
        return parallel
    leave, arrive = down.direction(down.length).outward(), up.direction(0).outward()
    leave = Point(-leave.x, -leave.y)
    turn = abs(math.atan2(leave.cross(arrive), leave.dot(arrive)))
    far = start.distance(end)
    reach = far / 3 if turn < 1e-6 else 2 / 3 * math.tan(turn / 4) * far / math.sin(turn / 2)
    return Path((Cubic(start, start.along(leave, reach), end.along(arrive, -reach), end),))
