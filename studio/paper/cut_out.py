"""A gauge to cut out: marks of a known size, and shelves of them on pages."""

from collections.abc import Iterable

from msgspec import Struct

from studio.drawing import Drawing, Group, Mark, moved

from .single import Block


class CutOut(Struct, frozen=True):
    """Marks about the origin, `width` by `height` mm."""

    name: str
    marks: Drawing
    width: float
    height: float


_ASIDE, _BELOW = 7.0, 5.0


def shelves(things: Iterable[CutOut], wide: float) -> list[Block]:
    """Things side by side as long as they fit `wide` mm, shelf under shelf."""
    blocks: list[Block] = []
    marks: list[Mark] = []
    x = high = 0.0
    for thing in things:
        if marks and x + thing.width > wide:
            blocks.append(Block(tuple(marks), high, _BELOW))
            marks, x, high = [], 0.0, 0.0
        marks.append(Group(thing.name, moved(thing.marks, x, 0)))
        x, high = x + thing.width + _ASIDE, max(high, thing.height)
    return [*blocks, Block(tuple(marks), high, _BELOW)] if marks else blocks
