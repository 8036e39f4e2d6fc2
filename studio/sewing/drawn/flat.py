"""The skirt laid flat, drawn: its outline, its seams, folds and darts, and what shows of its opening."""

from collections.abc import Iterator
from itertools import accumulate
from typing import Final

from msgspec.structs import replace

from studio.brief import Brief
from studio.draft import Draft, Piece
from studio.drawing import Colour, Drawing, Group, Mark, Stroke
from studio.drawing.dimension import dimension
from studio.drawing.furniture import head, placed, placed_path, stroke
from studio.geometry import Box, Point, joined, line, polyline
from studio.units import Unit, spell, write_length
from studio.words import phrase, tr

from ..saying import panels
from .laid import STRAIGHT, Laid, laid
from .room import CLOTH, EDGE, ROOM, THIN, WORDS, around, caption, note, now

_WRAPS: Final = 0.55
"""How far across the free edge of a wrap lies."""
_RIPPLES: Final = (0.34, 0.62, 0.25, 0.8, 0.45, 0.3, 0.7, 0.38, 0.55, 0.28, 0.66)
"""How far down folds run from a gathered edge, as shares of the way; any order that does not repeat to the eye."""


def _rows(brief: Brief, draft: Draft) -> list[tuple[tuple[Piece, ...], float, float]]:
    """Each ring of panels from the waist down: its pieces, and from where to where it hangs, mm below the waist."""
    within = _let_in(draft)
    hung = [p for p in panels(draft.pieces) if p not in within]
    rows = [tuple(p for p in hung if p.row == row) for row in sorted({p.row for p in hung})]
    deep = [max(p.seam_line.box.height for p in row) for row in rows]
    shares = [brief.finished_length * d / sum(deep) for d in deep]
    feet = list(accumulate(shares))
    return [(row, foot - share, foot) for row, foot, share in zip(rows, feet, shares, strict=True)]


def _gathered(piece: Piece) -> bool:
    return any(m.role == "gather" for m in piece.lines)


def skirt_laid(brief: Brief, draft: Draft, *, line_width: float = EDGE, fill: Colour = "white") -> Drawing:
    """The skirt laid flat at true size, its waist seam's middle at the origin."""
    one = laid(brief, draft)
    outline = joined(
        (one.level(0), one.down(1, 0, one.long), one.level(one.long).reversed(), one.down(-1, one.long, 0))
    )
    marks: list[Mark] = [Stroke(outline, "cut", line_width, fill=fill)]
    marks += _joins(brief, draft, one)
    marks += _folds(brief, draft, one)
    marks += _insets(brief, draft, one)
    marks += _opening(brief, one)
    if one.band:
        marks += _band_marks(one, line_width, fill)
    return (Group("skirt", tuple(marks)),)


def _band_marks(one: Laid, width: float, fill: Colour) -> Iterator[Mark]:
    """The band, as straight or as curved as its seam, and no further down than its circle's middle."""
    up = -one.band
    if one.angle > STRAIGHT:
        up = -min(one.band, one.radius * 0.7)
    sides = (one.down(1, up, 0), one.down(-1, 0, up))
    path = joined((one.level(up), sides[0], one.level(0).reversed(), sides[1]))
    yield Stroke(path, "cut", width, fill=fill)


def _joins(brief: Brief, draft: Draft, one: Laid) -> Iterator[Mark]:
    """Seams between tiers."""
    for _, _, foot in _rows(brief, draft)[:-1]:
        yield Stroke(one.level(foot), "seam", THIN)


def _insets(brief: Brief, draft: Draft, one: Laid) -> Iterator[Mark]:
    """Pieces let into the seams from the hem up: each a wedge as high and, at the hem, as wide as it is."""
    for piece in _let_in(draft)[:1]:
        (row, _, _), *_ = _rows(brief, draft)
        seen, box = max(2, sum(p.cut for p in row) // 2), piece.seam_line.box
        half = min(box.width / one.hem, 1 / seen)
        for across in (2 * k / seen - 1 for k in range(1, seen)):
            tip = one.at(across, one.long - box.height)
            foot = (one.at(across + half * side, one.long) for side in (-1, 1))
            for corner in foot:
                yield Stroke(polyline((tip, corner)), "seam", THIN)


def _let_in(draft: Draft) -> list[Piece]:
    """What is let into the seams: it hangs below the first ring of panels, and is not gathered to it."""
    hung = panels(draft.pieces)
    first = min(p.row for p in hung)
    return [p for p in hung if p.row > first and not _gathered(p)]


def _opening(brief: Brief, one: Laid) -> Iterator[Mark]:
    """What shows of an opening at the front: its seam down to its end, with its buttons; or the free edge of a wrap."""
    if brief.opening.place != "front" or brief.opening.kind == "none":
        return
    if brief.opening.kind == "wrap":
        yield Stroke(one.down(_WRAPS, 0, one.long), "cut", THIN)
        return
    foot = min(brief.opening.zip_stop, one.long)
    yield Stroke(one.down(0, 0, foot), "seam", THIN)


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
        elif (seen := sum(p.cut for p in row) // 2) > 1 and "hip" in roles:
            end = foot - max((p.seam_line.box.height for p in _let_in(draft)), default=0.0)
            for k in range(1, seen):
                yield Stroke(one.down(2 * k / seen - 1, top, end), "seam", THIN)
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
