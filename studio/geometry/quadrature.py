"""How long a cubic is: the integral of its speed, to 1e-6 mm."""

import math
from typing import TypeAlias

Speed: TypeAlias = tuple[float, float, float, float, float, float]
"""A third of a cubic's speed as a polynomial of its parameter: x and y of the constant, the linear, the square term."""
_NODES = (
    (0.0, 0.5688888888888889),
    (0.5384693101056831, 0.47862867049936647),
    (-0.5384693101056831, 0.47862867049936647),
    (0.906179845938664, 0.23692688505618908),
    (-0.906179845938664, 0.23692688505618908),
)


def measured(speed: Speed) -> float:
    """Length, mm: five-point Gauss-Legendre (Abramowitz and Stegun, table 25.4) on halves until they agree.

    Where the curve may turn back on itself its speed has a corner, and halves can agree by chance: there they must
    agree twice running.
    """
    ux, uy, bx, by, ax, ay = speed
    vx, vy, wx, wy = ux + bx / 2, uy + by / 2, ux + bx + ax, uy + by + ay
    turns = min(ux * vx + uy * vy, vx * wx + vy * wy, ux * wx + uy * wy) <= 0
    return _measured(speed, 0.0, 1.0, _gauss(speed, 0.0, 1.0), 16, 2 if turns else 1)


def _measured(speed: Speed, first: float, last: float, whole: float, depth: int, times: int, agreed: int = 0) -> float:
    mid = (first + last) / 2
    left, right = _gauss(speed, first, mid), _gauss(speed, mid, last)
    agreed = agreed + 1 if abs(left + right - whole) < 1e-7 else 0
    if depth == 0 or agreed == times:
        return left + right
    return _measured(speed, first, mid, left, depth - 1, times, agreed) + _measured(
        speed, mid, last, right, depth - 1, times, agreed
    )


def _gauss(speed: Speed, first: float, last: float) -> float:
    ux, uy, bx, by, ax, ay = speed
    mid, half = (first + last) / 2, (last - first) / 2
    total = 0.0
    for x, w in _NODES:
        t = mid + x * half
        total += w * math.hypot(ux + t * (bx + t * ax), uy + t * (by + t * ay))
    return 3 * total * half
