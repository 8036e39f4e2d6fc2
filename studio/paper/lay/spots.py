"""Where words stand on a piece: inside its outline, near its middle, and clear of what is there already."""

from collections.abc import Iterable, Sequence
from itertools import pairwise, product

from studio.geometry import Box, Path, Point

_TRIES = 18
"""Places tried along each side of a piece."""
_AIR = 0.35
"""How far words stay from lines (mm)."""


def spot(outline: Path, wide: float, high: float, taken: Sequence[Box]) -> Point | None:
    """The middle of a box of that size that lies wholly inside a closed outline and clear of what is taken, the
    nearest one to the outline's own middle; None where there is none.
    """
    box, ring = outline.box, outline.flat(0.1)
    room_x, room_y = box.width - wide - 2 * _AIR, box.height - high - 2 * _AIR
    if room_x < 0 or room_y < 0:
        return None
    shares = [k / _TRIES - 0.5 for k in range(_TRIES + 1)]
    middles = (box.centre.moved(x * room_x, y * room_y) for x, y in product(shares, shares))
    for middle in sorted(middles, key=box.centre.distance):
        there = around(middle, wide, high)
        if not meets_any(there, taken) and _holds(ring, there.grown(_AIR)):
            return middle
    return None


def around(middle: Point, wide: float, high: float) -> Box:
    """A box of that size about a point."""
    return Box(middle.x - wide / 2, middle.y - high / 2, middle.x + wide / 2, middle.y + high / 2)


def meets_any(box: Box, taken: Iterable[Box]) -> bool:
    """Whether a box lies on what is taken."""
    return any(box.meets(t) for t in taken)


def _holds(ring: Sequence[Point], box: Box) -> bool:
    """Whether a closed run of points has a box inside: its corners lie inside, and no point of the run in the box."""
    corners = (Point(x, y) for x, y in product((box.left, box.right), (box.top, box.bottom)))
    if not all(_inside(ring, p) for p in corners):
        return False
    return not any(box.left < p.x < box.right and box.top < p.y < box.bottom for p in ring)


def _inside(ring: Sequence[Point], p: Point) -> bool:
    """Whether a ray to the right crosses the ring an odd number of times."""
    crossed = False
    for a, b in pairwise(ring):
        if (a.y > p.y) != (b.y > p.y) and p.x < a.x + (b.x - a.x) * (p.y - a.y) / (b.y - a.y):
            crossed = not crossed
    return crossed
