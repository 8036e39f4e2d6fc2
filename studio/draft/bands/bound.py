"""The bound edge: a narrow strip, cut along the grain, that wraps the skirt's trimmed edge.

A double-turned binding: the strip is sewn on, turned over the edge and turned under inside, so that it is cut four
times as wide as it shows (common practice, no source).
"""

from studio.brief import Brief
from studio.geometry import Point
from studio.words import phrase, tr

from ..piece import Note
from .band import Band, Waist
from .folded import Strip, doubled, doubled_seams


def bound(brief: Brief, waist: Waist) -> Band:
    """The binding, cut 4 × its width; the skirt keeps its allowance until it is sewn, then fills the binding."""
    b = brief.waistband.binding
    words = phrase("{b} wide when bound; cut four times as wide, turned under inside", b=b)
    strip = Strip(
        tr("Binding"), b, "waistband.binding", b, phrase("{w:bare}", w=b), fold=None, facing=None,
        notes=(Note(words, Point(brief.waist_seam * 0.38, b * 1.5)),),
    )  # fmt: skip
    says = phrase("seam, bound: then trim what is left to {b}", b=min(b, brief.seams.allowance))
    return Band((doubled(brief, waist, strip),), doubled_seams(brief, waist), (), says)
