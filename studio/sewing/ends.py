"""What a seam between panels ends in, as the edges of its panel say: the hem, a tier below, a free edge, an inset."""

from msgspec import Struct

from studio.draft import Draft, Edge, Piece
from studio.draft.seam import Seam, walked
from studio.units import spell
from studio.words import phrase, tr


class End(Struct, frozen=True):
    """How long a seam is (mm) from where it starts, and the words for how it ends."""

    length: float
    words: str


def ended(draft: Draft, seam: Seam) -> End:
    """The end of a seam that is sewn downwards; a corner pieced on goes on with its panel's side."""
    part = seam.one[-1]
    piece, length = draft.piece(part.piece), walked(seam.one, {p.id: p for p in draft.pieces})
    below = beneath(piece, part.edge)
    while below.name == "piecing":
        piece = draft.piece(below.sews_to.partition("/")[0])
        length += piece.edge(part.edge).path.length
        below = beneath(piece, part.edge)
    return End(length, _words(draft, below))


def beneath(piece: Piece, side: str) -> Edge:
    """The edge that comes next at the lower end of a side: a right side is walked down, a left one up."""
    at = next(k for k, e in enumerate(piece.edges) if e.name == side)
    step = 1 if side.startswith("right") else -1
    return piece.edges[(at + step) % len(piece.edges)]


def _words(draft: Draft, below: Edge) -> str:
    if below.name == "hem":
        return tr("down to the hem line, and on to the raw edge")
    if below.name == "foot":
        return tr("down to the seam line at its foot, and on to the raw edge")
    if below.sews_to:
        inset = draft.piece(below.sews_to.partition("/")[0])
        return spell(phrase("down to the point of the {p:word}", p=tr(inset.name).lower()), "cm")
    return tr("down to where the slit begins")
