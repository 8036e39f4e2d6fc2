"""How the table is looked at: pixels for each millimetre, and where its origin lies on the board."""

from collections.abc import Sequence
from typing import Final

from msgspec import Struct

from studio.geometry import Box, Point

LEAST: Final = 0.004
MOST: Final = 16.0
"""Bounds of the scale, px for each mm: a hundred panels in one view; a notch as wide as a hand."""
_CRAMPED: Final = 40.0  # px; a board smaller than its margins still shows something
_SMALLER: Final = 0.97
_STEPS: Final = 28


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


def fitted(boxes: Sequence[Box], room: Box, aside: Box | None = None, clear: float = 40.0) -> View:
    """As large as lets every box (mm) lie in the room (px), high up, and `clear` px away from the box `aside`.

    `aside` (px) stands in the lower right corner. Pieces lie in the middle, or to the left if that keeps it free;
    only then are they made smaller.
    """
    left, top = min(b.left for b in boxes), min(b.top for b in boxes)
    wide, high = max(b.right for b in boxes) - left, max(b.bottom for b in boxes) - top
    scale = min(max(_CRAMPED, room.width) / wide, max(_CRAMPED, room.height) / high)
    largest = min(max(scale, LEAST), MOST)
    kept_free = aside.grown(clear) if aside else None
    for step in range(_STEPS):
        scale = largest * _SMALLER**step
        over, below = room.width - wide * scale, room.height - high * scale
        for share in (0.5, 0.0):
            y = room.top + min(24.0, below / 2) - top * scale
            view = View(scale, room.left + over * share - left * scale, y)
            if kept_free is None or not any(view.box(b).meets(kept_free) for b in boxes):
                return view
    return View(largest, room.left - left * largest, room.top - top * largest)


def drafting_scale(scale: float, life: float) -> str:
    """A scale as drafting writes it, 1:11 or 2:1, where `life` is the px for each mm of life size."""
    ratio = life / scale
    if ratio >= 0.95:
        return f"1:{_short(ratio)}"
    return f"{_short(1 / ratio)}:1"


def _short(ratio: float) -> str:
    return f"{ratio:.0f}" if ratio >= 5 else f"{ratio:.1f}".removesuffix(".0")
