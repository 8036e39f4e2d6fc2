"""Whether two polygons lie on each other."""

from collections.abc import Sequence
from itertools import pairwise, product

from .point import Point


def meet(one: Sequence[Point], other: Sequence[Point], inset: float = 0.0) -> bool:
    """Whether two closed polygons (their first point need not be repeated) share ground deeper than `inset` mm."""
    a, b = [*one, one[0]], [*other, other[0]]
    if any(_cross(p, q, r, s, inset) for (p, q), (r, s) in product(pairwise(a), pairwise(b))):
        return True
    return any(_within(p, b, inset) for p in _stations(a)) or any(_within(p, a, inset) for p in _stations(b))


def _stations(ring: Sequence[Point]) -> list[Point]:
    """Corners, the middles between them, and what lies surely inside: the middle of all, and of the diagonals that cut
    a corner off.
    """
    corners = list(ring[1:])
    middle = Point(sum(p.x for p in corners) / len(corners), sum(p.y for p in corners) / len(corners))
    cut_off = (p.towards(q, 0.5) for p, q in zip(corners, [*corners[2:], *corners[:2]], strict=True))
    inside = [p for p in (middle, *cut_off) if _within(p, ring, 0.0)]
    return [*corners, *(p.towards(q, 0.5) for p, q in pairwise(ring)), *inside]


def _cross(p: Point, q: Point, r: Point, s: Point, deep: float) -> bool:
    """Whether two segments cross, each reaching past the other by more than `deep`."""
    sides = (_aside(p, r, s), _aside(q, r, s)), (_aside(r, p, q), _aside(s, p, q))
    return all(min(two) < -deep and max(two) > deep for two in sides)


def _aside(p: Point, a: Point, b: Point) -> float:
    """How far a point lies to the side of the line through two others."""
    long = a.distance(b)
    return 0.0 if long == 0 else ((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / long


def _within(p: Point, ring: Sequence[Point], deep: float) -> bool:
    """Whether a point lies inside, farther than `deep` from every side."""
    inside = False
    for a, b in pairwise(ring):
        if (a.y > p.y) != (b.y > p.y) and p.x < a.x + (p.y - a.y) * (b.x - a.x) / (b.y - a.y):
            inside = not inside
    return inside and all(_distance(p, a, b) > deep for a, b in pairwise(ring))


def _distance(p: Point, a: Point, b: Point) -> float:
    along = a.to(b)
    long = along.x**2 + along.y**2
    if long == 0:
        return p.distance(a)
    share = min(1.0, max(0.0, ((p.x - a.x) * along.x + (p.y - a.y) * along.y) / long))
    return p.distance(a.towards(b, share))
