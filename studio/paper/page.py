"""A page is a value: its size and what is drawn on it. Every backend translates pages and nothing else."""

from typing import NamedTuple

from msgspec import Struct

from studio.drawing import Drawing
from studio.geometry import Box


class Size(NamedTuple):
    """Across and down, mm."""

    width: float
    height: float


class Page(Struct, frozen=True):
    """One page: x from its left edge, y from its top edge, in mm."""

    size: Size
    drawing: Drawing

    @property
    def box(self) -> Box:
        """The paper's edges."""
        return Box(0, 0, *self.size)
