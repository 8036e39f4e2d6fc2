"""The screen's glass: how large it is, and the pieces in words for those who cannot see it."""

from collections.abc import Iterable
from typing import Final

from PySide6.QtGui import QScreen

from studio.draft.cutting import cut_words
from studio.drawing.arrange import Laid
from studio.units import Unit, write_length

_TRUE_DOTS: Final = (60.0, 400.0)
"""A screen that says it has fewer or more dots to the inch is not believed."""


def life(screen: QScreen) -> float:
    """Px for each mm on the glass."""
    dots = screen.physicalDotsPerInch()
    return (dots if _TRUE_DOTS[0] <= dots <= _TRUE_DOTS[1] else screen.logicalDotsPerInch()) / 25.4


def read_aloud(laid: Iterable[Laid], unit: Unit) -> str:
    """Every piece, its size and how many to cut."""
    return " ".join(
        f"{one.piece.name}: {write_length(one.box.width, unit)} × {write_length(one.box.height, unit)}, "
        f"{cut_words(one.piece)}."
        for one in laid
    )
