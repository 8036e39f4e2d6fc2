"""True-scale sheets, printed and put together again."""

import itertools
from collections.abc import Iterable, Iterator
from pathlib import Path

import numpy as np
import pypdf
import pytest
from reading_back import looked_at, of_size, page_sizes, seen_on
from sample_plan import BAND, TEMPLATE, TITLE, template, texts, waistband
from test_grid import PAPERS

from studio.drawing import Group, Stroke, Words, flat_marks
from studio.drawing.lettering import BELOW, words_box
from studio.geometry import Box, rectangle
from studio.paper.first_page import first_page
from studio.paper.grid import Sheet
from studio.paper.page import Page
from studio.paper.plan import PatternPiece
from studio.paper.reach import Boxed, boxed
from studio.paper.sheets import Layout, laid_out
from studio.paper.sizes import PaperSize
from studio.paper.tiles import sheet_pages
from studio.trouble import Trouble

A4 = PaperSize("A4", 210, 297)
ROLL = PaperSize("roll", 914.4, 5000, roll=True)


def layout(paper: PaperSize) -> Layout:
    """Band and template on a paper."""
    return laid_out((waistband(), template()), paper)


def tiles(lay: Layout, unit: str = "cm") -> dict[Sheet, Page]:
    """The sheets by name."""
    return dict(zip(lay.grid.sheets, sheet_pages(lay.plan, lay.grid, TITLE, unit), strict=True))


def front(lay: Layout, unit: str = "cm") -> Page:
    """The page to measure first."""
    return first_page(lay.plan, lay.grid, TITLE, unit)


def pages(lay: Layout) -> Iterator[Page]:
    """That page and then the sheets."""
    yield front(lay)
    yield from sheet_pages(lay.plan, lay.grid, TITLE, "cm")


def painted(folder: Path, found: Iterable[Page]) -> None:
    """The pages as p.pdf."""
    from studio.paper.pdf import write_pdf

    list(write_pdf(folder / "p.pdf", found, TITLE))


def group(page: Page, name: str) -> tuple:
    """The marks of a group of a page."""
    (found,) = [m for m in page.drawing if isinstance(m, Group) and m.name.startswith(name)]
    return found.marks


@pytest.mark.parametrize("paper", [*PAPERS, ROLL], ids=lambda p: f"{p.name} {p.width:.0f} {p.overlap:.0f}")
@pytest.mark.paints
def test_pieces_are_true_on_every_sheet(tmp_path: Path, paper: PaperSize):
    """Read back from the file, both pieces are true to 0.01 mm and lie in one place on all sheets together."""
    lay = layout(paper)
    painted(tmp_path, pages(lay))
    reader = pypdf.PdfReader(tmp_path / "p.pdf")
    assert len(lay.grid.sheets) + 1 == len(reader.pages)
    corner = lay.grid.paper.margin + 5
    for size, piece in zip((BAND, TEMPLATE), lay.plan.pieces, strict=True):
        found = set()
        for sheet, page in zip(lay.grid.sheets, reader.pages[1:], strict=True):
            live = lay.grid.live(sheet)
            for seen in of_size(seen_on(page), *size):
                left, top = seen.corner
                x, y = left - corner + live.left, top - corner + live.top
                assert (piece.box.left, piece.box.top) == pytest.approx((x, y), abs=0.01)
                found.add(sheet)
        assert {s for s in lay.grid.sheets if piece.box.meets(lay.grid.live(s).grown(-0.5))} <= found


@pytest.mark.parametrize("paper", [PAPERS[0], PAPERS[3]], ids=lambda p: p.name)
@pytest.mark.paints
def test_glued_sheets_show_the_whole_outline(tmp_path: Path, paper: PaperSize):
    """Trimmed, laid together and looked at, the cut lines run through every join, within 0.05 mm of their place."""
    lay = layout(paper)
    painted(tmp_path, tiles(lay).values())
    dots, corner = 10, lay.grid.paper.margin + 5
    whole = lay.grid.whole
    glued = np.full((round(whole.height * dots), round(whole.width * dots)), 255)
    for k, sheet in enumerate(lay.grid.sheets):
        live = lay.grid.live(sheet)
        row, column, start = round(live.top * dots), round(live.left * dots), round(corner * dots)
        high, wide = (
            min(round(live.height * dots), len(glued) - row),
            min(round(live.width * dots), glued.shape[1] - column),
        )
        shown = looked_at(tmp_path / "p.pdf", k, dots)[start : start + high, start : start + wide]
        glued[row : row + high, column : column + wide] = shown
    ink = 255.0 - glued
    for piece in lay.plan.pieces:
        box = piece.box
        for line, along, (start, end) in (
            (box.top, ink, (box.left, box.right)), (box.bottom, ink, (box.left, box.right)),
            (box.left, ink.T, (box.top, box.bottom)), (box.right, ink.T, (box.top, box.bottom)),
        ):  # fmt: skip
            first = round((line - 0.6) * dots)
            band = along[first : first + round(1.2 * dots), round((start + 1) * dots) : round((end - 1) * dots)]
            assert (band.max(axis=0) > 120).all()  # no gap, not even at a join
            middle = (band * (np.arange(len(band))[:, None] + 0.5)).sum(axis=0) / band.sum(axis=0)
            assert line == pytest.approx((first + float(np.median(middle))) / dots, abs=0.05)


@pytest.mark.parametrize("unit", ["cm", "in"])
@pytest.mark.paints
def test_the_first_page_is_true(tmp_path: Path, unit: str):
    """Both squares and the card are true in the file: 50.00 and 50.80 mm; 85.60 × 53.98 (ISO/IEC 7810) inside."""
    painted(tmp_path, [front(layout(A4), unit)])
    seen = seen_on(pypdf.PdfReader(tmp_path / "p.pdf").pages[0])
    assert 1 == len(of_size(seen, 50, 50, 0.01))
    assert 1 == len(of_size(seen, 50.8, 50.8, 0.01))
    (card,) = of_size(seen, 85.60 + 0.35, 53.98 + 0.35, 0.01)
    assert (85.60, 53.98) == pytest.approx([v - card.width for v in card.size], abs=0.02)


@pytest.mark.paints
def test_squares_look_true(tmp_path: Path):
    """A second reader's picture of the first page shows the squares at their size, line to line."""
    painted(tmp_path, [front(layout(A4))])
    row = looked_at(tmp_path / "p.pdf", 0, 20)[80 * 20][: 130 * 20]
    dark = np.flatnonzero(row < 140)
    middles = [run.mean() / 20 for run in np.split(dark, np.flatnonzero(np.diff(dark) > 2) + 1)]
    gaps = [b - a for a, b in itertools.combinations(middles, 2)]
    assert min(abs(g - 50) for g in gaps) < 0.03
    assert min(abs(g - 50.8) for g in gaps) < 0.03


@pytest.mark.parametrize("paper", PAPERS, ids=lambda p: f"{p.name} {p.width:.0f} {p.overlap:.0f}")
def test_gauges_of_neighbours_meet(paper: PaperSize):
    """Where two sheets are laid together, the halves of each gauge are one bar."""
    lay = layout(paper)
    corner = paper.margin + 5
    bars: dict[tuple[int, int], list[Box]] = {}
    for sheet, page in tiles(lay).items():
        live = lay.grid.live(sheet)
        for mark in group(page, "gauges"):
            if isinstance(mark, Stroke) and mark.ink == "gauge" and not mark.width and not mark.fill:
                box = mark.path.box.moved(live.left - corner, live.top - corner)
                key = (round(box.centre.x / 4), round(box.centre.y / 4))
                near = [k for k in bars if abs(k[0] - key[0]) <= 2 and abs(k[1] - key[1]) <= 2]
                bars.setdefault(near[0] if near else key, []).append(box)
    assert 3 * len(list(lay.grid.joins)) == len(bars)
    for halves in bars.values():
        first, second = halves
        assert first.meets(second)
        assert (first.left == second.left) != (first.top == pytest.approx(second.top))
        assert 14 == pytest.approx(max(first.joined(second).width, first.joined(second).height))


def test_the_drawing_runs_on_past_a_join():
    """A slip of the scissors shows no gap: the drawing goes on for 4 mm under the neighbour, and stops at a frame."""
    for sheet, page in tiles(layout(A4)).items():
        (shown,) = [m for m in page.drawing if m.name.startswith("sheet")]
        right, below = (4 if sheet.column < 2 else 0), (4 if sheet.row < 1 else 0)
        assert Box(15, 15, 15 + 260 + right, 15 + 173 + below) == pytest.approx(shown.clip)


def test_each_edge_says_what_to_do():
    """Trim left and top, glue right and bottom, and a frame where the drawing ends; each names its neighbour."""
    sheets = tiles(layout(A4))
    words = texts(sheets[Sheet(1, 1)])
    assert 2 == words.count("cut away, then lay on 2A") == words.count("cut away, then lay on 1B")
    assert 2 == words.count("glue, 2C lies here")
    assert not [w for w in words if "3B" in w]
    assert 1 == texts(sheets[Sheet(0, 1)]).count("glue, 2B lies here")
    last = group(sheets[Sheet(1, 2)], "paper")
    assert 2 == len([m for m in last if m.ink == "frame"]) == len([m for m in last if m.ink == "join"])


def test_each_sheet_names_itself():
    """A sheet that falls from the pile finds its place again: name, title, number of all, paper, scale."""
    for count, (sheet, page) in enumerate(tiles(layout(A4)).items(), 1):
        words = texts(page)
        assert sheet.name in words
        assert TITLE in words
        assert f"sheet {count} of 6, A4, print at 100 %" in words
        assert "5 cm" in words
    assert "2 in" in texts(tiles(layout(A4), "in")[Sheet(0, 0)])
    assert "5 cm" not in texts(tiles(layout(A4), "in")[Sheet(0, 0)])


def test_four_corners_say_that_all_was_printed():
    """Angles stand at the corners of what the printer can reach."""
    page = tiles(layout(A4))[Sheet(0, 0)]
    corners = {tuple(m.path.curves[0].end) for m in group(page, "paper") if m.ink == "sheet"}
    assert {(10, 10), (287, 10), (10, 200), (287, 200)} == corners


@pytest.mark.parametrize(
    "paper", [*PAPERS, ROLL, PaperSize("A4", 210, 297, 3, 30)], ids=lambda p: f"{p.name} {p.width:.0f} {p.margin:.0f}"
)
def test_nothing_is_printed_outside_the_safe_area(paper: PaperSize):
    """All that a sheet needs lies within the margins, and no word on its edges lies on another."""
    lay = laid_out((waistband(), template(), PatternPiece("3", "Panel", rectangle(0, 0, 900, 600), ())), paper)
    for page in tiles(lay).values():
        around = tuple(m for m in page.drawing if not m.name.startswith("sheet"))
        safe = page.box.grown(0.2 - paper.margin)
        assert [] == [b.mark for b in boxed(tuple(flat_marks(around))) if not _within(_inked(b), safe)]
        words = [words_box(m).grown(-0.3) for m in flat_marks(around) if isinstance(m, Words)]
        assert not [1 for a, b in itertools.combinations(words, 2) if a.meets(b)]


def _inked(b: Boxed) -> Box:
    """What letters cover at the foot of a sheet: the names there have nothing below the line."""
    foot = BELOW * b.mark.height - 0.2 if isinstance(b.mark, Words) and not b.mark.turn else 0.0
    left, top, right, bottom = b.box.grown(-0.6)
    return Box(left, top, right, bottom - foot)


def _within(box: Box, outer: Box) -> bool:
    return box.left >= outer.left and box.top >= outer.top and box.right <= outer.right and box.bottom <= outer.bottom


@pytest.mark.paints
def test_a_long_roll_is_split_below_what_a_pdf_holds(tmp_path: Path):
    """A panel of 6 m on a roll is two pages of at most 5 m, joined by gauges; it lies along the roll."""
    panel = PatternPiece("1", "Panel", rectangle(0, 0, 6000, 700), ())
    lay = laid_out((panel,), ROLL)
    assert 2 == len(lay.grid.sheets)
    assert (700, 6000) == pytest.approx((lay.plan.pieces[0].box.width, lay.plan.pieces[0].box.height))
    painted(tmp_path, pages(lay))
    sizes = page_sizes(tmp_path / "p.pdf")
    assert [914.4] * 3 == pytest.approx([w for w, _ in sizes], abs=0.01)
    assert max(h for _, h in sizes) <= 5080
    assert 6010 == pytest.approx(sum(h - 37 for _, h in sizes[1:]), abs=0.02)


def test_a_piece_that_is_turned_keeps_its_lines():
    """Turned along the roll, what joins keep away from turns with the piece."""
    turned = waistband().turned()
    assert (130, 770) == pytest.approx((turned.box.width, turned.box.height))
    assert waistband().lying == turned.upright
    assert {round(-x, 6) for x in waistband().upright} == {round(y, 6) for y in turned.lying}
    hole = waistband().whole[1]
    assert (hole.top, -hole.right, hole.bottom, -hole.left) == turned.whole[1]
    assert {-90.0, -180.0} == {m.turn for m in flat_marks(turned.drawing) if isinstance(m, Words)}


def test_nothing_to_print_is_said():
    """Without a piece there is no plan, and one sentence says so."""
    with pytest.raises(Trouble, match="no piece"):
        laid_out((), A4)
