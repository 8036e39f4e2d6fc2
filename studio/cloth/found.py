"""Lay plans that were found, kept by all that a plan depends on: an edit taken back, and one that touches no piece on
the cloth, bring them back.
"""

from collections.abc import Iterable
from typing import TypeAlias

from msgspec import Struct
from msgspec.structs import replace

from studio.brief import Cloth
from studio.draft import Piece

from .placed import Lay

MOST = 24
"""So many plans are kept; the one not asked for the longest goes first."""
Ground: TypeAlias = tuple[object, ...]


class Found(Struct, frozen=True):
    """Plans with what they depend on, the last that was kept at the end; a value, so keeping one gives another."""

    plans: tuple[tuple[Ground, Lay], ...] = ()

    def kept(self, on: Ground, lay: Lay) -> "Found":
        """With the plan of this ground, in place of one kept before."""
        others = tuple(one for one in self.plans if one[0] != on)
        return Found((*others, (on, lay))[-MOST:])

    def lay(self, on: Ground, pieces: Iterable[Piece]) -> Lay | None:
        """The plan of this ground, of the pieces as they are now; None where none was kept."""
        found = next((lay for ground, lay in reversed(self.plans) if ground == on), None)
        return None if found is None else _of(found, pieces)


def ground(pieces: Iterable[Piece], cloth: Cloth) -> Ground:
    """All that a lay plan depends on: of the pieces their outlines, what lies on bands and repeats, grain, and how many
    there are; of the cloth all but its name, its picture, and what only weighs, costs or buys it.
    """
    laid = replace(cloth, name="", photo="", on_hand=None, shrinkage=0.0, weight=None, price=None)
    return (laid, *(_ground(p) for p in pieces if p.cloth == "main"))


def _ground(p: Piece) -> tuple[object, ...]:
    folds = (m.path for m in p.lines if m.role == "fold")
    return (p.id, p.cut, p.mirrored, p.row, p.tier, p.grain, p.cut_line, p.edges, *folds)


def _of(lay: Lay, pieces: Iterable[Piece]) -> Lay:
    """A lay of the same outlines, redrafted: each place holds the piece as it is now."""
    now = {p.id: p for p in pieces}
    placed = tuple(replace(p, piece=now[p.piece.id]) for p in lay.placed)
    adrift = tuple(replace(a, piece=now[a.piece.id]) for a in lay.adrift)
    return replace(lay, placed=placed, adrift=adrift, misfits=tuple(now[p.id] for p in lay.misfits))
