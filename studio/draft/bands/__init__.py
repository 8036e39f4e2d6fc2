"""The bands a skirt hangs on: one file for each kind, chosen by the brief."""

from msgspec.structs import replace

from studio.brief import Brief

from ..piece import Piece
from .band import Band, Maker, Waist
from .bound import bound
from .contour import contour
from .elastic import elastic
from .faced import faced
from .folded import folded
from .two_piece import two_piece

KINDS: dict[str, Maker] = {
    "folded": folded, "two-piece": two_piece, "contour": contour, "elastic": elastic, "bound": bound, "faced": faced,
}  # fmt: skip
"""How each kind of waistband is drafted."""


def band(brief: Brief, waist: Waist) -> Band:
    """The pieces above the waist seam, with the seams and notions they bring."""
    return KINDS[brief.waistband.kind](brief, waist)


def under(band: Band, pieces: tuple[Piece, ...]) -> tuple[Piece, ...]:
    """The skirt's pieces with what their waist edges are sewn to, and how, where that is not a plain band."""
    if band.says is None:
        return pieces
    return tuple(
        replace(p, edges=tuple(
            replace(e, sews_to=band.meets.get(p.id, e.sews_to), words=band.says) if e.name == "waist" else e
            for e in p.edges
        ))
        for p in pieces
    )  # fmt: skip


__all__ = ["Band", "Waist", "band", "under"]
