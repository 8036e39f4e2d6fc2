"""The page to measure first."""

import itertools

import pytest
from msgspec.structs import replace
from sample_plan import template, texts, waistband

from studio.drawing import Stroke, Words, flat_marks
from studio.drawing.lettering import words_box
from studio.geometry import rectangle
from studio.paper.first_page import first_page
from studio.paper.measuring import A4_ON_LETTER, LETTER_ON_A4, what_readings_mean
from studio.paper.page import Page
from studio.paper.plan import PatternPiece
from studio.paper.reach import boxed
from studio.paper.sheets import laid_out
from studio.paper.sizes import PaperSize

LONG_TITLE = "A rather long name for a gathered skirt with a border of meadow flowers, for a wedding"
PIECES = {
    "band and template": (waistband(), template()),
    "one pocket": (PatternPiece("1", "Pocket", rectangle(0, 0, 120, 150), ()),),
    "a large panel": (
        PatternPiece("1", "Front panel, whole", rectangle(0, 0, 1700, 1650), ()), waistband(),
    ),
    "a long panel": (PatternPiece("1", "Panel", rectangle(0, 0, 6000, 900), ()),),
}  # fmt: skip
PAPERS = {
    "A4": (210, 297), "A3": (297, 420), "US Letter": (215.9, 279.4),
    "roll of 36 in": (914.4, 5000), "narrow roll": (280, 5000),
}  # fmt: skip


def first(paper: PaperSize, pieces: tuple[PatternPiece, ...], unit: str = "cm", title: str = LONG_TITLE) -> Page:
    """The first page of a layout."""
    layout = laid_out(pieces, paper)
    return first_page(layout.plan, layout.grid, title, unit)


@pytest.mark.parametrize("pieces", PIECES)
@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize(("margin", "overlap"), [(3, 8), (10, 12), (20, 12), (30, 30)])
def test_it_fits_every_paper(paper: str, pieces: str, margin: float, overlap: float):
    """Nothing runs off the page and no words lie on others, on any paper, with any margin, for 1 sheet or 200."""
    size = PaperSize(paper, *PAPERS[paper], margin, overlap, roll="roll" in paper)
    for unit in ("cm", "in"):
        page = first(size, PIECES[pieces], unit)
        safe = page.box.grown(0.3 - margin)
        for b in boxed(tuple(flat_marks(page.drawing))):
            box = b.box.grown(-0.6)
            assert box.left >= safe.left and box.top >= safe.top, b.mark
            assert box.right <= safe.right and box.bottom <= safe.bottom, b.mark
        words = [m for m in flat_marks(page.drawing) if isinstance(m, Words)]
        shown = {m.text for m in words}
        assert all({p.number, f"{p.number}  {p.name}"} & shown for p in PIECES[pieces])
        clash = [
            (a.text, b.text)
            for a, b in itertools.combinations(words, 2)
            if words_box(a).grown(-0.4).meets(words_box(b).grown(-0.4))
        ]
        assert [] == clash


@pytest.mark.parametrize("pieces", PIECES)
def test_no_words_are_too_small(pieces: str):
    """Nothing on it is smaller than 3 mm: a poor printer loses what is."""
    page = first(PaperSize("A4", 210, 297), PIECES[pieces])
    assert min(m.height for m in flat_marks(page.drawing) if isinstance(m, Words)) >= 3.0


def test_it_says_what_wrong_readings_mean():
    """4.86 is a Letter page shrunk to A4, 4.70 an A4 page shrunk to Letter (210/215.9 and 279.4/297)."""
    assert (0.9727, 0.9407) == pytest.approx((LETTER_ON_A4, A4_ON_LETTER), abs=5e-5)
    centimetres, inches = what_readings_mean("cm"), what_readings_mean("in")
    assert "4.86 instead of 5 cm: a Letter page" in centimetres
    assert "4.70: an A4 page" in centimetres
    assert "1 15/16 instead of 2 in: a Letter page" in inches  # 49.41 mm is 1.945 in
    assert "1 7/8: an A4 page" in inches  # 47.79 mm is 1.881 in


def test_both_squares_stay_whatever_the_unit():
    """Any ruler will do: a square of 5 cm and one of 2 in are on every first page."""
    for unit in ("cm", "in"):
        words = texts(first(PaperSize("A4", 210, 297), PIECES["band and template"], unit))
        assert {"5 cm", "2 in"} <= set(words)


def test_it_maps_every_sheet_and_piece():
    """The map names all sheets and shows each piece with its number."""
    words = texts(first(PaperSize("A4", 210, 297), PIECES["band and template"]))
    assert {"1A", "1B", "1C", "2A", "2B", "2C", "1  Waistband", "2  Skirt, template", "Map of the 6 sheets"} <= set(
        words
    )


def test_many_sheets_are_named_along_the_edges():
    """A map of two hundred sheets is still read: letters along the top, numbers down the side."""
    words = texts(first(PaperSize("A4", 297, 210), PIECES["a long panel"]))
    letters = [w for w in words if w.isupper() and w.isalpha()]
    assert sorted(letters, key=lambda w: (len(w), w)) == letters
    assert {"A", "1", "2", "3", "4"} <= set(words)
    assert len(letters) >= 10
    assert not {"I", "O", "1D", "2D"} & set(words)


def test_one_sheet_needs_no_glue():
    """Who prints one sheet is not told to glue."""
    words = " ".join(texts(first(PaperSize("A4", 210, 297), PIECES["one pocket"])))
    assert "Nothing to glue" in words
    assert "Trim" not in words and "neighbour" not in words


def test_the_last_check_is_a_tape():
    """The longest piece is measured with a tape, in the maker's unit."""
    for unit, size in (("cm", "77.0 cm"), ("in", "30 3/8 in")):
        words = " ".join(texts(first(PaperSize("A4", 210, 297), PIECES["band and template"], unit)))
        assert "tape the length of Waistband, from cut line to" in words
        assert size in words


@pytest.mark.parametrize("paper", ["A4", "US Letter"])
def test_the_key_names_the_marks_that_are_on_the_sheets(paper: str):
    """Notches, stops, holes and buttons are explained where there are any, and hooks only where there are some."""
    marks = {"notch", "rows end", "zip stop", "buttonhole", "button"}
    size = PaperSize(paper, *PAPERS[paper])
    assert marks <= set(texts(first(size, PIECES["band and template"])))
    assert not (marks | {"hook", "bar"}) & set(texts(first(size, PIECES["one pocket"])))
    hooked = (replace(waistband(), signs=("notch", "hook", "bar")),)
    assert {"notch", "hook", "bar"} == (marks | {"hook", "bar"}) & set(texts(first(size, hooked)))


def test_the_key_shows_the_very_lines():
    """The key's lines are those of the pieces; gather rows only where there are any."""
    size, lines = PaperSize("A4", 210, 297), {"cut", "seam", "fold", "centre", "grain", "join"}
    gathered = (replace(waistband(), signs=("notch", "gather")),)
    for pieces, rows in ((gathered, {"gather"}), (PIECES["one pocket"], set())):
        foot = [m for m in flat_marks(first(size, pieces).drawing) if isinstance(m, Stroke) and m.path.box.top > 175]
        assert lines | rows == (lines | {"gather"}) & {m.ink for m in foot}
