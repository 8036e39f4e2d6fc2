"""Whether small motifs all point one way, each held against the one that comes to lie on it when the cloth is turned.

A leaf of five dots turned end for end is nineteen parts in twenty the same leaf; what tells is that every leaf of the
field departs from its turned counterpart in the same manner, where light, noise and stretch depart in any.
"""

import math

import numpy as np

from .smooth import Floats, Line, heaps
from .squares import Counts, products, softened, squares, squares_between
from .tile import Tile
from .way import ALIKE, SLIP, alignment, cells

LARGEST = 36.0
"""No motif taller or longer than this is small (mm)."""
MOST = 400
"""Motifs looked at: enough, and they bound the time."""
FEWEST = 6
"""Fewer tell nothing in common."""
REACH = 3
"""Dots a motif may lie off where the strip about it says."""
POINTS = 0.006
"""Share of the motifs' strength which departs in common, from which they point one way."""


def turned_likeness(tile: Tile, fields: list[tuple[float, float]], scale: float) -> float:
    """How like itself a field of small motifs is when the cloth is turned, on the scale of `way.turned_likeness`.

    `fields` are strips in mm from the first selvedge. 1 where too few motifs or copies are there to tell.
    """
    share = common_departure(tile, fields, scale)
    return 1.0 if share is None else float(np.clip(ALIKE + 0.1 * math.log(POINTS / max(share, 1e-6)), 0, 1))


def common_departure(tile: Tile, fields: list[tuple[float, float]], scale: float) -> float | None:
    """The share of the motifs' strength by which all depart from their turned counterparts in the same manner.

    It is had from two halves of the copies, so that noise has no part in it. None where it cannot be told.
    """
    if tile.copies < 2:
        return None
    coarse = cells(tile.mean, scale)
    down = tile.mean.shape[1] // coarse.shape[1]
    high = coarse.shape[1] * down
    mean, even, odd = (softened(t[:, :high]) for t in (tile.mean, tile.even, tile.odd))
    middles, size = _motifs(mean, fields, scale)
    if len(middles) < FEWEST:
        return None
    corners: Counts = np.round(middles - size / 2).astype(np.int64)
    moves = _moves(mean, corners, size, _starts(coarse, middles[:, 0] / down, (down, mean.shape[2] / coarse.shape[2])))
    turned = [t[:, ::-1, ::-1] for t in (even, odd)]
    there = corners - moves
    first, second = (squares(t, corners[:, 0], corners[:, 1], size) for t in (even, odd))
    first_there, second_there = (squares_between(t, there[:, 0], there[:, 1], size) for t in turned)
    one, other = _mean(first, first_there), _mean(second, second_there)
    usual, strength = _mean(one, other), products(one, other).mean()
    one, other = (_common(usual, d) for d in (first - first_there, second - second_there))
    return float((one * other).sum() / (strength + 1e-9))


def _mean(one: Floats, other: Floats) -> Floats:
    return np.asarray((one + other) / 2, np.float32)


def _motifs(mean: Floats, fields: list[tuple[float, float]], scale: float) -> tuple[Line, int]:
    """The middles (row, column) of the small motifs of all fields, and the side of a square that holds one (dots)."""
    strength = np.sqrt((mean**2).sum(0))
    within = np.zeros(len(strength), bool)
    for start, end in fields:
        within[max(0, int(start / scale)) : math.ceil(end / scale)] = True
    strength *= within[:, None]
    strongest = np.partition(strength[within].ravel(), -max(10, int(0.01 * within.sum() * strength.shape[1])))
    level = 0.4 * strongest[-max(10, int(0.01 * len(strongest))) :].mean()
    found = np.array([h for h in heaps(strength > level)]).reshape(-1, 4)
    tall, long = found[:, 1] - found[:, 0], found[:, 3] - found[:, 2]
    found = found[(np.maximum(tall, long) * scale < LARGEST) & (tall * long >= 6)]
    if not len(found):
        return np.zeros((0, 2)), 0
    size = int(max(np.percentile(found[:, k + 1] - found[:, k], 75) for k in (0, 2))) + 5
    if len(found) > MOST:
        found = found[np.linspace(0, len(found) - 1, MOST).astype(int)]
    return np.stack([(found[:, 0] + found[:, 1]) / 2, (found[:, 2] + found[:, 3]) / 2], 1), size + 1 - size % 2


def _starts(coarse: Floats, rows: Line, dots: tuple[int, float]) -> Counts:
    """Down and along (dots) to each motif's turned counterpart, as the strip about it says; `rows` in cells."""
    lines, near = alignment(coarse)
    strip = (rows // 8).astype(int)
    starts = np.zeros((len(rows), 2), np.int64)
    for k in np.unique(strip):
        some = lines[:, max(0, 8 * k - 8) : 8 * k + 16].sum(1)[:, near]
        slip, move = np.unravel_index(some.argmax(), some.shape)
        starts[strip == k] = (int(slip) - SLIP) * dots[0], round(near[int(move)] / 2 * dots[1])
    return starts


def _moves(mean: Floats, corners: Counts, size: int, starts: Counts) -> Line:
    """The same to a part of a dot: where each motif and its counterpart are most alike."""
    here = squares(mean, corners[:, 0], corners[:, 1], size)
    there = corners - starts - REACH
    wide = squares(mean[:, ::-1, ::-1], there[:, 0], there[:, 1], size + 2 * REACH)
    tries = range(2 * REACH, -1, -1)
    alike = np.zeros((2 * REACH + 1, 2 * REACH + 1, len(here)))
    for i, top in enumerate(tries):
        for j, left in enumerate(tries):
            other = wide[:, :, top : top + size, left : left + size]
            alike[i, j] = products(here, other) / np.sqrt(products(other, other) + 1e-6)
    down, along = np.unravel_index(alike.reshape(-1, len(here)).argmax(0), alike.shape[:2])
    n = np.arange(len(here))
    row, column = np.clip(down, 1, 2 * REACH - 1), np.clip(along, 1, 2 * REACH - 1)
    exact = [
        row + _top(*(alike[row + k, along, n] for k in (-1, 0, 1))),
        column + _top(*(alike[down, column + k, n] for k in (-1, 0, 1))),
    ]
    return np.asarray(starts + np.stack(exact, 1) - REACH, np.float64)


def _top(before: Line, here: Line, after: Line) -> Line:
    """Where a parabola through three values has its top, from -1 to 1; 0 where it has none."""
    bend = before - 2 * here + after
    return np.asarray(np.where(bend < -1e-9, np.clip((before - after) / 2 / np.minimum(bend, -1e-9), -1, 1), 0.0))


def _common(usual: Floats, departure: Floats) -> Floats:
    """The mean departure, without what a motif that lies a little off, paler or more blurred departs by.

    Each motif's own slopes and bends are taken out of its departure. What is uneven from left to right is left out:
    copies that are laid together a little askew are smeared so.
    """
    down, along = np.gradient(usual, axis=2), np.gradient(usual, axis=3)
    harmless = [usual, down, along, np.gradient(down, axis=2), np.gradient(along, axis=3), np.gradient(down, axis=3)]
    basis = np.linalg.qr(np.stack([h.reshape(len(usual), -1) for h in harmless], 2))[0]
    flat = departure.reshape(len(usual), -1, 1)
    mean = (flat - basis @ (basis.transpose(0, 2, 1) @ flat)).mean(0).reshape(usual.shape[1:])
    return _mean(mean, mean[:, :, ::-1])
