"""What goes over the hips, as a tape measures it on the drafted pieces: the ring at the waist, the skirt at the hips."""

from studio.draft import Piece, walked
from studio.geometry import Path
from studio.workroom import Docket


def ring_of(docket: Docket) -> float:
    """The waist seam and both edges of the opening, mm."""
    pieces = {p.id: p for p in docket.pieces}
    waist = next(s for s in docket.draft.seams if s.name == "waist")
    return walked(waist.one, pieces) + sum(
        p.cut * e.path.length for p in docket.pieces if p.row for e in p.edges if e.name.endswith(" opening")
    )


def hips_of(docket: Docket) -> float:
    """The skirt round the hips (mm), gathers and free pleats let out: along its hip line where one is drawn, else from
    row to row between the edges.
    """
    deep = docket.brief.hip_depth
    panels = [p for p in docket.pieces if p.row == 1]
    hips = [(p, m.path) for p in panels for m in p.lines if m.role == "hip"]
    if any(m.role == "stitching" and m.path.start.y > deep for p in panels for m in p.lines):
        return sum(p.cut * _faces(p, deep) for p in panels)
    if hips:
        return sum(p.cut * (2 if p.on_fold else 1) * path.length for p, path in hips)
    for row in range(1, max(p.row for p in docket.pieces) + 1):
        around = [p for p in docket.pieces if p.row == row]
        tall = sum(e.path.length for e in around[0].edges if e.name.split()[0] == "left")
        if deep <= tall:
            top, foot = (sum(p.cut * _edge(p, names).length for p in around) for names in (TOPS, FEET))
            return top + (foot - top) * deep / tall
        deep -= tall
    raise AssertionError("the skirt ends above the hips")


TOPS, FEET = ("waist", "top"), ("foot", "hem")


def _edge(piece: Piece, names: tuple[str, str]) -> Path:
    return next(e.path for e in piece.edges if e.name in names)


def _faces(piece: Piece, deep: float) -> float:
    """What is seen of knife pleats from the hip line down, where all lines are upright: from placement to fold, mm."""
    lines = [m.path for m in piece.lines if m.role in ("pleat fold", "placement")]
    assert all(path.curves[-1].start.y <= deep for path in lines)
    xs = sorted(path.end.x for path in lines)
    return sum(b - a for a, b in zip(xs[::2], xs[1::2], strict=True))
