"""A lay plan as a value: where each copy of a piece lies on the cloth, and what the plan takes.

The cloth runs along x from its cut end, and y goes across it: from the first selvedge where it lies open, from the
fold where it is folded.
"""

from msgspec import Struct

from studio.brief import PrintBand
from studio.draft import Piece
from studio.geometry import Path, Point


class Placed(Struct, frozen=True):
    """One copy of a piece on the cloth: corner of its box nearest the origin (mm).

    Where mirrored, it is turned over first, left to right; then it is turned by 0, 90, 180 or 270 degrees, clockwise
    on the page. `half`: what is laid is the half that is drawn, its fold on the fold of the cloth. `layers` is how
    many it is cut through: with two, this copy and the next come of it.
    """

    piece: Piece
    copy: int
    at: Point
    turn: int
    mirrored: bool
    half: bool = False
    layers: int = 1

    @property
    def outline(self) -> Path:
        """What is laid, in the piece's own millimetres."""
        return self.piece.cut_line if self.half else self.piece.as_cut

    @property
    def along(self) -> float:
        """How much of the cloth's length it takes, mm."""
        box = self.outline.box
        return box.height if self.turn % 180 else box.width

    @property
    def across(self) -> float:
        """How much of the cloth's width it takes, mm."""
        box = self.outline.box
        return box.width if self.turn % 180 else box.height

    def on_cloth(self, p: Point) -> Point:
        """Where a point of the piece falls on the cloth."""
        box = self.outline.box
        x, y = (box.right - p.x if self.mirrored else p.x - box.left), p.y - box.top
        match self.turn:
            case 90:
                return self.at.moved(box.height - y, x)
            case 180:
                return self.at.moved(box.width - x, box.height - y)
            case 270:
                return self.at.moved(y, box.width - x)
        return self.at.moved(x, y)

    def laid(self, path: Path) -> Path:
        """Where a path of the piece falls on the cloth, as `on_cloth` has each of its points."""
        box = self.outline.box
        flat = path.flipped(box.centre.x) if self.mirrored else path
        aside = {90: Point(box.height, 0), 180: Point(box.width, box.height), 270: Point(0, box.width)}
        turned = flat.moved(-box.left, -box.top).turned(self.turn, Point(0, 0)) if self.turn else flat
        by = aside[self.turn] if self.turn else Point(-box.left, -box.top)
        return turned.moved(self.at.x + by.x, self.at.y + by.y)


class Adrift(Struct, frozen=True):
    """A piece that cannot lie on its band of the print, because so much of it (mm) would be off the cloth."""

    piece: Piece
    band: PrintBand
    off: float


class Lay(Struct, frozen=True):
    """A plan: width and length of cloth it takes (mm), the least any plan could take, and what does not fit.

    On folded cloth the width is that of the half that is seen.
    """

    width: float
    length: float
    bound: float
    placed: tuple[Placed, ...]
    misfits: tuple[Piece, ...] = ()
    adrift: tuple[Adrift, ...] = ()
    folded: bool = False
    proven: bool = False
    """Whether no plan can be shorter."""

    @property
    def share(self) -> float:
        """How good the plan surely is: the least that any plan takes, as a share of its length."""
        return 1.0 if self.proven or self.length <= 0 else self.bound / self.length
