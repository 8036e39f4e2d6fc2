"""Where the title block stands on a piece that is printed whole: on the piece, clear of what is marked there."""

from collections.abc import Iterator

from studio.draft import Piece
from studio.drawing import Group
from studio.drawing.furniture import placed
from studio.geometry import Box, Point

from .reach import Trace, boxed, surrounds, trace

KEPT_CLEAR = ("dart", "pocket", "hip", "slit", "slit top", "zip stop", "buttonhole")
"""Marks that a block of words does not cover."""
TRIES = 24
"""Places tried along each side of a piece."""
NOTE = Box(-22, -6, 22, 6)
"""The room of a note, about its middle (mm)."""


def standing(block: Group, piece: Piece, wanted: Point) -> Group:
    """The block (its top left corner at the origin) on the piece: level if it goes, or turned to be read from the
    right; clear of marks if it can; as near as can be to the wanted place.

    On a piece too small for it either way it lies over the edge, level, in the piece's middle.
    """
    marked = list(_marked(piece))
    spare: Group | None = None
    for turn in (0.0, -90.0):
        turned = placed(block.marks, Point(0, 0), turn=turn)
        corner = boxed(turned)[0].box
        box = corner.moved(-corner.left, -corner.top)
        for at in _held(piece, box, wanted):
            there = Group(block.name, placed(turned, at.moved(-corner.left, -corner.top)))
            if not any(box.moved(*at).meets(b) for b in marked):
                return there
            spare = spare or there
    if spare is not None:
        return spare
    size, middle = boxed(block.marks)[0].box, piece.cut_line.box.centre
    return Group(block.name, placed(block.marks, middle.moved(-size.width / 2, -size.height / 2)))


def _marked(piece: Piece) -> Iterator[Box]:
    for m in piece.lines:
        if m.role in KEPT_CLEAR:
            yield m.path.box.grown(14 if m.role == "dart" else 3)
    for s in piece.spots:
        if s.role != "notch":
            yield Box(*s.at, *s.at).grown(s.size)
    for note in piece.notes:
        yield NOTE.moved(*note.at)


def _held(piece: Piece, block: Box, wanted: Point) -> Iterator[Point]:
    """Places where a block lies on the piece as a whole, the nearest to the wanted one first."""
    box, outline = piece.cut_line.box, trace(piece.cut_line)
    if min(block.width, block.height) > min(box.width, box.height) or block.width > box.width:
        return
    steps = range(1, TRIES)
    grid = [Point(box.left + box.width * i / TRIES, box.top + box.height * j / TRIES) for j in steps for i in steps]
    yield from (at for at in (wanted, *sorted(grid, key=wanted.distance)) if _on(block.moved(*at), outline))


def _on(block: Box, outline: Trace) -> bool:
    return outline.box.holds(block) and surrounds(outline.points, block.centre) and not outline.touches(block)
