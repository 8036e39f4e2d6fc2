"""What is done with a photograph off the window's thread: it is opened, laid flat and read."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

from studio.geometry import Point

if TYPE_CHECKING:
    from studio.cloth.photo.flat import Flat
    from studio.cloth.photo.found import Corners, Photo, Print, Progress


def open_picture(path: Path, on: Progress) -> tuple[Photo, Corners]:
    """The photograph in a file, and the cloth's corners on it. Raises `Trouble`."""
    from studio.cloth.photo.corners import find_corners
    from studio.cloth.photo.picture import open_photo

    on(0.1)
    photo = open_photo(path)
    on(0.6)
    return photo, find_corners(photo)


def read_print(
    photo: Photo, corners: Corners, length: float, between: tuple[Point, Point] | None, on: Progress
) -> tuple[Flat, Print] | None:
    """The cloth laid flat, and its print; None if it was stopped. The length (mm) is as `straighten` takes it, which
    raises `Trouble`.
    """
    from studio.cloth.photo.flat import straighten
    from studio.cloth.photo.reading import read

    flat = straighten(photo, corners, length, between)
    found = read(flat.photo, flat.mm_per_dot, lambda share: on(0.2 + 0.8 * share))
    return None if found is None else (flat, found)
