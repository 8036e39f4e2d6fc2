"""The folded preview: a cut through a few pleats, outside up, with face and fold depth at their true proportions.

Only how far the layers stand apart is drawn larger than it is, so that they can be told from each other.
"""

import math
from collections.abc import Iterable
from itertools import pairwise
from typing import Final

from studio.brief import Brief
from studio.draft import Draft
from studio.geometry import Box, Line, Path, Point
from studio.styles import rack
from studio.units import Unit, spell
from studio.words import phrase, tr

from .dimension import dimension
from .mark import Drawing, Group, Stroke, Words

ROOM: Final = Box(0, 0, 66, 45)
"""The room it takes on a page, mm."""
_HEIGHT, _SIDE = 3.2, 3.0
_STACK: Final = 8.0  # mm from the top layer to the lowest
_TOP: Final = 15.0
_OFF: Final = 5.0  # mm from the cloth to a measured line
_MEET: Final = 0.5  # mm that folds which meet are drawn apart
_CLOTH: Final = 0.45  # mm
_BEYOND: Final = 0.4  # of a face, that the cloth goes on to either side
_DEEPEST: Final = 4  # pleats drawn under the first, at most


def pleat_section(brief: Brief, draft: Draft, unit: Unit = "cm") -> Drawing:
    """The pleats of a skirt below its hip line, in a room of 66 by 45 mm; nothing for a skirt without pleats."""
    style = rack.its_style(brief).pleats
    if style is None:
        return ()
    kind = style.kind(brief.skirt)
    face, depth = draft.fact("face"), draft.fact("pleat_depth")
    both = kind in ("box", "inverted")
    shown = _both(face, depth, kind == "box") if both else _knife(face, depth)
    left, right = min(p.x for p in shown), max(p.x for p in shown)
    scale = min(1.0, (ROOM.width - 2 * _SIDE) / (right - left))
    flipped = kind == "knife to the right"
    sign = -1 if flipped else 1
    at = ROOM.centre.x - sign * scale * (left + right) / 2

    def to(x: float, y: float) -> Point:
        return Point(at + sign * x * scale, _TOP + y * _STACK)

    cloth = [to(*p) for p in shown]
    if both:
        cloth = _apart(cloth)
    start = -face / 2 if kind == "box" else 0.0
    dims = (
        *_measured(to(start, 0), to(start + face, 0), -_OFF, spell(phrase("face {s:bare}", s=face), unit)),
        *_measured(to(start, 1), to(start + depth, 1), _OFF, spell(phrase("depth {d:bare}", d=depth), unit)),
    )
    layers = 1 + 2 * math.ceil(depth / draft.fact("full_depth") - 1e-6)
    said = (
        Words(tr("outside"), Point(_SIDE, 5), _HEIGHT),
        Words(spell(phrase("{n:count} layers", n=layers), unit), Point(_SIDE, ROOM.bottom - 4), _HEIGHT),
    )
    line = Path(tuple(Line(p, q) for p, q in pairwise(cloth)))
    return (Group("pleats", (Stroke(line, "plain", _CLOTH), *dims, *said)),)


def _knife(face: float, depth: float) -> list[Point]:
    """Knife pleats laid to the left: x along the skirt (mm), y from 0 on top to 1 below. Each face runs on under the
    next and comes back to its fold; the first fold lies at 0.
    """
    slope = 1 / (face + depth)
    under = min(max(1, math.ceil(depth / face - 1e-9)), _DEEPEST)
    first, last = -under * face, 2 * face
    found = [Point(first - face * _BEYOND, face * (1 - _BEYOND) * slope)]
    for k in range(-under, 3):
        found += [Point(k * face + depth, 1), Point(k * face, 0)]
    beyond = face * (1 - _BEYOND)
    return [*found, Point(last + beyond, beyond * slope)]


def _both(face: float, depth: float, box: bool) -> list[Point]:
    """Pleats folded from both sides. A box has its face about 0; of inverted ones two faces meet at 0."""
    found = []
    for x in (-face / 2, face / 2) if box else (-face, 0.0, face):
        found += [Point(x, 0), Point(x - depth, 0.55), Point(x, 1), Point(x + depth, 0.55), Point(x, 0)]
    if box:
        end = (1 / 2 + _BEYOND) * face
        return [Point(-end, 0), *found, Point(end, 0)]
    return found[2:-2]  # from a line that folds are laid on to another


def _apart(cloth: Iterable[Point]) -> list[Point]:
    """Folds that meet, on top and underneath, drawn a little apart: each is moved towards its own cloth."""
    points = list(cloth)
    found = [points[0]]
    for before, p, after in zip(points, points[1:], points[2:], strict=False):
        level = before if before.y == p.y else after if after.y == p.y else max(before, after, key=lambda q: q.y)
        aside = min(_MEET, abs(level.x - p.x) / 2) if p.y < _TOP + _STACK else 0.0
        found.append(p.moved(math.copysign(aside, level.x - p.x), 0))
    return [*found, points[-1]]


def _measured(start: Point, end: Point, off: float, words: str) -> Drawing:
    a, b = (start, end) if start.x < end.x else (end, start)
    return dimension(a, b, words, off=off, height=_HEIGHT, patch=False)
