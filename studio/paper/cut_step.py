"""A step of cutting as a value: what is said of it, and what the lay plan on paper draws of it."""

from msgspec import Struct

from studio.cloth.placed import Placed
from studio.words import Phrase


class Move(Struct, frozen=True):
    """A move of a template: its number, where it begins and where it ends (mm from the cut end)."""

    number: int
    begins: float
    ends: float
    narrow: bool = False
    """Whether it is the last, and not as wide as the template."""

    @property
    def wide(self) -> float:
        """How much of the piece it covers, mm."""
        return abs(self.ends - self.begins)


class OnBand(Struct, frozen=True):
    """The line of a piece that runs along a band of the print: its name, and how far across the cloth it lies (mm)."""

    line: str
    at: float


class CutStep(Struct, frozen=True):
    """What is said, and of which piece; the moves of its template; or a caution that stands beside the steps."""

    says: tuple[Phrase, ...]
    placed: Placed | None = None
    moves: tuple[Move, ...] = ()
    on_band: OnBand | None = None
    caution: bool = False
