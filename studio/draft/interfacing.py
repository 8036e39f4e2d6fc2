"""Interfacing for the band: to the cut edges, the outer half only, or trimmed out of the allowances."""

from studio.brief import Brief
from studio.geometry import Line, Path, Point, rectangle
from studio.words import phrase, tr

from .draft import Notion
from .piece import OTHER, Edge, Piece

CAUGHT = 3.0
"""Trimmed interfacing reaches this far (mm) past the seam line, so that the stitching holds it
(common practice, no source)."""


def interfacing(brief: Brief) -> Piece | None:
    """The band's interfacing, placed as the band is (same origin), or None where there is to be none."""
    band, a = brief.waistband, brief.seams.allowance
    end, tall = brief.band_length, 2 * band.width
    over = min(CAUGHT, a)
    match band.interfacing:
        case "none":
            return None
        case "whole":
            outline = rectangle(-a, -a, end + a, tall + a)
        case "outer half":
            outline = rectangle(-over, band.width, end + over, tall + over)
        case _:
            outline = rectangle(-over, -over, end + over, tall + over)
    return Piece(
        id="interfacing",
        name=tr("Interfacing"),
        edges=tuple(_edges(outline)),
        cut_line=outline,
        grain=(Point(end * 0.55, outline.box.centre.y), Point(end * 0.75, outline.box.centre.y)),
        cloth="interfacing",
        row=OTHER,
    )


def _edges(outline: Path) -> list[Edge]:
    names = ("top", "extension end", "bottom", "plain end")
    return [Edge(n, Path((c,)), 0.0) for n, c in zip(names, outline.curves, strict=True) if isinstance(c, Line)]


def interfacing_notion(piece: Piece) -> Notion:
    """The strip of interfacing, as cut."""
    box = piece.cut_line.box
    words = phrase("interfacing {l} × {w}", l=box.width, w=box.height)
    return Notion("interfacing", words, {"length": box.width, "width": box.height})
