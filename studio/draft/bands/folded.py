"""The folded waistband: one straight piece, faced with itself.

x runs from the plain end to the extension's end, y from the facing's edge over the fold down to the waist seam;
the lower half is the outside face, so that the band lies above the skirt it joins. The extension is on the
wearer's left of a centre back (common practice, no source).
"""

from studio.brief import Brief
from studio.geometry import Path, Point, line
from studio.words import phrase, tr

from ..cut_line import cut_line
from ..fastening import fasten
from ..interfacing import interfacing, interfacing_notion
from ..marks import Station, notch, quarter_name, upright
from ..piece import Dimension, Edge, Handle, LineMark, Note, Piece
from ..seam import Part, Seam
from .band import Band, Waist

GIRTH = ("body.waist", "waistband.ease")
LAPS = ("waistband.extension",)
DEEP = ("waistband.width",)


def folded(brief: Brief, waist: Waist) -> Band:
    """The band, cut (waist seam + lap + 2a) by (2w + 2a), and its interfacing."""
    piece = _piece(brief, waist)
    stiffening = interfacing(brief)
    facing = Seam("facing", (Part("waistband", "facing"),), (Part("waistband", "waist", True),))
    seam = Seam("waist", waist.parts, (Part("waistband", "waist", True),))
    return Band(
        (piece, *([stiffening] if stiffening else [])), (seam, facing),
        (interfacing_notion(stiffening),) if stiffening else (),
    )  # fmt: skip


def _piece(brief: Brief, waist: Waist) -> Piece:
    seam, end, w, a = brief.waist_seam, brief.band_length, brief.waistband.width, brief.seams.allowance
    tall = 2 * w
    edges = tuple(e for e in _edges(brief) if e.path.length > 0)
    holes, fastenings, handles = fasten(brief)
    lines = [
        LineMark("fold", line(-a, w, end + a, w), phrase("fold, top edge"), DEEP),
        *(upright(s, s.at, 0, tall, GIRTH) for s in band_stations(brief, waist) if s.words),
    ]
    spots = [
        spot
        for s in band_stations(brief, waist)
        for spot in (
            notch(s.at, -a, 90, a, "facing" if s.at < seam else "facing extension", GIRTH),
            notch(s.at, tall + a, -90, a, "waist" if s.at < seam else "extension", GIRTH),
        )
    ]
    return Piece(
        id="waistband",
        name=tr("Waistband"),
        edges=edges,
        cut_line=cut_line(edges),
        grain=(Point(seam * 0.08, w * 0.5), Point(seam * 0.22, w * 0.5)),
        lines=(*lines, *holes),
        spots=(*spots, *fastenings),
        notes=tuple(
            Note(phrase(words), Point(seam * share, y))
            for words, y, shares in (("outside face", w * 1.5, (0.375,)), ("inside", w * 0.5, (0.375, 0.875)))
            for share in shares
        ),
        handles=(
            Handle("waistband.width", Point(seam * 0.14, w), "y", 1.0),
            *([Handle("waistband.extension", Point(end, w * 0.5), "x", 1.0)] if _laps(brief) else []),
            *handles,
        ),
        dimensions=tuple(_dimensions(brief)),
        row=0,
    )


def _laps(brief: Brief) -> bool:
    """Whether the band may have an extension at all."""
    return brief.opening.kind not in ("wrap", "none")


def _edges(brief: Brief) -> tuple[Edge, ...]:
    """Clockwise from the facing's edge; an edge of no length is none."""
    seam, end, tall, a = brief.waist_seam, brief.band_length, 2 * brief.waistband.width, brief.seams.allowance

    def edge(name: str, path: Path, sews_to: str, words: str, governs: tuple[str, ...] = ()) -> Edge:
        return Edge(name, path, a, sews_to, words=phrase(words) if words else None, governs=governs)

    meets = "waistband/plain end" if brief.opening.kind == "none" else ""
    return (
        edge("facing", line(0, 0, seam, 0), "waistband/waist", "seam, turned in"),
        edge("facing extension", line(seam, 0, end, 0), "waistband/extension", ""),
        edge("extension end", line(end, 0, end, tall), meets, "extension" if brief.lap else "end", LAPS),
        edge("extension", line(end, tall, seam, tall), "waistband/facing extension", "", LAPS),
        edge("waist", line(seam, tall, 0, tall), "skirt/waist", "seam, to the skirt", DEEP),
        edge("plain end", line(0, tall, 0, 0), meets and "waistband/extension end", "plain end"),
    )


def band_stations(brief: Brief, waist: Waist) -> tuple[Station, ...]:
    """Where a straight band meets the skirt; where it laps over the opening, that is marked too."""
    end = Station(brief.waist_seam, quarter_name(brief, 0))
    return (*waist.stations, *([end] if brief.lap else []))


def _dimensions(brief: Brief) -> list[Dimension]:
    seam, end, w = brief.waist_seam, brief.band_length, brief.waistband.width
    words = phrase("{b:bare} closed", b=brief.closed)
    if seam != brief.closed:
        words = phrase("{b:bare}, closes at {c:bare}", b=seam, c=brief.closed)
    found = [
        Dimension("body.waist", Point(0, 0), Point(seam, 0), "above", words),
        Dimension("waistband.width", Point(0, w), Point(0, 2 * w), "left", phrase("{w:bare}", w=w)),
    ]
    if brief.lap:
        lap = phrase("{x:bare}", x=brief.lap)
        found.append(Dimension("waistband.extension", Point(seam, 2 * w), Point(end, 2 * w), "below", lap))
    return found
