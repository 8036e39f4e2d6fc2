"""Running means and the like, on numpy alone."""

from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

Pixels: TypeAlias = NDArray[np.uint8]
Floats: TypeAlias = NDArray[np.float32]
Line: TypeAlias = NDArray[np.float64]


def running_mean(values: Floats, reach: int, axis: int) -> Floats:
    """The mean of `reach` (odd) neighbours along an axis; the ends are held."""
    reach += 1 - reach % 2
    if reach < 3:
        return values
    moved = np.moveaxis(values, axis, -1)
    n, half = moved.shape[-1], reach // 2
    held = np.concatenate([moved[..., :1].repeat(half, -1), moved, moved[..., -1:].repeat(half, -1)], -1)
    if reach <= 5:
        mean = sum((held[..., k : k + n] for k in range(1, reach)), held[..., :n])
    else:
        total = np.cumsum(held, -1, dtype=np.float64)
        mean = total[..., reach - 1 :].copy()
        mean[..., 1:] -= total[..., :-reach]
    out: Floats = np.moveaxis(mean / reach, -1, axis).astype(np.float32, copy=False)
    return out


def soften(line: Line) -> Line:
    """A line smoothed by the binomial weights 1 4 6 4 1 (a standard deviation of one step)."""
    held = np.pad(line, 2, mode="edge")
    return np.convolve(held, np.array([1.0, 4.0, 6.0, 4.0, 1.0]) / 16.0, "valid")


def running_max(line: Line, reach: int) -> Line:
    """The greatest of `reach` neighbours."""
    reach += 1 - reach % 2
    held = np.pad(line, reach // 2, mode="edge")
    out: Line = np.lib.stride_tricks.sliding_window_view(held, reach).max(-1)
    return out


def peaks(line: Line, prominence: float) -> list[int]:
    """Places of the local maxima that stand at least `prominence` above the higher of the valleys beside them."""
    inner = np.flatnonzero((line[1:-1] > line[:-2]) & (line[1:-1] >= line[2:])) + 1
    found = []
    for at in inner.tolist():
        top = line[at]
        left = np.flatnonzero(line[:at] > top)
        right = np.flatnonzero(line[at + 1 :] > top)
        low_left = line[left[-1] if len(left) else 0 : at].min()
        low_right = line[at + 1 : at + 1 + right[0] if len(right) else None].min()
        if top - max(low_left, low_right) >= prominence:
            found.append(at)
    return found


def between(line: Line, at: int) -> float:
    """Where a parabola through the values beside a maximum has its top; the line is taken as a ring."""
    before, here, after = line[at - 1], line[at], line[(at + 1) % len(line)]
    bend = before - 2 * here + after
    return float(at + 0.5 * (before - after) / bend) if bend < 0 else float(at)


def quick_length(least: int) -> int:
    """The smallest length from `least` up that is quick to transform: a product of 2, 3 and 5."""
    while True:
        rest = least
        for prime in (2, 3, 5):
            while rest % prime == 0:
                rest //= prime
        if rest == 1:
            return least
        least += 1


def runs(on: NDArray[np.bool_]) -> list[tuple[int, int]]:
    """Starts and ends (the end is past the last) of every unbroken run."""
    steps = np.diff(np.concatenate([[0], on.astype(np.int8), [0]]))
    return list(zip(np.flatnonzero(steps == 1).tolist(), np.flatnonzero(steps == -1).tolist(), strict=True))


def heaps(mask: NDArray[np.bool_]) -> list[tuple[int, int, int, int]]:
    """Boxes (top, bottom, left, right; the ends are past the last) of the connected spots of a mask."""
    boxes: list[list[int]] = []
    parent: list[int] = []

    def root(k: int) -> int:
        while parent[k] != k:
            parent[k] = parent[parent[k]]
            k = parent[k]
        return k

    before: list[tuple[int, int, int]] = []
    for y, row in enumerate(mask):
        here: list[tuple[int, int, int]] = []
        first = 0
        for a, b in runs(row):
            mine = -1
            while first < len(before) and before[first][1] < a:
                first += 1
            k = first
            while k < len(before) and before[k][0] <= b:
                other = root(before[k][2])
                if mine < 0:
                    mine = other
                elif mine != other:
                    parent[other] = mine
                    t, d, le, r = boxes[other]
                    box = boxes[mine]
                    box[0], box[1], box[2], box[3] = min(box[0], t), max(box[1], d), min(box[2], le), max(box[3], r)
                k += 1
            if mine < 0:
                mine = len(parent)
                parent.append(mine)
                boxes.append([y, y + 1, a, b])
            else:
                box = boxes[mine]
                box[1], box[2], box[3] = y + 1, min(box[2], a), max(box[3], b)
            here.append((a, b, mine))
        before = here
    return [(*boxes[k][:2], *boxes[k][2:]) for k in range(len(parent)) if parent[k] == k]  # type: ignore[misc]
