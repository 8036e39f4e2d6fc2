"""Motifs for made-up cloths, invented for the tests: closed shapes in a box from −0.5 to 0.5, their top at −y.

Each is a list of (outline, which of its colours). Those of STANDING have a top and a foot; those of TURNING look the
same when they are turned by 180 degrees.
"""

import math
from collections.abc import Callable

Outline = list[tuple[float, float]]
Motif = list[tuple[Outline, int]]


def oval(x: float, y: float, rx: float, ry: float, n: int = 28) -> Outline:
    """An ellipse about (x, y)."""
    return [(x + rx * math.cos(2 * math.pi * k / n), y + ry * math.sin(2 * math.pi * k / n)) for k in range(n)]


def bar(x: float, y: float, u: float, v: float, w: float) -> Outline:
    """A straight bar of width w."""
    long = math.hypot(u - x, v - y) or 1.0
    a, b = -(v - y) / long * w / 2, (u - x) / long * w / 2
    return [(x + a, y + b), (u + a, v + b), (u - a, v - b), (x - a, y - b)]


def blade(x: float, y: float, u: float, v: float, w: float, n: int = 10) -> Outline:
    """A pointed leaf from one end to the other."""
    a, b = -(v - y) * w, (u - x) * w
    side = [(k / n, math.sin(math.pi * k / n)) for k in range(n + 1)]
    there = [(x + (u - x) * t + a * s, y + (v - y) * t + b * s) for t, s in side]
    return there + [(x + (u - x) * t - a * s, y + (v - y) * t - b * s) for t, s in reversed(side)]


def fir() -> Motif:
    """A fir of three storeys."""
    storeys = [
        ([(0.0, -0.5 + 0.25 * k), (0.2 + 0.1 * k, -0.1 + 0.2 * k), (-0.2 - 0.1 * k, -0.1 + 0.2 * k)], 0)
        for k in range(3)
    ]
    return [([(-0.06, 0.25), (0.06, 0.25), (0.06, 0.5), (-0.06, 0.5)], 1), *storeys]


def boat() -> Motif:
    """A sailing boat."""
    return [
        ([(-0.45, 0.2), (0.45, 0.2), (0.28, 0.5), (-0.28, 0.5)], 0),
        (bar(0, 0.2, 0, -0.5, 0.04), 1),
        ([(0.04, -0.48), (0.04, 0.12), (0.4, 0.12)], 1),
        ([(-0.04, -0.3), (-0.04, 0.12), (-0.3, 0.12)], 2),
    ]


def bell() -> Motif:
    """A hanging bell."""
    half = [(0.05, -0.5), (0.2, -0.3), (0.22, 0.05), (0.38, 0.32)]
    return [(half + [(-x, y) for x, y in reversed(half)], 0), (oval(0, 0.4, 0.1, 0.1), 1)]


def toadstool() -> Motif:
    """A cap with spots on a stalk."""
    cap = [(0.5 * math.cos(a), -0.02 - 0.48 * math.sin(a)) for a in [math.pi * k / 16 for k in range(17)]]
    return [
        (cap, 0),
        ([(-0.1, 0), (0.1, 0), (0.16, 0.5), (-0.16, 0.5)], 1),
        (oval(-0.18, -0.2, 0.08, 0.06), 2),
        (oval(0.15, -0.25, 0.09, 0.07), 2),
    ]


def hen() -> Motif:
    """A hen: neither side like the other."""
    return [
        (oval(0.02, 0.08, 0.36, 0.26), 0), (oval(-0.28, -0.28, 0.13, 0.15), 0), (blade(-0.3, -0.25, 0, 0.15, 0.3), 0),
        ([(0.2, 0.05), (0.5, -0.35), (0.42, 0.15)], 1), (bar(-0.05, 0.3, -0.08, 0.5, 0.05), 2), (bar(0.1, 0.3, 0.1, 0.5, 0.05), 2),
        ([(-0.32, -0.4), (-0.24, -0.5), (-0.2, -0.38)], 2),
    ]  # fmt: skip


def thistle() -> Motif:
    """A bristling head on a stalk with two leaves."""
    bristles = [
        (blade(0, -0.12, 0.36 * math.sin(a), -0.12 - 0.38 * math.cos(a), 0.12), 0)
        for a in (-1.1, -0.55, 0.0, 0.55, 1.1)
    ]
    return [
        (bar(0, 0.5, 0, 0, 0.05), 1),
        (blade(0, 0.42, 0.35, 0.12, 0.18), 1),
        (blade(0, 0.35, -0.32, 0.1, 0.18), 1),
        *bristles,
        (oval(0, -0.02, 0.15, 0.14), 2),
    ]


def sprig() -> Motif:
    """A small stem with leaves in pairs, all pointing up."""
    leaves = [
        (blade(0, y, s * (0.34 - 0.1 * k), y - 0.22, 0.22), 0) for k, y in enumerate((0.4, 0.15, -0.1)) for s in (-1, 1)
    ]
    return [(bar(0, 0.5, 0, -0.3, 0.05), 1), (blade(0, -0.15, 0, -0.5, 0.25), 0), *leaves]


def urn() -> Motif:
    """An urn with a foot."""
    half = [(0.2, -0.45), (0.12, -0.3), (0.34, -0.02), (0.1, 0.32), (0.22, 0.5)]
    return [
        (half + [(-x, y) for x, y in reversed(half)], 0),
        (oval(0, -0.02, 0.16, 0.08), 1),
        (oval(0, -0.46, 0.26, 0.04), 2),
    ]


def ring() -> Motif:
    """A ring with a heart."""
    return [(oval(0, 0, 0.48, 0.48), 0), (oval(0, 0, 0.3, 0.3), 1), (oval(0, 0, 0.14, 0.14), 0)]


def windmill() -> Motif:
    """Four sails, turned one way."""
    sails = []
    for k in range(4):
        c, s = math.cos(k * math.pi / 2), math.sin(k * math.pi / 2)
        sails.append(([(c * x - s * y, s * x + c * y) for x, y in [(0, 0), (0.05, -0.48), (0.38, -0.3)]], k % 2))
    return sails


def hourglass() -> Motif:
    """Two triangles, tip to tip."""
    return [
        ([(-0.35, -0.5), (0.35, -0.5), (0.05, 0), (0.35, 0.5), (-0.35, 0.5), (-0.05, 0)], 0),
        (oval(0, 0, 0.14, 0.14), 1),
    ]


def cross() -> Motif:
    """Two bars and a square."""
    return [
        (bar(-0.5, 0, 0.5, 0, 0.16), 0),
        (bar(0, -0.5, 0, 0.5, 0.16), 0),
        ([(0, -0.22), (0.22, 0), (0, 0.22), (-0.22, 0)], 1),
    ]


def eye() -> Motif:
    """A lens with a dot."""
    return [(blade(-0.5, 0, 0.5, 0, 0.38), 0), (oval(0, 0, 0.15, 0.15), 1)]


def zigzag() -> Motif:
    """A bent bar."""
    return [
        (bar(-0.4, -0.42, 0.32, -0.42, 0.14), 0),
        (bar(0.32, -0.42, -0.32, 0.42, 0.14), 1),
        (bar(-0.32, 0.42, 0.4, 0.42, 0.14), 0),
    ]


STANDING: list[Callable[[], Motif]] = [fir, boat, bell, toadstool, hen, thistle, sprig, urn]
TURNING: list[Callable[[], Motif]] = [ring, windmill, hourglass, cross, eye, zigzag]
