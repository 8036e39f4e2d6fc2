"""Panels round the skirt: which piece each is cut from, what it is called, and which sides meet.

Panels left and right of the centre are mirror images, so they are drafted as pairs from the opening to the
centre front; an odd number leaves one alone in the middle. Sides are named left and right as the piece is
drawn; on a mirrored copy they change places.
"""

import itertools
import math
from functools import lru_cache

from msgspec import Struct

from studio.units import spell
from studio.words import phrase, tr

from .seam import Part, Seam


class Place(Struct, frozen=True):
    """One panel in the ring: the piece it is cut from, and whether it is the mirrored copy."""

    piece: str
    mirrored: bool

    def side(self, leaving: bool) -> str:
        """The side that meets the next panel (leaving) or the one before."""
        return "right" if leaving != self.mirrored else "left"


@lru_cache(maxsize=64)
def ring(n: int) -> tuple[Place, ...]:
    """All `n` panels in order, from the opening round to it again."""
    return tuple(Place(piece_id(min(k, n - 1 - k), n), k > n - 1 - k) for k in range(n))


def pairs(n: int) -> int:
    """How many different pieces `n` panels are cut from."""
    return math.ceil(n / 2)


def alone(k: int, n: int) -> bool:
    """Whether the k-th piece is cut once: the only panel, or the one in the middle of an odd number."""
    return n % 2 == 1 and k == n // 2


def piece_id(k: int, n: int) -> str:
    """The panel at the opening is the skirt; the one at the centre front its front; between lie the sides."""
    if k == 0:
        return "skirt"
    return "skirt-front" if k == pairs(n) - 1 else f"skirt-side-{k}"


def piece_name(k: int, n: int) -> str:
    """What the k-th piece is called."""
    if n <= 2:
        return tr("Skirt")
    if k == 0:
        return tr("Skirt back")
    return tr("Skirt front") if k == pairs(n) - 1 else spell(phrase("Skirt side {k:count}", k=k), "cm")


def meets(k: int, n: int, leaving: bool) -> str:
    """piece/edge that the k-th panel's side is sewn to."""
    other = ring(n)[(k + (1 if leaving else -1)) % n]
    return f"{other.piece}/{other.side(not leaving)}"


@lru_cache(maxsize=64)
def ring_seams(n: int) -> tuple[Seam, ...]:
    """The waist and the joins between panels; the last closes the ring below the opening."""
    places = ring(n)
    waist = Seam(
        "waist", tuple(Part(p.piece, "waist", p.mirrored) for p in places), (Part("waistband", "waist", True),)
    )
    joins = (
        Seam("join", (Part(p.piece, p.side(True)),), (Part(q.piece, q.side(False)),))
        for p, q in itertools.pairwise((*places, places[0]))
    )
    return waist, *joins
