"""Cuts straight through an outline: how much cloth lies in them."""

from collections.abc import Sequence
from itertools import pairwise

import numpy as np

from studio.cloth.plan.convex import Array, Corner

FINE = 16
"""Slices between two corners."""
HAIR = 1e-7
"""Beside a corner, not on it (mm): a cut through a corner may be either of two lengths."""


def slices(points: Sequence[Corner], axis: int = 0) -> tuple[Array, Array]:
    """An outline in slices across an axis (0: x, 1: y): how thick each is, and the least length of a cut through it.

    Between corners the length changes evenly, so the least is at one of a slice's faces.
    """
    stops = np.array(sorted({p[axis] for p in points}))
    thick, least = [], []
    for start, end in pairwise(stops):
        if end - start < 4 * HAIR:
            continue
        first, last = cut(points, start + HAIR, axis), cut(points, end - HAIR, axis)
        level = abs(last - first) < 1e-6
        count = 1 if level else FINE
        faces = np.linspace(first, last, count + 1)
        thick.append(np.full(count, (end - start) / count))
        least.append(np.minimum(faces[1:], faces[:-1]))
    if not thick:
        return np.zeros(0), np.zeros(0)
    return np.concatenate(thick), np.concatenate(least)


def cut(points: Sequence[Corner], at: float, axis: int) -> float:
    """How much of the straight line at `at`, across the axis, lies within the outline."""
    crossings = sorted(
        p[1 - axis] + (q[1 - axis] - p[1 - axis]) * (at - p[axis]) / (q[axis] - p[axis])
        for p, q in zip(points, [*points[1:], *points[:1]], strict=True)
        if (p[axis] > at) != (q[axis] > at)
    )
    return sum(b - a for a, b in zip(crossings[::2], crossings[1::2], strict=True))


def least_cut(points: Sequence[Corner], first: float, last: float, axis: int) -> float:
    """The shortest of the cuts between two places."""
    stops = {first, last} | {p[axis] for p in points if first <= p[axis] <= last}
    return min(cut(points, stop + side, axis) for stop in stops for side in (-HAIR, HAIR))
