"""A piece of the pattern: named edges in order, the marks on it, and what it is cut from."""

from typing import Literal, TypeAlias

from msgspec import Struct

from studio.geometry import TOUCH, Line, Path, Point, joined
from studio.words import Phrase

Role: TypeAlias = Literal[
    "fold", "hem", "first turn", "centre", "quarter", "hip", "gather", "row stop", "zip stop", "buttonhole",
    "pleat fold", "placement", "direction", "dart", "pocket", "stitching", "slit",
    "slit top",
]  # fmt: skip
"""What a marked line is for. A pleat's direction runs from its fold to where it is placed."""
Spotted: TypeAlias = Literal["notch", "button", "hook", "bar", "snap", "drill"]
Side: TypeAlias = Literal["above", "below", "left", "right", "inside"]
Material: TypeAlias = Literal["main", "interfacing", "lining"]


PARTS, OTHER = 10, 20


class Edge(Struct, frozen=True, gc=False):
    """One edge of a piece: its seam line, walked clockwise, and how much is left beyond it.

    `sews_to` is "piece/edge"; `ratio` is this edge's length for each millimetre of the other (2 where it is
    gathered to half). A hem is turned up along its line, so its allowance mirrors the sides. What pleats and darts
    take up of it is listed in `closes`, from and to along it. A `fold` lies on the fold of the cloth: nothing is
    left beyond it, and the piece goes on as its own mirror image.
    """

    name: str
    path: Path
    allowance: float
    sews_to: str = ""
    ratio: float = 1.0
    hem: bool = False
    words: Phrase | None = None
    governs: tuple[str, ...] = ()
    closes: tuple[tuple[float, float], ...] = ()
    fold: bool = False

    @property
    def sewn(self) -> float:
        """Length once pleats and darts are closed and gathers drawn up, mm."""
        return self.sewn_at(self.path.length)

    def sewn_at(self, along: float) -> float:
        """Where a place `along` the edge comes to lie once pleats and darts are closed and gathers drawn up, mm."""
        taken = sum(max(0.0, min(along, end) - start) for start, end in self.closes)
        return (along - taken) / self.ratio


class LineMark(Struct, frozen=True, gc=False):
    """A line to carry to the cloth. `governs` names the brief paths whose numbers move it."""

    role: Role
    path: Path
    words: Phrase | None = None
    governs: tuple[str, ...] = ()


class Spot(Struct, frozen=True, gc=False):
    """A place to carry to the cloth: `size` in mm (diameter, or depth of a notch), `turn` the way it points.

    A notch stands on the cut line of the edge named by `on`.
    """

    role: Spotted
    at: Point
    size: float
    turn: float = 0.0
    on: str = ""
    words: Phrase | None = None
    governs: tuple[str, ...] = ()


class Handle(Struct, frozen=True, gc=False):
    """A point that can be dragged: a millimetre along `axis` changes the number at `path` by `gain`.

    The handle of a number that may be left empty lies as far along its axis as that number says.
    """

    path: str
    at: Point
    axis: Literal["x", "y"]
    gain: float

    @property
    def drawn_as(self) -> float:
        """The number that an empty one was drawn as."""
        return (self.at.x if self.axis == "x" else self.at.y) * self.gain


class Dimension(Struct, frozen=True, gc=False):
    """A measured line: from `start` to `end`, written on `side` of the piece, bound to the path it shows.

    "inside" stands right of an upright line, on the piece.
    """

    path: str
    start: Point
    end: Point
    side: Side
    words: Phrase


class Note(Struct, frozen=True, gc=False):
    """Words that belong at a place on the piece, to be read at the cutting table."""

    words: Phrase
    at: Point


class Piece(Struct, frozen=True, gc=False):
    """One piece of the pattern, in its own millimetres (x right, y down).

    `row` is where it lies on a table to be looked at: 0 the band, 1 and on the skirt from the waist down, then
    `PARTS` for small parts and `OTHER` for what is cut of other cloth. `tier` is which tier it is of, counted from the
    band; 0 in a skirt that has none.
    """

    id: str
    name: str
    edges: tuple[Edge, ...]
    cut_line: Path
    grain: tuple[Point, Point]
    lines: tuple[LineMark, ...] = ()
    spots: tuple[Spot, ...] = ()
    notes: tuple[Note, ...] = ()
    handles: tuple[Handle, ...] = ()
    dimensions: tuple[Dimension, ...] = ()
    cut: int = 1
    mirrored: bool = False
    cloth: Material = "main"
    row: int = 1
    tier: int = 0

    @property
    def on_fold(self) -> bool:
        """Whether half of it is drawn, to be cut on the fold of the cloth."""
        return any(e.fold for e in self.edges)

    @property
    def rectangular(self) -> bool:
        """Whether the cut line is an upright rectangle."""
        sides = self.cut_line.curves
        return len(sides) == 4 and all(
            isinstance(c, Line) and min(abs(c.start.x - c.end.x), abs(c.start.y - c.end.y)) < TOUCH for c in sides
        )

    @property
    def as_cut(self) -> Path:
        """The outline as it is cut from cloth that lies open: a piece on the fold with its mirror image."""
        edge = next((e for e in self.edges if e.fold), None)
        return self.cut_line if edge is None else unfolded(self.cut_line, edge.path.start.x)

    @property
    def seam_line(self) -> Path:
        """The closed line the piece is sewn along, and turned up along at the hem."""
        return joined(e.path for e in self.edges)

    def edge(self, name: str) -> Edge:
        """The edge of that name; KeyError when there is none."""
        for e in self.edges:
            if e.name == name:
                return e
        raise KeyError(name)


def unfolded(outline: Path, x: float) -> Path:
    """A closed outline with its mirror image in the upright line at `x`, along which it lies."""
    at = next(
        k for k, c in enumerate(outline.curves)
        if isinstance(c, Line) and abs(c.start.x - x) < TOUCH and abs(c.end.x - x) < TOUCH
    )  # fmt: skip
    half = (*outline.curves[at + 1 :], *outline.curves[:at])
    return Path((*half, *(c.flipped(x).reversed() for c in reversed(half))))
