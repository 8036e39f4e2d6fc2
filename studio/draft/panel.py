"""A panel becomes a piece: its shape, with what hem, opening and allowances bring to any skirt."""

import math

from msgspec import Struct

from studio.brief import Brief
from studio.geometry import TOUCH, Line, Path, Point, line, offset
from studio.words import phrase

from .cut_line import cut_line
from .marks import notch_on
from .piece import Dimension, Edge, Handle, LineMark, Piece, Side, Spot
from .ring import Ring, meeting, open_once, opening_sides
from .shape import Shape

SEAM, FOLD = phrase("seam"), phrase("fold of the cloth")
ABOVE, BELOW = phrase("seam, to the tier above"), phrase("seam, to the tier below")
STOP = ("opening.zip_stop",)
WRAP_HEM = 30.0
"""The free edge of a wrap is turned under by this (mm; common practice, no source)."""
OPEN_WORDS = {
    "placket": phrase("opening, placket"),
    "wrap": phrase("free edge of the wrap, turned under"),
}
ONCE = {
    "zip": phrase("seam; on the wearer’s left the opening, zip"),
    "placket": phrase("seam; on the wearer’s left the opening, placket"),
}
"""Where two sides are cut alike and the skirt opens at one of them: that is the wearer's left."""
STOPS = {
    "zip": ("zip stop: {s} below the seam, {r} from the raw edge",
            "zip stop, on the wearer’s left: {s} below the seam, {r} from the raw edge"),
    "placket": ("end of the opening: {s} below the seam, {r} from the raw edge",
                "end of the opening, on the wearer’s left: {s} below the seam, {r} from the raw edge"),
}  # fmt: skip
"""What the end of an opening says; the second where two sides are cut alike."""


class Level(Struct, frozen=True):
    """Where a ring of panels hangs: what its top and its foot are sewn to, and how far below the waist it starts.

    A skirt has one level; tiers have more. The last one carries the hem, the others end on a seam. `depth` (mm) is
    where its top lies below the waist seam, so that a long opening may run on into it; `tier` counts from 1.
    """

    top: str = "waist"
    sews_to: str = "waistband/waist"
    foot: str = "hem"
    foot_sews_to: str = ""
    depth: float = 0.0
    tier: int = 0


WAIST = Level()


def panel(
    brief: Brief, id: str, name: str, shape: Shape, ring: Ring, *, cut: int = 1, mirrored: bool = False,
    level: Level = WAIST,
) -> Piece:  # fmt: skip
    """The piece of a panel. Its ring says what each side is sewn to, and which are at the opening."""
    meets, opens, once = meeting(ring), opening_sides(ring), {side for piece, side in open_once(ring) if piece == id}
    stop = max(0.0, brief.stop - level.depth)
    a = brief.seams.allowance
    top = Edge(
        level.top, shape.top, a, level.sews_to, shape.ratio, closes=shape.closes,
        words=phrase("seam, to the band") if level.top == "waist" else ABOVE,
    )  # fmt: skip
    sides = {
        side: _side(brief, side, getattr(shape, side), shape, (id, side) in opens and stop > TOUCH, stop,
                    meets.get((id, side), ""), side in once)
        for side in ("right", "left")
    }  # fmt: skip
    edges = (top, *sides["right"], _foot(brief, shape, level), *sides["left"])
    marks = _stop_marks(brief, sides, stop, once)
    hem = _hem_lines(brief, shape) if level.foot == "hem" else ()
    handles, dimensions = _stop_handles(brief, sides, stop, level)
    return Piece(
        id=id, name=name, edges=edges, cut_line=cut_line(edges), grain=shape.grain,
        lines=(*shape.lines, *hem, *marks), spots=shape.spots, notes=shape.notes,
        handles=(*shape.handles, *handles), dimensions=(*shape.dimensions, *dimensions),
        cut=cut, mirrored=mirrored, row=max(1, level.tier), tier=level.tier,
    )  # fmt: skip


def _side(
    brief: Brief, side: str, path: Path, shape: Shape, opens: bool, stop: float, meets: str, once: bool
) -> tuple[Edge, ...]:  # fmt: skip
    """One side, parted at the stop where it lies at the opening."""
    a = brief.seams.allowance
    if shape.fold == side:
        return (Edge(side, path, 0.0, words=FOLD, fold=True, governs=shape.widens),)
    plain = Edge(side, path, a, meets, words=SEAM, governs=shape.widens)
    if not opens:
        return (plain,)
    kind = brief.opening.kind
    words = OPEN_WORDS.get(kind, phrase("opening, zip"))
    target = {"placket": "placket", "wrap": ""}.get(kind, "zip")
    words = ONCE.get(target, words) if once else words
    allowance = WRAP_HEM if kind == "wrap" else a
    if kind == "wrap" or stop > path.length - TOUCH:  # a slanted side is longer than the skirt
        return (Edge(f"{side} opening", path, allowance, target, words=words, governs=STOP),)
    upper, lower = _parted(path, stop, side)
    opening = Edge(f"{side} opening", upper, allowance, target, words=words, governs=STOP)
    rest = Edge(side, lower, a, meets, words=SEAM, governs=shape.widens)
    return (opening, rest) if side == "right" else (rest, opening)


def side_notch(
    brief: Brief, side: str, path: Path, down: float, opened: bool, governs: tuple[str, ...] = ()
) -> Spot:  # fmt: skip
    """A notch `down` mm from the top of a side; where that is `opened`, on the opening as far as it reaches."""
    wrapped = opened and brief.opening.kind == "wrap"
    on = f"{side} opening" if wrapped or (opened and down <= brief.stop) else side
    along = down if side == "right" else path.length - down
    return notch_on(path, along, WRAP_HEM if wrapped else brief.seams.allowance, on, governs)


def _parted(path: Path, stop: float, side: str) -> tuple[Path, Path]:
    """A side above and below the stop; a left side is walked upwards."""
    if side == "right":
        return path.split(stop)
    upper, lower = path.reversed().split(stop)
    return upper.reversed(), lower.reversed()


def _foot(brief: Brief, shape: Shape, level: Level) -> Edge:
    if level.foot != "hem":
        return Edge(level.foot, shape.hem, brief.seams.allowance, level.foot_sews_to, words=BELOW)
    faced = brief.seams.hem_kind == "faced"
    return Edge("hem", shape.hem, brief.hem, "", hem=not faced, governs=("seams.hem",))


def _hem_lines(brief: Brief, shape: Shape) -> tuple[LineMark, ...]:
    """The fold of the hem, drawn on through the allowances, and where its raw edge is turned under."""
    if brief.seams.hem_kind == "faced":
        return ()
    a, turn = brief.seams.allowance, brief.first_turn
    lines = [LineMark("hem", _drawn_on(shape.hem, 0, a, shape), phrase("hem fold"), ("skirt.length",))]
    if 0 < turn < brief.hem:
        path = _drawn_on(offset(shape.hem, brief.hem - turn), brief.hem - turn, a, shape)
        lines.append(LineMark("first turn", path, phrase("first turn"), ("seams.first_turn",)))
    return tuple(lines)


def _drawn_on(path: Path, below: float, a: float, shape: Shape) -> Path:
    """A hem line drawn on straight by the side allowances, for a cutter to see where it meets the edge."""
    right, left = (0.0 if shape.fold == side else a for side in ("right", "left"))
    start, end = path.start, path.end
    first, last = path.leaves, path.arrives
    curves = list(path.curves)
    if right:
        curves = list(line(*start.along(first, -right), *start).curves) + curves
    if left:
        curves += line(*end, *end.along(last, left)).curves
    return Path(tuple(curves))


def _ending(sides: dict[str, tuple[Edge, ...]], stop: float) -> list[tuple[str, Edge]]:
    """The edges at the opening that end at the stop; where it lies deeper, the opening runs on into the next tier."""
    return [
        (side, e)
        for side, edges in sides.items()
        for e in edges
        if e.name == f"{side} opening" and (len(edges) > 1 or stop < e.path.length + TOUCH)
    ]


def _stop_point(side: str, edge: Edge) -> Point:
    return edge.path.end if side == "right" else edge.path.start


def _stop_marks(
    brief: Brief, sides: dict[str, tuple[Edge, ...]], stop: float, once: set[str]
) -> tuple[LineMark, ...]:  # fmt: skip
    """A short bar across the seam line where the opening ends; a side that opens `once` says on which copy."""
    if brief.opening.kind == "wrap":
        return ()
    a = brief.seams.allowance
    marks, ends = [], STOPS["placket" if brief.opening.kind == "placket" else "zip"]
    for side, edge in _ending(sides, stop):
        words = phrase(ends[side in once], s=stop, r=stop + a)
        at, out = _stop_point(side, edge), edge.path.direction(edge.path.length / 2).outward()
        marks.append(LineMark("zip stop", line(*at.along(out, -5), *at.along(out, 5)), words, STOP))
    return tuple(sorted(marks, key=lambda m: m.path.start.x))


def _stop_handles(
    brief: Brief, sides: dict[str, tuple[Edge, ...]], stop: float, level: Level
) -> tuple[list[Handle], list[Dimension]]:  # fmt: skip
    """The stop can be dragged and is measured, once on a piece: on its left where both sides are open."""
    if brief.opening.kind == "wrap":
        return [], []
    found = _ending(sides, stop)
    if not found:
        return [], []
    held = next((one for one in found if one[0] == "left"), found[0])
    shown = next((one for one in found if one[0] == "right"), found[0])
    foot, down = _stop_point(*shown), _down(*shown)
    words = phrase("{s:bare}", s=stop)
    if level.depth:
        words = phrase("{s:bare}, {w:bare} below the waist", s=stop, w=brief.stop)
    where: Side = "right" if shown[0] == "right" else "inside"
    upright = abs(foot.x - down.start.x) < UPRIGHT * stop
    measured = [Dimension("opening.zip_stop", Point(foot.x, down.start.y), foot, where, words)] if upright else []
    free = stop + level.depth == brief.opening.zip_stop  # what the hem holds cannot be dragged
    return [_stop_handle(_down(*held), stop)] if free or upright else [], measured


UPRIGHT = 0.2
"""A side that strays less than this, as a share of its length, is measured as if it were upright."""


def _down(side: str, edge: Edge) -> Path:
    """An opening walked from the waist down to its stop."""
    return edge.path if side == "right" else edge.path.reversed()


def _stop_handle(down: Path, stop: float) -> Handle:
    """It runs along a straight side, whichever way that lies; beside a curved one it moves straight down."""
    way = down.start.to(down.end).unit()
    if len(down.curves) > 1 or not isinstance(down.curves[0], Line):
        return Handle("opening.zip_stop", Point(down.end.x, down.start.y + stop), "y", 1.0)
    lies = abs(way.x) > abs(way.y)
    along = way.x if lies else way.y
    gain = math.copysign(1.0, along) if abs(along) > 1 - 1e-12 else 1 / along
    return Handle("opening.zip_stop", down.end, "x" if lies else "y", gain)
