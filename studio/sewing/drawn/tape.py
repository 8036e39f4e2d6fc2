"""A zip's tape on the edge of an opening."""

from collections.abc import Iterator
from typing import Final

from studio.brief import Brief
from studio.brief.conditions import ZIPS
from studio.draft import Piece
from studio.draft.making import Shown
from studio.drawing import Mark, Stroke
from studio.drawing.furniture import stroke
from studio.geometry import Line, Path, joined, offset

from .room import SEWN, THIN
from .view import View

TAPE: Final = 11.0
"""Half the width of a zip with its tape, mm (common practice, no source)."""
STITCHED: Final = {"invisible": 0.0, "centred": 6.0, "lapped": 12.0}
"""How far inside the seam line each kind of zip is stitched, mm; see `sewing.opening`."""
PAST: Final = 18.0
"""How far the tape goes on below the stop, mm."""
_TOOTH: Final = 6.0


def taped(piece: Piece, shown: Shown, view: View, brief: Brief | None) -> Iterator[Mark]:
    """The tape along an opening that takes a zip now, with its teeth at the seam line and the stitching."""
    kind = brief.opening.kind if brief else ""
    edge = next((e for e in piece.edges if e.name in shown.edges and e.sews_to == "zip"), None)
    if edge is None or kind not in ZIPS:
        return
    side = edge.name.split(" ")[0]
    path = edge.path if side == "right" else edge.path.reversed()
    rest = next((e.path for e in piece.edges if e.name == side), None)
    if rest is not None:
        below = rest if side == "right" else rest.reversed()
        more = min(PAST, below.length - 0.1)
        path = joined((path, below.split(more)[0])) if more > 0.1 else path
    sign = 1 if side == "right" else -1
    out = min(TAPE, edge.allowance) if kind == "invisible" else -TAPE
    outer = offset(path, out * sign).reversed()
    strip = Path((*path.curves, Line(path.end, outer.start), *outer.curves, Line(outer.end, path.start)))
    yield Stroke(view.path(strip), "plain", THIN, fill="white")
    at = _TOOTH
    while at < path.length - 2:
        p, way = path.at(at), path.direction(at).outward()
        yield stroke("plain", view.point(p), view.point(p.along(way, out * sign * 0.22)), width=THIN)
        at += max(_TOOTH, 1.3 / view.scale)
    length = edge.path.length
    sewn = path.split(length)[0] if length < path.length - 1e-6 else path
    inside = offset(sewn, -STITCHED[kind] * sign)
    yield Stroke(view.path(inside), "seam", SEWN, "accent")
