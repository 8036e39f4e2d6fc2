"""Fitting: the largest view that shows every piece and what is written round it, clear of the legend."""

from collections.abc import Callable, Iterator, Sequence
from functools import reduce
from typing import Final

from msgspec import Struct

from studio.geometry import Box

from .view import LEAST, MOST, View

_PADS: Final = Box(64, 56, 64, 44)
"""Room for measured lines round the pieces, px."""
_CRAMPED: Final = 40.0  # px; a board smaller than its margins still shows something
_NEAR: Final = 12.0  # px between a piece and the legend
_SPARE: Final = 10.0  # px between what is written and the legend, so that small edits do not call for another fit
_DROP: Final = 24.0  # px that a low set of pieces may lie below the upper margin
_LITTLE: Final = 0.4
"""Pieces that come to fill less than this share of the room are fitted anew."""
_SMALLER: Final = 0.97
_STEPS: Final = 28
_TRIES: Final = 14  # scales at which the words are set to see whether they show


class Place(Struct, frozen=True):
    """The board's `room` between rulers and far edges, and what stands `aside` in its lower right corner (px)."""

    room: Box
    aside: Box | None = None

    @property
    def inner(self) -> Box:
        """The room for pieces, which leaves room for their measured lines."""
        left, top, right, bottom = self.room
        return Box(left + _PADS.left, top + _PADS.top, right - _PADS.right, bottom - _PADS.bottom)

    def holds(self, box: Box) -> bool:
        """Whether a box (px) lies wholly in the room."""
        return self.room.holds(box)

    def sparse(self, box: Box) -> bool:
        """Whether a box (px) fills so little of the room that it is worth fitting anew."""
        return box.width * box.height < _LITTLE * self.room.width * self.room.height

    def hidden(self, written: Sequence[Box], view: View, spare: float = 0.0) -> int:
        """How many of what is written (px from the table's origin) are cut off, or within `spare` px of the legend."""
        corner = self.aside.grown(spare) if self.aside else None
        boxes = [box.moved(view.x, view.y) for box in written]
        return sum(not self.holds(box) or (corner is not None and box.meets(corner)) for box in boxes)


def fitted(boxes: Sequence[Box], place: Place, written: Callable[[float], Sequence[Box]]) -> View:
    """The largest view with every piece (its box in mm) in the room, and all that is written seen whole.

    `written` gives the boxes of the words and measured lines, px from the table's origin, at a scale. Pieces lie
    in the middle, or to the left and higher if that keeps the corner free; only then are they made smaller. Where
    some words cannot be helped, as few as can be are lost.
    """
    whole, inner = reduce(Box.joined, boxes), place.inner
    width, height = max(_CRAMPED, inner.width), max(_CRAMPED, inner.height)
    largest = min(max(min(width / whole.width, height / whole.height), LEAST), MOST)
    best, least, tries = View(largest, inner.left - whole.left * largest, inner.top - whole.top * largest), -1, 0
    for step in range(_STEPS):
        scale = largest * _SMALLER**step
        views = [v for v in _views(whole, inner, scale) if _free(boxes, place.aside, v)]
        if not views:
            continue
        words, tries = written(scale), tries + 1
        for view in views:
            lost = place.hidden(words, view, _SPARE)
            if least < 0 or lost < least:
                best, least = view, lost
            if not lost:
                return view
        if tries == _TRIES:
            break
    return best


def _views(whole: Box, inner: Box, scale: float) -> Iterator[View]:
    """Where the pieces may lie at a scale, the best place first."""
    over, below = inner.width - whole.width * scale, inner.height - whole.height * scale
    for drop in (min(_DROP, below / 2), 0.0):
        for share in (0.5, 0.0):
            yield View(
                scale, inner.left + over * share - whole.left * scale, inner.top + drop - whole.top * scale
            )  # fmt: skip


def _free(boxes: Sequence[Box], aside: Box | None, view: View) -> bool:
    return aside is None or not any(view.box(b).meets(aside.grown(_NEAR)) for b in boxes)
