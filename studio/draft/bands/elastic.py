"""The elastic band: a casing as long as the skirt's top, folded over an elastic that draws it in."""

from studio.brief import Brief
from studio.geometry import Point, line
from studio.words import phrase, tr

from ..draft import Notion
from ..fastening import elastic_girth
from ..piece import LineMark, Note
from .band import Band, Waist
from .folded import Strip, doubled, doubled_seams

GAP = 50.0
"""Left open to thread the elastic, mm (common practice, no source)."""
BESIDE = 30.0
"""How far from the casing's seam the gap begins, mm."""
JOIN = 20.0
"""The elastic's ends lie over each other by this to be sewn, mm (common practice, no source)."""


def elastic(brief: Brief, waist: Waist) -> Band:
    """The casing, a closed ring cut 2 × elastic + 1/2 in + 2a tall, and the elastic."""
    half, seam, a = brief.waistband.depth, brief.waist_seam, brief.seams.allowance
    bar = min(5.0, a / 2)
    gap = LineMark("slit", line(BESIDE, 0, BESIDE + GAP, 0), phrase("leave open for elastic"))
    bars = (LineMark("slit", line(x, -bar, x, bar)) for x in (BESIDE, BESIDE + GAP))
    notes = (
        Note(phrase("outside face"), Point(seam * 0.375, half * 1.5)),
        Note(phrase("inside"), Point(seam * 0.375, half * 0.5)),
    )
    shown = phrase("{w:bare}, for elastic of {e:bare}", w=half, e=brief.waistband.elastic)
    strip = Strip(
        tr("Casing"), half, "waistband.elastic", a, shown, lines=(gap, *bars), notes=notes,
        facing=phrase("seam, turned in and stitched down"),
    )  # fmt: skip
    says = phrase("seam, to the casing")
    return Band((doubled(brief, waist, strip),), doubled_seams(brief, waist), (_notion(brief),), says)


def _notion(brief: Brief) -> Notion:
    """The elastic to cut: shorter than the waist, with what its join takes."""
    wide, long = brief.waistband.elastic, elastic_girth(brief) + JOIN
    words = phrase("elastic {w} wide, cut {l}, joined over {j}", w=wide, l=long, j=JOIN)
    return Notion("elastic", words, {"width": wide, "length": long})
