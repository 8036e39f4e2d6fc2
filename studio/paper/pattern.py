"""A drafted piece as it is printed whole: its drawing, and the words that are read at the cutting table."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from msgspec import Struct

from studio.brief import Brief
from studio.cloth.ways import grain_down
from studio.draft import Dimension, Piece
from studio.draft.cutting import cut_words
from studio.draft.piece import Side
from studio.drawing import Align, Group, Mark, Words, moved
from studio.drawing.dimension import dimension
from studio.drawing.lettering import width
from studio.drawing.piece import piece_drawing
from studio.geometry import Box, Line, Path, Point
from studio.units import Unit, spell, write_length
from studio.words import Phrase, phrase, tr

from .plan import PatternPiece
from .reach import boxed
from .title_block import HEIGHT, title_block

ALONG = ("fold", "hem", "first turn", "hip", "stitching", "slit", "pocket")
"""Lines whose words lie on them."""
EVERY = 240.0
"""A line says its name about once a sheet (mm)."""
SMALL, NOTED = 3.2, 6.2
"""Height (mm) of words on lines, and of words read from standing height."""
BETWEEN_WORDS = 0.3
"""The middle between words on two lines lies so much (mm) below the middle between the lines."""


class Said(Struct, frozen=True):
    """How a piece is spoken of: its number on map and plan, the brief it belongs to, the maker's unit."""

    brief: Brief
    unit: Unit
    number: str = ""

    def called(self, number: str) -> "Said":
        """The same, for the piece of that number."""
        return Said(self.brief, self.unit, number)


def pattern_piece(piece: Piece, said: Said) -> PatternPiece:
    """The piece with its words, in its own millimetres."""
    words = (*_edge_words(piece, said), *_line_words(piece, said), *_spot_words(piece, said), *_notes(piece, said),
             grain_words(*piece.grain))  # fmt: skip
    dims = tuple(m for d in piece.dimensions for m in _dimension(piece, d, said.unit))
    upright, lying = _joins_to_avoid(piece)
    box = piece.cut_line.box
    return PatternPiece(
        number=said.number,
        name=piece.name,
        outline=piece.cut_line,
        drawing=(piece_drawing(piece), *dims, *words),
        blocks=_blocks(piece, said, box),
        upright=upright,
        lying=lying,
        whole=tuple(m.path.box.grown(3) for m in piece.lines if m.role == "buttonhole")
        + tuple(Box(*s.at, *s.at).grown(s.size / 2) for s in piece.spots if s.role == "button"),
        signs=tuple({*(m.role for m in piece.lines), *(s.role for s in piece.spots)}),
    )


def cells(piece: Piece, said: Said, size: str = "") -> list[tuple[str, str]]:
    """The facts of a title block."""
    brief, unit = said.brief, said.unit
    waist = write_length(brief.body.waist, unit, bare=True)
    who = tr("waist") + " " + waist
    hem = max((e.allowance for e in piece.edges if e.hem), default=0.0)
    rest = max((e.allowance for e in piece.edges if not e.hem), default=0.0)
    allowance = spell(phrase("{a:bare}, hem {h:bare}: included", a=rest, h=hem), unit) if hem else ""
    plain = spell(phrase("{a:bare}, included", a=rest), unit) if rest else tr("none")
    facts = [
        (tr("cloth"), tr(piece.cloth)),
        (tr("for"), f"{brief.who}, {who}" if brief.who else who),
        (tr("allowance"), allowance or plain),
        (tr("grain"), tr("down") if grain_down(piece) else tr("along")),
    ]
    return [*facts, (tr("size, cut"), size)] if size else facts


def cut_size(piece: Piece, unit: Unit) -> str:
    """Size of the cut line's box, "157.0 × 67.5"."""
    box = piece.cut_line.box
    return f"{write_length(box.width, unit, bare=True)} × {write_length(box.height, unit, bare=True)}"


def _blocks(piece: Piece, said: Said, box: Box) -> tuple[Group, ...]:
    block = title_block(said.number, piece.name, cut_words(piece), cells(piece, said, cut_size(piece, said.unit)))
    size = boxed(block.marks)[0].box
    if piece.id == "waistband":
        waist = piece.edge("waist").path
        wide = size.width
        at = Point(
            waist.start.x * 0.625 - wide / 2, max(waist.start.y * 0.75, HEIGHT / 2 + 2) - HEIGHT / 2 + BETWEEN_WORDS
        )
    elif box.height < HEIGHT + 14:
        at = Point(box.left + box.width * 0.5, box.centre.y - HEIGHT / 2)
    else:
        at = _roomy(piece, size, Point(box.left + box.width * 0.3, box.top + min(90.0, box.height * 0.3)))
    return (Group(block.name, moved(block.marks, *at)),)


def _roomy(piece: Piece, block: Box, wanted: Point) -> Point:
    """The wanted place for a block of words, or the one nearest to it where it lies on the piece as a whole, and clear
    of what is marked there if it can.
    """
    box, ring = piece.cut_line.box, piece.cut_line.flat(1.0)
    marked = [m.path.box.grown(14 if m.role == "dart" else 3) for m in piece.lines if m.role in KEPT_CLEAR]
    marked += [Box(*s.at, *s.at).grown(s.size) for s in piece.spots if s.role != "notch"]

    def clear(at: Point) -> bool:
        return not any(block.moved(*at).meets(b) for b in marked)

    def holds(at: Point) -> bool:
        placed = block.moved(*at)
        middle = placed.centre
        xs, ys = (placed.left, middle.x, placed.right), (placed.top, middle.y, placed.bottom)
        return all(_within(ring, Point(x, y)) for x in xs for y in ys)

    if holds(wanted) and clear(wanted):
        return wanted
    steps = range(1, TRIES)
    grid = (Point(box.left + box.width * i / TRIES, box.top + box.height * j / TRIES) for j in steps for i in steps)
    held = [at for at in grid if holds(at)]
    return min(([at for at in held if clear(at)] or held), key=wanted.distance, default=wanted)


KEPT_CLEAR = ("dart", "pocket", "hip", "slit", "slit top", "zip stop")
"""Marks that a block of words does not cover."""
TRIES = 24
"""Places tried along each side of a piece for a block of words."""


def _within(ring: Sequence[Point], p: Point) -> bool:
    """Whether a place lies inside a closed run of points (a ray to the right crosses it an odd number of times)."""
    crossed = False
    for a, b in pairwise(ring):
        if (a.y > p.y) != (b.y > p.y) and p.x < a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y):
            crossed = not crossed
    return crossed


def _edge_words(piece: Piece, said: Said) -> Iterator[Mark]:
    for e in piece.edges:
        if e.words is not None:
            yield from _along(e.path, e.words, said.unit)


def _line_words(piece: Piece, said: Said) -> Iterator[Mark]:
    for m in piece.lines:
        if m.words is None or m.role == "gather":
            continue
        if m.role in ALONG:
            yield from _along(m.path, m.words, said.unit)
        elif m.role in ("centre", "quarter", "pleat fold", "placement"):
            along = m.path.length - 12
            turn = _read(m.path.direction(along))
            at = m.path.at(along).moved(*Point(0, -1.4).turned(turn))
            yield Words(spell(m.words, said.unit), at, SMALL, turn=turn, patch=True)
        elif m.role == "dart":
            point = m.path.curves[0].end
            yield Words(spell(m.words, said.unit), point.moved(0, 6), SMALL, align="centre", patch=True)
        elif m.role == "buttonhole":
            middle = m.path.at(m.path.length / 2)
            yield Words(spell(m.words, said.unit), middle.moved(0, -4.5), SMALL, align="centre", patch=True)
        elif m.path.start.x < piece.cut_line.box.centre.x:
            yield Words(spell(m.words, said.unit), m.path.end.moved(9, 1.1), SMALL, patch=True)


def _spot_words(piece: Piece, said: Said) -> Iterator[Mark]:
    for s in piece.spots:
        if s.words is not None:
            up = s.size * 0.67 + 3
            align: Align = "right" if s.role == "hook" else "centre"
            yield Words(spell(s.words, said.unit), s.at.moved(0, -up), SMALL, align=align, patch=True)


def _notes(piece: Piece, said: Said) -> Iterator[Mark]:
    for note in piece.notes:
        yield Words(
            spell(note.words, said.unit), note.at.moved(0, NOTED * 0.35), NOTED, align="centre", face="semibold"
        )


def grain_words(start: Point, end: Point) -> Words:
    """What a grain line runs along, beside its middle."""
    upright = abs(end.y - start.y) > abs(end.x - start.x)
    at = start.towards(end, 0.5).moved(-2, 0) if upright else start.towards(end, 0.5).moved(0, -2)
    return Words(
        tr("grain, along the selvedge"), at, SMALL, turn=-90 if upright else 0, align="centre", patch=True
    )  # fmt: skip


def _along(path: Path, words: Phrase, unit: Unit) -> Iterator[Mark]:
    """Words on a line, about once a sheet, read from below or from the right; not where the line is too short."""
    text, size = spell(words, unit), path.length
    wide = width(text, SMALL)
    if size < wide + 12:
        return
    n = max(1, round(size / EVERY))
    for k in range(n):
        at = path.at(size * (k + 0.5) / n)
        turn = _read(path.direction(size * (k + 0.5) / n))
        yield Words(text, at.moved(*Point(0, SMALL * 0.34).turned(turn)), SMALL, turn=turn, align="centre", patch=True)


def _read(way: Point) -> float:
    """How words on a line are turned: with the line, read from below or from the right."""
    return (round(way.degrees, 6) + 90) % 180 - 90


def _inward(piece: Piece, side: Side) -> Point:
    """Where a dimension stands on paper, seen from the line it measures: inside, clear of seams, hem and words.

    On the band, which has no room inside, it stands in the middle of the allowance.
    """
    aside = max(e.allowance for e in piece.edges if not e.hem) / 2
    hem = max((e.allowance for e in piece.edges if e.hem), default=aside * 2)
    wide = piece.cut_line.box.width
    if piece.row == 0:
        return {"above": Point(0, -aside * 0.55), "below": Point(0, aside), "left": Point(-aside, 0)}.get(
            side, Point(aside, 0)
        )
    return {
        "above": Point(0, 24),
        "below": Point(0, -hem - 9),
        "left": Point(min(130.0, wide * 0.3), 0),
        "right": Point(-min(30.0, wide * 0.12), 0),
        "inside": Point(min(112.0, wide * 0.2), 0),
    }[side]


def _dimension(piece: Piece, d: Dimension, unit: Unit) -> tuple[Mark, ...]:
    way = _inward(piece, d.side)
    a, b = d.start.moved(*way), d.end.moved(*way)
    if abs(a.x - b.x) < abs(a.y - b.y) and a.y < b.y:  # an upright one is read from the right
        a, b = b, a
    return dimension(a, b, spell(d.words, unit))


def _joins_to_avoid(piece: Piece) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """The x of upright lines and the y of lying ones, that no join of sheets should run along."""
    box = piece.cut_line.box
    upright, lying = {box.left, box.right}, {box.top, box.bottom}
    for path in (*(e.path for e in piece.edges), *(m.path for m in piece.lines)):
        for c in path.curves:
            if isinstance(c, Line) and abs(c.start.x - c.end.x) < 1e-6:
                upright.add(c.start.x)
            elif isinstance(c, Line) and abs(c.start.y - c.end.y) < 1e-6:
                lying.add(c.start.y)
    return tuple(sorted(upright)), tuple(sorted(lying))
