"""What a photograph of cloth holds, and what is found in it.

On a flat picture x runs along the cloth and y across it, from the first selvedge (the upper edge).
"""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING, Literal, TypeAlias

from msgspec import Struct

from studio.geometry import Point
from studio.words import Phrase

if TYPE_CHECKING:
    from .smooth import Pixels

Way: TypeAlias = Literal["first", "away", "both"]
"""Where the top of a motif points: to the first selvedge, away from it, or it may be turned about."""

Progress: TypeAlias = Callable[[float], bool]
"""Told the share done, 0 to 1; answers False to stop."""

Word: TypeAlias = Literal["sure", "likely", "guess"]
"""How sure a reading is, as it is said to the maker."""

SURE = 0.9
"""A hint from which a reading is called sure: on made-up cloths such readings are right on 97 of 100 and more."""
LIKELY = 0.6
"""A hint from which it is called likely: right on some three of four."""


def word(hint: float) -> Word:
    """The word for a hint from 0 to 1; docs/measured.md has what each has been worth."""
    return "sure" if hint >= SURE else "likely" if hint >= LIKELY else "guess"


class Photo(Struct, frozen=True, eq=False):
    """A picture in memory: `pixels` has the shape (height, width, 3), red, green and blue in sRGB.

    `notes` say what was done to it on the way (reduced, first picture of many, turned).
    """

    pixels: Pixels
    notes: tuple[Phrase, ...] = ()

    @property
    def width(self) -> int:
        """Dots across the picture."""
        return int(self.pixels.shape[1])

    @property
    def height(self) -> int:
        """Dots down the picture."""
        return int(self.pixels.shape[0])


class Corners(Struct, frozen=True):
    """The cloth's corners in dots of the picture, clockwise from the upper left, and how sure they are, 0 to 1.

    Dots are counted from the picture's upper left edge, so its lower right corner is (width, height).
    """

    points: tuple[Point, Point, Point, Point]
    sure: float = 1.0


class Repeat(Struct, frozen=True):
    """The motif's repeat along the cloth (mm), how sure, and how well its half and its double fit (0 to 1 each)."""

    length: float
    offset: float
    """From the picture's left edge to where the first whole repeat begins, between two motifs (mm)."""
    sure: float
    half: float = 0.0
    double: float = 0.0

    @property
    def others(self) -> tuple[float, float]:
        """What else it may be: half and twice the length (mm)."""
        return self.length / 2, self.length * 2


class Band(Struct, frozen=True):
    """A strip across the cloth, from and to in mm from the first selvedge."""

    start: float
    end: float


class FoundBand(Struct, frozen=True):
    """A printed border: from and to in mm from the first selvedge, and which way up its motif stands."""

    start: float
    end: float
    way: Way
    sure: float
    """That it is a border, and lies there: 0 to 1."""
    way_sure: float
    """That it stands that way: 0 to 1."""


class Print(Struct, frozen=True):
    """What is printed on a cloth. Every `sure` is a hint from 0 to 1, not a chance reckoned out."""

    repeat: Repeat | None
    bands: tuple[FoundBand, ...]
    fields: tuple[Band, ...]
    """Strips of scattered small motifs, which are no border."""
    one_way: bool
    """The cloth looks otherwise when it is turned end for end."""
    one_way_sure: float
