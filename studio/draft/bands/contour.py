"""The contour band, shaped to the body: part of a cone, laid flat.

Its lower edge is the waist seam and its upper edge shorter, as a girth measured so much higher is. Both are arcs about
one centre: with B round the lower edge and U round the upper one, w apart, the lower radius is B w / (B − U).
"""

import math

from msgspec.structs import replace

from studio.brief import Brief

from ..drawn import drawn
from .band import Band, Waist
from .lie import Lie
from .two_piece import faced_band

MOST_SWEEP = math.pi
"""A band that would sweep more than half a circle is no waistband any more: it is held there, and a finding says so."""
LEAST = 0.05
"""Edges that differ by less than this (mm) are equally long."""
LAPPING = 180.0
"""The longest extension and the widest allowances at both ends, mm: what a band may have beyond its waist seam."""


def contour(brief: Brief, waist: Waist) -> Band:
    """Band and facing on their curve; straight where both edges are equally long."""
    text = "A band so wide can be shorter at its top by {made}, not by {asked}."
    asked = brief.waistband.upper_less
    held = drawn("waistband.upper_less", asked, min(asked, most_less(brief)), text)
    return replace(faced_band(brief, waist, contour_lie(brief)), drawn=held)


def contour_lie(brief: Brief) -> Lie:
    """The curve, the middle of the closed band lowest."""
    w, less = brief.waistband.width, min(brief.waistband.upper_less, most_less(brief))
    if less < LEAST:
        return Lie(w)
    return Lie(w, brief.closed * w / less, brief.waist_seam / 2)


def most_less(brief: Brief) -> float:
    """The most that the top edge can be shorter than the lower one, mm."""
    whole = brief.waist_seam + LAPPING
    return MOST_SWEEP * brief.closed * brief.waistband.width / whole


def contour_height(brief: Brief) -> float:
    """How tall the band lies on its curve, its allowances included, mm."""
    lie, a = contour_lie(brief), brief.seams.allowance
    if not lie.radius:
        return brief.waistband.width + 2 * a
    ends = (lie.at(s, brief.waistband.width + a).y for s in (-a, brief.band_length + a))
    return lie.deep + a - min(*ends, -a)
