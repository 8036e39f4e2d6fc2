"""The drawing of a piece: its lines and marks as strokes, each with its meaning.  Words come with the paper."""

import math

from studio.draft import LineMark, Piece, Spot
from studio.draft.piece import Role
from studio.geometry import Path, Point, circle, line

from .furniture import head, stroke
from .ink import Ink
from .mark import Group, Stroke

INK_OF: dict[Role, Ink] = {
    "fold": "fold",
    "hem": "fold",
    "first turn": "fold",
    "centre": "centre",
    "quarter": "centre",
    "gather": "gather",
    "row stop": "notch",
    "zip stop": "notch",
    "slit top": "notch",
    "buttonhole": "notch",
    "hip": "centre",
    "pleat fold": "fold",
    "placement": "placement",
    "direction": "grain",
    "dart": "seam",
    "pocket": "seam",
    "stitching": "seam",
    "slit": "seam",
}
"""What each marked line is drawn with."""
FOOT = 3.0
"""A notch ends on a short foot (mm), so that a poor printer still shows it."""
CROSS = 12.0
"""The thin cross of a button reaches at least this far (mm) from its middle."""


def piece_drawing(piece: Piece) -> Group:
    """Everything drawn on a piece, in layers that are named for what they mean; cut line last, on top."""
    layers: dict[str, list[Stroke]] = {}
    spots = (s for mark in piece.spots for s in spot(mark))
    for s in (*seams(piece), *folds(piece), *lines(piece), *grain(piece), *spots, cut(piece)):
        layers.setdefault(s.ink, []).append(s)
    order = sorted(layers, key=lambda ink: ink == "cut")
    return Group(piece.id, tuple(Group(ink, tuple(layers[ink])) for ink in order))


def cut(piece: Piece) -> Stroke:
    """The line to cut on."""
    return Stroke(piece.cut_line, "cut", governs=("seams.allowance",))


def seams(piece: Piece) -> tuple[Stroke, ...]:
    """The lines to sew on: a hem's is its fold, and a piece without allowances has none of its own."""
    return tuple(Stroke(e.path, "seam", governs=e.governs) for e in piece.edges if e.allowance > 0 and not e.hem)


def folds(piece: Piece) -> tuple[Stroke, ...]:
    """The bracket whose ends point at a side that lies on the fold of the cloth."""
    found: list[Stroke] = []
    for e in piece.edges:
        if e.fold:
            size, into = e.path.length, e.path.direction(0).outward()
            ends = [e.path.at(size * share) for share in BRACKET]
            inner = [p.along(into, -BRACKET_DEEP) for p in ends]
            found.append(stroke("grain", ends[0], inner[0], inner[1], ends[1]))
            found += (head(p, into.degrees, 5, "grain") for p in ends)
    return tuple(found)


BRACKET, BRACKET_DEEP = (0.2, 0.8), 14.0
"""A fold's bracket stands between these shares of the edge, and so deep in the piece (mm)."""


def lines(piece: Piece) -> tuple[Stroke, ...]:
    """Folds, centres, gather rows, stops and holes."""
    return tuple(s for mark in piece.lines for s in marked_line(mark))


def marked_line(mark: LineMark) -> tuple[Stroke, ...]:
    """One marked line; a buttonhole is barred at both ends, a direction has an arrow's head at its end."""
    main = Stroke(mark.path, INK_OF[mark.role], governs=mark.governs)
    if mark.role == "direction":
        return (main, head(mark.path.end, mark.path.direction(mark.path.length).degrees, 4, "grain"))
    if mark.role != "buttonhole":
        return (main,)
    aside = mark.path.direction(0).outward()
    bars = (stroke("notch", p.along(aside, 2.5), p.along(aside, -2.5)) for p in (mark.path.start, mark.path.end))
    return (main, *(Stroke(bar.path, "notch", governs=mark.governs) for bar in bars))


def grain(piece: Piece) -> tuple[Stroke, ...]:
    """The grain, with filled heads at both ends."""
    start, end = piece.grain
    degrees = math.degrees(math.atan2(end.y - start.y, end.x - start.x))
    return (stroke("grain", start, end), head(end, degrees, 5, "grain"), head(start, degrees + 180, 5, "grain"))


def spot(mark: Spot) -> tuple[Stroke, ...]:
    """A notch with its foot, a button with its cross, a hook or bar as a short line."""
    at = mark.at
    if mark.role == "notch":
        into = Point(1, 0).turned(mark.turn)
        tip, aside = at.along(into, mark.size), into.outward()
        foot = stroke("notch", tip.along(aside, -FOOT / 2), tip.along(aside, FOOT / 2))
        return tuple(Stroke(s.path, s.ink, governs=mark.governs) for s in (stroke("notch", at, tip), foot))
    if mark.role == "drill":
        return (Stroke(circle(at, mark.size / 2), "notch", governs=mark.governs),)
    if mark.role in ("button", "snap"):
        reach = max(CROSS, mark.size * 0.67)
        across, down = _through(at, reach, 0), _through(at, 0, reach)
        return (
            Stroke(circle(at, mark.size / 2), "button", governs=mark.governs),
            Stroke(across, "button", 0.18, governs=mark.governs),
            Stroke(down, "button", 0.18, governs=mark.governs),
        )
    upright = mark.role == "bar"
    return (Stroke(_through(at, 0 if upright else mark.size / 2, mark.size / 2 if upright else 0), "button",
                   0.7, governs=mark.governs),)  # fmt: skip


def _through(at: Point, dx: float, dy: float) -> Path:
    return line(at.x - dx, at.y - dy, at.x + dx, at.y + dy)
