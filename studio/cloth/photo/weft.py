"""The weft made straight: a cloth lies a little bowed or askew, and its bands with it."""

import numpy as np

from .smooth import Floats, between, running_mean

REACH = 8
"""How far a strip may lie off the others (dots)."""


def straightened(print_: Floats, length: float) -> tuple[Floats, float]:
    """The print with its bands made level, and the furthest any dot was moved.

    The bow of the upper and the lower half is a curve of the second degree each, from how strips one repeat or more
    long (`length`, dots) lie against each other; between the halves it changes evenly.
    """
    _, high, wide = print_.shape
    count = int(np.clip(wide / length, 4, 10))
    each = wide // count
    strength = np.minimum(np.sqrt((print_**2).sum(0)), 0.8)
    profiles = strength[:, : each * count].reshape(high, count, each).mean(2).T
    profiles = profiles - running_mean(profiles, high // 8, 1)
    bows = [_bow(profiles[:, : high // 2]), _bow(profiles[:, high // 2 :])]
    if bows[0] is None and bows[1] is None:
        return print_, 0.0
    upper, lower = (b if b is not None else other for b, other in zip(bows, bows[::-1], strict=True))
    along = (np.arange(wide) + 0.5) / wide * 2 - 1
    curve = np.stack([np.ones(wide), along, along**2], 1)
    top, bottom = ((curve @ b) - (curve @ b).mean() for b in (upper, lower))
    furthest = float(max(np.abs(top).max(), np.abs(bottom).max()))
    if furthest < 0.3:
        return print_, furthest
    y = np.arange(high, dtype=np.float32)[:, None]
    down = np.clip((y / high - 0.25) / 0.5, -0.5, 1.5)
    at = np.clip(y + top * (1 - down) + bottom * down, 0, high - 1.001).astype(np.float32)
    low = at.astype(np.int32)
    part = at - low
    place = low * wide + np.arange(wide, dtype=np.int32)
    flat = print_.reshape(3, -1)
    return np.stack([dots[place] * (1 - part) + dots[place + wide] * part for dots in flat]), furthest


def _bow(profiles: Floats) -> "np.typing.NDArray[np.float64] | None":
    """Constant, slope and bend of how far down each strip lies; None where too few strips tell."""
    count, high = profiles.shape
    middle = profiles.mean(0)
    off, weight = np.zeros(count), np.zeros(count)
    for _ in range(3):
        other = np.conj(np.fft.rfft(middle, 2 * high))
        for k in range(count):
            line = np.roll(np.fft.irfft(np.fft.rfft(profiles[k], 2 * high) * other, 2 * high), REACH)
            line = line[: 2 * REACH + 1]
            top = int(np.argmax(line))
            off[k] = (between(line, top) if 0 < top < 2 * REACH else top) - REACH
            sizes = (profiles[k] ** 2).sum() * (middle**2).sum()
            weight[k] = max(float(line.max()), 0.0) / np.sqrt(sizes + 1e-9)
        y = np.arange(high)
        middle = np.mean([np.interp(y + off[k], y, profiles[k]) for k in range(count)], 0)
    tells = weight > 0.6
    if tells.sum() < 4:
        return None
    x = (np.arange(count) + 0.5) / count * 2 - 1
    curve = np.stack([np.ones(count), x, x * x], 1)
    heed = np.where(tells, 1.0, 1e-3)
    fit = np.zeros(3)
    for _ in range(4):
        fit = np.linalg.lstsq(curve * heed[:, None], off * heed, rcond=None)[0]
        heed = np.where(tells, 1.0, 1e-3) / np.maximum(1, np.abs(off - curve @ fit) / 0.5)
    return fit
