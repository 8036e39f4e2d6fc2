"""A lining: the darted block, a little shorter than the skirt, its darts laid as tucks."""

from collections.abc import Iterable, Iterator

from msgspec import Struct
from msgspec.structs import replace

from studio.brief import Brief
from studio.geometry import Point, line
from studio.words import Phrase, phrase, tr

from .darted import Block, Quarter, Sizes, block
from .marks import Station, notch_on
from .panel import panel, side_notch
from .piece import OTHER, Edge, LineMark, Piece
from .ring import Ring, halves, joins, open_once, opening_sides, tops
from .seam import Part, Seam
from .shape import Shape

EASE = 50.0
"""Room at the hips, as in a fitted skirt (mm; common practice, no source)."""
HEM = 25.0
"""A lining's own hem, turned twice (mm; common practice, no source)."""
LEAST = 10.0
"""Never less lining than this (mm), however much shorter than the skirt it is to be."""
CLOSING, FLARE = 0.5, 40.0
"""An A-line lining closes half of each dart and gains so much at each side (mm; common practice, no source)."""


class Lined(Struct, frozen=True):
    """The pieces of a lining, and its seams."""

    pieces: tuple[Piece, ...] = ()
    seams: tuple[Seam, ...] = ()


def lining(brief: Brief, stations: tuple[Station, ...], waist: tuple[Part, ...]) -> Lined:
    """The lining, caught into the waist seam along `waist`: the band's edge there, or the facing's; it is notched where
    it comes to the same place on both its halves. None under a wrap, whose edges would show it: a finding says so.
    """
    if brief.lining.kind == "none" or brief.opening.kind == "wrap":
        return Lined()
    cut = lining_block(brief)
    ring = halves(brief.opening.place, "lining-back", "lining-front")
    own, at = _own(brief), f"{waist[0].piece}/{waist[0].edge}"
    meets = _met(ring, {"lining-back": cut.back.waist, "lining-front": cut.front.waist}, stations)
    pieces = tuple(
        _piece(own, name, quarter, ring, at, meets[f"lining-{name}"])
        for name, quarter in (("back", cut.back), ("front", cut.front))
    )
    by_id = {p.id: p for p in pieces}
    caught = Seam("lining", tops(ring), waist)
    return Lined(pieces, (caught, *joins(ring, by_id)))


def lining_length(brief: Brief) -> float:
    """From the waist seam to the lining's own hem line, mm."""
    return max(LEAST, brief.finished_length - brief.lining.shorter)


def lining_room(brief: Brief) -> float:
    """Width of the lining cloth between its selvedges, mm; they are taken to be those of the cloth."""
    return brief.lining.width - 2 * brief.cloth.selvedge


def lining_block(brief: Brief) -> Block:
    """The block it is drafted on; under elastic there is too little to take in for a dart."""
    waist, flared = brief.waist_seam, brief.lining.kind == "A-line"
    hip = max(brief.hips + EASE, waist)
    return block(Sizes(
        waist, hip, brief.hip_depth, lining_length(brief), tucks=True, closing=CLOSING if flared else 0.0,
        side_flare=FLARE if flared else 0.0,
    ))  # fmt: skip


def _own(brief: Brief) -> Brief:
    """The brief with the lining's hem; where the skirt opens deeper than the lining reaches, that opens all the way."""
    turn = min(brief.seams.first_turn, HEM / 2)
    return replace(brief, seams=replace(brief.seams, hem_kind="turned twice", hem=HEM, first_turn=turn))


def _met(ring: Ring, waists: dict[str, float], stations: Iterable[Station]) -> dict[str, list[float]]:
    """For each piece the places on its sewn waist, from the side (mm), that meet a station on both its halves."""
    found: dict[str, list[list[float]]] = {id: [] for id in waists}
    begun = 0.0
    for place in ring:
        wide = waists[place.piece]
        inside = [s.at - begun for s in stations if CLOSE < s.at - begun < wide - CLOSE]
        found[place.piece].append([wide - at if place.mirrored else at for at in inside])
        begun += wide
    return {id: [at for at in one if any(abs(at - t) < CLOSE for t in other)] for id, (one, other) in found.items()}


CLOSE = 0.05
"""Marks that lie this close (mm) are one."""


def _flat(closes: tuple[tuple[float, float], ...], sewn: float) -> float:
    """Where on an edge a sewn distance lies while its tucks are open, mm."""
    for start, end in closes:
        if sewn > start:
            sewn += end - start
    return sewn


def _piece(own: Brief, name: str, q: Quarter, ring: Ring, waist: str, meets: list[float]) -> Piece:
    """A back or a front, on the fold unless the skirt opens there."""
    id, opens, a = f"lining-{name}", opening_sides(ring), own.seams.allowance
    whole = own.opening.kind == "none" or own.opening.place != {"back": "centre back", "front": "front"}[name]
    left, foot = q.side.reversed(), q.hem.start.y
    spots = [notch_on(q.top, _flat(q.closes, at), a, "waist") for at in meets]
    if q.hip is not None:
        spots.append(side_notch(own, "left", left, q.hip_along, (id, "left") in opens))
    shape = Shape(
        top=q.top, right=line(*q.top.end, *q.hem.start), hem=q.hem, left=left, closes=q.closes,
        fold="right" if whole else "", lines=tuple(_tucks(q)), spots=tuple(spots),
        grain=(Point(left.start.x * 0.3, foot * 0.45), Point(left.start.x * 0.3, foot * 0.8)),
    )  # fmt: skip
    drawn = panel(
        own, id, tr("Lining back") if name == "back" else tr("Lining front"), shape, ring,
        cut=1 if whole else 2, mirrored=not whole,
    )  # fmt: skip
    once = (id, "left") in open_once(ring)
    edges = tuple(_sewn_by_hand(own, replace(e, sews_to=waist) if e.name == "waist" else e, once) for e in drawn.edges)
    lines = tuple(replace(m, words=_ends(own, once)) if m.role == "zip stop" else m for m in drawn.lines)
    return replace(drawn, edges=edges, lines=lines, cloth="lining", row=OTHER, handles=(), dimensions=())


def _tucks(q: Quarter) -> Iterator[LineMark]:
    """The darts, folded at the waist and left loose below, the other way from the skirt's."""
    for d in q.darts:
        yield d.marks(phrase("tuck, {w} wide, laid towards the side", w=d.intake))[0]


def _sewn_by_hand(own: Brief, edge: Edge, once: bool) -> Edge:
    """At the opening the lining is turned under, clear of what closes the skirt; its other side is a seam where both
    are cut alike.
    """
    if not edge.name.endswith(" opening"):
        return edge
    placket = own.opening.kind == "placket"
    words = "opening, sewn by hand to the placket" if placket else "opening, sewn by hand to the zip tape"
    if once:
        words = "seam; on the wearer’s left the opening, sewn by hand to what closes it"
    return replace(edge, sews_to="", words=phrase(words))


def _ends(own: Brief, once: bool) -> Phrase:
    text = "opening ends {s} below the seam, on the wearer’s left" if once else "opening ends {s} below the seam"
    return phrase(text, s=own.stop)
