"""One repeat of the print: all its copies along the cloth laid over each other."""

import numpy as np
from msgspec import Struct

from .smooth import Floats, between, running_mean

EVIDENCE = 0.022
"""Motifs take turns when likeness gains more than this by it, weighed by the strength of the strip."""


class Tile(Struct, frozen=True, eq=False):
    """The mean of the copies, and of every other one of them: shape (3, height, repeat)."""

    mean: Floats
    even: Floats
    odd: Floats
    copies: int


def copies(print_: Floats, length: float) -> list[Floats]:
    """Every whole copy of a repeat (dots), each moved a little to lie on the others: cloth stretches, lenses bend."""
    count = max(1, int((print_.shape[2] - 1) / length))
    laid = _cut(print_, length, np.zeros(count))
    if count == 1:
        return laid
    step = 6
    rows = print_.shape[1] // step * step
    spectra = [
        np.fft.rfft(c[:, :rows].reshape(3, rows // step, step, -1).mean(2), axis=-1).astype(np.complex64) for c in laid
    ]
    wide = laid[0].shape[2]
    waves = 2j * np.pi * np.arange(spectra[0].shape[-1]) / wide
    moves = np.zeros(count)
    for _ in range(2):
        middle = np.conj(sum(s * np.exp(waves * m) for s, m in zip(spectra, moves, strict=True)) / count)
        for n, spectrum in enumerate(spectra):
            line = np.fft.irfft((spectrum * middle).sum((0, 1)), wide)
            move = between(line, int(np.argmax(line)))
            move -= wide if move > wide / 2 else 0
            moves[n] = np.clip(move, -0.03 * wide - 2, 0.03 * wide + 2)
    return _cut(print_, length, moves)


def folded(print_: Floats, length: float) -> Tile:
    """The mean copy."""
    laid = copies(print_, length)
    if len(laid) == 1:
        return Tile(laid[0], laid[0], laid[0], 1)
    even, odd = (np.mean(laid[k::2], 0) for k in (0, 1))
    n = len(laid)
    mean = (even * ((n + 1) // 2) + odd * (n // 2)) / n
    return Tile(mean, even, odd, n)


def hidden_multiple(print_: Floats, length: float, rows: int) -> int:
    """How many repeats make a longer one, in which colours or motifs take turns; 1 where none do.

    Copies are compared pair by pair in strips of `rows` rows: with a period of k, copies k apart are alike and the
    others less so. The answer is the least common multiple over the strips.
    """
    laid = copies(print_ - print_.mean(2, keepdims=True), length)
    n = len(laid)
    if n < 4:
        return 1
    high = laid[0].shape[1] // rows * rows
    stack = np.stack([running_mean(c[:, :high], 3, 2)[..., ::2] for c in laid])
    strips = stack.reshape(n, 3, high // rows, rows, -1).transpose(2, 0, 1, 3, 4).reshape(high // rows, n, -1)
    products = strips @ strips.transpose(0, 2, 1)
    size = np.sqrt(np.einsum("gnn->gn", products))
    alike = products / (size[:, :, None] * size[:, None, :] + 1e-9)
    strength = (size**2).mean(1)
    strength = strength / (np.percentile(strength, 95) + 1e-9)
    first, second = np.triu_indices(n, 1)
    apart = second - first
    multiple = 1
    for strip in np.flatnonzero(strength > EVIDENCE / 2):
        pairs = alike[strip][first, second]
        best, best_gain = 1, 0.0
        for k in range(2, min(6, n // 2) + 1):
            same = apart % k == 0
            if same.sum() < 3:
                continue
            mean = pairs[same].mean()
            gain = mean - max(pairs[apart % k == r].mean() for r in range(1, k))
            clear = np.percentile(pairs[same], 15) - np.percentile(pairs[~same], 85)
            if (
                gain > max(0.1, 0.35 * (1 - mean), EVIDENCE / strength[strip], best_gain)
                and mean > 0.55
                and clear > 0.04
            ):
                best, best_gain = k, gain
        multiple = int(np.lcm(multiple, best))
    return multiple if multiple <= 12 else 1


def _cut(print_: Floats, length: float, moves: "np.typing.NDArray[np.float64]") -> list[Floats]:
    """Copies from their places on the cloth, read between dots."""
    wide = print_.shape[2]
    cut = []
    for n, move in enumerate(moves):
        at = np.clip(np.arange(int(length)) + n * length + move, 0, wide - 1.001)
        low = at.astype(int)
        part = (at - low).astype(np.float32)
        cut.append(print_[:, :, low] * (1 - part) + print_[:, :, low + 1] * part)
    return cut
