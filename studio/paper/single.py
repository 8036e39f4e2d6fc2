"""Single pages: a heading, blocks that flow from the top and are never cut, and a foot."""

from collections.abc import Iterable

from msgspec import Struct

from studio.drawing import Drawing, Mark, moved
from studio.drawing.lettering import fitted, width
from studio.geometry import Box
from studio.units import Unit
from studio.words import tr

from .heading import HEAD, MARGIN, footing, heading, page_room
from .page import Page, Size
from .sizes import SHEETS, PaperSize

_FOOT, _FOOT_WORDS = 11.0, 2.8
_CLEAR = 4.0
_LARGEST, _ON_A_ROLL = 420.0, 267.0
"""What is wider than the largest sheet is a roll: it stays white at the right of so much (mm)."""


class Block(Struct, frozen=True):
    """Marks about the origin, `height` mm high; `gap` is the white above, and `head` is repeated on a new page."""

    marks: Drawing
    height: float
    gap: float = 0.0
    head: "Block | None" = None


class Column(Struct, frozen=True):
    """What stands on one page, and how far down it reaches (mm)."""

    marks: Drawing
    used: float


def upright(paper: PaperSize) -> Size:
    """A single page on a paper: the sheet upright, or a short piece of the roll."""
    if paper.roll:
        return Size(paper.width, SHEETS["A4"].height)
    return Size(min(paper.width, paper.height), max(paper.width, paper.height))


def lying(paper: PaperSize) -> Size:
    """A single page on its side; a roll only lies one way."""
    size = upright(paper)
    return size if paper.roll else Size(size.height, size.width)


def body(size: Size, margin: float) -> Box:
    """The part of a single page between heading and foot, mm."""
    room = page_room(size, margin)
    right = room.right if size.width <= _LARGEST else room.left + _ON_A_ROLL
    return Box(room.left, room.top + HEAD + 5, right, min(room.bottom, _foot(size, margin) - _CLEAR))


def _foot(size: Size, margin: float) -> float:
    """Baseline of the foot: outside the room, but never where the printer cannot reach."""
    return size.height - max(_FOOT, margin + 0.3 * _FOOT_WORDS)


def single(size: Size, margin: float, title: str, of: str, marks: Drawing, foot: tuple[str, str]) -> Page:
    """A page of marks that already stand in its `body`; the foot's right-hand words give way to the left-hand ones."""
    room = body(size, margin)
    top = room.top - HEAD - 5
    head = heading(title, of, Box(room.left, top, room.right, room.bottom))
    left, right = foot
    right, _ = fitted(
        right, _FOOT_WORDS, max(0.0, room.width - width(left, _FOOT_WORDS) - 6), least=_FOOT_WORDS
    )  # fmt: skip
    below = footing(left, right, Size(room.width + 2 * MARGIN, _foot(size, margin) + _FOOT))
    return Page(size, (*head, *marks, *moved(below, room.left - MARGIN, 0)))


def flow(blocks: Iterable[Block], height: float) -> list[Column]:
    """Blocks one under the other in columns of `height` mm; a block that does not fit begins a new one."""
    columns: list[Column] = []
    marks: list[Mark] = []
    y = 0.0
    for block in blocks:
        if marks and y + block.gap + block.height > height:
            columns.append(Column(tuple(marks), y))
            marks, y = [], 0.0
            if block.head is not None:
                marks += block.head.marks
                y = block.head.height
        y += block.gap if y else 0.0
        marks += moved(block.marks, 0, y)
        y += block.height
    return [*columns, Column(tuple(marks), y)] if marks else columns


def numbers_are(unit: Unit) -> str:
    """What the numbers of a page are, said once, at its foot."""
    return tr("All numbers in cm.") if unit == "cm" else tr("All numbers in inches.")
