"""Panels round the skirt: which piece each is cut from, and which sides meet.

A ring is walked from the opening to the right, as it is seen from outside, until it comes to the opening again.
Sides are named left and right as the piece is drawn; on a mirrored copy they change places. A piece that is cut on
the fold stands in the ring as its two halves.
"""

import itertools
import math
from collections.abc import Mapping
from functools import lru_cache

from msgspec import Struct

from studio.units import spell
from studio.words import phrase, tr

from .piece import Piece
from .seam import Part, Seam


class Place(Struct, frozen=True):
    """One panel in the ring: the piece it is cut from, and whether it is the mirrored copy."""

    piece: str
    mirrored: bool = False

    def side(self, leaving: bool) -> str:
        """The side that meets the next panel (leaving) or the one before."""
        return "right" if leaving != self.mirrored else "left"


Ring = tuple[Place, ...]


@lru_cache(maxsize=64)
def paired(n: int, stem: str = "skirt") -> Ring:
    """`n` equal panels: mirror images in pairs from the opening to across from it, an odd one alone in the middle."""
    return tuple(Place(piece_id(min(k, n - 1 - k), n, stem), k > n - 1 - k) for k in range(n))


def halves(opening: str, back: str = "back", front: str = "front") -> Ring:
    """A back and a front as their halves, round from the opening's place. As drawn, a front goes from the side to its
    centre, and a back's mirror image from its centre to the side.
    """
    behind, before = (Place(back, True), Place(back)), (Place(front), Place(front, True))
    match opening:
        case "side":
            return (behind[1], behind[0], *before)
        case "front":
            return (before[1], behind[1], behind[0], before[0])
    return (behind[0], *before, behind[1])


def pairs(n: int) -> int:
    """How many different pieces `n` panels in pairs are cut from."""
    return math.ceil(n / 2)


def alone(k: int, n: int) -> bool:
    """Whether the k-th piece is cut once: the only panel, or the one in the middle of an odd number."""
    return n % 2 == 1 and k == n // 2


def piece_id(k: int, n: int, stem: str = "skirt") -> str:
    """The panel at the opening bears the stem's name alone; the one across from it "across"; between lie others."""
    if k == 0:
        return stem
    return f"{stem}-across" if k == pairs(n) - 1 else f"{stem}-side-{k}"


def piece_name(k: int, n: int, stem: str = "Skirt", place: str = "centre back") -> str:
    """What the k-th piece is called: the panel at the opening, the one across from it, those between."""
    at, across = {
        "centre back": ("{s:word} back", "{s:word} front"),
        "front": ("{s:word} front", "{s:word} back"),
        "side": ("{s:word} left side", "{s:word} right side"),
    }[place]
    if n <= 2:
        return tr(stem)
    text = at if k == 0 else across if k == pairs(n) - 1 else "{s:word} side {k:count}"
    if place == "side" and 0 < k < pairs(n) - 1:
        text = "{s:word} panel {k:count}"
    return spell(phrase(text, s=tr(stem), k=k), "cm")


def meeting(ring: Ring) -> dict[tuple[str, str], str]:
    """For each piece and side of the ring, the "piece/side" it is sewn to."""
    found: dict[tuple[str, str], str] = {}
    for p, q in itertools.pairwise((*ring, ring[0])):
        one, other = (p.piece, p.side(True)), (q.piece, q.side(False))
        found.setdefault(one, "/".join(other))
        found.setdefault(other, "/".join(one))
    return found


def opening_sides(ring: Ring) -> set[tuple[str, str]]:
    """The pieces and sides that lie at the opening."""
    return {(ring[0].piece, ring[0].side(False)), (ring[-1].piece, ring[-1].side(True))}


def open_once(ring: Ring) -> set[tuple[str, str]]:
    """The pieces and sides that lie at the opening on one of their copies and in a seam on another, as the two sides of
    a body whose halves are cut alike.
    """
    sewn = {
        key for p, q in itertools.pairwise(ring) for key in ((p.piece, p.side(True)), (q.piece, q.side(False)))
    }  # fmt: skip
    return opening_sides(ring) & sewn


def tops(ring: Ring, edge: str = "waist") -> tuple[Part, ...]:
    """The top edges of the ring in order."""
    return tuple(Part(p.piece, edge, p.mirrored) for p in ring)


def joins(ring: Ring, pieces: Mapping[str, Piece], closed: bool = True) -> tuple[Seam, ...]:
    """The seams between panels; the last closes the ring below the opening, unless it stays open as a wrap's does.

    Two halves that meet at a fold have no seam. Each side is walked from the top.
    """
    seams = []
    for k, (p, q) in enumerate(itertools.pairwise((*ring, ring[0]))):
        last = k == len(ring) - 1
        if last and not closed:
            continue
        one, other = _side(p, True, pieces, not last), _side(q, False, pieces, not last)
        if one and other:
            seams.append(Seam("join", one, other))
    return tuple(seams)


def _side(place: Place, leaving: bool, pieces: Mapping[str, Piece], whole: bool) -> tuple[Part, ...]:
    """The edges of a side from the top; below the opening only, where the side is not `whole`."""
    name, piece = place.side(leaving), pieces[place.piece]
    wanted = (f"{name} opening", name) if whole else (name,)
    edges = {e.name: e for e in piece.edges}
    return tuple(Part(piece.id, n, name == "left") for n in wanted if n in edges and not edges[n].fold)
