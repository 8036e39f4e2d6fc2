"""The skirt laid flat, as it lies on a table: half its waist, half its hem, and the length between.

Laid flat, the front of any skirt is a part of a ring: its inner arc is half the waist seam, its outer arc half the hem,
and it is as deep as the skirt is long. A tube is the ring of endless radius; a whole circle lies as half a disc.
"""

import math
from collections.abc import Iterator
from itertools import accumulate
from typing import Final

from msgspec import Struct
from msgspec.structs import replace

from studio.brief import Brief
from studio.draft import Draft, Piece
from studio.drawing import Colour, Drawing, Group, Mark, Stroke
from studio.drawing.dimension import dimension
from studio.drawing.furniture import head, placed, placed_path, stroke
from studio.geometry import Arc, Box, Line, Path, Point, joined, line
from studio.units import Unit, spell, write_length
from studio.words import phrase, tr

from ..saying import panels
from .room import CLOTH, EDGE, ROOM, THIN, WORDS, around, caption, note, now

_WIDEST: Final = math.pi
"""A hem wider than half a circle falls in folds when it is laid flat."""
_STRAIGHT: Final = 0.01
"""Below this angle (radians) the sides are drawn parallel to each other."""
_RIPPLES: Final = (0.34, 0.62, 0.25, 0.8, 0.45, 0.3, 0.7, 0.38, 0.55, 0.28, 0.66)
"""How far down folds run from a gathered edge, as shares of the way; any order that does not repeat to the eye."""


class Laid(Struct, frozen=True):
    """A skirt laid flat, mm: half the waist, half the hem, the length, and how high the band stands; places are told
    by their share of the way across, from -1 to 1, and how far down they lie.
    """

    waist: float
    hem: float
    long: float
    band: float

    @property
    def angle(self) -> float:
        """The whole angle of the ring, radians."""
        return max(-_WIDEST, min(_WIDEST, (self.hem - self.waist) / self.long))

    @property
    def radius(self) -> float:
        """Of the waist seam."""
        return self.waist / self.angle

    def at(self, across: float, down: float) -> Point:
        """A place on the skirt."""
        if abs(self.angle) < _STRAIGHT:
            return Point(across * (self.waist + (self.hem - self.waist) * down / self.long) / 2, down)
        turn, r = across * self.angle / 2, self.radius
        return Point(math.sin(turn) * (r + down), math.cos(turn) * (r + down) - r)

    def level(self, down: float, across: float = 1.0) -> Path:
        """A line across the skirt from left to right, square to its length."""
        if abs(self.angle) < _STRAIGHT:
            return Path((Line(self.at(-across, down), self.at(across, down)),))
        half = math.degrees(self.angle / 2) * across
        r = self.radius + down
        centre = Point(0, -self.radius)
        if r < 0:
            return Path((Arc(centre, -r, 270 + half, -2 * half),))
        return Path((Arc(centre, r, 90 + half, -2 * half),))

    def down(self, across: float, start: float, end: float) -> Path:
        """A line down the skirt."""
        return Path((Line(self.at(across, start), self.at(across, end)),))


def laid(brief: Brief, draft: Draft) -> Laid:
    """The finished skirt, laid flat."""
    waist = draft.fact("waist_seam")
    if draft.has("closed_girth") and any(p.id == "waistband" for p in draft.pieces):
        waist = min(waist, draft.fact("closed_girth"))
    hem = draft.fact("hem_sweep") if draft.has("hem_sweep") else waist
    return Laid(waist / 2, hem / 2, brief.finished_length, brief.waistband.depth)


def _rows(brief: Brief, draft: Draft) -> list[tuple[tuple[Piece, ...], float, float]]:
    """Each ring of panels from the waist down: its pieces, and from where to where it hangs, mm below the waist."""
    hung = panels(draft.pieces)
    rows = [tuple(p for p in hung if p.row == row) for row in sorted({p.row for p in hung})]
    deep = [max(p.seam_line.box.height for p in row) for row in rows]
    shares = [brief.finished_length * d / sum(deep) for d in deep]
    feet = list(accumulate(shares))
    return [(row, foot - share, foot) for row, foot, share in zip(rows, feet, shares, strict=True)]


def skirt_laid(brief: Brief, draft: Draft, *, line_width: float = EDGE, fill: Colour = "white") -> Drawing:
    """The skirt laid flat at true size, its waist seam's middle at the origin."""
    one = laid(brief, draft)
    outline = joined(
        (one.level(0), one.down(1, 0, one.long), one.level(one.long).reversed(), one.down(-1, one.long, 0))
    )
    marks: list[Mark] = [Stroke(outline, "cut", line_width, fill=fill)]
    marks += _joins(brief, draft, one)
    marks += _folds(brief, draft, one)
    if one.band:
        marks += _band_marks(one, line_width, fill)
    return (Group("skirt", tuple(marks)),)


def _band_marks(one: Laid, width: float, fill: Colour) -> Iterator[Mark]:
    """The band, as straight or as curved as its seam, and no further down than its circle's middle."""
    up = -one.band
    if one.angle > _STRAIGHT:
        up = -min(one.band, one.radius * 0.7)
    sides = (one.down(1, up, 0), one.down(-1, 0, up))
    path = joined((one.level(up), sides[0], one.level(0).reversed(), sides[1]))
    yield Stroke(path, "cut", width, fill=fill)


def _joins(brief: Brief, draft: Draft, one: Laid) -> Iterator[Mark]:
    """Seams between tiers."""
    for _, _, foot in _rows(brief, draft)[:-1]:
        yield Stroke(one.level(foot), "seam", THIN)


def _folds(brief: Brief, draft: Draft, one: Laid) -> Iterator[Mark]:
    """Folds from every gathered edge, darts from the waist; pleats run all the way down."""
    for row, top, foot in _rows(brief, draft):
        roles = [m.role for p in row for m in p.lines]
        if half := roles.count("pleat fold") // 2:
            for k in range(1, half):
                yield Stroke(one.down(2 * k / half - 1, top, foot), "plain", THIN)
        elif "gather" in roles:
            n = 2 * len(_RIPPLES) + 1
            for k in range(1, n):
                end = top + (foot - top) * _RIPPLES[k % len(_RIPPLES)]
                yield Stroke(one.down(2 * k / n - 1, top, end), "plain", THIN)
        elif "dart" in roles:
            deep = max(m.path.box.height for p in row for m in p.lines if m.role == "dart")
            for across in (-0.45, 0.45):
                yield Stroke(one.down(across, top, top + deep), "plain", THIN)


def laid_flat(brief: Brief, draft: Draft, within: Box) -> Drawing:
    """The finished skirt laid flat, as large as fits a room (mm), in the middle of it."""
    drawing, _, _ = placed_in(skirt_laid(brief, draft, line_width=_LARGE), within)
    return drawing


_LARGE: Final = 0.7


def placed_in(drawing: Drawing, within: Box) -> tuple[Drawing, float, Point]:
    """A drawing as large as fits, in the middle; and its scale, and where its origin lies."""
    box = around([m.path.box for m in _strokes(drawing)])
    scale = min(within.width / box.width, within.height / box.height)
    at = Point(within.centre.x - box.centre.x * scale, within.centre.y - box.centre.y * scale)
    return placed(_kept_thin(drawing, scale), at, scale), scale, at


def _kept_thin(drawing: Drawing, scale: float) -> Drawing:
    """Strokes whose stated widths will be what they are once the drawing is scaled."""
    found: list[Mark] = []
    for m in drawing:
        if isinstance(m, Stroke):
            found.append(replace(m, width=m.width / scale))
        elif isinstance(m, Group):
            found.append(replace(m, marks=_kept_thin(m.marks, scale)))
        else:
            found.append(m)
    return tuple(found)


def _strokes(drawing: Drawing) -> Iterator[Stroke]:
    for m in drawing:
        if isinstance(m, Stroke):
            yield m
        elif isinstance(m, Group):
            yield from _strokes(m.marks)


def pressed(brief: Brief, draft: Draft) -> Drawing:
    """The skirt laid flat, and the ways the iron goes: down from the waist."""
    drawing, scale, at = placed_in(skirt_laid(brief, draft), CLOTH)
    one = laid(brief, draft)
    marks: list[Mark] = [*drawing]
    for across in (-0.5, 0.0, 0.5):
        a, b = (_on_page(one.at(across, one.long * share), at, scale) for share in (0.35, 0.7))
        tip = head(b.along(a.to(b).unit(), 1.5), a.to(b).degrees, 2.6, "plain")
        marks += [stroke("plain", a, b, width=0.5, colour="accent"), replace(tip, fill="accent")]
    return (*marks, caption(tr("laid flat")))


def levelled(brief: Brief, draft: Draft) -> Drawing:
    """The skirt hanging, with its hem line in the accent and the floor below it."""
    within = CLOTH._replace(bottom=CLOTH.bottom - 6)
    drawing, scale, at = placed_in(skirt_laid(brief, draft), within)
    one, floor = laid(brief, draft), CLOTH.bottom - 0.5
    hem = now(placed_path(one.level(one.long), at, scale))
    ground = Stroke(line(4, floor, 62, floor), "plain", 0.5)
    return (*drawing, hem, ground, note(tr("floor"), 5, floor - 0.9), caption(tr("level from the floor")))


def told(brief: Brief, draft: Draft, unit: Unit) -> Drawing:
    """The finished skirt with the numbers to measure once more."""
    within = CLOTH._replace(top=CLOTH.top + 4, bottom=CLOTH.bottom - 1)
    drawing, scale, at = placed_in(skirt_laid(brief, draft), within)
    one = laid(brief, draft)
    top, foot = (_on_page(one.at(0, down), at, scale) for down in (0, one.long))
    girth = spell(phrase("{c:bare} round", c=draft.fact("closed_girth")), unit)
    return (
        *drawing,
        *dimension(foot, top, write_length(one.long, unit, bare=True), height=WORDS),
        note(girth, ROOM.centre.x, CLOTH.top + 2.4, "centre"),
        caption(tr("laid flat")),
    )


def _on_page(p: Point, at: Point, scale: float) -> Point:
    return Point(p.x * scale + at.x, p.y * scale + at.y)
