"""Which copy of a piece lies in a place, and through which layers it is cut, as it is said at the cutting table."""

from studio.geometry import Path
from studio.words import Phrase, phrase, tr

from .placed import Placed

SAME = 0.5
"""Corners nearer than this (mm) are one."""


def which_copy(placed: Placed) -> Phrase | None:
    """ "1 of 2", or "1 and 2 of 2" where a cut through both layers gives a pair; None for a piece that is cut once."""
    k, n = placed.copy + 1, placed.piece.cut
    if n == 1:
        return None
    pair = placed.layers == 2 and not placed.half and k < n
    return phrase("{k:count} and {m:count} of {n:count}" if pair else "{k:count} of {n:count}", k=k, m=k + 1, n=n)


def which_layers(placed: Placed, *, folded: bool) -> str:
    """Through which layers of folded cloth a piece is cut; nothing on cloth that lies open.

    Folded right side in, the upper layer shows its wrong side. So what is not its own mirror image, and is cut through
    one layer, is cut through the lower one, where it lies right side up as it is drawn.
    """
    if not folded:
        return ""
    if placed.half:
        return tr("on the fold")
    if placed.layers == 2:
        return tr("both layers")
    return tr("upper layer only") if _own_mirror(placed.outline) else tr("lower layer only")


def _own_mirror(outline: Path) -> bool:
    """Whether an outline turned over, left to right, has the same corners."""
    corners = [c.start for c in outline.curves]
    other = [c.start for c in outline.flipped(outline.box.centre.x).curves]
    return all(min(a.distance(b) for b in other) < SAME for a in corners)
