"""How like itself the print is when it is moved along the cloth: the ground of every repeat."""

import numpy as np

from .smooth import Floats, Line, between, peaks, quick_length, soften

ROWS = 3
"""Rows taken together, against noise."""
BLUR = 2.5
"""Small motifs on a cloth that stretches agree only when they are seen a little blurred (dots)."""
FURTHEST = 0.72
"""No move is tried beyond this share of the picture: what is left to compare would be too little."""


class Likeness:
    """Likeness at every move in dots, 1 at none: the normalised autocorrelation of the printed rows.

    `noise` is the standard deviation of a dot. Rows without print are left out, since they are all noise. The
    autocorrelation is had from the power spectrum (Wiener-Khinchin theorem), padded so that nothing wraps round.
    """

    def __init__(self, print_: Floats, noise: float) -> None:
        """Of a print (3, height, width)."""
        _, high, wide = print_.shape
        rows = print_[:, : high // ROWS * ROWS].reshape(3, high // ROWS, ROWS, wide).mean(2)
        along = np.linspace(-1, 1, wide)
        slow = np.linalg.qr(np.stack([along**k for k in range(4)], 1))[0].astype(np.float32)
        rows = np.clip(rows - (rows @ slow) @ slow.T, -1.2, 1.2)
        strength = (rows**2).sum(0)
        by_row = strength.mean(1)
        use = by_row > max(3 * noise**2 / ROWS, 0.02 * float(np.percentile(by_row, 97)))
        if use.sum() < 2:
            use = by_row >= np.percentile(by_row, 70)
        self.smooth, self.blurred = (
            soften(c) for c in correlation(rows[:, use], strength[use].sum(0), int(FURTHEST * wide))
        )

    def at(self, move: float) -> float:
        """The greatest likeness close to a move; 0 where it is beyond reach."""
        slack = 2 + int(0.004 * move)
        near = round(move)
        if near + slack >= len(self.smooth):
            return 0.0
        return float(self.smooth[max(0, near - slack) : near + slack + 1].max())

    def shortest(self, least: int) -> int | None:
        """The shortest move in dots that no longer one clearly betters; None where there is no peak at all.

        Where small motifs lose each other on a stretched cloth, what is seen through the blur counts too, if it
        goes into the sharp answer a whole number of times.
        """
        sharp, soft = _shortest(self.smooth, least), _shortest(self.blurred, 3 * least)
        if sharp and soft and 1.5 < sharp / soft < 7 and self.blurred[soft] > 0.6:
            times = round(sharp / soft)
            if abs(sharp / times - soft) < 2 + 0.02 * soft:
                return soft
        return sharp

    def exact(self, move: float) -> float:
        """The move to a part of a dot: followed from peak to peak as far as the picture goes."""
        line, last = self.smooth, self.smooth[int(move)]
        times = 1
        while True:
            far = times * move
            slack = max(3, int(min(0.30 * move, 0.012 * far + 3)))
            low, high = round(far) - slack, round(far) + slack + 1
            if high >= len(line) - 1:
                return move
            top = low + int(np.argmax(line[low:high]))
            if line[top] <= 0.55 * last:
                return move
            if low < top < high - 1:
                move = between(line, top) / times
            times = times + 1 if times < 3 else int(times * 1.5)


def correlation(rows: Floats, strength: Line | Floats, furthest: int) -> tuple[Line, Line]:
    """Autocorrelation of rows (..., width) for moves 0 to `furthest`, over what each move leaves to compare: as it is,
    and with the rows blurred by `BLUR`.

    `strength` is the sum of squares in each column. Sum of products over the root of the products of both sums of
    squares, as in any handbook's correlation coefficient about zero.
    """
    wide = rows.shape[-1]
    length = quick_length(wide + furthest)
    spectrum = np.fft.rfft(rows, length, axis=-1)
    power = (spectrum.real**2 + spectrum.imag**2).reshape(-1, spectrum.shape[-1]).sum(0, dtype=np.float64)
    blur = np.exp(-((2 * np.pi * BLUR * np.arange(len(power)) / length) ** 2))
    total = np.concatenate([[0.0], np.cumsum(strength, dtype=np.float64)])
    moves = np.arange(furthest)
    both = np.sqrt(np.maximum(total[wide - moves] * (total[wide] - total[moves]), 1e-12))
    fine, coarse = (np.fft.irfft(p, length)[:furthest] for p in (power, power * blur))
    return fine / both, coarse / both * (fine[0] / max(coarse[0], 1e-12))


def _shortest(line: Line, least: int) -> int | None:
    """The first peak as high as the highest, or nearly so where the highest lies at a multiple of it."""
    found = [p + least for p in peaks(line[least:], 0.05) if p + least < len(line) - 2]
    if not found:
        return None
    top = max(found, key=lambda p: line[p])
    lost = 1 - line[top]
    for p in found:
        times = round(top / p)
        whole = 1 < times <= 6 and abs(top / times - p) < 1.5 + 0.01 * p
        if line[p] >= line[top] - (0.10 + 0.20 * lost if whole else 0.02 + 0.06 * lost):
            return p
    return top
