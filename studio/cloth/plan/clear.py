"""Where one convex part may not lie beside another: a convex region, widened by the gap."""

import math
from typing import NamedTuple

import numpy as np

from studio.cloth.plan.convex import Array, differences

SHARP = math.radians(95.0)
"""Corners that turn by more are cut off when widened, so that the gap there is not much more than the gap."""


class Forbidden(NamedTuple):
    """Ways from part a to part b at which they would lie too near: normals · way < offsets, for every normal.

    The same as two chains: at a height `y`, from `left` to `right`.
    """

    normals: Array
    offsets: Array
    left: Array
    right: Array
    box: bool

    @property
    def top(self) -> float:
        """The least height."""
        return float(self.left[0, 0])

    @property
    def bottom(self) -> float:
        """The greatest height."""
        return float(self.left[-1, 0])


def forbidden(a: Array, b: Array, gap: float) -> Forbidden:
    """The region for two convex parts, each counterclockwise, shape (n, 2)."""
    corners = differences(a, b)
    edges = np.roll(corners, -1, 0) - corners
    size = np.hypot(edges[:, 0], edges[:, 1])
    kept = size > 1e-9
    corners, edges, size = corners[kept], edges[kept], size[kept]
    normals = np.stack([edges[:, 1], -edges[:, 0]], 1) / size[:, None]
    turns = _turns(normals)
    first = np.roll(turns, 1) > 1e-7  # edges that run straight on are one
    if first.sum() >= 3:
        corners, normals = corners[first], normals[first]
        turns = _turns(normals)
    offsets = (normals * corners).sum(1)
    if gap > 0:
        normals, offsets = _eased(normals, offsets, np.roll(corners, -1, 0), turns, gap)
        corners = _meetings(normals, offsets)
    left, right = _chains(corners)
    box = len(normals) == 4 and bool((np.abs(normals).max(1) > 1 - 1e-15).all())
    return Forbidden(normals, offsets, left, right, box)


def _turns(normals: Array) -> Array:
    """How far each normal turns to the next, radians."""
    after = np.roll(normals, -1, 0)
    cross = normals[:, 0] * after[:, 1] - normals[:, 1] * after[:, 0]
    turns = np.arctan2(cross, (normals * after).sum(1))
    return np.asarray(np.where(turns < -1e-9, turns + 2 * math.pi, turns))


def _eased(normals: Array, offsets: Array, ends: Array, turns: Array, gap: float) -> tuple[Array, Array]:
    """Every edge out by the gap, and edges across the sharp corners."""
    more, where, reach = [], [], []
    for k in np.nonzero(turns > SHARP)[0]:
        pieces = math.ceil(turns[k] / SHARP)
        start = math.atan2(normals[k, 1], normals[k, 0])
        for step in range(1, pieces):
            angle = start + turns[k] * step / pieces
            normal = (math.cos(angle), math.sin(angle))
            more.append(normal)
            where.append(k + 1)
            reach.append(normal[0] * ends[k, 0] + normal[1] * ends[k, 1])
    if more:
        normals, offsets = np.insert(normals, where, more, axis=0), np.insert(offsets, where, reach)
    return normals, offsets + gap


def _meetings(normals: Array, offsets: Array) -> Array:
    """Corners where each edge meets the one before it."""
    m, d = np.roll(normals, 1, 0), np.roll(offsets, 1)
    det = m[:, 0] * normals[:, 1] - m[:, 1] * normals[:, 0]
    x = (d * normals[:, 1] - offsets * m[:, 1]) / det
    y = (offsets * m[:, 0] - d * normals[:, 0]) / det
    return np.stack([x, y], 1)


def _chains(corners: Array) -> tuple[Array, Array]:
    """The left and the right side of a convex polygon as (y, x), from the least y."""
    after = np.roll(corners, -1, 0)
    rise = after[:, 1] - corners[:, 1]
    sides = []
    for going in (rise < -1e-12, rise > 1e-12):
        ends = np.concatenate([corners[going], after[going]])[:, ::-1]
        side = ends[np.argsort(ends[:, 0], kind="stable")]
        sides.append(side[np.concatenate([[True], np.diff(side[:, 0]) > 1e-12])])
    return sides[0], sides[1]
