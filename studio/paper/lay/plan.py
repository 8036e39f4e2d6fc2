"""What the lay plan on paper is made of."""

from msgspec import Struct

from studio.cloth.left_over import LeftOver
from studio.cloth.placed import Lay, Placed
from studio.draft import Piece

from ..cut_step import CutStep
from ..pattern import Said
from ..whole import numbered


class LayPlan(Struct, frozen=True):
    """A plan with all the pieces of its skirt, the steps of cutting, what is left over, and what is said over the steps
    and under them.
    """

    said: Said
    pieces: tuple[Piece, ...]
    lay: Lay
    steps: tuple[CutStep, ...]
    left: LeftOver
    lead: tuple[str, ...] = ()
    besides: tuple[str, ...] = ()

    @property
    def length(self) -> float:
        """How much cloth there is once it is washed, mm."""
        return self.lay.length + self.left.length

    def number(self, placed: Placed) -> str:
        """The number that names a piece on its sheets, their map and here."""
        return next(n for n, p in numbered(self.pieces) if p.id == placed.piece.id)

    def held(self, placed: Placed) -> bool:
        """Whether the maker has put it where it lies."""
        return any((h.piece, h.copy) == (placed.piece.id, placed.copy) for h in self.said.brief.cloth.held)
