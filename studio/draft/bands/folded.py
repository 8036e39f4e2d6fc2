"""The folded waistband: one straight strip, faced with itself; and every band that is a strip folded in half.

x runs from the plain end to the extension's end, y from the facing's edge over the fold down to the waist seam;
the lower half is the outside face, so that the band lies above the skirt it joins.
"""

from msgspec import Struct

from studio.brief import Brief
from studio.geometry import Point, line
from studio.words import Phrase, phrase, tr

from ..cut_line import cut_line
from ..fastening import laps
from ..interfacing import interfacing
from ..piece import Dimension, Edge, Handle, LineMark, Note, Piece
from ..seam import Part, Seam
from .band import Band, Waist
from .fasten import fasten
from .lie import Lie
from .outline import LAPPED, TO_SKIRT, draws_out, edges, girth_dimensions, notches, ring, uprights, waist_seam

FOLD, TURNED_IN = phrase("fold, top edge"), phrase("seam, turned in")


class Strip(Struct, frozen=True):
    """A strip to be folded along its middle: what it is called, how wide each half is (mm) and the path of the number
    that makes it so, what is left beyond its long edges, and what stands on its edges and beside it.
    """

    name: str
    half: float
    path: str
    allowance: float
    shown: Phrase
    fold: Phrase | None = FOLD
    facing: Phrase | None = TURNED_IN
    waist: Phrase = TO_SKIRT
    lines: tuple[LineMark, ...] = ()
    notes: tuple[Note, ...] = ()


def folded(brief: Brief, waist: Waist) -> Band:
    """The band, cut (waist seam + lap + 2a) by (2w + 2a), and its interfacing."""
    w, seam = brief.waistband.width, brief.waist_seam
    sides = (("outside face", w * 1.5, 0.375), ("inside", w * 0.5, 0.375), ("inside", w * 0.5, 0.875))
    notes = [Note(phrase(words), Point(seam * share, y)) for words, y, share in sides]
    if laps(brief):
        notes.append(Note(LAPPED[brief.opening.place], Point(seam * 0.875, w * 1.5)))
    shown = phrase("{w:bare}", w=w)
    strip = Strip(tr("Waistband"), w, "waistband.width", brief.seams.allowance, shown, notes=tuple(notes))
    piece = doubled(brief, waist, strip)
    stiffening = interfacing(brief, piece, _outer_half(brief))
    return Band(
        (piece, *([stiffening] if stiffening else [])), doubled_seams(brief, waist),
    )  # fmt: skip


def _outer_half(brief: Brief) -> tuple[Edge, ...]:
    """The outside face alone, from the fold down; nothing is left beyond the fold."""
    end, w, a = brief.band_length, brief.waistband.width, brief.seams.allowance
    lie = Lie(2 * w)
    return (
        Edge("fold", lie.run(0, end, w), 0.0), Edge("extension end", lie.across(end, w, 0), a),
        Edge("waist", lie.run(end, 0, 0), a), Edge("plain end", lie.across(0, 0, w), a),
    )  # fmt: skip


def doubled(brief: Brief, waist: Waist, strip: Strip) -> Piece:
    """The piece of a strip that is folded along its middle, its outside half below."""
    seam, end, half, a = brief.waist_seam, brief.band_length, strip.half, strip.allowance
    tall, deep = 2 * half, (strip.path,)
    lie = Lie(tall)
    top = (
        Edge("facing", lie.run(0, seam, tall), a, "waistband/waist", words=strip.facing),
        Edge("facing extension", lie.run(seam, end, tall), a, "waistband/extension"),
    )
    meets = {"waist": waist.meets, "extension": "waistband/facing extension"}
    around = edges(brief, lie, tall, top, meets, deep, words=strip.waist, allowance=a)
    held = fasten(brief, lie, half)
    over = brief.seams.allowance
    fold = LineMark("fold", line(-over, half, end + over, half), strip.fold, deep)
    return Piece(
        id="waistband",
        name=strip.name,
        edges=around,
        cut_line=cut_line(around),
        grain=(Point(seam * 0.08, half * 0.5), Point(seam * 0.22, half * 0.5)),
        lines=(fold, *uprights(brief, waist, lie, tall), *held.lines, *strip.lines),
        spots=(*notches(brief, waist, lie, tall, "facing", a), *held.spots),
        notes=strip.notes,
        handles=(
            Handle(strip.path, Point(seam * 0.14, half), "y", 1.0),
            *([Handle("waistband.extension", Point(end, half * 0.5), "x", 1.0)] if draws_out(brief) else []),
            *held.handles,
        ),
        dimensions=(
            *girth_dimensions(brief, lie, tall),
            Dimension(strip.path, Point(0, half), Point(0, tall), "left", strip.shown),
        ),
        row=0,
    )


def doubled_seams(brief: Brief, waist: Waist) -> tuple[Seam, ...]:
    """The waist seam, the facing turned in along it, and the ends of a ring."""
    facing = Seam("facing", (Part("waistband", "facing"),), (Part("waistband", "waist", True),))
    ends = Seam("band ends", (Part("waistband", "plain end", True),), (Part("waistband", "extension end"),))
    return (waist_seam(waist), facing, *([ends] if ring(brief) else []))
