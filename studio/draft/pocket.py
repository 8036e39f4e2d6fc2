"""Pockets: bags in the side seams, and patches on the front."""

import math
from collections.abc import Iterator
from itertools import pairwise

from msgspec import Struct
from msgspec.structs import replace

from studio.brief import Brief
from studio.geometry import Arc, Line, Path, Point, joined, line, polyline
from studio.words import phrase, tr

from .cut_line import cut_line
from .marks import Station, notch_on
from .piece import PARTS, Dimension, Edge, LineMark, Piece, Spot
from .ring import Ring, opening_sides

NEAR = 15.0
"""A join this near to the side of the body (mm along the waist) is a side seam."""
PAST = 20.0
"""A bag goes on so far past both ends of the hand's opening (mm; common practice, no source)."""
WIDE, DEEP = 150.0, 290.0
"""A bag is so wide, and reaches at least so far below the waist (mm; 28 to 30 cm, common practice, no source)."""
ROUND = 60.0
"""Its upper corner is rounded so (mm; common practice, no source)."""
PATCH_HEM = 30.0
"""The top of a patch is turned in by this (mm; common practice, no source)."""
MOVES = ("pockets.top", "pockets.opening")


class Pocketed(Struct, frozen=True):
    """The skirt's pieces with their pocket marks, and the pieces of the pockets."""

    pieces: tuple[Piece, ...]
    pockets: tuple[Piece, ...] = ()


def pocketed(brief: Brief, ring: Ring, stations: tuple[Station, ...], pieces: tuple[Piece, ...]) -> Pocketed:
    """What the brief asks for; nothing where there is no place for it, which a finding says."""
    match brief.pockets.kind:
        case "in seam":
            return _in_seam(brief, ring, stations, pieces)
        case "patch":
            return _patched(brief, ring, stations, pieces)
    return Pocketed(pieces)


def side_seams(ring: Ring, stations: tuple[Station, ...], pieces: tuple[Piece, ...]) -> set[tuple[str, str]]:
    """The pieces and sides that meet in a seam at the side of the body."""
    tops = {p.id: next((e.sewn for e in p.edges if e.name == "waist"), 0.0) for p in pieces}
    sides = [s.at for s in stations if s.words == "side"]
    found: set[tuple[str, str]] = set()
    at = 0.0
    for p, q in pairwise(ring):
        at += tops[p.piece]
        if any(abs(at - s) < NEAR for s in sides):
            found |= {(p.piece, p.side(True)), (q.piece, q.side(False))}
    whole = at + tops[ring[-1].piece]
    if any(abs(s - whole / 2) < NEAR for s in sides):  # across from a side lies the other, and the opening in it
        found |= opening_sides(ring)
    return found


def down(piece: Piece, side: str) -> Path:
    """A side seam from the waist down, the opening in it included."""
    edges = [e for e in piece.edges if e.name in (f"{side} opening", side)]
    path = joined(e.path for e in edges)
    return path if side == "right" else path.reversed()


def _in_seam(brief: Brief, ring: Ring, stations: tuple[Station, ...], pieces: tuple[Piece, ...]) -> Pocketed:
    top, wide = brief.pockets.top, brief.pockets.opening
    found = side_seams(ring, stations, pieces)
    places = {key: down(p, key[1]) for p in pieces for key in ((p.id, "left"), (p.id, "right")) if key in found}
    places = {key: path for key, path in places.items() if path.length > top + wide + 2 * PAST}
    if not places:
        return Pocketed(pieces)
    marked = tuple(_marked(brief, p, [s for i, s in places if i == p.id], places) for p in pieces)
    key = min(places, key=lambda k: (k[1] == "right", k[0] != "front"))
    return Pocketed(marked, (_bag(brief, places[key], key[1]),))


def _marked(brief: Brief, piece: Piece, sides: list[str], places: dict[tuple[str, str], Path]) -> Piece:
    """Bars across the seam line where the hand goes in, and notches to set the bag to."""
    lines: list[LineMark] = []
    spots: list[Spot] = []
    for side in sides:
        path = places[piece.id, side]
        for along in (brief.pockets.top, brief.pockets.top + brief.pockets.opening):
            at, out = path.at(along), path.direction(along).outward()
            words = phrase("pocket, {d} below the seam", d=along)
            lines.append(LineMark("pocket", line(*at.along(out, -5), *at.along(out, 5)), words, MOVES))
            walked = path if side == "right" else path.reversed()
            where = along if side == "right" else path.length - along
            spots.append(notch_on(walked, where, brief.seams.allowance, side, MOVES))
    return replace(piece, lines=(*piece.lines, *lines), spots=(*piece.spots, *spots)) if lines else piece


def _bag(brief: Brief, seam: Path, side: str) -> Piece:
    """A bag whose straight edge is the very stretch of side seam it is sewn to."""
    top, wide, a = brief.pockets.top, brief.pockets.opening, brief.seams.allowance
    start = max(0.0, top - PAST)
    rest = seam.split(start)[1] if start > 0 else seam
    edge = rest.split(wide + top - start + PAST)[0]
    edge = edge.flipped(0) if side == "right" else edge
    edge = edge.moved(-edge.start.x, -edge.start.y)
    foot, radius = edge.end, (WIDE - edge.end.x) / 2
    low = max(DEEP - start - radius, foot.y + PAST)
    corner = Arc(Point(WIDE - ROUND, ROUND), ROUND, -90, 90)
    round_foot = Arc(Point(foot.x + radius, low), radius, 0, 180)
    edges = (
        Edge("top", Path((Line(edge.start, corner.start), corner)), a),
        Edge("side", Path((Line(corner.end, round_foot.start), round_foot, Line(round_foot.end, foot))), a),
        Edge("seam", edge.reversed(), a, words=phrase("to the side seam"), governs=MOVES),
    )
    walked, size = edge.reversed(), edge.length
    notches = (notch_on(walked, size - along, a, "seam", MOVES) for along in (top - start, top - start + wide))
    return Piece(
        id="pocket-bag", name=tr("Pocket bag"), edges=edges, cut_line=cut_line(edges),
        grain=(Point(WIDE * 0.45, low * 0.35), Point(WIDE * 0.45, low * 0.75)), spots=tuple(notches),
        dimensions=(Dimension("pockets.opening", edge.at(top - start), edge.at(top - start + wide), "left",
                              phrase("{w:bare}", w=wide)),),
        cut=4, mirrored=True, row=PARTS,
    )  # fmt: skip


def patches(ring: Ring, stations: tuple[Station, ...], pieces: tuple[Piece, ...]) -> Iterator[tuple[Piece, float]]:
    """The pieces that carry a patch, and where along their top its middle lies: half way from the front to the side."""
    by_id = {p.id: p for p in pieces}
    tops = [next((e for e in by_id[p.piece].edges if e.name == "waist"), None) for p in ring]
    whole = sum(e.sewn for e in tops if e)
    middle = next((s.at for s in stations if s.words == "centre front"), 0.0)
    seen: set[tuple[str, int]] = set()
    for wanted in ((middle + by * whole / 8) % whole for by in (-1, 1)):
        at = 0.0
        for place, top in zip(ring, tops, strict=True):
            if top is None or not at <= wanted < at + top.sewn:
                at += top.sewn if top else 0.0
                continue
            here = wanted - at
            along = _along(top, top.sewn - here if place.mirrored else here)
            if (place.piece, round(along)) not in seen:
                seen.add((place.piece, round(along)))
                yield by_id[place.piece], along
            break


def _along(edge: Edge, sewn: float) -> float:
    """Where on the flat edge a sewn distance lies."""
    low, high = 0.0, edge.path.length
    for _ in range(40):
        mid = (low + high) / 2
        low, high = (mid, high) if edge.sewn_at(mid) < sewn else (low, mid)
    return (low + high) / 2


def patch_outline(brief: Brief, piece: Piece, along: float) -> tuple[Point, Point, Point, Point]:
    """Corners of a finished patch on its panel, from its top left clockwise."""
    p = brief.pockets
    path = piece.edge("waist").path
    at, way = path.at(along), path.direction(along)
    into = way.outward()
    top, foot = at.along(into, -p.top), at.along(into, -p.top - p.depth)
    half = p.width / 2
    return top.along(way, -half), top.along(way, half), foot.along(way, half), foot.along(way, -half)


def _patched(brief: Brief, ring: Ring, stations: tuple[Station, ...], pieces: tuple[Piece, ...]) -> Pocketed:
    marks: dict[str, list[LineMark]] = {}
    for piece, along in patches(ring, stations, pieces):
        corners = patch_outline(brief, piece, along)
        mark = LineMark("pocket", polyline((*corners, corners[0])), phrase("pocket"), ("pockets.top",))
        marks.setdefault(piece.id, []).append(mark)
    if not marks:
        return Pocketed(pieces)
    return Pocketed(
        tuple(replace(p, lines=(*p.lines, *marks[p.id])) if p.id in marks else p for p in pieces), (_patch(brief),)
    )


def _patch(brief: Brief) -> Piece:
    """The patch: its top is turned in, its foot comes to a point of a tenth of its width."""
    w, d, a = brief.pockets.width, brief.pockets.depth, brief.seams.allowance
    point = w / 10
    edges = (
        Edge("top", line(0, 0, w, 0), PATCH_HEM, hem=True, words=phrase("fold, top edge")),
        Edge("right", line(w, 0, w, d - point), a),
        Edge("foot", polyline((Point(w, d - point), Point(w / 2, d), Point(0, d - point))), a),
        Edge("left", line(0, d - point, 0, 0), a),
    )
    return Piece(
        id="pocket", name=tr("Patch pocket"), edges=edges, cut_line=cut_line(edges),
        grain=(Point(w / 2, d * 0.3), Point(w / 2, d * 0.7)),
        lines=(LineMark("fold", line(-a, 0, w + a, 0), phrase("fold, top edge")),),
        dimensions=(
            Dimension("pockets.width", Point(0, d), Point(w, d), "below", phrase("{w:bare}", w=w)),
            Dimension("pockets.depth", Point(0, 0), Point(0, d), "left", phrase("{d:bare}", d=d)),
        ),
        cut=2, row=PARTS,
    )  # fmt: skip


def inside(outline: Path, corners: tuple[Point, ...]) -> bool:
    """Whether all corners lie within a closed outline (the angles they are seen under add up to a turn)."""
    ring = outline.flat(0.5)
    return all(abs(sum(_seen(p, a, b) for a, b in pairwise(ring))) > math.pi for p in corners)


def _seen(p: Point, a: Point, b: Point) -> float:
    u, v = p.to(a), p.to(b)
    return math.atan2(u.cross(v), u.dot(v))
