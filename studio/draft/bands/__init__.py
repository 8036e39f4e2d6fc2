"""The bands a skirt hangs on: one file for each kind, chosen by the brief."""

from studio.brief import Brief

from .band import Band, Maker, Waist
from .folded import folded

KINDS: dict[str, Maker] = {"folded": folded}
"""How each kind of waistband is drafted."""


def band(brief: Brief, waist: Waist) -> Band:
    """The pieces above the waist seam, with the seams and notions they bring."""
    return KINDS.get(brief.waistband.kind, folded)(brief, waist)


__all__ = ["Band", "Waist", "band"]
