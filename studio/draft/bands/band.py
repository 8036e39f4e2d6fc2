"""What a band is made for, and what making it gives."""

from collections.abc import Callable, Mapping
from typing import TypeAlias

from msgspec import Struct

from studio.brief import Brief
from studio.words import Phrase

from ..draft import Notion
from ..drawn import Drawn
from ..marks import Station
from ..piece import Piece
from ..seam import Part, Seam


class Waist(Struct, frozen=True):
    """The top of a skirt, ready for its band: where the two meet, its edges in order from the opening, its pieces."""

    stations: tuple[Station, ...]
    parts: tuple[Part, ...]
    pieces: tuple[Piece, ...]

    @property
    def meets(self) -> str:
        """What a band's waist edge is sewn to, as "piece/edge"."""
        return f"{self.parts[0].piece}/{self.parts[0].edge}"


class Band(Struct, frozen=True):
    """The pieces of a band, the seams they are sewn in with the waist seam first, and what to buy for it.

    `says` stands on the skirt's waist edge where that is not sewn to a band, and `meets` names what each piece of
    the skirt is sewn to there instead. `drawn` are the numbers that could not be taken as asked.
    """

    pieces: tuple[Piece, ...]
    seams: tuple[Seam, ...]
    notions: tuple[Notion, ...] = ()
    says: Phrase | None = None
    meets: Mapping[str, str] = {}
    drawn: tuple[Drawn, ...] = ()


Maker: TypeAlias = Callable[[Brief, Waist], Band]
