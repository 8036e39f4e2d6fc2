"""What a reader sees at once on a page: words on words, words off the paper, lettering too small."""

from collections.abc import Iterable, Iterator
from itertools import combinations

from studio.drawing import Group, Mark, Stroke, Words, flat_marks
from studio.drawing.lettering import words_box
from studio.geometry import Box
from studio.paper.page import Page

TOUCH = 1e-6


def words_on(page: Page) -> list[Words]:
    """Every word of a page."""
    return [m for m in flat_marks(page.drawing) if isinstance(m, Words) and m.text.strip()]


def texts_on(page: Page) -> list[str]:
    """What is written on a page."""
    return [w.text for w in words_on(page)]


def overlapping(page: Page) -> list[tuple[str, str]]:
    """Words that lie on other words."""
    boxes = [(w.text, words_box(w).grown(-TOUCH)) for w in words_on(page)]
    return [(a, b) for (a, one), (b, two) in combinations(boxes, 2) if one.meets(two)]


def outside(page: Page, margin: float) -> list[object]:
    """Words and strokes that the printer cannot reach; of a clipped group, its clip counts."""
    room = page.box.grown(TOUCH - margin)
    return [what for box, what in _boxes(page.drawing) if box.joined(room) != room]


def _boxes(marks: Iterable[Mark]) -> Iterator[tuple[Box, object]]:
    for mark in marks:
        if isinstance(mark, Words):
            yield words_box(mark), mark.text
        elif isinstance(mark, Stroke):
            yield mark.path.box, mark.path.box
        elif mark.clip is not None:
            yield mark.clip, mark.name
        else:
            yield from _boxes(mark.marks)


def group(marks: tuple[Mark, ...], name: str) -> Group:
    """The first group of that name, however deep it lies."""
    for mark in marks:
        if isinstance(mark, Group):
            if mark.name == name:
                return mark
            try:
                return group(mark.marks, name)
            except KeyError:
                continue
    raise KeyError(name)


def strokes(marks: tuple[Mark, ...], ink: str) -> list[Stroke]:
    """The strokes that mean `ink`."""
    return [m for m in flat_marks(marks) if isinstance(m, Stroke) and m.ink == ink]


def box_of(marks: tuple[Mark, ...], ink: str) -> Box:
    """The box of the first stroke that means `ink`."""
    return strokes(marks, ink)[0].path.box
