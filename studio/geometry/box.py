"""Upright rectangles, mm."""

from typing import NamedTuple

from .point import Point


class Box(NamedTuple):
    """An upright rectangle, mm."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def width(self) -> float:
        """Left to right."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """Top to bottom."""
        return self.bottom - self.top

    @property
    def centre(self) -> Point:
        """The middle."""
        return Point((self.left + self.right) / 2, (self.top + self.bottom) / 2)

    def moved(self, dx: float, dy: float) -> "Box":
        """A shifted copy."""
        return Box(self.left + dx, self.top + dy, self.right + dx, self.bottom + dy)

    def grown(self, by: float) -> "Box":
        """Larger by `by` on every side."""
        return Box(self.left - by, self.top - by, self.right + by, self.bottom + by)

    def joined(self, other: "Box") -> "Box":
        """The smallest box that holds both."""
        return Box(
            min(self.left, other.left), min(self.top, other.top),
            max(self.right, other.right), max(self.bottom, other.bottom),
        )  # fmt: skip

    def holds(self, other: "Box") -> bool:
        """Whether the other lies wholly in this one."""
        return (
            self.left <= other.left
            and other.right <= self.right
            and self.top <= other.top
            and other.bottom <= self.bottom
        )

    def meets(self, other: "Box") -> bool:
        """Whether the two share any area or edge."""
        return (
            self.left <= other.right
            and other.left <= self.right
            and self.top <= other.bottom
            and other.top <= self.bottom
        )
