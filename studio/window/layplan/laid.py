"""One placed piece as it is painted: its outline and inner lines on the cloth, in mm."""

from msgspec import Struct
from PySide6.QtGui import QPainterPath

from studio.cloth.placed import Placed
from studio.cloth.traced import traced

from ..paths import painter_path


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
    lines = traced(placed)
    cut, seam, folds = (painter_path(paths, 1) for paths in ((lines.cut,), (lines.seam,), lines.folds))
    return Drawn(placed, cut, seam, folds)
