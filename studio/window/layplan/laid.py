"""One placed piece as it is painted: its outline and inner lines on the cloth, in mm."""

from msgspec import Struct
from PySide6.QtGui import QPainterPath

from studio.cloth.placed import Placed
from studio.draft import Piece
from studio.draft.piece import unfolded
from studio.geometry import Path

from ..board.paths import painter_path
from ..cloth.way import to_cloth


class Drawn(Struct, eq=False):
    """Paths in mm of the cloth: where it is cut, its seam line, and its folds and hem."""

    placed: Placed
    cut: QPainterPath
    seam: QPainterPath
    folds: QPainterPath

    @property
    def key(self) -> tuple[str, int]:
        """Which copy of which piece."""
        return self.placed.piece.id, self.placed.copy


def drawn(placed: Placed) -> Drawn:
    """The paths of a piece where it lies."""
    way = to_cloth(placed)
    cut, seam, folds = _own(placed.piece, placed.half)
    return Drawn(placed, way.map(cut), way.map(seam), way.map(folds))


def _own(piece: Piece, half: bool) -> tuple[QPainterPath, QPainterPath, QPainterPath]:
    outline = piece.cut_line if half else piece.as_cut
    folds = [m.path for m in piece.lines if m.role in ("fold", "hem")]
    fold = next((e.path.start.x for e in piece.edges if e.fold), None)
    if fold is not None and not half:
        folds += [Path(tuple(c.flipped(fold) for c in path.curves)) for path in folds]
        return painter_path([outline], 1), painter_path([unfolded(piece.seam_line, fold)], 1), painter_path(folds, 1)
    return painter_path([outline], 1), painter_path([piece.seam_line], 1), painter_path(folds, 1)
