"""The cloth's own colour and the light on it, taken away so that only the print is left."""

import numpy as np
from numpy.typing import NDArray

from .smooth import Floats, Line, running_mean

STEP = 6
"""Every how many dots the ground is looked at."""
BOUNDS = ((0.35, 0.10), (0.25, 0.08), (0.2, 0.07), (0.14, 0.06), (0.1, 0.05), (0.08, 0.045))
"""How far a dot may lie from the ground and still belong to it, round by round: in lightness and in colour."""
LOGARITHMS = np.log((np.arange(256) + 20) / 255.0).astype(np.float32)


def features(pixels: NDArray[np.uint8]) -> Floats:
    """Lightness and two colours, shape (3, height, width), by logarithms: light and shadow touch only the first."""
    red, green, blue = (LOGARITHMS[pixels[..., k]] for k in range(3))
    return np.stack([(red + green + blue) / 3, (red - green) * 0.7, ((red + green) * 0.5 - blue) * 0.5])


def printed(colours: Floats) -> tuple[Floats, float]:
    """What departs from the ground, in the same shape, and the share of the cloth that is bare ground.

    The ground is the commonest colour under a light that changes smoothly: a surface of the fourth degree in
    lightness and a plane in colour, fitted again and again to the dots that lie near it.
    """
    coarse = running_mean(running_mean(colours, 3, 1), 3, 2)[:, STEP // 2 :: STEP, STEP // 2 :: STEP]
    _, high, wide = coarse.shape
    dots = coarse.reshape(3, -1).astype(np.float64)
    y, x = (v.ravel() for v in np.meshgrid(np.linspace(-1, 1, high), np.linspace(-1, 1, wide), indexing="ij"))
    plane = np.stack([np.ones_like(x), x, y], 1)
    bent = np.stack([x**i * y**j for i in range(5) for j in range(5) if 2 <= i + j <= 4], 1)
    surface = np.concatenate([plane, bent], 1)
    level = np.repeat(_commonest(dots)[:, None], dots.shape[1], 1)
    near: NDArray[np.bool_] = np.ones(dots.shape[1], np.bool_)
    for turn, (light, colour) in enumerate(BOUNDS):
        close = np.abs(dots - level) < np.array([[light], [colour], [colour]])
        fresh: NDArray[np.bool_] = np.all(close, axis=0)
        if fresh.sum() < 200:
            break
        near = fresh
        shape = surface if turn else plane
        stiff = np.diag([0.0, 0.0] + [1e-3 * near.sum()] * (shape.shape[1] - 2)) if turn else 0.0
        light_fit = np.linalg.solve(shape[near].T @ shape[near] + stiff, shape[near].T @ dots[0][near])
        colour_fit = np.linalg.lstsq(plane[near], dots[1:, near].T, rcond=None)[0]
        level = np.concatenate([(shape @ light_fit)[None], (plane @ colour_fit).T])
    return colours - _enlarged(level.reshape(3, high, wide).astype(np.float32), colours.shape[1:]), float(near.mean())


def _commonest(dots: Line) -> Line:
    """The middle of the fullest box of a coarse count of colours and its neighbours."""
    cells = np.floor(dots / np.array([[0.16], [0.06], [0.06]])).astype(int)
    cells -= cells.min(1, keepdims=True)
    n = cells.max(1) + 1
    count = np.bincount((cells[0] * n[1] + cells[1]) * n[2] + cells[2], minlength=int(n.prod())).reshape(n)
    for axis in range(3):
        held = np.pad(count, [(1, 1) if k == axis else (0, 0) for k in range(3)])
        count = count + held.take(range(n[axis]), axis) + held.take(range(2, n[axis] + 2), axis)
    fullest = np.unravel_index(count.argmax(), count.shape)
    chosen = np.all(np.abs(cells - np.array(fullest)[:, None]) <= 1, 0)
    return np.median(dots[:, chosen], 1)


def _enlarged(coarse: Floats, shape: tuple[int, ...]) -> Floats:
    """A coarse grid spread over the whole picture by straight lines between its values."""
    axes = []
    for full, few in zip(shape, coarse.shape[1:], strict=True):
        at = np.clip((np.arange(full) - STEP // 2) / STEP, 0, few - 1)
        low = np.minimum(at.astype(int), few - 2)
        axes.append((low, (at - low).astype(np.float32)))
    (row, down), (column, along) = axes
    tall = coarse[:, row] * (1 - down)[:, None] + coarse[:, row + 1] * down[:, None]
    return np.asarray(tall[:, :, column] * (1 - along) + tall[:, :, column + 1] * along, np.float32)
