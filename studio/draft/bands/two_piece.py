"""The band in two: an outer piece and its facing, of another cloth if that is wanted, joined along the top edge.

A border print is then not hidden inside. The facing is drawn from its own right side, the mirror image of the band.
"""

from msgspec.structs import replace

from studio.brief import Brief
from studio.geometry import Point
from studio.words import phrase, tr

from ..cut_line import cut_line
from ..fastening import laps
from ..interfacing import interfacing
from ..piece import OTHER, PARTS, Dimension, Edge, Handle, Note, Piece
from ..seam import Part, Seam
from ..turned_over import edges_over, spots_over
from .band import Band, Waist
from .fasten import fasten
from .lie import Lie
from .outline import LAPPED, draws_out, edges, girth_dimensions, notches, ring, uprights, waist_seam

DEEP = ("waistband.width",)
FACING = "waistband-facing"


def two_piece(brief: Brief, waist: Waist) -> Band:
    """Band and facing, each cut (waist seam + lap + 2a) by (w + 2a)."""
    return faced_band(brief, waist, Lie(brief.waistband.width))


def faced_band(brief: Brief, waist: Waist, lie: Lie) -> Band:
    """An outer band that lies straight or on a curve, its facing, and interfacing for the outer one."""
    outer = _outer(brief, waist, lie)
    facing = _facing(brief, outer, lie)
    stiffening = interfacing(brief, outer)
    return Band(
        (outer, facing, *([stiffening] if stiffening else [])), (waist_seam(waist), *_seams(brief, outer)),
    )  # fmt: skip


def _outer(brief: Brief, waist: Waist, lie: Lie) -> Piece:
    w, seam, end, a = brief.waistband.width, brief.waist_seam, brief.band_length, brief.seams.allowance
    top = Edge("top", lie.run(0, end, w), a, f"{FACING}/top", words=phrase("seam, to the facing"), governs=DEEP)
    meets = {n: f"{FACING}/{n}" for n in ("extension end", "extension", "plain end")} | {"waist": waist.meets}
    around = edges(brief, lie, w, (top,), meets, DEEP)
    held = fasten(brief, lie, w)
    notes = [Note(phrase("outside face"), lie.at(seam * 0.375, w / 2))]
    if laps(brief):
        notes.append(Note(LAPPED[brief.opening.place], lie.at(seam * 0.875, w / 2)))
    low = lie.at(lie.middle or seam * 0.14, 0)
    handles = [Handle("waistband.width", low, "y", 1.0)]
    if draws_out(brief) and not lie.radius:
        handles.append(Handle("waistband.extension", Point(end, w * 0.5), "x", 1.0))
    return Piece(
        id="waistband",
        name=tr("Waistband"),
        edges=around,
        cut_line=cut_line(around),
        grain=grain(lie, seam, w),
        lines=(*uprights(brief, waist, lie, w), *held.lines),
        spots=(*notches(brief, waist, lie, w, "top"), *held.spots),
        notes=tuple(notes),
        handles=(*handles, *held.handles),
        dimensions=(
            *(() if lie.radius else girth_dimensions(brief, lie, w)),
            Dimension("waistband.width", lie.at(0, w), lie.at(0, 0), "left", phrase("{w:bare}", w=w)),
        ),
        row=0,
    )


def grain(lie: Lie, seam: float, high: float) -> tuple[Point, Point]:
    """Along a straight band; level beside the middle of a curved one, as it runs there, so that both halves stretch
    alike.
    """
    if not lie.radius:
        return Point(seam * 0.08, high / 2), Point(seam * 0.22, high / 2)
    beside = lie.at(seam * 0.455, high / 2)
    return beside.moved(-seam * 0.035, 0), beside.moved(seam * 0.035, 0)


def _facing(brief: Brief, outer: Piece, lie: Lie) -> Piece:
    """The outer band from its other side, with the notches it is matched by."""
    own = {"top": "waistband/top", "waist": "waistband/waist"}
    if ring(brief):
        own |= {"plain end": f"{FACING}/extension end", "extension end": f"{FACING}/plain end"}
    else:
        own |= {n: f"waistband/{n}" for n in ("extension end", "extension", "plain end")}
    x, seam, w = brief.band_length / 2, brief.waist_seam, brief.waistband.width
    words = {"waist": phrase("seam, turned in"), "top": phrase("seam, to the band")}
    around = tuple(
        replace(e, sews_to=own.get(e.name, ""), words=words.get(e.name, e.words)) for e in edges_over(outer.edges, x)
    )
    start, end = outer.grain
    main = brief.waistband.facing_cloth == "main"
    return Piece(
        id=FACING,
        name=tr("Waistband facing"),
        edges=around,
        cut_line=cut_line(around),
        grain=(end.flipped(x), start.flipped(x)),
        lines=tuple(replace(m, path=m.path.flipped(x)) for m in outer.lines if m.role in ("centre", "quarter")),
        spots=spots_over((s for s in outer.spots if s.role == "notch"), x),
        notes=(Note(phrase("inside"), lie.at(seam * 0.375, w / 2).flipped(x)),),
        cloth="main" if main else "lining",
        row=PARTS if main else OTHER,
    )


def _seams(brief: Brief, outer: Piece) -> tuple[Seam, ...]:
    """Band to facing round the top and the ends, and the facing turned in along the waist."""
    turned_in = Seam("facing", (Part(FACING, "waist"),), (Part("waistband", "waist", True),))
    round_top = ["top"] if ring(brief) else [e.name for e in outer.edges if e.name != "waist"]
    along = tuple(Seam("band", (Part("waistband", n),), (Part(FACING, n, True),)) for n in round_top)
    rings = tuple(
        Seam("band ends", (Part(p, "plain end", True),), (Part(p, "extension end"),)) for p in ("waistband", FACING)
    )
    return (turned_in, *along, *(rings if ring(brief) else ()))
