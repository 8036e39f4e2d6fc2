"""A piece of the pattern: named edges in order, the marks on it, and what it is cut from."""

from typing import Literal, TypeAlias

from msgspec import Struct

from studio.geometry import Path, Point, joined
from studio.words import Phrase

Role: TypeAlias = Literal[
    "fold", "hem", "first turn", "centre", "quarter", "gather", "row stop", "zip stop", "buttonhole"
]
Spotted: TypeAlias = Literal["notch", "button", "hook", "bar"]
Side: TypeAlias = Literal["above", "below", "left", "right", "inside"]
Material: TypeAlias = Literal["main", "interfacing"]


class Edge(Struct, frozen=True):
    """One edge of a piece: its seam line, walked clockwise, and how much is left beyond it.

    `sews_to` is "piece/edge"; `ratio` is this edge's length for each millimetre of the other (2 where it is
    gathered to half). A hem is turned up along its line, so its allowance mirrors the sides.
    """

    name: str
    path: Path
    allowance: float
    sews_to: str = ""
    ratio: float = 1.0
    hem: bool = False
    words: Phrase | None = None
    governs: tuple[str, ...] = ()


class LineMark(Struct, frozen=True):
    """A line to carry to the cloth. `governs` names the brief paths whose numbers move it."""

    role: Role
    path: Path
    words: Phrase | None = None
    governs: tuple[str, ...] = ()


class Spot(Struct, frozen=True):
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


class Handle(Struct, frozen=True):
    """A point that can be dragged: a millimetre along `axis` changes the number at `path` by `gain`."""

    path: str
    at: Point
    axis: Literal["x", "y"]
    gain: float


class Dimension(Struct, frozen=True):
    """A measured line: from `start` to `end`, written on `side` of the piece, bound to the path it shows.

    "inside" stands right of an upright line, on the piece.
    """

    path: str
    start: Point
    end: Point
    side: Side
    words: Phrase


class Note(Struct, frozen=True):
    """Words that belong at a place on the piece, to be read at the cutting table."""

    words: Phrase
    at: Point


class Piece(Struct, frozen=True):
    """One piece of the pattern, in its own millimetres (x right, y down)."""

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
    on_fold: bool = False
    cloth: Material = "main"

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
