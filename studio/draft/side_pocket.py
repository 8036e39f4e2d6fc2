"""Pockets in the side seams: where the hand goes in, and the bag behind it."""

from itertools import pairwise

from msgspec import Struct
from msgspec.structs import replace

from studio.brief import Brief
from studio.geometry import Arc, Line, Path, Point, joined, line
from studio.words import phrase, tr

from .cut_line import cut_line
from .marks import Station, notch
from .piece import PARTS, Dimension, Edge, LineMark, Note, Piece, Spot
from .ring import Ring

NEAR = 15.0
"""A join this near to the side of the body (mm along the waist) is a side seam."""
PAST = 20.0
"""A bag goes on so far past both ends of the hand's opening (mm; common practice, no source)."""
WIDE, DEEP = 150.0, 290.0
"""A bag is so wide, and reaches at least so far below the waist (mm; 28 to 30 cm, common practice, no source)."""
ROUND = 60.0
"""Its upper corner is rounded so (mm; common practice, no source)."""
MOVES = ("pockets.top", "pockets.opening")

Key = tuple[str, str]
"""A piece, and its left or right side."""


class Joins(Struct, frozen=True):
    """The joins of panels: those at the side of the body, and all others; each by the two sides that meet in it."""

    side: tuple[tuple[Key, Key], ...]
    other: tuple[tuple[Key, Key], ...]


def bagged(
    brief: Brief, ring: Ring, stations: tuple[Station, ...], pieces: tuple[Piece, ...]
) -> tuple[tuple[Piece, ...], tuple[Piece, ...]]:
    """The pieces with the pocket marked in every side seam long enough to hold it, and its bag: two mirrored pieces for
    each seam.
    """
    met = side_joins(ring, stations, pieces)
    by_id = {p.id: p for p in pieces}
    seams = {key: down(by_id[key[0]], key[1]) for key in dict.fromkeys(k for join in met.side for k in join)}
    held = [join for join in met.side if all(seams[k].curves and seams[k].length > need_of(brief) for k in join)]
    if not held:
        return pieces, ()
    keys = {k for join in held for k in join}
    elsewhere = {k for join in met.other for k in join}
    marked = tuple(
        _marked(brief, p, [(s, seams[p.id, s]) for s in ("left", "right") if (p.id, s) in keys],
                any((p.id, s) in elsewhere & keys for s in ("left", "right")))
        for p in pieces
    )  # fmt: skip
    key = min(keys, key=lambda k: (k[1] == "right", k[0] != "front", k))
    return marked, (_bag(brief, seams[key], key[1], len(held)),)


def need_of(brief: Brief) -> float:
    """How long a side seam is at least that holds a pocket, mm."""
    return brief.pockets.top + brief.pockets.opening + 2 * PAST


def side_joins(ring: Ring, stations: tuple[Station, ...], pieces: tuple[Piece, ...]) -> Joins:
    """Which joins of the ring lie at the side of the body, once the waist is sewn, and which do not."""
    tops = {p.id: next((e.sewn for e in p.edges if e.name == "waist"), 0.0) for p in pieces}
    sides = [s.at for s in stations if s.words == "side"]
    whole = sum(tops[p.piece] for p in ring)
    if any(abs(s - whole / 2) < NEAR for s in sides):  # across from a side lies the other, and the opening in it
        sides += [0.0, whole]
    found: tuple[list[tuple[Key, Key]], list[tuple[Key, Key]]] = ([], [])
    at = 0.0
    for p, q in pairwise((*ring, ring[0])):
        at += tops[p.piece]
        beside = any(abs(at - s) < NEAR for s in sides)
        found[0 if beside else 1].append(((p.piece, p.side(True)), (q.piece, q.side(False))))
    return Joins(tuple(found[0]), tuple(found[1]))


def down(piece: Piece, side: str) -> Path:
    """A side seam from the waist down, the opening in it included; of no length where it is a fold."""
    path = joined(e.path for e in piece.edges if e.name in (f"{side} opening", side) and not e.fold)
    return path if side == "right" else path.reversed()


def _marked(brief: Brief, piece: Piece, sides: list[tuple[str, Path]], only: bool) -> Piece:
    """Bars across the seam line where the hand goes in, and notches to set the bag to; said where other copies of the
    piece do `only` lie elsewhere.
    """
    lines: list[LineMark] = []
    spots: list[Spot] = []
    top, wide = brief.pockets.top, brief.pockets.opening
    for side, seam in sides:
        for along, (at, way) in zip((top, top + wide), _mouth(seam, top, wide), strict=True):
            out = way.outward() if side == "right" else Point(-way.y, way.x)
            words = phrase("pocket, {d} below the seam", d=along)
            lines.append(LineMark("pocket", line(*at.along(out, -5), *at.along(out, 5)), words, MOVES))
            edge = _edge_at(piece, side, along)
            spots.append(_notch(at, out, piece.edge(edge).allowance, edge))
    if not lines:
        return piece
    notes = (*piece.notes, _said(piece, top + wide / 2)) if only else piece.notes
    return replace(piece, lines=(*piece.lines, *lines), spots=(*piece.spots, *spots), notes=notes)


def _mouth(seam: Path, top: float, wide: float) -> tuple[tuple[Point, Point], ...]:
    """Both ends of the hand's opening along a seam walked down, and the way the seam runs there."""
    found = []
    for step in (top, wide):
        seam = seam.split(step)[1] if step > 0 else seam
        found.append((seam.start, seam.leaves))
    return tuple(found)


def _notch(at: Point, out: Point, allowance: float, on: str) -> Spot:
    cut = at.along(out, allowance)
    return notch(cut.x, cut.y, Point(-out.x, -out.y).degrees, allowance, on, MOVES)


def _edge_at(piece: Piece, side: str, along: float) -> str:
    """The name of the edge so far down a side: the opening, or the seam below it."""
    opening = next((e for e in piece.edges if e.name == f"{side} opening"), None)
    return opening.name if opening and along <= opening.path.length else side


def _said(piece: Piece, below: float) -> Note:
    waist = piece.edge("waist").path
    middle = waist.length / 2
    at = waist.at(middle).along(waist.direction(middle).outward(), -below)
    return Note(phrase("pocket: only where this lies at the side"), at)


def _bag(brief: Brief, seam: Path, side: str, seams: int) -> Piece:
    """A bag whose edge is the very stretch of side seam it is sewn to, turned to hang straight down."""
    top, wide, a = brief.pockets.top, brief.pockets.opening, brief.seams.allowance
    start = max(0.0, top - PAST)
    rest = seam.split(start)[1] if start > 0 else seam
    edge = rest.split(wide + top - start + PAST)[0]
    edge = edge.flipped(0) if side == "right" else edge
    edge = edge.moved(-edge.start.x, -edge.start.y).turned(90 - edge.start.to(edge.end).degrees, Point(0, 0))
    foot, radius = edge.end, (WIDE - edge.end.x) / 2
    low = max(DEEP - start - radius, foot.y + PAST)
    corner = Arc(Point(WIDE - ROUND, ROUND), ROUND, -90, 90)
    round_foot = Arc(Point(foot.x + radius, low), radius, 0, 180)
    edges = (
        Edge("top", Path((Line(edge.start, corner.start), corner)), a),
        Edge("side", Path((Line(corner.end, round_foot.start), round_foot, Line(round_foot.end, foot))), a),
        Edge("seam", edge.reversed(), a, words=phrase("to the side seam"), governs=MOVES),
    )
    ends = _mouth(edge, top - start, wide)
    return Piece(
        id="pocket-bag", name=tr("Pocket bag"), edges=edges, cut_line=cut_line(edges),
        grain=(Point(WIDE * 0.5, low * 0.5), Point(WIDE * 0.5, low)), 
        spots=tuple(_notch(at, Point(-way.y, way.x), a, "seam") for at, way in ends),
        notes=(Note(phrase("stay the seam line between the notches"), Point(WIDE * 0.5, low + radius * 0.3)),),
        dimensions=(Dimension("pockets.opening", Point(0, ends[0][0].y), Point(0, ends[1][0].y), "left",
                              phrase("{w:bare}", w=wide)),),
        cut=2 * seams, mirrored=True, row=PARTS,
    )  # fmt: skip
