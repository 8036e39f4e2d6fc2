"""A drawing is a value: a tuple of strokes, words and groups, in millimetres.

The screen, PDF, PNG, SVG and DXF each translate these and do no geometry of their own.
"""

from collections.abc import Iterable, Iterator
from typing import Literal, TypeAlias

from msgspec import Struct

from studio.geometry import Box, Path, Point

from .ink import PENS, Colour, Ink

Align: TypeAlias = Literal["left", "centre", "right"]
Face: TypeAlias = Literal["regular", "semibold", "bold", "italic", "serif"]


class Stroke(Struct, frozen=True):
    """A line that means `ink`; `width` (mm) and `colour` only where they differ from the table.

    `fill` closes and fills the path; `bare` leaves the line away. `governs` names the brief paths whose
    numbers move it.
    """

    path: Path
    ink: Ink
    width: float = 0.0
    colour: Colour | None = None
    fill: Colour | None = None
    bare: bool = False
    governs: tuple[str, ...] = ()

    @property
    def line_width(self) -> float:
        """Width in mm."""
        return self.width or PENS[self.ink].width

    @property
    def line_colour(self) -> Colour:
        """Colour by name."""
        return self.colour or PENS[self.ink].colour


class Words(Struct, frozen=True):
    """One line of text: baseline at `at`, `height` of the em in mm, turned clockwise by `turn` degrees.

    `patch` clears the paper behind the words where they stand on a line.
    """

    text: str
    at: Point
    height: float
    ink: Ink = "note"
    turn: float = 0.0
    align: Align = "left"
    face: Face = "regular"
    colour: Colour | None = None
    patch: bool = False

    @property
    def letter_colour(self) -> Colour:
        """Colour by name."""
        return self.colour or PENS[self.ink].colour


class Group(Struct, frozen=True):
    """Marks that belong together, such as a piece or a layer of it; only what lies in `clip` is seen."""

    name: str
    marks: tuple["Mark", ...]
    clip: Box | None = None


Mark: TypeAlias = Stroke | Words | Group
Drawing: TypeAlias = tuple[Mark, ...]


def flat_marks(drawing: Iterable[Mark]) -> Iterator[Stroke | Words]:
    """Every stroke and word of a drawing, in painting order; whole, also where a group is clipped."""
    for mark in drawing:
        if isinstance(mark, Group):
            yield from flat_marks(mark.marks)
        else:
            yield mark


def moved(drawing: Drawing, dx: float, dy: float) -> Drawing:
    """A shifted copy of a drawing."""
    return tuple(_moved(m, dx, dy) for m in drawing)


def _moved(mark: Mark, dx: float, dy: float) -> Mark:
    if isinstance(mark, Stroke):
        return Stroke(mark.path.moved(dx, dy), mark.ink, mark.width, mark.colour, mark.fill, mark.bare, mark.governs)
    if isinstance(mark, Words):
        return Words(
            mark.text, mark.at.moved(dx, dy), mark.height, mark.ink, mark.turn, mark.align, mark.face,
            mark.colour, mark.patch,
        )  # fmt: skip
    return Group(mark.name, moved(mark.marks, dx, dy), mark.clip and mark.clip.moved(dx, dy))
