"""How the table is looked at: pixels for each millimetre, and where its origin lies on the board."""

from typing import Final

from msgspec import Struct

from studio.geometry import Box, Point

LEAST: Final = 0.004
MOST: Final = 16.0
"""Bounds of the scale, px for each mm: a hundred panels in one view; a notch as wide as a hand."""


class View(Struct, frozen=True):
    """px = mm × scale + (x, y)."""

    scale: float = 0.4
    x: float = 0.0
    y: float = 0.0

    def px(self, at: Point) -> Point:
        """A place on the table, in px on the board."""
        return Point(at.x * self.scale + self.x, at.y * self.scale + self.y)

    def mm(self, at: Point) -> Point:
        """A place on the board, in mm on the table."""
        return Point((at.x - self.x) / self.scale, (at.y - self.y) / self.scale)

    def panned(self, dx: float, dy: float) -> "View":
        """Shifted by px."""
        return View(self.scale, self.x + dx, self.y + dy)

    def zoomed(self, scale: float, at: Point) -> "View":
        """At another scale, with the millimetre under `at` (px) staying there."""
        scale = min(max(scale, LEAST), MOST)
        under = self.mm(at)
        return View(scale, at.x - under.x * scale, at.y - under.y * scale)

    def box(self, mm: Box) -> Box:
        """A box on the table, in px on the board."""
        return Box(
            mm.left * self.scale + self.x, mm.top * self.scale + self.y,
            mm.right * self.scale + self.x, mm.bottom * self.scale + self.y,
        )  # fmt: skip


def drafting_scale(scale: float, life: float) -> str:
    """A scale as drafting writes it, 1:11 or 2:1, where `life` is the px for each mm of life size."""
    ratio = life / scale
    if ratio >= 0.95:
        return f"1:{_short(ratio)}"
    return f"{_short(1 / ratio)}:1"


def _short(ratio: float) -> str:
    return f"{ratio:.0f}" if ratio >= 5 else f"{ratio:.1f}".removesuffix(".0")
