"""Which copy of a piece lies in a place, as it is said at the cutting table."""

from studio.words import Phrase, phrase

from .placed import Placed


def which_copy(placed: Placed) -> Phrase | None:
    """ "1 of 2", or "1 and 2 of 2" where a cut through both layers gives a pair; None for a piece that is cut once."""
    k, n = placed.copy + 1, placed.piece.cut
    if n == 1:
        return None
    pair = placed.layers == 2 and not placed.half and k < n
    return phrase("{k:count} and {m:count} of {n:count}" if pair else "{k:count} of {n:count}", k=k, m=k + 1, n=n)
