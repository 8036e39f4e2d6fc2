"""Small squares cut out of a tile, which is a ring along the cloth: whole dots apart, and between dots."""

from typing import TypeAlias

import numpy as np
from numpy.typing import NDArray

from .smooth import Floats, Line

Counts: TypeAlias = NDArray[np.int64]


def softened(tile: Floats) -> Floats:
    """A tile blurred by the weights 1 2 1 both ways; its upper and lower edges are held."""
    along = np.concatenate([tile[..., -1:], tile, tile[..., :1]], -1)
    along = (along[..., :-2] + 2 * along[..., 1:-1] + along[..., 2:]) / 4
    across = np.concatenate([along[:, :1], along, along[:, -1:]], 1)
    return np.asarray((across[:, :-2] + 2 * across[:, 1:-1] + across[:, 2:]) / 4, np.float32)


def squares(tile: Floats, top: Counts, left: Counts, size: int) -> Floats:
    """Squares of `size` dots, one for each upper left corner: shape (count, 3, size, size)."""
    rows = np.clip(top[:, None] + np.arange(size), 0, tile.shape[1] - 1)
    columns = (left[:, None] + np.arange(size)) % tile.shape[2]
    return tile[:, rows[:, :, None], columns[:, None, :]].transpose(1, 0, 2, 3)


def squares_between(tile: Floats, top: Line, left: Line, size: int) -> Floats:
    """The same from corners between dots, by cubic convolution (Keys 1981, a = -1/2, from memory)."""
    row, column = np.floor(top).astype(np.int64), np.floor(left).astype(np.int64)
    cut = squares(tile, row - 1, column - 1, size + 3)
    down, along = _weights(top - row), _weights(left - column)
    tall = sum((cut[:, :, k : k + size] * down[:, k, None, None, None] for k in range(1, 4)),
               cut[:, :, :size] * down[:, 0, None, None, None])  # fmt: skip
    return np.asarray(
        sum((tall[..., k : k + size] * along[:, k, None, None, None] for k in range(1, 4)),
            tall[..., :size] * along[:, 0, None, None, None]), np.float32,
    )  # fmt: skip


def products(one: Floats, other: Floats) -> Line:
    """Square by square, the sum of products."""
    return np.asarray(np.einsum("ncyx,ncyx->n", one, other), np.float64)


def _weights(part: Line) -> Floats:
    """The four weights of the dots before, at, after and two after, for the part of a dot beyond the second."""
    f = part[:, None]
    four = [((2 - f) * f - 1) * f, (3 * f - 5) * f * f + 2, ((4 - 3 * f) * f + 1) * f, (f - 1) * f * f]
    return np.asarray(np.concatenate(four, 1) / 2, np.float32)
