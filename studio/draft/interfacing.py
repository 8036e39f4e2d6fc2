"""Interfacing: to the cut edges, the outer half only, or trimmed out of the allowances."""

from studio.brief import Brief
from studio.units import spell
from studio.words import phrase, tr

from .cut_line import cut_line
from .piece import OTHER, Edge, Piece

CAUGHT = 3.0
"""Trimmed interfacing reaches this far (mm) past the seam line, so that the stitching holds it
(common practice, no source)."""


def interfacing(brief: Brief, piece: Piece, outer: tuple[Edge, ...] = ()) -> Piece | None:
    """The interfacing of a piece, placed as it is (same origin), or None where there is to be none. `outer` are the
    edges of the outer half of a piece that is folded.
    """
    how = brief.waistband.interfacing
    if how == "none":
        return None
    half = how == "outer half" and outer != ()
    edges = outer if half else piece.edges
    kept = tuple(
        Edge(e.name, e.path, e.allowance if how == "whole" else min(CAUGHT, e.allowance), fold=e.fold) for e in edges
    )
    outline, band = cut_line(kept), piece.id == "waistband"
    start, end = piece.grain
    down = outline.box.centre.y - start.y if half else 0.0
    return Piece(
        id="interfacing" if band else f"interfacing-{piece.id}",
        name=tr("Interfacing") if band else spell(phrase("Interfacing, {p:word}", p=piece.name), "cm"),
        edges=kept,
        cut_line=outline,
        grain=(start.moved(0, down), end.moved(0, down)),
        cut=piece.cut,
        mirrored=piece.mirrored,
        cloth="interfacing",
        row=OTHER,
    )
