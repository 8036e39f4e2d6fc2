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
        turned = Group(block.name, placed(block.marks, Point(0, 0), turn=turn))
        box = boxed(turned.marks)[0].box
        turned = Group(block.name, placed(turned.marks, Point(-box.left, -box.top)))
        held = _held(piece, boxed(turned.marks)[0].box, wanted)
        clear = [at for at in held if not any(box.moved(at.x - box.left, at.y - box.top).meets(b) for b in marked)]
        if clear:
            return Group(block.name, placed(turned.marks, min(clear, key=wanted.distance)))
        if held and spare is None:
            spare = Group(block.name, placed(turned.marks, min(held, key=wanted.distance)))
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


def _held(piece: Piece, block: Box, wanted: Point) -> list[Point]:
    """Places where a block lies on the piece as a whole."""
    box, outline = piece.cut_line.box, trace(piece.cut_line)
    steps = range(1, TRIES)
    grid = [Point(box.left + box.width * i / TRIES, box.top + box.height * j / TRIES) for j in steps for i in steps]
    return [at for at in (wanted, *grid) if _on(block.moved(*at), outline)]


def _on(block: Box, outline: Trace) -> bool:
    return outline.box.holds(block) and surrounds(outline.points, block.centre) and not outline.touches(block)
