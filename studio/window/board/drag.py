"""A handle being dragged: how far the hand has moved, as a value of the brief."""

import math
from typing import Final, Literal

from msgspec import Struct

from studio.geometry import Point
from studio.units import Unit

STEPS: Final[dict[Unit, tuple[float, float]]] = {"cm": (1.0, 5.0), "in": (25.4 / 8, 25.4 / 2)}
"""What a dragged length snaps to (mm), and what it snaps to with Shift."""


class Grip(Struct, frozen=True):
    """A handle: the path it moves, where it lies (mm on the table), its way, and the value for each mm of it.

    `drawn_as` is the number that an empty one was drawn as.
    """

    piece: str
    path: str
    at: Point
    axis: Literal["x", "y"]
    gain: float
    drawn_as: float


class Drag(Struct, frozen=True):
    """A drag, counted from where the button went down (px). `start` is None where the brief held nothing yet."""

    grip: Grip
    pressed: Point
    start: float | None
    least: float
    most: float

    @property
    def shown(self) -> float:
        """The value at the start: the brief's, or what an empty one was drawn as."""
        return self.grip.drawn_as if self.start is None else self.start

    def value(self, at: Point, scale: float, unit: Unit, coarse: bool = False) -> float | None:
        """The value with the pointer at `at` (px), `scale` px for each mm.

        The length that moves snaps, also where the value is a ratio; the value stays within its bounds.
        """
        way = at.x - self.pressed.x if self.grip.axis == "x" else at.y - self.pressed.y
        if not way:
            return self.start
        step, gain = STEPS[unit][coarse], abs(self.grip.gain)
        length = self.shown / gain + math.copysign(way / scale, way * self.grip.gain)
        return min(max(round(length / step) * step * gain, self.least), self.most)
