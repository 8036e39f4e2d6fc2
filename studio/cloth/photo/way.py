"""Whether the print may be turned end for end, as a whole and band by band, and which way its motifs stand."""

import math

import numpy as np

from .found import Way
from .smooth import Floats
from .tile import Tile

CELL = 2.5
"""The print is looked at in cells of this size (mm)."""
SLIP = 5
"""Cells a strip may lie off across the cloth, which is never quite straight."""
SIDE = 4
"""The same along the cloth."""
LITTLE = 0.001
"""A part with less than this share of the print's strength does not count."""
ALIKE = 0.70
"""Likeness from which a turned strip counts as the same."""
ALIKE_SMALL = 0.90
"""The same for a field of small motifs that is hardly disturbed."""


def cells(picture: Floats, scale: float) -> Floats:
    """A tile in cells of about `CELL`, as wide as a whole number of them, so that it stays a ring."""
    down = max(1, int(CELL / scale))
    along = max(1, round(CELL / scale))
    high = picture.shape[1] // down
    wide = max(picture.shape[2] // along, 1)
    at = (np.arange(wide * along) * (picture.shape[2] / (wide * along))).astype(int)
    rows = picture[:, : high * down].reshape(3, high, down, -1).mean(2)
    return np.asarray(rows[:, :, at].reshape(3, high, wide, along).mean(3), np.float32)


def turned_likeness(
    tile: Tile, parts: list[tuple[float, float]], fields: list[tuple[float, float]], scale: float
) -> float:
    """How like itself the cloth is when turned by 180 degrees: the likeness of the worst part, 0 to 1.

    `parts` are printed strips, `fields` those of small motifs (mm from the first selvedge). Each is held against what
    comes to lie there, under one move along the cloth for all with a little slack for each; noise is allowed for by
    how like itself the strip is from repeat to repeat. Small motifs look much the same either way, so a clear field is
    held to `ALIKE_SMALL`; what it says is then moved to the common bound.
    """
    mean, even, odd = (cells(t, scale) for t in (tile.mean, tile.even, tile.odd))
    high = mean.shape[1]
    step = scale * max(1, int(CELL / scale))
    worst = 1.0
    every = [(0.0, high * step, False), *((a, b, False) for a, b in parts), *((a, b, True) for a, b in fields)]
    for whole_colour in (True, False):  # as it is, and without what is even along the cloth
        here, first, second = (t if whole_colour else t - t.mean(2, keepdims=True) for t in (mean, even, odd))
        lines, near = alignment(here)
        energy = (here**2).sum((0, 2))
        total = energy.sum()
        for start, end, small in every:
            a, b = max(0, int(start / step)), min(high, math.ceil(end / step))
            mine, theirs = energy[a:b].sum(), energy[::-1][a:b].sum()
            share = max(mine, theirs) / (total + 1e-9)
            if share < LITTLE:
                continue
            blocks = range(a, b, 24)
            alike = sum(_highest(lines[:, k : min(b, k + 24)].sum(1)[:, near]) for k in blocks)
            both = (first[:, a:b] ** 2).sum() * (second[:, a:b] ** 2).sum()
            own = float((first[:, a:b] * second[:, a:b]).sum() / np.sqrt(both + 1e-9)) if tile.copies > 1 else 1.0
            if share < 0.02 and own < 0.7:
                continue
            likeness = alike / math.sqrt(float(mine * theirs) + 1e-9) if mine and theirs else 0.0
            likeness /= max(own, 0.3)
            if small and own > 0.9:
                likeness += ALIKE - ALIKE_SMALL if likeness < ALIKE_SMALL else 0.0
            worst = min(worst, likeness)
    return max(0.0, worst)


def alignment(here: Floats) -> tuple[Floats, list[int]]:
    """Products of a print in cells with itself turned, as `_moves` has them, and the moves near the best of all."""
    lines = _moves(here, here[:, ::-1, ::-1])
    whole = lines.sum(1)
    best = int(np.unravel_index(whole.argmax(), whole.shape)[1])
    return lines, [(best + k) % whole.shape[1] for k in range(-2 * SIDE, 2 * SIDE + 1)]


def stands(tile: Tile, start: float, end: float, scale: float) -> tuple[Way, float]:
    """Which way the motif of a band stands, and how sure: both where the band turned by 180 degrees looks the same.

    Most motifs grow inwards from their selvedge, are heavier at the foot, and have their stripes there (common
    practice, no source); so a way is never more than likely.
    """
    mean, even, odd = (
        cells(t[:, max(0, int(start / scale)) : max(int(start / scale) + 2, math.ceil(end / scale))], scale)
        for t in (tile.mean, tile.even, tile.odd)
    )
    high = mean.shape[1]
    if high < 3:
        return "both", 0.2
    strength = np.sqrt((mean**2).sum(0))
    varied = mean - mean.mean(2, keepdims=True)
    likeness = 1.0
    for layer in (mean, varied):
        lines = _moves(layer, layer[:, ::-1, ::-1], min(SLIP, high // 3))
        likeness = min(likeness, float(lines.sum(1).max()) / float((layer**2).sum() + 1e-9))
    both = (even**2).sum() * (odd**2).sum()
    own = float((even * odd).sum() / np.sqrt(both + 1e-9)) if tile.copies > 1 else 1.0
    likeness = min(1.0, likeness / max(own, 0.3))
    if likeness > ALIKE:
        return "both", sureness(likeness)
    covered = (strength > 0.35 * np.percentile(strength, 97)).mean(1)
    y = np.linspace(-1, 1, high)
    lean = float((covered * y).sum() / (covered.sum() + 1e-9))
    inward = 0.25 * np.sign(start + end - tile.mean.shape[1] * scale)
    foot = lean + float(inward)
    return ("first" if foot > 0 else "away"), min(sureness(likeness), abs(foot), 0.7)


def sureness(likeness: float) -> float:
    """How far a likeness lies from the bound, as 0 to 1."""
    return float(np.tanh(abs(likeness - ALIKE) / 0.1))


def _highest(products: Floats) -> float:
    """The greatest value over slips and moves, between slips where a parabola has its top."""
    slip, move = np.unravel_index(products.argmax(), products.shape)
    top = float(products[slip, move])
    if not 0 < slip < len(products) - 1:
        return top
    before, after = float(products[slip - 1, move]), float(products[slip + 1, move])
    bend = before - 2 * top + after
    return top - (before - after) ** 2 / (8 * bend) if bend < 0 else top


def _moves(here: Floats, other: Floats, slip: int = SLIP) -> Floats:
    """Products of every row with the row `slip` up to `slip` down in the other: shape (slips, rows, moves along).

    Moves go by half cells.
    """
    _, high, wide = here.shape
    mine, theirs = np.fft.rfft(here, axis=-1), np.conj(np.fft.rfft(other, axis=-1))
    lines = np.zeros((2 * slip + 1, high, 2 * wide), np.float32)
    for k in range(-slip, slip + 1):
        a, b = max(0, k), min(high, high + k)
        lines[k + slip, a:b] = np.fft.irfft((mine[:, a:b] * theirs[:, a - k : b - k]).sum(0), 2 * wide) * 2
    return lines
