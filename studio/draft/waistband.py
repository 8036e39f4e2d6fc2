"""The folded waistband: one straight piece, faced with itself.

x runs from the plain end to the extension's end, y from the facing's edge over the fold down to the waist seam;
the lower half is the outside face, so that the band lies above the skirt it joins. The extension is on the
wearer's left back: left laps over right at the centre back (common practice, no source).
"""

from studio.brief import Brief
from studio.geometry import Point, line
from studio.words import phrase, tr

from .cut_line import cut_line
from .fastening import fasten
from .marks import STATION_WORDS, notch, stations, upright
from .piece import Dimension, Edge, Handle, LineMark, Note, Piece

GIRTH = ("body.waist", "waistband.ease")


def folded_band(brief: Brief, sections: int, sews_to: str) -> Piece:
    """The band, cut B + x + 2a by 2w + 2a; `sews_to` names the skirt's waist edge."""
    closed, w, x, a = brief.closed, brief.waistband.width, brief.waistband.extension, brief.seams.allowance
    end, tall = closed + x, 2 * w
    wide, deep = ("waistband.extension",), ("waistband.width",)
    edges = [
        Edge("facing", line(0, 0, closed, 0), a, "waistband/waist", words=phrase("seam, turned in")),
        Edge("facing extension", line(closed, 0, end, 0), a, "waistband/extension"),
        Edge("extension end", line(end, 0, end, tall), a, words=phrase("extension"), governs=wide),
        Edge("extension", line(end, tall, closed, tall), a, "waistband/facing extension", governs=wide),
        Edge("waist", line(closed, tall, 0, tall), a, sews_to, words=phrase("seam, to the skirt"), governs=deep),
        Edge("plain end", line(0, tall, 0, 0), a, words=phrase("plain end")),
    ]
    edges = [e for e in edges if e.path.length > 0]
    places = stations(sections) + [1.0] * (x > 0)
    lines = [
        LineMark("fold", line(-a, w, end + a, w), phrase("fold, top edge"), deep),
        *(upright(k, closed * k, 0, tall, GIRTH) for k in places if k in STATION_WORDS),
    ]
    spots = [
        spot
        for k in places
        for spot in (
            notch(closed * k, -a, 90, a, "facing" if k < 1 else "facing extension", GIRTH),
            notch(closed * k, tall + a, -90, a, "waist" if k < 1 else "extension", GIRTH),
        )
    ]
    holes, fastenings, handles = fasten(brief)
    lap = phrase("{x:bare}", x=x)
    return Piece(
        id="waistband",
        name=tr("Waistband"),
        edges=tuple(edges),
        cut_line=cut_line(edges),
        grain=(Point(closed * 0.08, w * 0.5), Point(closed * 0.22, w * 0.5)),
        lines=(*lines, *holes),
        spots=(*spots, *fastenings),
        notes=tuple(
            Note(phrase(words), Point(closed * share, y))
            for words, y, shares in (("outside face", w * 1.5, (0.375,)), ("inside", w * 0.5, (0.375, 0.875)))
            for share in shares
        ),
        handles=(
            Handle("waistband.width", Point(closed * 0.14, w), "y", 1.0),
            Handle("waistband.extension", Point(end, w * 0.5), "x", 1.0),
            *handles,
        ),
        dimensions=(
            Dimension("body.waist", Point(0, 0), Point(closed, 0), "above", phrase("{b:bare} closed", b=closed)),
            Dimension("waistband.width", Point(0, w), Point(0, tall), "left", phrase("{w:bare}", w=w)),
            *([Dimension("waistband.extension", Point(closed, tall), Point(end, tall), "below", lap)] if x > 0 else []),
        ),
    )
