"""A lining: the darted block, a little shorter than the skirt, its darts laid as tucks."""

import math

from msgspec import Struct
from msgspec.structs import replace

from studio.brief import Brief
from studio.geometry import Point, line
from studio.words import phrase, tr

from .darted import Block, Quarter, Sizes, block
from .draft import Notion
from .panel import panel
from .piece import OTHER, LineMark, Piece
from .ring import Place, Ring, joins, meeting, opening_sides, tops
from .seam import Part, Seam
from .shape import Shape

EASE = 50.0
"""Room at the hips, as in a fitted skirt (mm; common practice, no source)."""
HEM = 30.0
"""A lining's own hem, turned twice (mm; common practice, no source)."""
CLOSING, FLARE = 0.5, 40.0
"""An A-line lining closes half of each dart and gains so much at each side (mm; common practice, no source)."""
STEP = 100.0
"""Cloth is sold by the tenth of a metre (mm)."""


class Lined(Struct, frozen=True):
    """The pieces of a lining, its seams, and how much cloth it takes."""

    pieces: tuple[Piece, ...] = ()
    seams: tuple[Seam, ...] = ()
    notions: tuple[Notion, ...] = ()


def lining(brief: Brief, waist: tuple[Part, ...]) -> Lined:
    """The lining, caught into the waist seam with the skirt whose tops those are; none under a wrap, whose edges would
    show it, which a finding says.
    """
    if brief.lining.kind == "none" or brief.opening.kind == "wrap":
        return Lined()
    cut = lining_block(brief)
    ring = _ring(brief)
    pieces = tuple(_piece(brief, name, quarter, ring) for name, quarter in (("back", cut.back), ("front", cut.front)))
    by_id = {p.id: p for p in pieces}
    caught = Seam("lining", tops(ring), waist)
    return Lined(pieces, (caught, *joins(ring, by_id)), (_cloth(brief, pieces),))


def lining_block(brief: Brief) -> Block:
    """The block it is drafted on."""
    waist, flared = brief.waist_seam, brief.lining.kind == "A-line"
    hip = max(brief.hips + EASE, waist)
    length = max(50.0, brief.finished_length - brief.lining.shorter)
    return block(Sizes(
        waist, hip, brief.hip_depth, length, tucks=True, closing=CLOSING if flared else 0.0,
        side_flare=FLARE if flared else 0.0,
    ))  # fmt: skip


def _ring(brief: Brief) -> Ring:
    """Halves from the opening round, as in the straight skirt."""
    back = (Place("lining-back", True), Place("lining-back"))
    front = (Place("lining-front"), Place("lining-front", True))
    match brief.opening.place:
        case "side":
            return (back[1], back[0], *front)
        case "front":
            return (front[1], back[1], back[0], front[0])
    return (back[0], *front, back[1])


def _piece(brief: Brief, name: str, q: Quarter, ring: Ring) -> Piece:
    """A back or a front, on the fold unless the skirt opens there."""
    own = replace(brief, seams=replace(brief.seams, hem_kind="turned twice", hem=HEM))
    whole = brief.opening.kind == "none" or brief.opening.place != {"back": "centre back", "front": "front"}[name]
    left = q.side.reversed()
    tucks = [d.marks(phrase("tuck {w} wide, pressed away from the centre", w=d.intake)) for d in q.darts]
    lines = [LineMark(m.role, m.path, m.words) for m, _ in tucks]
    foot = q.hem.start.y
    shape = Shape(
        top=q.top, right=line(*q.top.end, *q.hem.start), hem=q.hem, left=left, closes=q.closes,
        fold="right" if whole else "", lines=tuple(lines),
        grain=(Point(left.start.x * 0.3, foot * 0.45), Point(left.start.x * 0.3, foot * 0.8)),
    )  # fmt: skip
    drawn = panel(
        own, f"lining-{name}", tr("Lining back") if name == "back" else tr("Lining front"), shape,
        meets=meeting(ring), opens=opening_sides(ring), cut=1 if whole else 2, mirrored=not whole,
    )  # fmt: skip
    edges = tuple(
        replace(e, sews_to="" if e.name == "waist" or e.name.endswith(" opening") else e.sews_to,
                words=phrase("opening, caught to the tape by hand") if e.name.endswith(" opening") else e.words)
        for e in drawn.edges
    )  # fmt: skip
    return replace(drawn, edges=edges, cloth="lining", row=OTHER, handles=(), dimensions=())


def _cloth(brief: Brief, pieces: tuple[Piece, ...]) -> Notion:
    """How much lining to buy: its pieces side by side as long as they fit its width, row under row."""
    room = brief.lining.width - 2 * brief.cloth.selvedge
    used = length = deep = 0.0
    for piece in pieces:
        box = piece.as_cut.box
        for _ in range(piece.cut):
            if used and used + box.width > room:
                length, used, deep = length + deep, 0.0, 0.0
            used, deep = used + box.width, max(deep, box.height)
    buy = math.ceil((length + deep) / STEP - 1e-6) * STEP
    words = phrase("lining {l:metres}, {w} wide", l=buy, w=brief.lining.width)
    return Notion("lining", words, {"length": buy, "width": brief.lining.width})
