"""The PDF, read back."""

import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pypdf
import pytest
from hostile import HOSTILE
from reading_back import looked_at, of_size, page_sizes, seen_on

from studio.drawing import Group, Stroke, Words
from studio.geometry import Arc, Box, Cubic, Line, Point, line, rectangle
from studio.geometry import Path as Run
from studio.paper.measuring import squares
from studio.paper.page import Page, Size
from studio.paper.pdf import write_pdf
from studio.trouble import Trouble

pytestmark = pytest.mark.usefixtures("qapp")


def written(path: Path, *pages: Page, title: str = "A skirt") -> pypdf.PdfReader:
    """The file, written and opened by another reader."""
    assert [n + 1 for n in range(len(pages))] == list(write_pdf(path, pages, title))
    return pypdf.PdfReader(path)


@pytest.mark.parametrize(
    "size",
    [(210.0, 297.0), (297.0, 210.0), (215.9, 279.4), (420.0, 297.0), (914.4, 5000.0), (1066.8, 317.5)],
)
def test_page_boxes_are_true(tmp_path: Path, size: tuple[float, float]):
    """A page is as large as the paper to a hundredth of a millimetre (ISO 216; 8.5 × 11 in; rolls of 36 and 42 in)."""
    page = Page(Size(*size), (Stroke(line(0, 0, *size), "cut"),))
    written(tmp_path / "p.pdf", page)
    assert size == pytest.approx(page_sizes(tmp_path / "p.pdf")[0], abs=0.01)


def test_places_are_true_on_every_page(tmp_path: Path):
    """A square stands where it was drawn, measured from the top left corner, on pages of changing size."""
    sizes = (Size(210, 297), Size(297, 210), Size(215.9, 279.4))
    pages = [Page(s, (Stroke(rectangle(20, 30, 120, 130), "cut"),)) for s in sizes]
    reader = written(tmp_path / "p.pdf", *pages)
    for page in reader.pages:
        (square,) = seen_on(page)
        assert (100.0, 100.0) == pytest.approx(square.size, abs=0.001)
        assert (20.0, 30.0) == pytest.approx(square.corner, abs=0.005)
        assert 0.7 == pytest.approx(square.width, abs=0.001)


def test_viewers_are_asked_not_to_scale(tmp_path: Path):
    """The print dialogue opens at 100 % and on one side (ISO 32000-1, 12.2); the file says what it is."""
    reader = written(tmp_path / "p.pdf", Page(Size(210, 297), (Stroke(line(0, 0, 9, 9), "cut"),)), title="Nell’s")
    wishes = reader.trailer["/Root"]["/ViewerPreferences"]
    assert ("/None", "/Simplex") == (wishes["/PrintScaling"], wishes["/Duplex"])
    assert ("Nell’s", "Skirtwright") == (reader.metadata.title, reader.metadata.creator)


def test_a_large_arc_is_true(tmp_path: Path):
    """A circle skirt's hem of 90 cm radius is within a twentieth of a millimetre all along."""
    centre, radius = Point(10, 10), 900.0
    page = Page(Size(950, 950), (Stroke(Run((Arc(centre, radius, 0, 90),)), "cut"),))
    (arc,) = seen_on(written(tmp_path / "p.pdf", page).pages[0])
    start, rest = arc.points[0], arc.points[1:].reshape(-1, 3, 2)
    share = np.linspace(0, 1, 50)[:, None]
    for leave, arrive, end in rest:
        run = (1 - share) ** 3 * start + 3 * (1 - share) ** 2 * share * leave
        run = run + 3 * (1 - share) * share**2 * arrive + share**3 * end
        off = np.hypot(*(run - np.array(tuple(centre))).T) - radius
        assert abs(off).max() < 0.02
        start = end


def test_a_cubic_is_the_very_curve(tmp_path: Path):
    """A drawn curve keeps its control points."""
    c = Cubic(Point(10, 10), Point(60, 0), Point(90, 80), Point(150, 100))
    (seen,) = seen_on(written(tmp_path / "p.pdf", Page(Size(210, 297), (Stroke(Run((c,)), "seam"),))).pages[0])
    assert np.allclose(seen.points, [tuple(p) for p in (c.start, c.leave, c.arrive, c.end)], atol=0.005)


def test_words_stay_words(tmp_path: Path):
    """Words can be searched and read aloud, with their spaces and without ligatures; every font is in the file."""
    page = Page(Size(210, 297), tuple(
        Words("first move, 2½ left off", Point(20, 30 + 20 * i), 6, face=face)
        for i, face in enumerate(("regular", "semibold", "bold", "italic", "serif"))
    ))  # fmt: skip
    reader = written(tmp_path / "p.pdf", page)
    assert 5 == " ".join(reader.pages[0].extract_text().split()).count("first move, 2½ left off")
    fonts = [f.get_object() for f in reader.pages[0]["/Resources"]["/Font"].values()]
    assert 5 == len(fonts)
    assert all("/FontFile2" in f["/DescendantFonts"][0].get_object()["/FontDescriptor"].get_object() for f in fonts)


def test_hostile_words_do_no_harm(tmp_path: Path):
    """Control characters, halves of letters, markup, emoji and right-to-left words leave a file that opens."""
    drawing = (Words(HOSTILE, Point(20, 30), 5), Group(HOSTILE, (Words("still here", Point(20, 50), 5),)))
    reader = written(tmp_path / "p.pdf", Page(Size(210, 297), drawing), title=HOSTILE)
    text = reader.pages[0].extract_text()
    assert "still here" in text
    assert "</text><script>alert(1)</script>" in text


def test_what_lies_outside_is_left_out(tmp_path: Path):
    """A sheet holds no line of the other forty."""
    far = tuple(Stroke(line(x, 500, x + 10, 500), "cut") for x in range(100))
    clipped = Group("sheet", (Stroke(line(10, 10, 400, 10), "cut"), *far), Box(0, 0, 100, 100))
    page = written(tmp_path / "p.pdf", Page(Size(210, 297), (clipped, *far))).pages[0]
    (only,) = seen_on(page)
    assert (0.0, 0.0, 100.0, 100.0) == pytest.approx(only.clip, abs=0.005)


def test_dashes_and_colours_are_seen(tmp_path: Path):
    """A gather row is 4 mm of line and 3 mm of gap, true on paper."""
    written(tmp_path / "p.pdf", Page(Size(100, 50), (Stroke(line(10, 20, 90, 20), "gather"),)))
    row = looked_at(tmp_path / "p.pdf", 0, 20)[400]
    edges = np.flatnonzero(np.diff((row < 128).astype(int))) / 20
    assert [4.0, 3.0, 4.0, 3.0, 4.0] == pytest.approx(np.diff(edges)[:5], abs=0.06)


def test_words_on_a_line_break_it(tmp_path: Path):
    """The paper is cleared behind words that stand on a line."""
    marks = (Stroke(line(0, 25, 100, 25), "cut"), Words("l", Point(50, 26), 4, align="centre", patch=True))
    written(tmp_path / "p.pdf", Page(Size(100, 50), marks))
    row = looked_at(tmp_path / "p.pdf", 0, 20)[500]
    assert row[int(49.3 * 20)] > 250
    assert row[40 * 20] < 60


def test_stopping_leaves_the_old_file(tmp_path: Path):
    """An export that is stopped half-way leaves what was there, and nothing beside it."""
    path = tmp_path / "p.pdf"
    path.write_bytes(b"old")
    pages = [Page(Size(210, 297), (Stroke(line(0, 0, 9, 9), "cut"),))] * 3
    work = write_pdf(path, pages, "A skirt")
    assert 1 == next(work)
    work.close()
    assert b"old" == path.read_bytes()
    assert [path] == list(tmp_path.iterdir())


def test_a_failing_page_leaves_nothing(tmp_path: Path):
    """When a page cannot be made, no half file is left."""

    def pages() -> Iterator[Page]:
        yield Page(Size(210, 297), (Stroke(line(0, 0, 9, 9), "cut"),))
        raise RuntimeError("no second page")

    with pytest.raises(RuntimeError):
        list(write_pdf(tmp_path / "p.pdf", pages(), "A skirt"))
    assert [] == list(tmp_path.iterdir())


def test_too_long_a_page_is_refused(tmp_path: Path):
    """A page above 5.08 m is refused in one sentence (ISO 32000-1, annex C: 14 400 units)."""
    with pytest.raises(Trouble, match=r"508.1 cm is too long"):
        list(write_pdf(tmp_path / "p.pdf", [Page(Size(900, 5080.5), ())], "A skirt"))
    with pytest.raises(Trouble, match="no page"):
        list(write_pdf(tmp_path / "p.pdf", [], "A skirt"))
    assert [] == list(tmp_path.iterdir())


def test_a_missing_folder_is_said(tmp_path: Path):
    """A folder that is not there is an error at the first page, not a silent nothing."""
    with pytest.raises(FileNotFoundError):
        next(write_pdf(tmp_path / "none" / "p.pdf", [Page(Size(210, 297), ())], "A skirt"))


def test_it_needs_no_screen_and_no_application(tmp_path: Path):
    """The command line writes a PDF where no window was ever opened."""
    code = (
        "import sys, pathlib; from studio.paper.pdf import write_pdf; from studio.paper.page import Page, Size;"
        "from studio.drawing import Words; from studio.geometry import Point;"
        "page = Page(Size(210, 297), (Words('alone', Point(20, 30), 5),));"
        "print(list(write_pdf(pathlib.Path(sys.argv[1]), [page], 'x')))"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, str(tmp_path / "p.pdf")], capture_output=True, text=True, check=True,
        env={"PYTHONPATH": str(Path(__file__).parents[2]), "PATH": ""},
    )  # fmt: skip
    assert "[1]\n" == done.stdout
    assert "alone" in pypdf.PdfReader(tmp_path / "p.pdf").pages[0].extract_text()


def test_closed_outlines_have_sharp_corners(tmp_path: Path):
    """The corner of a cut line is whole: closed and mitred."""
    corner = Run(
        (Line(Point(20, 20), Point(60, 20)), Line(Point(60, 20), Point(60, 60)), Line(Point(60, 60), Point(20, 20)))
    )
    written(tmp_path / "p.pdf", Page(Size(100, 80), (Stroke(corner, "cut"),)))
    dark = looked_at(tmp_path / "p.pdf", 0, 40) < 128
    assert dark[int(19.8 * 40), int(60.2 * 40)]


def test_squares_of_the_first_page(tmp_path: Path):
    """Both squares are true in the file itself: 50.00 and 50.80 mm."""
    seen = seen_on(written(tmp_path / "p.pdf", Page(Size(210, 297), squares(20, 30))).pages[0])
    assert 1 == len(of_size(seen, 50.0, 50.0, 0.01))
    assert 1 == len(of_size(seen, 50.8, 50.8, 0.01))
