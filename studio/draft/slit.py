"""A slit or a vent at the foot of a back seam that lies on the piece's right."""

from collections.abc import Iterator

from msgspec.structs import replace

from studio.brief import Brief
from studio.geometry import Line, Path, Point, line
from studio.words import phrase

from .cut_line import cut_line
from .piece import Edge, Handle, LineMark, Piece

TURNED = 30.0
"""The edges of a slit are turned under by this (mm; common practice, no source)."""
LAID_OVER = 45.0
"""A vent lies over itself by 4 to 5 cm (common practice, no source)."""
SLANTS = 20.0
"""The top of a vent's extension falls away by this (mm), so that it lies flat (common practice, no source)."""
MOVES = ("skirt.slit_length",)


def slit(brief: Brief, piece: Piece, long: float) -> Piece:
    """The seam ends `long` mm above the hem line; below, both edges are turned under."""
    edge = piece.edge("right")
    above, below = edge.path.split(edge.path.length - long)
    free = Edge("right slit", below, TURNED, words=phrase("slit, turned under"), governs=MOVES)
    return _opened(piece, (replace(edge, path=above), free), above.end, long, piece.edge("hem"))


def vent(brief: Brief, piece: Piece, long: float) -> Piece:
    """The same, with an extension that lies behind the opening; on the mirrored half it is folded back as a facing."""
    edge, hem = piece.edge("right"), piece.edge("hem")
    above, below = edge.path.split(edge.path.length - long)
    start, foot = above.end, below.end
    out = Point(start.x + LAID_OVER, start.y + SLANTS)
    corner = Point(foot.x + LAID_OVER, foot.y)
    edges = (
        replace(edge, path=above),
        Edge("vent top", line(*start, *out), edge.allowance, governs=MOVES, words=phrase("vent, top")),
        Edge("right vent", line(*out, *corner), edge.allowance, governs=MOVES, words=phrase("vent, neatened")),
    )
    wider = replace(hem, path=Path((Line(corner, foot), *hem.path.curves)))
    fold = LineMark("slit", line(*start, *foot), phrase("vent, folded here on the upper half"), MOVES)
    made = _opened(piece, edges, start, long, wider)
    return replace(made, lines=(*(_reaching(m) for m in made.lines), fold))


def _reaching(mark: LineMark) -> LineMark:
    """A line of the hem, drawn on across the vent."""
    if mark.role not in ("hem", "first turn"):
        return mark
    start = mark.path.start
    return replace(mark, path=Path((Line(start.moved(LAID_OVER, 0), start), *mark.path.curves)))


def _opened(piece: Piece, edges: tuple[Edge, ...], top: Point, long: float, hem: Edge) -> Piece:
    around = tuple(_around(piece, edges, hem))
    words = phrase("seam ends here, {l} above the hem", l=long)
    mark = LineMark("slit top", line(top.x - 5, top.y, top.x + 5, top.y), words, MOVES)
    return replace(
        piece, edges=around, cut_line=cut_line(around), lines=(*piece.lines, mark),
        handles=(*piece.handles, Handle("skirt.slit_length", top, "y", -1.0)),
    )  # fmt: skip


def _around(piece: Piece, edges: tuple[Edge, ...], hem: Edge) -> Iterator[Edge]:
    for e in piece.edges:
        if e.name == "right":
            yield from edges
        else:
            yield hem if e.name == "hem" else e
