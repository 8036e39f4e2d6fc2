"""How a piece is looked at: laid open, from one side of the cloth, and placed in the picture."""

from msgspec import Struct
from msgspec.structs import replace

from studio.draft import Edge, LineMark, Piece
from studio.draft.turned_over import edges_over, spots_over
from studio.drawing.furniture import placed_path
from studio.geometry import Box, Path, Point


def opened(piece: Piece) -> Piece:
    """A piece cut on the fold as it lies when the cloth is open; any other as it is."""
    fold = next((e for e in piece.edges if e.fold), None)
    if fold is None:
        return piece
    x = fold.path.start.x
    return replace(
        piece,
        cut_line=piece.as_cut,
        edges=(*(e for e in piece.edges if not e.fold), *_over(piece, x)),
        lines=(*piece.lines, *(_line_over(m, x) for m in piece.lines if not _along(m.path, x))),
        spots=(*piece.spots, *spots_over(piece.spots, x)),
    )


def _over(piece: Piece, x: float) -> tuple[Edge, ...]:
    """The mirror image of a half's edges, sides changing their names."""
    names = {"left": "right", "right": "left"}
    found = []
    for e in edges_over(piece.edges, x):
        side, space, rest = e.name.partition(" ")
        if not e.fold:
            found.append(replace(e, name=f"{names.get(side, side)}{space}{rest}"))
    return tuple(found)


def _line_over(mark: LineMark, x: float) -> LineMark:
    return replace(mark, path=mark.path.flipped(x))


def _along(path: Path, x: float) -> bool:
    return abs(path.start.x - x) < 1e-6 and abs(path.end.x - x) < 1e-6


class View(Struct, frozen=True):
    """How millimetres of cloth become those of the picture; seen from behind, left and right change places."""

    at: Point
    scale: float
    mirrored: bool

    def path(self, path: Path) -> Path:
        """A path in the picture."""
        return placed_path(path.flipped(0) if self.mirrored else path, self.at, self.scale)

    def point(self, p: Point) -> Point:
        """A point in the picture."""
        return Point((-p.x if self.mirrored else p.x) * self.scale + self.at.x, p.y * self.scale + self.at.y)

    def way(self, p: Point) -> Point:
        """A direction in the picture."""
        return Point(-p.x, p.y) if self.mirrored else p

    def box(self, box: Box) -> Box:
        """A rectangle in the picture."""
        a, b = self.point(Point(box.left, box.top)), self.point(Point(box.right, box.bottom))
        return Box(min(a.x, b.x), a.y, max(a.x, b.x), b.y)


def looking_at(part: Box, within: Box, scale: float, *, mirrored: bool) -> View:
    """The view that has the middle of a part of the cloth in the middle of a room."""
    x = -part.centre.x if mirrored else part.centre.x
    return View(Point(within.centre.x - x * scale, within.centre.y - part.centre.y * scale), scale, mirrored)
