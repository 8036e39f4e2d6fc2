"""A placed piece as lines on the cloth: for the window and for paper, one tracing."""

from msgspec import Struct

from studio.draft.piece import unfolded
from studio.geometry import Path

from .placed import Placed


class Traced(Struct, frozen=True):
    """Paths in mm of the cloth: where it is cut, its seam line, and its folds and hem."""

    cut: Path
    seam: Path
    folds: tuple[Path, ...]


def traced(placed: Placed) -> Traced:
    """The lines of a piece where it lies; what is cut on the fold but laid whole, whole."""
    piece, lay = placed.piece, placed.laid
    folds = [m.path for m in piece.lines if m.role in ("fold", "hem")]
    seam, fold = piece.seam_line, next((e.path.start.x for e in piece.edges if e.fold), None)
    if fold is not None and not placed.half:
        folds += [path.flipped(fold) for path in folds]
        seam = unfolded(seam, fold)
    return Traced(lay(placed.outline), lay(seam), tuple(map(lay, folds)))
