"""Reading pages back with tools that are not ours: pypdf for what a PDF draws, pdfium for how it looks."""

from pathlib import Path
from typing import Any, NamedTuple

import numpy as np
import pypdf
import pypdfium2

POINT = 25.4 / 72
_PAINT = {b"S", b"s", b"f", b"f*", b"B", b"B*", b"b", b"b*", b"n"}


class Seen(NamedTuple):
    """One painted path: its points in mm from the page's top left corner, its line's width in mm, its clip."""

    points: np.ndarray
    width: float
    stroked: bool
    clip: tuple[float, float, float, float] | None

    @property
    def size(self) -> tuple[float, float]:
        """Width and height of its box."""
        wide, high = np.ptp(self.points, axis=0)
        return float(wide), float(high)

    @property
    def corner(self) -> tuple[float, float]:
        """Its box's top left corner."""
        left, top = self.points.min(axis=0)
        return float(left), float(top)


def page_sizes(path: Path) -> list[tuple[float, float]]:
    """Width and height of each page, mm."""
    return [(float(p.mediabox.width) * POINT, float(p.mediabox.height) * POINT) for p in pypdf.PdfReader(path).pages]


def seen_on(page: pypdf.PageObject) -> list[Seen]:
    """Every path a page paints, in order; curves by their end and control points."""
    left, top = float(page.mediabox.left), float(page.mediabox.top)
    matrix, width, clip = np.eye(3), 1.0, None
    kept: list[tuple[Any, ...]] = []
    points: list[np.ndarray] = []
    cuts = False
    found = []
    for values, sign in page.get_contents().operations:
        if sign == b"q":
            kept.append((matrix, width, clip))
        elif sign == b"Q":
            matrix, width, clip = kept.pop()
        elif sign == b"cm":
            a, b, c, d, e, f = map(float, values)
            matrix = np.array([[a, b, 0], [c, d, 0], [e, f, 1]]) @ matrix
        elif sign == b"w":
            width = float(values[0]) * abs(np.linalg.det(matrix[:2, :2])) ** 0.5 * POINT
        elif sign in (b"m", b"l", b"c", b"re"):
            places = np.array([float(v) for v in values]).reshape(-1, 2)
            if sign == b"re":
                places = np.array([places[0], places[0] + places[1]])
            on = np.c_[places, np.ones(len(places))] @ matrix
            points += [np.array([(x - left) * POINT, (top - y) * POINT]) for x, y, _ in on]
        elif sign in (b"W", b"W*"):
            cuts = True
        elif sign in _PAINT:
            if points and cuts:
                run = np.array(points)
                clip = (*run.min(axis=0), *run.max(axis=0))
            elif points and sign != b"n":
                found.append(Seen(np.array(points), width, sign in (b"S", b"s", b"B", b"B*", b"b", b"b*"), clip))
            points, cuts = [], False
    return found


def of_size(seen: list[Seen], wide: float, high: float, near: float = 0.01) -> list[Seen]:
    """The stroked paths of that size."""
    return [s for s in seen if s.stroked and abs(s.size[0] - wide) <= near and abs(s.size[1] - high) <= near]


def looked_at(path: Path, page: int, dots: float) -> np.ndarray:
    """How a page looks: rows of grey dots, 0 black to 255 white, so many a mm.

    pdfium stretches a page to whole dots, upwards: a hair less than wanted keeps 297 mm from becoming 2971 dots.
    """
    picture = pypdfium2.PdfDocument(path)[page].render(scale=dots * POINT * (1 - 1e-6), grayscale=True)
    return picture.to_numpy().reshape(picture.height, picture.stride)[:, : picture.width].astype(int)
