"""Polygons as convex parts: hulls, cutting an outline up, and where two parts would touch."""

import math
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
Corner = tuple[float, float]


def hull(points: Sequence[Corner]) -> list[Corner]:
    """Convex hull, counterclockwise where y points up, without corners on straight edges (monotone chain)."""
    ordered = sorted(set(points))
    if len(ordered) < 3:
        return ordered

    def chain(points: Sequence[Corner]) -> list[Corner]:
        kept: list[Corner] = []
        for p in points:
            while len(kept) > 1 and cross(kept[-2], kept[-1], p) <= 0:
                kept.pop()
            kept.append(p)
        return kept[:-1]

    return chain(ordered) + chain(ordered[::-1])


def cross(a: Corner, b: Corner, c: Corner) -> float:
    """Twice the area of a triangle; positive where a, b, c run counterclockwise."""
    return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])


def area(points: Sequence[Corner]) -> float:
    """Area of a polygon; positive where it runs counterclockwise."""
    return sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(points, [*points[1:], *points[:1]], strict=True)) / 2


def covering(outline: Sequence[Corner], slack: float) -> list[Corner]:
    """The outline counterclockwise, without doubled corners and without hollows shallower than `slack`.

    It covers the outline and so is safe to lay in its place.
    """
    points = [p for p, q in zip(outline, [*outline[1:], *outline[:1]], strict=True) if math.dist(p, q) > 1e-9]
    if area(points) < 0:
        points.reverse()
    k, left = 0, len(points)
    while left and len(points) > 3:
        a, b, c = points[k - 1], points[k % len(points)], points[(k + 1) % len(points)]
        depth = -cross(a, b, c) / (math.dist(a, c) or 1.0)
        if 0 <= depth <= slack and _between(a, b, c) and _clear(points, k):
            points.pop(k)
            left = len(points)
        else:
            k, left = k + 1, left - 1
        k %= len(points)
    return points


def convex_parts(points: list[Corner]) -> list[list[Corner]]:
    """A counterclockwise polygon as convex parts that cover it: ears cut off, then joined where they stay convex.

    An outline that crosses itself has no ears at some point; it is covered by its hull.
    """
    whole = hull(points)
    if len(points) < 4 or area(whole) - area(points) <= 1e-9 * area(whole):
        return [whole]
    triangles = _ears(points)
    if triangles is None:
        return [whole]
    return _joined(triangles)


def _between(a: Corner, b: Corner, c: Corner) -> bool:
    along = (b[0] - a[0]) * (c[0] - a[0]) + (b[1] - a[1]) * (c[1] - a[1])
    return 0 <= along <= math.dist(a, c) ** 2


def _clear(points: list[Corner], k: int) -> bool:
    """Whether no other corner lies in the hollow at corner k."""
    a, b, c = points[k - 1], points[k], points[(k + 1) % len(points)]
    return not any(_inside(a, c, b, p) for p in points if p not in (a, b, c))


def _inside(a: Corner, b: Corner, c: Corner, p: Corner) -> bool:
    """Whether p lies in the counterclockwise triangle, its edges included."""
    return cross(a, b, p) >= 0 and cross(b, c, p) >= 0 and cross(c, a, p) >= 0


def _ears(points: list[Corner]) -> list[list[Corner]] | None:
    rest, triangles = list(points), []
    while len(rest) > 3:
        for k in range(len(rest)):
            a, b, c = rest[k - 1], rest[k], rest[(k + 1) % len(rest)]
            turn = cross(a, b, c)
            if turn > 0 and not any(_inside(a, b, c, p) for p in rest if p not in (a, b, c)):
                triangles.append([a, b, c])
                break
            if turn == 0:
                break
        else:
            return None
        rest.pop(k)
    if cross(*rest) > 0:
        triangles.append(rest)
    return triangles


def _joined(parts: list[list[Corner]]) -> list[list[Corner]]:
    """Neighbours joined along their common edge wherever the whole stays convex, the largest first."""
    while True:
        best: tuple[float, int, int, list[Corner]] | None = None
        for i, one in enumerate(parts):
            edges = set(zip(one, [*one[1:], one[0]], strict=True))
            for j in range(i + 1, len(parts)):
                other = parts[j]
                if not any((q, p) in edges for p, q in zip(other, [*other[1:], other[0]], strict=True)):
                    continue
                both, whole = area(one) + area(other), hull(one + other)
                if area(whole) - both <= 1e-9 * both and (best is None or both > best[0]):
                    best = (both, i, j, whole)
        if best is None:
            return parts
        _, i, j, whole = best
        parts = [whole, *(p for k, p in enumerate(parts) if k not in (i, j))]


def differences(a: Array, b: Array) -> Array:
    """Where b's origin may not be while a lies at the origin: the convex polygon of all points of a less those of b.

    Both are convex and counterclockwise, shape (n, 2), and level edges are truly level; the answer is the same
    (Minkowski difference, edges merged by angle).
    """
    a, b = _from_lowest(a), _from_lowest(-b)
    edges = np.concatenate([np.roll(a, -1, 0) - a, np.roll(b, -1, 0) - b])
    angle = np.arctan2(edges[:, 1], edges[:, 0])
    angle[angle < 0] += 2 * math.pi
    edges = edges[np.argsort(angle, kind="stable")]
    steps = np.concatenate([[a[0] + b[0]], edges[:-1]])
    return np.asarray(np.cumsum(steps, 0))


def _from_lowest(points: Array) -> Array:
    k = int(np.lexsort((points[:, 0], points[:, 1]))[0])
    return np.roll(points, -k, 0)
