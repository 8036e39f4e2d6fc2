"""What a step works on: the edges and lines of its piece that it names, and the side of the piece it is near."""

from typing import Final

from studio.draft import Edge, LineMark, Piece
from studio.draft.making import Shown
from studio.geometry import Point

FACES: Final = {"top": Point(0, -1), "foot": Point(0, 1), "left": Point(-1, 0), "right": Point(1, 0)}
_STEEP: Final = 0.5


def named(piece: Piece, shown: Shown) -> list[Edge]:
    """The edges worked on."""
    return [e for e in piece.edges if e.name in shown.edges]


def lit(piece: Piece, shown: Shown) -> list[LineMark]:
    """The lines worked on."""
    return [m for m in piece.lines if m.role in shown.roles]


def side_of(piece: Piece, shown: Shown) -> Edge:
    """The edge near which the picture is: one that is named, or the longest that faces that way."""
    out = FACES[shown.near]

    def faces(e: Edge) -> float:
        return e.path.direction(e.path.length / 2).outward().dot(out)

    facing = [e for e in piece.edges if faces(e) > _STEEP] or list(piece.edges)
    names = [e for e in facing if e.name in shown.edges]
    return max(names or facing, key=lambda e: e.path.length)
