"""The plan: every piece in its place on one large sheet, before that is cut into printed ones."""

from functools import reduce

from msgspec import Struct

from studio.drawing import Drawing, Group, moved
from studio.drawing.furniture import placed, placed_path
from studio.geometry import Box, Path, Point

from .page import Size

EDGE = 5.0
"""Paper left between a piece and the edge of the plan, mm."""

GAP = 10.0
"""Paper left between two pieces, for the scissors, mm."""


class PatternPiece(Struct, frozen=True):
    """A piece as paper shows it, in mm.

    `outline` is its closed cut line; `drawing` its lines and the words that belong on them; `blocks` are words that
    may stand anywhere inside, such as the title block. Joins of sheets should keep away from the x of `upright` and
    the y of `lying` lines, and never cut what is in `whole`, such as a buttonhole. `signs` names the marks that the
    key has to explain, such as a notch.
    """

    number: str
    name: str
    outline: Path
    drawing: Drawing
    blocks: tuple[Group, ...] = ()
    upright: tuple[float, ...] = ()
    lying: tuple[float, ...] = ()
    whole: tuple[Box, ...] = ()
    signs: tuple[str, ...] = ()

    @property
    def box(self) -> Box:
        """The upright rectangle round the cut line."""
        return self.outline.box

    def moved(self, dx: float, dy: float) -> "PatternPiece":
        """A shifted copy."""
        return PatternPiece(
            self.number,
            self.name,
            self.outline.moved(dx, dy),
            moved(self.drawing, dx, dy),
            tuple(Group(b.name, moved(b.marks, dx, dy)) for b in self.blocks),
            tuple(x + dx for x in self.upright),
            tuple(y + dy for y in self.lying),
            tuple(b.moved(dx, dy) for b in self.whole),
            self.signs,
        )

    def turned(self) -> "PatternPiece":
        """The piece a quarter turn to the left, its words read from the right."""
        origin = Point(0, 0)

        def turn(drawing: Drawing) -> Drawing:
            return placed(drawing, origin, turn=-90)

        return PatternPiece(
            self.number,
            self.name,
            placed_path(self.outline, origin, turn=-90),
            turn(self.drawing),
            tuple(Group(b.name, turn(b.marks)) for b in self.blocks),
            upright=self.lying,
            lying=tuple(-x for x in self.upright),
            whole=tuple(Box(b.top, -b.right, b.bottom, -b.left) for b in self.whole),
            signs=self.signs,
        )


class Plan(Struct, frozen=True):
    """Pieces in their places: x and y from the plan's top left corner, in mm."""

    pieces: tuple[PatternPiece, ...]

    @property
    def drawing(self) -> Drawing:
        """Everything, one group for each piece."""
        return tuple(Group(p.name, (*p.drawing, *p.blocks)) for p in self.pieces)

    @property
    def size(self) -> Size:
        """From the corner to the edge beyond the last piece, mm."""
        box = reduce(Box.joined, (p.box for p in self.pieces))
        return Size(box.right + EDGE, box.bottom + EDGE)
