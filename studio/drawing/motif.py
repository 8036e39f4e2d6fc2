"""The print of a cloth, suggested: a flower a repeat, the same on the screen and on paper."""

import math

from studio.brief import Cloth, PrintBand
from studio.geometry import Cubic, Path, Point, polyline

_ROUND = 0.5522847498307936
"""How far the handles of a quarter ellipse reach, as a share of its half axis (the usual cubic, 4/3 tan(pi/8))."""
_LEAST = 20.0
"""Where no repeat is known, flowers stand no closer than this (mm)."""


def step_of(cloth: Cloth, band: PrintBand) -> float:
    """From flower to flower along the cloth, mm: the repeat, or the height of the band where there is none."""
    return cloth.repeat or max(band.end - band.start, _LEAST)


def places(cloth: Cloth, band: PrintBand, start: float, end: float) -> tuple[Point, ...]:
    """The middles of the flowers between two distances from the cut end, mm of the cloth."""
    step, middle = step_of(cloth, band), (band.start + band.end) / 2
    first, past = (math.floor((x - cloth.offset) / step) for x in (start, end))
    return tuple(Point(cloth.offset + (k + 0.5) * step, middle) for k in range(first, past + 1))


def motif(cloth: Cloth, band: PrintBand) -> tuple[Path, ...]:
    """A flower about its middle, mm: on a stem where it has a top, round where it stands either way."""
    high = min(band.end - band.start, step_of(cloth, band)) * 0.86
    if band.tops == "either":
        petal = _ellipse(Point(0, -high * 0.3), high * 0.11, high * 0.17)
        return (*(petal.turned(60 * k, Point(0, 0)) for k in range(6)), _ellipse(Point(0, 0), high * 0.1, high * 0.1))
    way = -high if band.tops == "first" else high
    stem = polyline((Point(0, -way / 2), Point(0, way * 0.1)))
    head = _ellipse(Point(0, way * 0.28), high * 0.16, high * 0.2)
    return (stem, head, *(_leaf(side * high, way) for side in (-1, 1)))


def _leaf(aside: float, way: float) -> Path:
    root, tip = Point(0, -way * 0.3), Point(aside * 0.2, way * 0.02)
    under, over = Point(aside * 0.26, -way * 0.22), Point(aside * 0.04, -way * 0.1)
    return Path((_quadratic(root, under, tip), _quadratic(tip, over, root)))


def _quadratic(start: Point, control: Point, end: Point) -> Cubic:
    """A parabola's arc as a cubic, which it is exactly."""
    return Cubic(start, start.towards(control, 2 / 3), end.towards(control, 2 / 3), end)


def _ellipse(centre: Point, wide: float, high: float) -> Path:
    """A closed ellipse of those half axes, by four cubics."""
    unit = [(1, 0), (1, _ROUND), (_ROUND, 1), (0, 1)]
    quarters = []
    for k in range(4):
        turned = [(x, y) if k == 0 else (-y, x) if k == 1 else (-x, -y) if k == 2 else (y, -x) for x, y in unit]
        quarters.append(Cubic(*(centre.moved(x * wide, y * high) for x, y in turned)))
    return Path(tuple(quarters))
