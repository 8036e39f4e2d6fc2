"""How many of a piece to cut, as the trade writes it on the pattern."""

from studio.units import spell
from studio.words import phrase, tr

from .piece import Piece


def cut_words(piece: Piece) -> str:
    """How many to cut, of what, and how: "cut 2, one mirrored"."""
    words = spell(phrase("cut {n:count}", n=piece.cut), "cm")
    if piece.mirrored:
        words += ", " + tr("one mirrored") if piece.cut == 2 else ", " + tr("half of them mirrored")
    if piece.on_fold:
        words += " " + tr("on the fold")
    if piece.cloth == "interfacing":
        words += " " + tr("of interfacing")
    return words
