"""No band: the waist is faced with a copy of the skirt's own top, and hooked where it opens."""

from collections.abc import Iterator, Mapping
from itertools import pairwise

from msgspec.structs import replace

from studio.brief import Brief
from studio.words import phrase

from ..drawn import drawn
from ..facing import END, facing, most_depth
from ..fastening import HOOK, SNAP, SNAP_INSET, button_place, held_by, inset
from ..interfacing import interfacing
from ..piece import Piece, Spot, Spotted
from ..seam import Part, Seam
from .band import Band, Waist
from .fasten import ON

BELOW = 6.0
"""A hook, bar or snap is sewn this far (mm) below a faced edge (common practice, no source)."""
TOO_DEEP = "The facing asked is {asked} deep; the panels have room for {made}."


def faced(brief: Brief, waist: Waist) -> Band:
    """A facing for each panel at the waist, joined as the panels are, with interfacing for each."""
    by_id = {p.id: p for p in waist.pieces}
    names = list(dict.fromkeys(part.piece for part in waist.parts))
    asked = brief.waistband.facing_depth
    cut = [facing(by_id[n], asked) for n in names]
    # Seen from inside the facing is walked the other way round.
    parts = tuple(Part(f"facing-{p.piece}", "waist", not p.back) for p in waist.parts)
    joins = tuple(_joins(brief, parts, {f.id: f for f in cut}))
    cut = [_joined(f, joins) for f in cut]
    cut = _hooked(brief, cut, parts)
    stiffened = [s for f in cut if (s := interfacing(brief, f))]
    meets = {n: f"facing-{n}/waist" for n in names}
    return Band(
        (*cut, *stiffened), (Seam("waist", waist.parts, parts), *joins),
        says=phrase("seam, faced"), meets=meets,
        drawn=drawn("waistband.facing_depth", asked, min(asked, *(most_depth(by_id[n]) for n in names)), TOO_DEEP),
    )  # fmt: skip


ONCE = phrase("seam; on the wearer’s left the end")


def _joins(brief: Brief, parts: tuple[Part, ...], facings: Mapping[str, Piece]) -> Iterator[Seam]:
    """Facing to facing, each from the waist down; none where a panel goes on over a fold, or at the opening."""
    around = (*parts, parts[0]) if brief.opening.kind == "none" else parts
    for p, q in pairwise(around):
        one, other = _side(p, leaving=True), _side(q, leaving=False)
        if not facings[one.piece].edge(one.edge).fold:
            yield Seam("facing join", (one,), (other,))


def _side(part: Part, *, leaving: bool) -> Part:
    """The side at which the next facing is met, or the one before."""
    name = "left" if leaving == part.back else "right"
    return Part(part.piece, name, name == "left")


def _joined(piece: Piece, joins: tuple[Seam, ...]) -> Piece:
    """The facing with what its sides are sewn to; one that ends at the opening on one of its copies says on which."""
    meets = {}
    for seam in joins:
        for this, that in ((seam.one[0], seam.other[0]), (seam.other[0], seam.one[0])):
            meets[this.piece, this.edge] = f"{that.piece}/{that.edge}"
    edges = tuple(
        replace(e, sews_to=meets[piece.id, e.name], words=ONCE if e.words == END else e.words)
        if (piece.id, e.name) in meets else e
        for e in piece.edges
    )  # fmt: skip
    return replace(piece, edges=edges)


def _hooked(brief: Brief, cut: list[Piece], parts: tuple[Part, ...]) -> list[Piece]:
    """The facings with what holds the edge above the opening."""
    marks = list(_marks(brief))
    spots: dict[str, list[Spot]] = {}
    for role, along, size, words in marks:
        name, spot = _placed({f.id: f for f in cut}, parts, role, along, size, words)
        spots.setdefault(name, []).append(spot)
    return [replace(f, spots=(*f.spots, *spots.get(f.id, ()))) for f in cut]


def _marks(brief: Brief) -> Iterator[tuple[Spotted, float, float, str]]:
    """Role, place along the waist from the opening, size and words of each mark."""
    held, plain, pull = held_by(brief), button_place(brief), brief.band_length - inset(brief)
    if held == "snap":
        yield "snap", pull, SNAP, "snap, underneath"
        yield "snap", plain, SNAP, "snap, outside"
    elif held:
        yield "hook", pull - HOOK / 2, HOOK, "hook, inside, at the end that lies on top"
        yield "bar", plain, HOOK, "eye, inside, at the other end" if held == "hook and eye" else "bar, outside"
    if brief.opening.kind == "wrap":
        yield "snap", SNAP_INSET, SNAP, "snap, outside, holds the under edge"
        yield "snap", brief.closed + SNAP_INSET, SNAP, "snap, inside"


def _placed(
    facings: Mapping[str, Piece], parts: tuple[Part, ...], role: Spotted, along: float, size: float, words: str
) -> tuple[str, Spot]:  # fmt: skip
    """The facing that holds a place `along` the waist, and the mark on it; a place before the first is drawn on."""
    for k, part in enumerate(parts):
        edge = facings[part.piece].edge("waist")
        if along <= edge.sewn or k == len(parts) - 1:
            break
        along -= edge.sewn
    whole = edge.path.length
    walked = whole - along * edge.ratio if part.back else along * edge.ratio
    on = max(0.0, min(whole, walked))
    way = edge.path.direction(on)
    at = edge.path.at(on).along(way, walked - on).along(way.outward(), -BELOW)
    return part.piece, Spot(role, at, size, words=phrase(words), governs=ON)
