"""The picture, read back with Pillow."""

from pathlib import Path

import numpy as np
import pytest
from hostile import HOSTILE
from PIL import Image

from studio.drawing import Stroke, Words
from studio.geometry import Point, line, rectangle
from studio.paper.page import Page, Size
from studio.paper.png import MOST, density, write_png

pytestmark = pytest.mark.usefixtures("qapp")


def test_density_is_written_in_the_file(tmp_path: Path):
    """A viewer that heeds the density shows the page at true size (PNG, chunk pHYs: dots a metre)."""
    page = Page(Size(210, 297), (Stroke(rectangle(20, 30, 120, 130), "cut"),))
    assert 6.0 == write_png(tmp_path / "p.png", page, 6)
    with Image.open(tmp_path / "p.png") as picture:
        assert (1260, 1782) == picture.size
        assert (6 * 25.4, 6 * 25.4) == pytest.approx(picture.info["dpi"], abs=0.01)
        row = np.asarray(picture.convert("L"))[80 * 6]
    first, last = np.split(np.flatnonzero(row < 160), [np.argmax(np.diff(np.flatnonzero(row < 160)) > 2) + 1])
    assert 600 == pytest.approx(last.mean() - first.mean(), abs=0.5)


def test_a_large_page_gets_a_coarser_picture(tmp_path: Path):
    """A whole roll does not fill the computer: at most 100 million dots, and the density says so."""
    page = Page(Size(914.4, 4000), (Stroke(line(0, 0, 914, 4000), "cut"),))
    fine = density(page.size, 8)
    assert fine < 8
    assert 914.4 * 4000 * fine**2 == pytest.approx(MOST, rel=0.01)
    assert MOST >= (914.4 * fine + 1) * (4000 * fine + 1)
    assert 8 == density(Size(210, 297), 8)


def test_hostile_words_do_no_harm(tmp_path: Path):
    """Whatever was typed, the picture is painted."""
    write_png(tmp_path / "p.png", Page(Size(100, 50), (Words(HOSTILE, Point(5, 30), 5),)), 4)
    with Image.open(tmp_path / "p.png") as picture:
        assert np.asarray(picture.convert("L")).min() < 128


def test_a_missing_folder_is_said(tmp_path: Path):
    """A folder that is not there is an error."""
    with pytest.raises(FileNotFoundError):
        write_png(tmp_path / "none" / "p.png", Page(Size(10, 10), ()))
