"""A photograph bent flat, at a known scale."""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
from msgspec import Struct

from studio.geometry import Point
from studio.trouble import Trouble
from studio.words import tr

from .found import Corners, Photo
from .picture import LONGEST, SMALLEST, warped
from .smooth import Line

LENS = 0.8
"""Focal length of a usual camera, in lengths of the picture's longer side (26 to 30 mm on 36; common practice)."""


class Flat(Struct, frozen=True, eq=False):
    """A flat picture and its scale, and `to_photo`, the 3 by 3 matrix from its dots to the photo's."""

    photo: Photo
    mm_per_dot: float
    to_photo: Line


def straighten(photo: Photo, corners: Corners, length: float, between: tuple[Point, Point] | None = None) -> Flat:
    """The cloth between four corners as a flat picture, x along it.

    `length` (mm) is the cloth's width, from the upper side to the lower, or the distance `between` two points of the
    photo (dots). Raises `Trouble` where the corners or the points are no such thing.
    """
    if length <= 0 or not convex(corners.points):
        raise Trouble(tr("These corners do not go round the cloth; put each on its own corner."))
    along, across = _sides(corners.points)
    ratio = shape_of(corners.points, photo.width, photo.height)
    high = max(across, along / ratio)
    fit = min(1.0, LONGEST / max(high, high * ratio))
    width, height = round(high * ratio * fit), round(high * fit)
    if min(width, height) < SMALLEST // 2:
        raise Trouble(tr("The cloth is too small in this picture; put the corners further apart."))
    box = [Point(0.0, 0.0), Point(width, 0.0), Point(width, height), Point(0.0, height)]
    to_photo = homography(box, corners.points)
    dots = float(height)
    if between is not None:
        back: Line = np.asarray(np.linalg.inv(to_photo), np.float64)
        (a, b), (c, d) = (moved(back, p) for p in between)
        dots = math.hypot(a - c, b - d)
        if dots < 2:
            raise Trouble(tr("The two points lie on each other; put them further apart."))
    return Flat(warped(photo, tuple(to_photo.ravel()[:8].tolist()), width, height), length / dots, to_photo)


def homography(source: Sequence[Point], target: Sequence[Point]) -> Line:
    """The 3 by 3 matrix that takes four points to four others; its last value is 1.

    Eight equations, two for each pair (Hartley and Zisserman, Multiple View Geometry, 4.1; from memory).
    """
    rows, values = [], []
    for p, q in zip(source, target, strict=True):
        rows += [[p.x, p.y, 1, 0, 0, 0, -q.x * p.x, -q.x * p.y], [0, 0, 0, p.x, p.y, 1, -q.y * p.x, -q.y * p.y]]
        values += [q.x, q.y]
    return np.append(np.linalg.solve(np.array(rows, float), np.array(values, float)), 1.0).reshape(3, 3)


def moved(matrix: Line, p: Point) -> Point:
    """Where a homography takes a point."""
    x, y, w = matrix @ np.array([p.x, p.y, 1.0])
    return Point(float(x / w), float(y / w))


def convex(points: Sequence[Point]) -> bool:
    """Whether four corners go round clockwise on the page (y down), with no dent and none on another."""
    around = [(points[k], points[(k + 1) % 4], points[(k + 2) % 4]) for k in range(4)]
    return all((b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x) > 1 for a, b, c in around)


def shape_of(points: Sequence[Point], width: float, height: float) -> float:
    """Length over width of the cloth that a camera sees so.

    From the two vanishing points and the focal length that squares them, with the lens over the middle of the picture
    (Zhang and He, Whiteboard scanning, 2003, from memory). Seen from straight above there is no vanishing point, and
    any lens gives the same; a focal length that no camera has is put back to a usual one.
    """
    size = max(width, height)
    m1, m2, m4, m3 = (np.array([(p.x - width / 2) / size, (p.y - height / 2) / size, 1.0]) for p in points)
    k2 = np.cross(m1, m4) @ m3 / (np.cross(m2, m4) @ m3)
    k3 = np.cross(m1, m4) @ m2 / (np.cross(m3, m4) @ m2)
    n2, n3 = k2 * m2 - m1, k3 * m3 - m1
    depth = n2[2] * n3[2]
    squared = -(n2[0] * n3[0] + n2[1] * n3[1]) / depth if abs(depth) > 1e-3 else 0.0
    if not 0.4**2 < squared < 4.0**2:
        squared = LENS**2
    weights = np.array([1 / squared, 1 / squared, 1.0])
    return float(np.sqrt((n2**2 @ weights) / (n3**2 @ weights)))


def _sides(points: Sequence[Point]) -> tuple[float, float]:
    """The longer of the two sides along, and of the two across (dots)."""
    a, b, c, d = points
    return max(math.dist(a, b), math.dist(d, c)), max(math.dist(a, d), math.dist(b, c))
