"""Which sheets are printed, and what they are called."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from shapely import Polygon, box

from studio.geometry import Arc, Line, Path, Point, rectangle
from studio.paper.grid import Sheet, cut_up
from studio.paper.plan import PatternPiece, Plan
from studio.paper.sizes import PaperSize

A4 = PaperSize("A4", 297, 210)
PAPERS = [
    A4, A4.turned(), PaperSize("A3", 420, 297), PaperSize("US Letter", 279.4, 215.9),
    PaperSize("US Letter", 215.9, 279.4, 20, 8),
]  # fmt: skip


def plan(*outlines: Path) -> Plan:
    """A plan of bare pieces."""
    return Plan(tuple(PatternPiece(str(k), "piece", path, ()) for k, path in enumerate(outlines)))


def quarter(radius: float) -> Path:
    """A quarter circle with its corner at 5, 5."""
    a, b, c = Point(5, 5), Point(5 + radius, 5), Point(5, 5 + radius)
    return Path((Line(a, b), Arc(a, radius, 0, 90), Line(c, a)))


def test_names_are_row_then_letter():
    """A sheet cannot be taken for a paper, nor I for 1 or O for 0 (ISO 5457)."""
    names = [Sheet(0, c).name for c in range(50)]
    assert ["1A", "1H", "1J", "1N", "1P", "1Z", "1AA", "1AB"] == [names[c] for c in (0, 7, 8, 12, 13, 23, 24, 25)]
    assert 50 == len(set(names))
    assert not {"I", "O"} & set("".join(names))
    assert "12M" == Sheet(11, 11).name


@pytest.mark.parametrize("paper", PAPERS, ids=lambda p: f"{p.name} {p.width:.0f} {p.overlap:.0f}")
@pytest.mark.parametrize(("wide", "high"), [(100, 80), (770, 130), (2400, 1700)])
def test_number_of_sheets(paper: PaperSize, wide: float, high: float):
    """A rectangle needs as many sheets as its size over what one shows (n = ceil((D − o) / (paper − 2m − o)))."""
    grid = cut_up(plan(rectangle(5, 5, 5 + wide, 5 + high)), paper)
    columns = math.ceil((wide + 5 - 0.5) / (paper.width - 2 * paper.margin - 5 - paper.overlap))
    rows = math.ceil((high + 5 - 0.5) / (paper.height - 2 * paper.margin - 5 - paper.overlap))
    assert columns * rows == len(grid.sheets)


@given(st.floats(100, 1500))
def test_only_sheets_with_something_on_are_printed(radius: float):
    """Of a quarter circle no sheet is printed that its round edge leaves empty, and none is missing (shapely)."""
    outline = quarter(radius)
    grid = cut_up(plan(outline), A4)
    shape = Polygon(outline.flat(0.005))
    for row in range(grid.rows):
        for column in range(grid.columns):
            left, top = column * 260, row * 173
            inner = box(left + 0.5, top + 0.5, left + 259.5, top + 172.5)
            share = shape.intersection(inner).area
            if share > 1:
                assert grid.has(Sheet(row, column))
            elif share == 0 and shape.distance(inner) > 0.1:
                assert not grid.has(Sheet(row, column))


def test_a_sheet_inside_a_piece_is_printed():
    """The middle of a large panel is paper too, though no line runs there."""
    grid = cut_up(plan(rectangle(5, 5, 1000, 700)), A4)
    assert grid.has(Sheet(1, 1))


def test_an_empty_row_is_no_row():
    """A piece that just fits its sheets is not followed by a row of empty ones on the map."""
    grid = cut_up(plan(rectangle(5, 5, 500, 172)), A4)
    assert (1, 2) == (grid.rows, grid.columns)


def test_joins_are_where_two_sheets_meet():
    """There is a join between neighbours, and none where the drawing ends."""
    grid = cut_up(plan(rectangle(5, 5, 500, 300)), A4)
    assert {("upright", 260.0, 0.0), ("upright", 260.0, 173.0), ("lying", 173.0, 0.0), ("lying", 173.0, 260.0)} == {
        (j.way, j.place, j.start) for j in grid.joins
    }
    assert grid.join(Sheet(1, 1), "upright") is None


def test_a_roll_is_cut_where_the_plan_ends():
    """The last page of a roll is no longer than it must be, and none is longer than a PDF can hold."""
    roll = PaperSize("roll", 914.4, 5000, roll=True)
    grid = cut_up(plan(rectangle(5, 5, 800, 6000)), roll)
    first, last = (grid.page_size(s) for s in grid.sheets)
    assert (914.4, 5000.0) == first
    assert 6005 - (5000 - 37) + 37 == pytest.approx(last.height)
