"""The flow of the booklet: parts one under the other on as many pages as they need, whatever the paper.

A part is never cut; a heading goes with the part below it; steps share what is left at the foot of their page, so that
no page looks unfinished.
"""

from collections.abc import Iterable

from msgspec import Struct

from studio.drawing import Drawing, Mark, moved

MOST_SPREAD = 9.0
"""No two steps are moved apart by more than this, mm."""


class Part(Struct, frozen=True):
    """Marks about the origin, `height` mm high; `gap` is the white above it. A heading waits for the part below; loose
    parts may be moved apart. `over` is drawn only where something stands above it on the page; a spare part is left
    out where it would begin a page.
    """

    marks: Drawing
    height: float
    gap: float = 0.0
    heading: bool = False
    loose: bool = False
    spare: bool = False
    over: Drawing = ()


class Set(Struct, frozen=True):
    """A part and how far down its page it stands, mm."""

    part: Part
    y: float


def columns(parts: Iterable[Part], height: float) -> list[Drawing]:
    """What stands on each page, from the top of its room."""
    pages: list[list[Set]] = [[]]
    y, waiting = 0.0, None
    for part in parts:
        if part.heading:
            waiting = part
            continue
        group = [waiting, part] if waiting else [part]
        waiting = None
        if pages[-1] and y + sum(p.gap + p.height for p in group) > height + 1e-6:
            if part.spare:
                continue
            pages.append([])
            y = 0.0
        for p in group:
            y += p.gap if pages[-1] else 0.0
            pages[-1].append(Set(p, y))
            y += p.height
    return [_marks(page, height, last=page is pages[-1]) for page in pages]


def _marks(page: list[Set], height: float, *, last: bool) -> Drawing:
    loose = [k for k, one in enumerate(page) if one.part.loose]
    spare = height - page[-1].y - page[-1].part.height if page else 0.0
    apart = 0.0 if last or len(loose) < 2 else min(MOST_SPREAD, spare / (len(loose) - 1))
    marks: list[Mark] = []
    down = 0.0
    for k, one in enumerate(page):
        if k in loose[1:]:
            down += apart
        marks += moved((*one.part.marks, *(one.part.over if k else ())), 0, one.y + down)
    return tuple(marks)
