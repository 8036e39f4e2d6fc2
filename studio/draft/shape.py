"""The shape of one panel of a skirt: four sides between its seam lines, and what is marked on it."""

from msgspec import Struct

from studio.geometry import Path, Point, line

from .piece import Dimension, Handle, LineMark, Note, Spot


class Shape(Struct, frozen=True, kw_only=True):
    """A panel between its seam lines, each side walked clockwise: the top to the right, the right side down, the hem
    to the left, the left side up (mm; the waist seam at or near y = 0).

    `ratio` and `closes` say how the top is eased (see `piece.Edge`), `fold` names a side that lies on the fold of the
    cloth, and `widens` the brief paths that move the sides. Marks are those of the shape itself: what the opening,
    the hem and the pockets bring is added when the panel becomes a piece.
    """

    top: Path
    right: Path
    hem: Path
    left: Path
    grain: tuple[Point, Point]
    ratio: float = 1.0
    closes: tuple[tuple[float, float], ...] = ()
    fold: str = ""
    widens: tuple[str, ...] = ()
    lines: tuple[LineMark, ...] = ()
    spots: tuple[Spot, ...] = ()
    notes: tuple[Note, ...] = ()
    handles: tuple[Handle, ...] = ()
    dimensions: tuple[Dimension, ...] = ()


def straight_sides(wide: float, deep: float) -> tuple[Path, Path, Path, Path]:
    """Top, right, hem and left of a rectangle whose top left corner is the origin."""
    return line(0, 0, wide, 0), line(wide, 0, wide, deep), line(wide, deep, 0, deep), line(0, deep, 0, 0)
