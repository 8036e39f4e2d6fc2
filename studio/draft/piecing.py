"""A corner pieced on: a panel too wide for the cloth, parted on the straight grain by an upright seam."""

import itertools
import math
from collections.abc import Iterable, Iterator, Mapping

from msgspec.structs import replace

from studio.geometry import Arc, Curve, Line, Path, Point
from studio.units import spell
from studio.words import phrase

from .marks import notch_on
from .piece import Edge, LineMark, Note, Piece, Role, Spot
from .ring import Ring
from .seam import Part, Seam
from .turned_over import meeting

TO_THE_EDGE: tuple[Role, ...] = ("hem", "first turn")
"""Lines that are drawn on through the allowance of the piecing seam."""
LONG: tuple[Role, ...] = (*TO_THE_EDGE, "centre", "quarter")
"""Lines that may cross the piecing seam; all others lie near the waist."""


def pieced(piece: Piece, x: float) -> tuple[Piece, Piece]:
    """A panel of lines and arcs parted at `x`, which its outline crosses twice, and the corner to be sewn to it.

    The panel is what lies nearer to x = 0, and stays where it is. Both keep the outline of the whole, as if they had
    been joined before they were cut. The corner bears the panel's id and "-corner".
    """
    right = x > 0
    inner, outer = _parted_edges(piece, x, right)
    a = inner[0].allowance
    over = a if right else -a
    panel = replace(
        piece, edges=inner, cut_line=_kept(piece.cut_line, x + over, not right),
        lines=tuple(_clipped(piece.lines, x, over, not right)), spots=(*piece.spots, _notch(inner)),
        notes=_notes(piece, x, not right),
    )  # fmt: skip
    corner = replace(
        piece, id=f"{piece.id}-corner", name=spell(phrase("{p:word}, corner", p=piece.name), "cm"), edges=outer,
        cut_line=_kept(piece.cut_line, x - over, right), grain=_grain(outer),
        lines=tuple(_clipped(piece.lines, x, -over, right)), spots=(_notch(outer),), notes=_notes(piece, x, right),
        handles=(), dimensions=(),
    )  # fmt: skip
    return panel, _moved(corner, -a - corner.cut_line.box.left)


def _moved(piece: Piece, dx: float) -> Piece:
    """The piece by itself, no longer where it was in the whole."""
    return replace(
        piece, edges=tuple(replace(e, path=e.path.moved(dx, 0)) for e in piece.edges),
        cut_line=piece.cut_line.moved(dx, 0), grain=(piece.grain[0].moved(dx, 0), piece.grain[1].moved(dx, 0)),
        lines=tuple(replace(m, path=m.path.moved(dx, 0)) for m in piece.lines),
        spots=tuple(replace(s, at=s.at.moved(dx, 0)) for s in piece.spots),
        notes=tuple(replace(n, at=n.at.moved(dx, 0)) for n in piece.notes),
    )  # fmt: skip


def piecing_seams(ring: Ring, corners: Mapping[str, str]) -> tuple[Seam, ...]:
    """The seams of the corners: each to its panel, and to its neighbour where two panels meet at their pieced sides.

    `corners` names the pieced side of each panel.
    """
    seams = []
    for id, side in corners.items():
        one, other = Part(id, "piecing", side == "left"), Part(f"{id}-corner", "piecing", side == "right")
        seams.append(Seam("piecing", (one,), (other,)))
    for p, q in itertools.pairwise((*ring, ring[0])):
        leaving, entering = p.side(True), q.side(False)
        if corners[p.piece] == leaving and corners[q.piece] == entering:
            one = Part(f"{p.piece}-corner", leaving, leaving == "left")
            other = Part(f"{q.piece}-corner", entering, entering == "left")
            seams.append(Seam("join", (one,), (other,)))
    return tuple(seams)


def _parted_edges(piece: Piece, x: float, right: bool) -> tuple[tuple[Edge, ...], tuple[Edge, ...]]:
    """The edges of the panel, the waist first, and of its corner; each with the piecing seam in its place."""
    inner: list[Edge] = []
    outer: list[Edge] = []
    for edge in piece.edges:
        for beyond, path in _sides(edge.path, x):
            if beyond != right:
                inner.append(replace(edge, path=path))
                continue
            if not outer:
                at = len(inner)
            outer.append(replace(edge, path=path, sews_to=_corner_of(edge)))
    gone, back, a = outer[0].path.start, outer[-1].path.end, piece.edges[0].allowance
    seam = Edge(
        "piecing", Path((Line(gone, back),)), a, f"{piece.id}-corner/piecing", words=phrase("seam, to the corner")
    )
    other = Edge("piecing", Path((Line(back, gone),)), a, f"{piece.id}/piecing", words=phrase("seam, to the panel"))
    return meeting([*inner[:at], seam, *inner[at:]]), meeting([*outer, other])


def _corner_of(edge: Edge) -> str:
    """A corner's side is sewn to the corner of the next panel."""
    panel, slash, side = edge.sews_to.partition("/")
    return f"{panel}-corner/{side}" if slash and edge.name != "hem" else edge.sews_to


def _notch(edges: Iterable[Edge]) -> Spot:
    """Where the two sides of the piecing seam meet in the middle."""
    seam = next(e for e in edges if e.name == "piecing")
    return notch_on(seam.path, seam.path.length / 2, seam.allowance, seam.name)


def _clipped(lines: Iterable[LineMark], x: float, over: float, right: bool) -> Iterator[LineMark]:
    """What lies of each marked line on one side of the seam; hem lines reach `over` it."""
    for mark in lines:
        if mark.role not in LONG:
            if (mark.path.start.x > x) == right:
                yield mark
            continue
        at = x + over if mark.role in TO_THE_EDGE else x
        for beyond, path in _sides(mark.path, at):
            if beyond == right:
                yield replace(mark, path=path)


def _notes(piece: Piece, x: float, right: bool) -> tuple[Note, ...]:
    return tuple(n for n in piece.notes if (n.at.x > x) == right)


def _grain(edges: tuple[Edge, ...]) -> tuple[Point, Point]:
    """An upright line in the middle of a corner, which is all but a triangle."""
    seam = edges[-1]
    tips = (seam.path.start, seam.path.end, edges[0].path.end)
    middle = Point(sum(p.x for p in tips) / 3, sum(p.y for p in tips) / 3)
    half = seam.path.length * 0.12
    return middle.moved(0, -half), middle.moved(0, half)


def _kept(outline: Path, x: float, right: bool) -> Path:
    """The part of a closed outline on one side of an upright line, closed along it."""
    parts = _sides(outline, x)
    if parts[0][0] == right and parts[-1][0] == right:
        parts = [(right, Path((*parts[-1][1].curves, *parts[0][1].curves)))]
    run = next(path for beyond, path in parts if beyond == right)
    return Path((*run.curves, Line(run.end, run.start)))


def _sides(path: Path, x: float) -> list[tuple[bool, Path]]:
    """A path of lines and arcs parted wherever it crosses `x`; True for a part that lies to the right."""
    parts = (part for c in path.curves for part in _parts(c, x))
    grouped = itertools.groupby(parts, lambda c: c.at(0.5).x > x)
    return [(right, Path(tuple(curves))) for right, curves in grouped]


def _parts(c: Curve, x: float) -> list[Curve]:
    shares = [0.0, *sorted(s for s in _crossings(c, x) if 1e-9 < s < 1 - 1e-9), 1.0]
    return [c.part(a, b) for a, b in itertools.pairwise(shares)] if len(shares) > 2 else [c]


def _crossings(c: Curve, x: float) -> list[float]:
    """The shares of the way at which a line or an arc crosses `x`."""
    if isinstance(c, Line):
        wide = c.end.x - c.start.x
        return [(x - c.start.x) / wide] if wide else []
    if isinstance(c, Arc) and c.sweep and abs(x - c.centre.x) < c.radius:
        turn = math.degrees(math.acos((x - c.centre.x) / c.radius))
        return [((a - c.first) / c.sweep) % (360 / abs(c.sweep)) for a in (turn, -turn)]
    return []
