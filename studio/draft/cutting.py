"""How many of a piece to cut, as the trade writes it on the pattern."""

from studio.units import spell
from studio.words import phrase

from .piece import Piece


def cut_words(piece: Piece) -> str:
    """How many to cut, of what, and how: "cut 2, one mirrored"."""
    text = "cut {n:count}"
    if piece.mirrored:
        text = "cut 2, one mirrored" if piece.cut == 2 else "cut {n:count}, half of them mirrored"
    elif piece.on_fold:
        text = "cut {n:count} on the fold"
    elif piece.cloth == "interfacing":
        text = "cut {n:count} of interfacing"
    return spell(phrase(text, n=piece.cut), "cm")
