"""How many of a piece to cut, as the trade writes it on the pattern."""

from studio.units import spell
from studio.words import phrase, tr

from .piece import Piece


def cut_words(piece: Piece) -> str:
    """How many to cut, of what, and how: "cut 2, one mirrored"."""
    text = "cut {n:count}{of:word}"
    if piece.mirrored:
        text = "cut 2{of:word}, one mirrored" if piece.cut == 2 else "cut {n:count}{of:word}, half of them mirrored"
    elif piece.on_fold:
        text = "cut {n:count}{of:word} on the fold"
    return spell(phrase(text, n=piece.cut, of=tr(OF[piece.cloth])), "cm")


OF = {"main": "", "interfacing": " of interfacing", "lining": " of lining"}
"""What a piece is cut of, where that is not the skirt's own cloth."""
