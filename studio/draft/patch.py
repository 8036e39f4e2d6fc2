"""Patch pockets: where they are set on the front, and the patch itself."""

from collections.abc import Iterator

from msgspec import Struct
from msgspec.structs import replace

from studio.brief import Brief
from studio.geometry import Path, Point, line, polyline
from studio.words import phrase, tr

from .cut_line import cut_line
from .marks import Station
from .piece import PARTS, Dimension, Edge, LineMark, Note, Piece
from .ring import Ring

PATCH_HEM = 30.0
"""The top of a patch is turned in by this (mm; common practice, no source)."""
ASIDE = 80.0
"""The middle of a patch keeps so far from both ends of its panel's top, which leaves room for a usual patch (mm)."""
BESIDE = 0.01
"""At a seam just there, a patch goes to the panel further from the centre front (mm)."""

Quad = tuple[Point, Point, Point, Point]


class Seat(Struct, frozen=True):
    """Where a patch is set: the place on the waist above its middle, the way along the waist, and the way down."""

    at: Point
    way: Point
    down: Point

    def outline(self, top: float, width: float, depth: float) -> Quad:
        """The corners of a finished patch from its top left clockwise; it begins `top` mm below the waist."""
        above, below = self.at.along(self.down, top), self.at.along(self.down, top + depth)
        half = width / 2
        return (
            above.along(self.way, -half), above.along(self.way, half),
            below.along(self.way, half), below.along(self.way, -half),
        )  # fmt: skip


def seat_of(mark: Path, top: float) -> Seat:
    """The seat of a patch that is marked, and begins `top` mm below the waist."""
    first, second = mark.curves[0], mark.curves[1]
    downward = second.direction(0)
    return Seat(first.start.towards(first.end, 0.5).along(downward, -top), first.direction(0), downward)


def drawn_top(brief: Brief, piece: Piece) -> float:
    """Where a patch begins on its panel, mm below the waist: as asked, and still on the panel."""
    return min(brief.pockets.top, brief.finished_length, piece.seam_line.box.height)


def patched(
    brief: Brief, ring: Ring, stations: tuple[Station, ...], pieces: tuple[Piece, ...]
) -> tuple[tuple[Piece, ...], tuple[Piece, ...]]:
    """The pieces with the patches' outlines marked on them, and the patch."""
    p = brief.pockets
    by_id = {q.id: q for q in pieces}
    marks: dict[str, list[LineMark]] = {}
    carry: dict[str, set[int]] = {}
    seen: set[tuple[str, int]] = set()
    for place, along in _places(ring, stations, by_id):
        piece = by_id[ring[place].piece]
        carry.setdefault(piece.id, set()).add(place)
        if (piece.id, round(along)) in seen:
            continue
        seen.add((piece.id, round(along)))
        waist = piece.edge("waist").path
        way = waist.direction(along)
        seat = Seat(waist.at(along), way, Point(-way.y, way.x))
        corners = seat.outline(drawn_top(brief, piece), p.width, p.depth)
        mark = LineMark("pocket", polyline((*corners, corners[0])), phrase("pocket"), ("pockets.top",))
        marks.setdefault(piece.id, []).append(mark)
    if not marks:
        return pieces, ()
    some = {i for i, places in carry.items() if len(places) < sum(q.piece == i for q in ring)}
    return tuple(_bearing(q, marks[q.id], q.id in some) if q.id in marks else q for q in pieces), (_patch(brief),)


def _bearing(piece: Piece, marks: list[LineMark], only: bool) -> Piece:
    """A panel with its marks; said where other copies of it lie elsewhere."""
    words = phrase("pocket: only where this lies in front")
    notes = tuple(Note(words, m.path.box.centre) for m in marks) if only else ()
    return replace(piece, lines=(*piece.lines, *marks), notes=(*piece.notes, *notes))


def _places(ring: Ring, stations: tuple[Station, ...], by_id: dict[str, Piece]) -> Iterator[tuple[int, float]]:
    """The places of the ring that carry a patch, and where along their flat top its middle lies: half way from the
    centre front to the side, yet not too near to a seam.
    """
    tops = [next((e for e in by_id[p.piece].edges if e.name == "waist"), None) for p in ring]
    sewn = [e.sewn if e else 0.0 for e in tops]
    whole = sum(sewn)
    middle = next((s.at for s in stations if s.words == "centre front"), 0.0)
    for by in (-1, 1):
        wanted = (middle + by * whole / 8) % whole
        at = 0.0
        for k, (place, top) in enumerate(zip(ring, tops, strict=True)):
            if top is not None and at <= wanted + by * BESIDE < at + sewn[k]:
                here = min(max(0.0, wanted - at), sewn[k])
                yield k, _held(_along(top, sewn[k] - here if place.mirrored else here), top.path.length)
                break
            at += sewn[k]


def _held(along: float, size: float) -> float:
    """A place on an edge of `size` mm with room on both sides; in the middle of an edge that has none."""
    return min(max(along, ASIDE), size - ASIDE) if size > 2 * ASIDE else size / 2


def _along(edge: Edge, sewn: float) -> float:
    """Where on the flat edge a sewn distance lies."""
    along = sewn * edge.ratio
    for start, end in sorted(edge.closes):
        if along > start:
            along += end - start
    return along


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
