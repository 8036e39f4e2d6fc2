"""The cloth's corners on a photograph: where it ends and the table begins."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from studio.geometry import Point

from .found import Corners, Photo
from .smooth import Floats, Line, running_mean

COARSE = 1000
"""The sides are first looked for in a picture of about this width (dots)."""
LEAST = 0.3
"""The cloth covers at least this share of a row or column that tells (of the picture)."""
WHOLE = 0.25
"""How sure it is that the cloth fills the picture when no side of it is seen."""
Side = tuple[float, float, float]
"""A line q = slope p + start, and the share of places that lie on it."""


def find_corners(photo: Photo) -> Corners:
    """The four corners, or those of the picture where the cloth fills it."""
    step = max(1, photo.width // COARSE)
    small = photo.pixels[::step, ::step].astype(np.float32).transpose(2, 0, 1)
    on = _cloth(running_mean(running_mean(small, 3, 1), 3, 2))
    high, wide = on.shape
    columns, rows = (np.flatnonzero(on.sum(axis) > LEAST * on.shape[axis]) for axis in (0, 1))
    if len(columns) < 0.2 * wide or len(rows) < 0.2 * high:
        return filling(photo)
    columns = columns[len(columns) // 12 : -(len(columns) // 12)]
    rows = rows[len(rows) // 8 : -(len(rows) // 8)]
    top, foot = _line(columns, on[:, columns].argmax(0)), _line(columns, high - on[::-1, columns].argmax(0))
    left, right = _line(rows, on[rows].argmax(1)), _line(rows, wide - on[rows, ::-1].argmax(1))
    rough = [_meeting(a, b) * step for a, b in ((top, left), (top, right), (foot, right), (foot, left))]
    points = _refined(photo, rough, step)
    sure = min(side[2] for side in (top, foot, left, right))
    inside = all(-0.2 * photo.width < x < 1.2 * photo.width and -0.2 * photo.height < y < 1.2 * photo.height
                 for x, y in points)  # fmt: skip
    if sure < 0.4 or not inside:
        return filling(photo)
    a, b, c, d = (Point(float(np.clip(x, 0, photo.width)), float(np.clip(y, 0, photo.height))) for x, y in points)
    return Corners((a, b, c, d), sure)


def filling(photo: Photo) -> Corners:
    """The corners of the picture itself."""
    w, h = float(photo.width), float(photo.height)
    return Corners((Point(0.0, 0.0), Point(w, 0.0), Point(w, h), Point(0.0, h)), WHOLE)


def _cloth(colours: Floats) -> NDArray[np.bool_]:
    """Dots that do not look like the picture's rim, the table, whose colour may change smoothly."""
    _, high, wide = colours.shape
    rim = np.zeros((high, wide), bool)
    thick = max(3, int(0.015 * wide))
    rim[:thick] = rim[-thick:] = True
    rim[:, :thick] = rim[:, -thick:] = True
    y, x = (v.ravel() for v in np.mgrid[0 : 1 : high * 1j, 0 : 1 : wide * 1j])
    shape = np.stack([np.ones_like(x), x, y, x * y, x * x, y * y], 1)
    dots = colours.reshape(3, -1).T
    table = near = rim.ravel()
    for _ in range(4):
        fit = np.linalg.lstsq(shape[near], dots[near], rcond=None)[0]
        away = np.sqrt(((dots - shape @ fit) ** 2).sum(1))
        spread = float(np.median(away[table])) * 1.5
        near = table & (away < 2.5 * spread)
    on = (away > max(3.2 * spread, 14.0)).reshape(high, wide).astype(np.float32)
    return np.asarray(running_mean(running_mean(on[None], 5, 1), 5, 2)[0] > 0.6)


def _line(p: NDArray[np.int64], q: NDArray[np.int64]) -> Side:
    """The line most places lie on: least median of squares to begin with, then least squares on what lies near."""
    dice = np.random.default_rng(0)
    best: tuple[float, float, float] = (np.inf, 0.0, float(np.median(q)))
    for i, j in dice.integers(0, len(p), (160, 2)):
        if abs(p[i] - p[j]) < 0.15 * (p.max() - p.min()) or p[i] == p[j]:
            continue
        slope = (q[j] - q[i]) / (p[j] - p[i])
        off = float(np.percentile(np.abs(q - slope * p - (q[i] - slope * p[i])), 60))
        best = min(best, (off, float(slope), float(q[i] - slope * p[i])))
    off, slope, start = best
    near = np.ones(len(p), bool)
    for _ in range(5):
        away = np.abs(q - slope * p - start)
        near = away < max(3 * off, 2.0)
        if near.sum() < 2:
            break
        slope, start = np.polyfit(p[near], q[near], 1)
        off = float(np.median(away[near]))
    return float(slope), float(start), float(near.mean())


def _meeting(level: Side, upright: Side) -> Line:
    """Where y = a x + c meets x = b y + d."""
    y = (level[0] * upright[1] + level[1]) / (1 - level[0] * upright[0])
    return np.array([upright[0] * y + upright[1], y])


def _refined(photo: Photo, rough: list[Line], step: int) -> list[Line]:
    """Each side moved to where the colour is half-way between table and cloth, in the full picture."""
    centre = np.mean(rough, 0)
    lines = []
    reach = 6 + 4 * step
    out = np.arange(-reach, reach)
    share = np.linspace(0.04, 0.96, 240)
    for k in range(4):
        a, b = rough[k], rough[(k + 1) % 4]
        along = (b - a) / max(1e-9, float(np.hypot(*(b - a))))
        inward = np.array([-along[1], along[0]])
        inward = inward if inward @ (centre - a) > 0 else -inward
        at = (a + (b - a) * share[:, None])[:, None] + inward * out[:, None]
        x = np.clip(at[..., 0].astype(int), 0, photo.width - 1)
        y = np.clip(at[..., 1].astype(int), 0, photo.height - 1)
        seen = running_mean(photo.pixels[y, x].astype(np.float32), 3, 0)
        table, cloth = seen[:, : reach // 2].mean(1, keepdims=True), seen[:, -reach // 2 :].mean(1, keepdims=True)
        step_colour = cloth - table
        size = (step_colour**2).sum(2)
        part = ((seen - table) * step_colour).sum(2) / np.maximum(size, 1)
        first = np.maximum((part > 0.5).argmax(1), 1)
        n = np.arange(len(first))
        before, after = part[n, first - 1], part[n, first]
        off = out[first - 1] + (0.5 - before) / np.maximum(after - before, 1e-3)
        good = (size[:, 0] > 300) & (first > 1)
        if good.sum() < 40:
            lines.append((a, b))
            continue
        near, fit = good, np.zeros(2)
        for _ in range(5):
            fit = np.polyfit(share[near], off[near], 1)
            away = np.abs(off - np.polyval(fit, share))
            near = good & (away < max(2.5 * float(np.median(away[near])), 0.7))
        lines.append((a + inward * fit[1], b + inward * (fit[0] + fit[1])))
    return [_crossing(lines[k - 1], lines[k]) for k in range(4)]


def _crossing(one: tuple[Line, Line], other: tuple[Line, Line]) -> Line:
    """Where two lines through two points each cross."""
    (a, b), (c, d) = one, other
    share = np.linalg.solve(np.stack([b - a, c - d], 1), c - a)
    return np.asarray(a + (b - a) * share[0])
