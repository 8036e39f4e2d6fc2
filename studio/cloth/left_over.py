"""What is left of the cloth once the pieces are cut, and what the skirt weighs."""

from collections.abc import Iterable, Iterator

from msgspec import Struct
from msgspec.structs import replace

from studio.brief import Brief
from studio.geometry import Box
from studio.units import Unit, shop_length
from studio.words import Phrase, phrase

from .buying import cloth_needed
from .placed import Lay

SMALL = 100.0
"""A piece of cloth less than this either way (mm) is a scrap."""
NAMED = 4
"""So many are named, the largest first."""


class Whole(Struct, frozen=True):
    """A rectangle that is left, where it lies (x along the cloth, y across it, mm). On folded cloth what reaches the
    fold opens out to twice its width; elsewhere there are two of it.
    """

    place: Box
    opens: bool = False
    pieces: int = 1

    @property
    def along(self) -> float:
        """Its length, mm."""
        return self.place.width

    @property
    def across(self) -> float:
        """Its width once it is opened out, mm."""
        return self.place.height * (2 if self.opens else 1)

    def size(self, *, bare: bool = False) -> Phrase:
        """Its size in words, and how many there are; the unit is left out where it is `bare`."""
        one = "{l:bare} × {w:bare}" if bare else "{l:bare} × {w}"
        return phrase(one if self.pieces == 1 else f"{{n:count}} of {one}", n=self.pieces, l=self.along, w=self.across)


class LeftOver(Struct, frozen=True):
    """The length beyond the plan (mm), the largest whole rectangles beside and after the pieces, and all that is not a
    piece (mm²), washed.
    """

    length: float
    whole: tuple[Whole, ...]
    area: float


def left_over(brief: Brief, lay: Lay, unit: Unit) -> LeftOver:
    """What is left of the length on hand where that suffices, else of the length a shop sells."""
    cloth, need = brief.cloth, cloth_needed(brief, lay)
    have = cloth.on_hand if cloth.on_hand is not None and cloth.on_hand >= need - 1e-9 else shop_length(need, unit)
    length = max(lay.length, have * (1 - cloth.shrinkage))
    room = Box(0, 0.0 if lay.folded else cloth.selvedge, length, lay.width - cloth.selvedge)
    area = room.width * room.height * (2 if lay.folded else 1) - cut_area(lay)
    taken = [Box(p.at.x, p.at.y, p.at.x + p.along, p.at.y + p.across) for p in lay.placed]
    return LeftOver(length - lay.length, tuple(_whole(room, taken, lay.folded)), area)


def cut_area(lay: Lay) -> float:
    """Area of every copy of every piece in the plan, allowances and all, mm²."""
    return sum(p.outline.area * (p.layers if p.half else min(p.layers, p.piece.cut - p.copy)) for p in lay.placed)


def skirt_weight(brief: Brief, lay: Lay) -> float | None:
    """What the cut cloth weighs, g; None where the weight of the cloth is not known."""
    return None if brief.cloth.weight is None else weight(cut_area(lay), brief.cloth.weight)


def weight(area: float, grams: float) -> float:
    """What so much cloth (mm²) of `grams` a square metre weighs, g."""
    return area * grams / 1e6


def _whole(room: Box, taken: list[Box], folded: bool) -> Iterator[Whole]:
    """The largest free rectangle, then the largest of what is left beside it, and so on."""
    for _ in range(NAMED):
        free = (Whole(b, opens=folded and b.top == room.top) for b in _free(room, taken))
        best = max(free, key=lambda one: one.along * one.across, default=None)
        if best is None:
            return
        yield replace(best, pieces=2) if folded and not best.opens else best
        taken = [*taken, best.place]


def _free(room: Box, taken: list[Box]) -> Iterator[Box]:
    """Every free rectangle that reaches from one piece's end to another's and as far across as it can."""
    starts = sorted({room.left, *(b.right for b in taken)})
    ends = sorted({room.right, *(b.left for b in taken)})
    for start in starts:
        for end in ends:
            if end - start < SMALL:
                continue
            for top, bottom in _gaps(room, (b for b in taken if b.left < end - 1e-6 and b.right > start + 1e-6)):
                yield Box(start, top, end, bottom)


def _gaps(room: Box, beside: Iterable[Box]) -> Iterator[tuple[float, float]]:
    """Where nothing lies across the cloth, as far as it is worth keeping."""
    top = room.top
    for box in (*sorted(beside, key=lambda b: b.top), Box(0, room.bottom, 0, room.bottom)):
        if box.top - top >= SMALL:
            yield top, box.top
        top = max(top, box.bottom)
