"""Pockets: bags in the side seams, or patches on the front, whichever the brief asks for."""

from msgspec import Struct

from studio.brief import Brief

from .marks import Station
from .patch import PATCH_HEM, patched
from .piece import Piece
from .ring import Ring
from .side_pocket import bagged


class Pocketed(Struct, frozen=True):
    """The skirt's pieces with their pocket marks, and the pieces of the pockets."""

    pieces: tuple[Piece, ...]
    pockets: tuple[Piece, ...] = ()


def pocketed(brief: Brief, ring: Ring, stations: tuple[Station, ...], pieces: tuple[Piece, ...]) -> Pocketed:
    """What the brief asks for; nothing where there is no place for it, which a finding says."""
    match brief.pockets.kind:
        case "in seam":
            return Pocketed(*bagged(brief, ring, stations, pieces))
        case "patch":
            return Pocketed(*patched(brief, ring, stations, pieces))
    return Pocketed(pieces)


__all__ = ["PATCH_HEM", "Pocketed", "pocketed"]
