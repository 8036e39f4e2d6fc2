"""Pleats: how cloth is laid into folds round the waist.  T = V + 2nd

A knife pleat is one fold, laid to one side: it takes up twice its depth. A box pleat and an inverted one are two folds
laid apart or towards each other, and take up four times theirs; side by side they are one and the same cloth, seen
from its two sides. The depth is always that of ONE fold: some books call the whole take-up the depth of a pleat.
"""

import math
from itertools import pairwise
from typing import Final

from msgspec import Struct

from .piece import Role

MOST_PLEATS: Final = 120
"""More pleats than this are never drafted."""
LEAST_DEPTH: Final = 2.0
"""A fold is never drafted shallower than this (mm), however little cloth there is."""
SHALLOW: Final = 1.05
"""Pleats that a print chooses take at least so many times their face."""
SHUT: Final = 0.25
"""A released pleat looks shut while it opens by no more than this share of its depth (common practice, no source)."""
SIDES: Final[dict[str, tuple[Role, Role]]] = {
    "knife to the left": ("pleat fold", "placement"),
    "knife to the right": ("placement", "pleat fold"),
    "box": ("pleat fold", "pleat fold"),
    "inverted": ("pleat fold", "pleat fold"),
}
"""What bounds the seen face of each kind, left and right, from outside."""


class Pleats(Struct, frozen=True):
    """Even pleats round a skirt (mm): how many, how deep each fold is from the hip line down, the sewn waist seam, and
    the girth V that they are laid to from the hip line down, which lies `bend` below the waist seam.

    Above the hip line the faces narrow to the waist's, so that each fold deepens by half the difference on each side
    (Ingalls, Text-Book on Domestic Art; Erwin, Practical Dress Design: pleats are spaced at the hips). Where V is the
    waist seam, all lines are straight.
    """

    kind: str
    count: int
    depth: float
    waist: float
    hip: float
    bend: float

    @property
    def folds(self) -> int:
        """How many folds make one pleat."""
        return folds(self.kind)

    @property
    def unit(self) -> float:
        """Cloth of one pleat with its face."""
        return self.hip / self.count + 2 * self.folds * self.depth

    @property
    def flat_width(self) -> float:
        """T, the whole cloth between its seam lines."""
        return self.count * self.unit

    def laid(self, below: float) -> float:
        """Girth once the pleats are laid, so far below the waist seam."""
        if below >= self.bend:
            return self.hip
        return self.waist + (self.hip - self.waist) * below / self.bend

    def face(self, below: float) -> float:
        """How much is seen of one pleat, so far below the waist seam."""
        return self.laid(below) / self.count

    def fold(self, below: float) -> float:
        """How deep one fold is, so far below the waist seam."""
        return (self.unit - self.face(below)) / (2 * self.folds)

    @property
    def full(self) -> float:
        """The deepest fold that does not reach under the next, from the hip line down: the face's width, or half of it
        where folds come from both sides; then the cloth is three times what it is laid to.
        """
        return self.face(self.bend) / self.folds

    @property
    def layers(self) -> int:
        """Layers of cloth where most lie on each other: at the waist.  1 + 2 ⌈d / s⌉"""
        return 1 + 2 * math.ceil(self.fold(0) * self.folds / self.face(0) - 1e-9)


def folds(kind: str) -> int:
    """How many folds make one pleat of a kind."""
    return 2 if kind in ("box", "inverted") else 1


def full_depth(girth: float, count: int, kind: str) -> float:
    """The depth of full pleats, mm: three times as much cloth as they are laid to."""
    return girth / count / folds(kind)


def depth_from(cloth: float, girth: float, count: int, kind: str) -> float:
    """The depth of each fold that uses up so much cloth (mm)."""
    return max(LEAST_DEPTH, (cloth - girth) / (2 * count * folds(kind)))


def count_from(cloth: float, girth: float, depth: float, kind: str) -> int:
    """The whole number of pleats whose depth comes nearest to what was asked, all cloth (mm) used."""
    wanted = max(1.0, (cloth - girth) / (2 * depth * folds(kind)))
    fewer, more = bounded(math.floor(wanted)), bounded(math.ceil(wanted))
    return min((fewer, more), key=lambda n: abs(depth_from(cloth, girth, n, kind) - depth))


def from_repeat(unit: float, girth: float, kind: str, multiple: int = 1) -> tuple[int, float]:
    """Number and depth of pleats that each take `unit` mm of a print, as near to full ones as comes out.

    The number is a multiple of `multiple`, so that the print goes on across the opening. Where the unit is so small
    that there would be more than `MOST_PLEATS`, each pleat takes it as many times as it must.
    """
    wanted = 3 * girth / unit
    most = MOST_PLEATS // multiple * multiple
    times = math.ceil(wanted / most - 1e-9)
    unit, wanted = unit * max(1, times), wanted / max(1, times)
    least = math.ceil(SHALLOW * girth / unit / multiple) * multiple  # a face less than its unit leaves a fold
    count = min(max(round(wanted / multiple) * multiple, least), most)
    return count, (unit - girth / count) / (2 * folds(kind))


def bounded(count: int) -> int:
    """The number, as far as so many pleats are drafted."""
    return min(max(1, count), MOST_PLEATS)


def opens(pleats: Pleats, hip: float) -> float:
    """How far each fold of pleats that are laid to the waist alone opens over hips that need `hip` mm."""
    return max(0.0, hip - pleats.hip) / (pleats.count * pleats.folds)


def whole_pleats(count: int, panels: int) -> tuple[int, ...]:
    """How many pleats each panel holds: whole ones, as evenly as they go."""
    starts = [round(k * count / panels) for k in range(panels + 1)]
    return tuple(b - a for a, b in pairwise(starts))


def fewest_panels(pleats: Pleats, room: float, allowance: float, most: int) -> int:
    """As few panels of whole pleats as fit `room` mm with an allowance on both sides, and never more than `most`."""
    if pleats.flat_width + 2 * allowance <= room + 1e-9:
        return 1
    each = max(1, math.floor((room - 2 * allowance) / pleats.unit + 1e-9))
    return min(math.ceil(pleats.count / each), pleats.count, most)
