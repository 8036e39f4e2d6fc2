"""A facing for a shaped hem: a strip that follows the hem of each panel."""

from msgspec import Struct
from msgspec.structs import replace

from studio.brief import Brief
from studio.geometry import Line, Path, Point, offset
from studio.words import phrase

from .drawn import Drawn, drawn
from .facing import facing_piece
from .piece import Edge, Piece
from .seam import Part, Seam

MOST = 0.6
"""A facing covers at most this share of its panel's shorter side (common practice, no source)."""


TOO_DEEP = "The hem facing asked is {asked} deep; the panels have room for {made}."


class Faced(Struct, frozen=True):
    """The panels, each sewn to its own facing; the facings; the seams between them; the depth asked, if too much."""

    panels: tuple[Piece, ...]
    facings: tuple[Piece, ...] = ()
    seams: tuple[Seam, ...] = ()
    drawn: tuple[Drawn, ...] = ()


def hem_faced(brief: Brief, pieces: tuple[Piece, ...]) -> Faced:
    """Every panel that ends in a hem gets a strip as deep as the brief says, where hems are faced."""
    if brief.seams.hem_kind != "faced":
        return Faced(pieces)
    asked = brief.seams.hem_facing
    hemmed = [p for p in pieces if any(e.name == "hem" for e in p.edges)]
    return Faced(
        tuple(_sewn(p) if any(p is h for h in hemmed) else p for p in pieces),
        tuple(_facing(p, _depth(brief, p), brief.seams.allowance) for p in hemmed),
        tuple(Seam("hem facing", (Part(p.id, "hem"),), (Part(_id(p), "hem", True),)) for p in hemmed),
        drawn("seams.hem_facing", asked, min([asked, *(_depth(brief, p) for p in hemmed)]), TOO_DEEP),
    )


def _depth(brief: Brief, panel: Piece) -> float:
    """As deep as asked, as far as the panel's own sides reach."""
    sides: dict[str, float] = {}
    for e in panel.edges:
        side = e.name.split(" ")[0]
        if side in ("left", "right"):
            sides[side] = sides.get(side, 0.0) + e.path.length
    return min(brief.seams.hem_facing, MOST * min(sides.values()))


def _id(panel: Piece) -> str:
    return f"hem-facing-{panel.id}"


def _sewn(panel: Piece) -> Piece:
    """The panel with its hem sewn to its facing."""
    sewn = {"sews_to": f"{_id(panel)}/hem", "words": phrase("seam, to the hem facing")}
    return replace(panel, edges=tuple(replace(e, **sewn) if e.name == "hem" else e for e in panel.edges))


def _facing(panel: Piece, deep: float, allowance: float) -> Piece:
    """Between the hem line and its parallel above; it is drawn from its own right side, as the panel's mirror image."""
    hem = panel.edge("hem").path
    upper = offset(hem, -deep).reversed()
    on_fold = {side: any(e.fold and e.name == side for e in panel.edges) for side in ("left", "right")}

    def side(name: str, of: str, start: Point, end: Point) -> Edge:
        words = phrase("fold of the cloth") if on_fold[of] else phrase("seam")
        return Edge(name, Path((Line(start, end),)), 0.0 if on_fold[of] else allowance, words=words, fold=on_fold[of])

    drawn = (
        Edge("hem", hem, allowance, f"{panel.id}/hem", words=phrase("seam, to the hem")),
        side("right", "left", hem.end, upper.start),
        Edge("upper", upper, 0.0, words=phrase("upper edge, neatened")),
        side("left", "right", upper.end, hem.start),
    )
    name = phrase("{p:word}, hem facing", p=panel.name)
    return facing_piece(panel, _id(panel), name, drawn, deep, "seams.hem_facing")
