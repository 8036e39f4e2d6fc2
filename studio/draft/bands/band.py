"""What a band is made for, and what making it gives."""

from collections.abc import Callable
from typing import TypeAlias

from msgspec import Struct

from studio.brief import Brief

from ..draft import Notion
from ..marks import Station
from ..piece import Piece
from ..seam import Part, Seam


class Waist(Struct, frozen=True):
    """The top of a skirt, ready for its band: where the two meet, its edges in order from the opening, its pieces."""

    stations: tuple[Station, ...]
    parts: tuple[Part, ...]
    pieces: tuple[Piece, ...]


class Band(Struct, frozen=True):
    """The pieces of a band, the seams they are sewn in, the waist seam among them, and what to buy for it."""

    pieces: tuple[Piece, ...]
    seams: tuple[Seam, ...]
    notions: tuple[Notion, ...] = ()


Maker: TypeAlias = Callable[[Brief, Waist], Band]
