"""The SVG, read back with svgpathtools and resvg."""

import io
import xml.etree.ElementTree as ET
from pathlib import Path

import numpy as np
import pytest
import resvg_py
import svgpathtools
from hostile import HOSTILE
from PIL import Image

from studio.drawing import Group, Stroke, Words
from studio.drawing.lettering import font_file
from studio.geometry import Arc, Box, Cubic, Point, circle, line, rectangle
from studio.geometry import Path as Run
from studio.paper.page import Page, Size
from studio.paper.svg import svg_text, write_svg

SVG = "{http://www.w3.org/2000/svg}"


def page(*marks) -> Page:
    """An A4 page."""
    return Page(Size(210, 297), marks)


def tree(*marks) -> ET.Element:
    """The file as another reader has it."""
    return ET.fromstring(svg_text(page(*marks), "A skirt").encode())


def picture(text: str, dots: float) -> np.ndarray:
    """How resvg shows it: grey, so many dots a mm (it takes a millimetre as 96/25.4 dots, CSS 2.1)."""
    shown = resvg_py.svg_to_bytes(
        svg_string=text, background="#ffffff", dpi=dots * 25.4, skip_system_fonts=True,
        font_files=[str(font_file("regular")), str(font_file("semibold"))],
    )  # fmt: skip
    return np.asarray(Image.open(io.BytesIO(bytes(shown))).convert("L")).astype(int)


def test_size_is_in_millimetres():
    """Another program opens the page at its true size."""
    root = tree(Stroke(rectangle(20, 30, 120, 130), "cut"))
    assert ("210mm", "297mm", "0 0 210 297") == (root.get("width"), root.get("height"), root.get("viewBox"))


def test_a_square_is_true_in_the_picture():
    """100 mm of drawing are 100 mm when another program draws it."""
    seen = picture(svg_text(page(Stroke(rectangle(20, 30, 120, 130), "cut")), "A skirt"), 10)
    assert (2970, 2100) == seen.shape
    across = np.flatnonzero(seen[800] < 128)
    down = np.flatnonzero(seen[:, 700] < 128)
    for dark, start in ((across, 200), (down, 300)):
        first, last = np.split(dark, np.flatnonzero(np.diff(dark) > 2) + 1)
        assert 1000 == pytest.approx(last.mean() - first.mean(), abs=0.5)
        assert start == pytest.approx(first.mean() + 0.5, abs=0.6)


def test_curves_are_true_curves():
    """Arcs are arcs, cubics cubics, and both as long as drawn (measured by svgpathtools)."""
    arc, whole = Run((Arc(Point(100, 100), 80, 200, -250),)), circle(Point(100, 100), 30)
    cubic = Run((Cubic(Point(10, 10), Point(60, 0), Point(90, 80), Point(150, 100)),))
    paths = [e.get("d") for e in tree(*(Stroke(p, "seam") for p in (arc, whole, cubic))).iter(f"{SVG}path")]
    assert not any("L" in d for d in paths)
    for drawn, text in zip((arc, whole, cubic), paths, strict=True):
        read = svgpathtools.parse_path(text)
        assert drawn.length == pytest.approx(read.length(), abs=0.01)
        assert complex(*drawn.start) == pytest.approx(read.point(0), abs=1e-4)
        quarter = drawn.length / 4
        assert complex(*drawn.at(quarter)) == pytest.approx(read.point(read.ilength(quarter)), abs=0.01)
        assert complex(*drawn.end) == pytest.approx(read.point(1), abs=1e-4)


@pytest.mark.parametrize("sweep", [-300, -180, -90, 45, 90, 180, 200, 359])
def test_arcs_turn_the_right_way(sweep: float):
    """Every arc goes round the side it was drawn on."""
    arc = Arc(Point(100, 100), 50, 30, sweep)
    (element,) = tree(Stroke(Run((arc,)), "cut")).iter(f"{SVG}path")
    read = svgpathtools.parse_path(element.get("d"))
    for share in (0.25, 0.5, 0.75):
        part = read.point(read.ilength(arc.length * share))
        assert complex(*arc.at(share)) == pytest.approx(part, abs=0.02)


def test_inks_and_groups_have_names():
    """Another program finds the cut lines, and the piece they belong to; names stay apart."""
    marks = (Stroke(line(0, 0, 9, 9), "gather"), Words("hem", Point(5, 5), 4, "note"))
    root = tree(Group("Waistband", marks), Group("Waistband", marks), Group("袋", marks))
    groups = list(root.iter(f"{SVG}g"))
    assert ["Waistband", "Waistband", "袋"] == [g.get("data-name") for g in groups]
    assert 3 == len({g.get("id") for g in groups})
    row = next(root.iter(f"{SVG}path"))
    assert ("gather", "4 3", "0.5") == (row.get("data-ink"), row.get("stroke-dasharray"), row.get("stroke-width"))


def test_words_are_placed_and_turned():
    """Words keep their place, their turn and the end they hang from."""
    root = tree(Words("hem", Point(50, 60), 4, turn=-90, align="right", face="semibold"))
    (words,) = root.iter(f"{SVG}text")
    assert "hem" == words.text
    assert ("rotate(-90 50 60)", "end", "600", "4") == tuple(
        words.get(k) for k in ("transform", "text-anchor", "font-weight", "font-size")
    )


def test_words_on_a_line_break_it():
    """The paper is cleared behind words on a line, in the picture too."""
    marks = (Stroke(line(0, 25, 200, 25), "cut"), Words("l l", Point(50, 26), 4, align="centre", patch=True))
    row = picture(svg_text(page(*marks), "A skirt"), 20)[500]
    assert row[int(47.9 * 20) : int(48.2 * 20)].min() > 200
    assert row[int(48.3 * 20) : int(51.7 * 20)].min() < 100  # the letters themselves stay black
    assert row[40 * 20] < 60


def test_clips_cut_off():
    """Only what lies in a sheet's part is seen."""
    marks = (Group("sheet", (Stroke(line(10, 50, 200, 50), "cut"),), Box(20, 20, 100, 100)),)
    row = picture(svg_text(page(*marks), "A skirt"), 10)[500]
    dark = np.flatnonzero(row < 128)
    assert (200, 999) == pytest.approx((dark[0], dark[-1]), abs=1)


def test_hostile_words_do_no_harm(tmp_path: Path):
    """Control characters, halves of letters, markup, emoji and right-to-left words leave a file that opens."""
    path = tmp_path / "p.svg"
    write_svg(path, page(Group(HOSTILE, (Words(HOSTILE, Point(20, 30), 5),))), HOSTILE)
    root = ET.parse(path).getroot()
    assert [] == list(root.iter(f"{SVG}script"))
    (words,) = root.iter(f"{SVG}text")
    assert "</text><script>alert(1)</script> 🧵 שלום %%d ^I" in words.text
    assert picture(path.read_text(encoding="utf-8"), 2).min() < 128


def test_the_same_page_gives_the_same_file():
    """Nothing in the file changes by itself."""
    marks = (Group("a", (Stroke(line(0, 0, 9, 9), "cut"), Words("hem", Point(5, 5), 4)), Box(0, 0, 50, 50)),)
    assert svg_text(page(*marks), "A skirt") == svg_text(page(*marks), "A skirt")
