"""A flat picture of cloth, read: its repeat, its bands and its way."""

import math
from collections.abc import Callable

import numpy as np

from . import bands, ground, pointing, way
from .found import Band, FoundBand, Photo, Print, Progress, Repeat
from .likeness import Likeness
from .smooth import Floats, Pixels, running_mean
from .tile import folded, hidden_multiple
from .weft import straightened

FINEST = 1000
"""Fewer rows than this are looked at: a larger picture is reduced first."""
WIDEST = 2600
"""And no more columns than this."""
SHORTEST = 10.0
"""The shortest repeat looked for (mm)."""
TILE = 60.0
"""Short repeats are taken together up to this length, to see the bands (mm)."""


class _Stopped(Exception):
    """The maker has stopped it."""


def read(photo: Photo, mm_per_dot: float, progress: Progress = lambda share: True) -> Print | None:
    """What is printed on a flat picture (x along the cloth, y from the first selvedge); None when it was stopped.

    `mm_per_dot` is the same both ways. `progress` is told the share done and may answer False to stop.
    """

    def on(share: float) -> None:
        if not progress(share):
            raise _Stopped

    try:
        return _read(photo.pixels, mm_per_dot, on)
    except _Stopped:
        return None


def _read(pixels: Pixels, scale: float, on: Callable[[float], None]) -> Print:
    on(0.0)
    pixels, times = reduced(pixels)
    scale *= times
    on(0.1)
    print_, bare = ground.printed(ground.features(pixels))
    noise = noise_of(print_)
    on(0.35)
    least = max(6, int(SHORTEST / scale))
    alike = Likeness(print_, noise)
    length = alike.shortest(least)
    on(0.5)
    repeat = None
    dots = 0.0
    if length is not None:
        dots = alike.exact(length)
        print_, moved = straightened(print_, dots)
        on(0.65)
        if moved >= 0.3:
            alike = Likeness(print_, noise)
            dots = alike.exact(alike.shortest(least) or length)
        times_more = hidden_multiple(print_, dots, max(1, round(14 / scale)))
        if times_more > 1 and times_more * dots < 0.95 * print_.shape[2]:
            dots *= times_more
            dots = alike.exact(round(dots)) if alike.at(dots) > 0.3 else dots
    on(0.8)
    wide = print_.shape[2]
    base = dots or wide / 4
    whole = base * max(1, math.ceil(TILE / scale / base))
    tile = folded(print_, whole if whole < wide / 2 else base)
    found = bands.strips(tile, noise, scale)
    on(0.9)
    if not found:
        return Print(None, (), (), False, float(np.clip(bare / 0.5, 0, 1)))
    if dots:
        likeness = alike.at(dots)
        seen = wide / dots
        sure = np.clip((likeness - 0.25) / 0.5, 0, 1) * np.clip((seen - 1.2) / 1.3, 0, 1)
        half, double = max(0.0, alike.at(dots / 2)), max(0.0, alike.at(dots * 2))
        repeat = Repeat(dots * scale, _first_gap(tile.mean, dots) * scale, float(sure), half, double)
    parts, small = ([(s.start, s.end) for s in found if s.kind == kind] for kind in ("band", "field"))
    turned = way.turned_likeness(tile, parts, small, scale)
    if small and turned >= way.ALIKE:
        turned = min(turned, pointing.turned_likeness(tile, small, scale))
    borders = []
    for s in found:
        if s.kind == "band":
            stands, way_sure = way.stands(tile, s.start, s.end, scale)
            sure = np.clip((s.strength - 1) / 4, 0, 1) * (1 if s.height > 12 else 0.5) * np.clip(bare / 0.25, 0, 1)
            borders.append(FoundBand(s.start, s.end, stands, float(sure), way_sure))
    on(1.0)
    fields = tuple(Band(s.start, s.end) for s in found if s.kind == "field")
    # copies laid together at a doubtful repeat say little of the print
    sure = min(way.sureness(turned), repeat.sure if repeat else 1.0)
    return Print(repeat, tuple(borders), fields, turned < way.ALIKE, sure)


def reduced(pixels: Pixels) -> tuple[Pixels, int]:
    """The picture with whole squares of dots made one, so that it is small enough to be looked at; and how many."""
    times = max(1, math.ceil((pixels.shape[0] + 1) / FINEST), math.ceil(pixels.shape[1] / WIDEST))
    if times == 1:
        return pixels, 1
    high, wide = pixels.shape[0] // times, pixels.shape[1] // times
    total = np.zeros((high, wide, 3), np.uint32)
    for row in range(times):
        for column in range(times):
            total += pixels[row : high * times : times, column : wide * times : times]
    return (total // times**2).astype(np.uint8), times


def noise_of(print_: Floats) -> float:
    """The standard deviation of a dot's noise, from the middle of the differences of neighbours."""
    some = print_[:, ::3]
    return float(np.median(np.abs(some[:, :, 2:] - some[:, :, :-2]))) / 0.6745 / math.sqrt(2)


def _first_gap(tile: Floats, length: float) -> float:
    """Where in the tile the print is thinnest, within one repeat (dots)."""
    along = (tile**2).sum((0, 1))[None, : max(2, int(length))]
    ring = np.concatenate([along] * 3, 1)
    n = along.shape[1]
    return float(running_mean(ring, max(3, n // 12), 1)[0, n : 2 * n].argmin())
