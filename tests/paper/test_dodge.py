"""Words that slide off the joins."""

from itertools import combinations

import pytest
from sample_plan import template, waistband
from test_grid import PAPERS

from studio.drawing import Group, Stroke, Words, flat_marks
from studio.drawing.furniture import stroke
from studio.drawing.lettering import words_box
from studio.geometry import Box, Point, line, rectangle
from studio.paper.dodge import dodged
from studio.paper.grid import Grid, cut_up
from studio.paper.plan import PatternPiece, Plan
from studio.paper.reach import boxed, trace
from studio.paper.sheets import laid_out
from studio.paper.sizes import PaperSize

A4 = PaperSize("A4", 297, 210)


def laid(*marks, blocks: tuple[Group, ...] = ()) -> tuple[Plan, Plan, Grid]:
    """A plan of two sheets by two, before and after, with a seam along y = 60 and a join at x = 260 and y = 173."""
    piece = PatternPiece("1", "piece", rectangle(5, 5, 505, 325), (stroke("seam", (5, 60), (505, 60)), *marks), blocks)
    plan = Plan((piece,))
    grid = cut_up(plan, A4)
    return plan, dodged(plan, grid), grid


def joins(grid: Grid) -> list[Box]:
    """Every join as a box without width."""
    return [
        Box(j.place, j.start, j.place, j.end) if j.way == "upright" else Box(j.start, j.place, j.end, j.place)
        for j in grid.joins
    ]


def words_of(plan: Plan) -> list[Words]:
    """Every line of words."""
    return [m for m in flat_marks(plan.drawing) if isinstance(m, Words)]


@pytest.mark.parametrize("x", [240, 250, 258, 262, 270])
def test_words_slide_along_their_line(x: float):
    """Words that a join would cut move along their line, and no further than they must."""
    _, after, grid = laid(Words("seam, to the skirt", Point(x, 61), 3.2, align="centre", patch=True))
    (words,) = words_of(after)
    assert not any(words_box(words).meets(j) for j in joins(grid))
    assert 61 == words.at.y
    assert abs(words.at.x - x) <= words_box(words).width / 2 + 8


def test_words_clear_of_joins_stay():
    """What no join cuts is left where it is."""
    before, after, _ = laid(Words("seam", Point(100, 61), 3.2), Words("fold", Point(300, 100), 3.2, turn=-90))
    assert before == after


def test_words_do_not_land_on_others():
    """Words that slide meet neither other words nor a line that they were clear of."""
    _, after, grid = laid(
        Words("seam, to the skirt", Point(260, 61), 3.2, align="centre"),
        Words("side", Point(242, 61), 3.2, align="centre"),
        stroke("centre", (287, 40), (287, 80)),
    )
    first, second = (words_box(w) for w in words_of(after))
    assert not first.meets(second)
    assert not trace(line(287, 40, 287, 80)).touches(first)
    assert not any(first.meets(j) for j in joins(grid))


def test_a_block_finds_a_free_place():
    """The title block goes where no join, line or word is, inside its piece."""
    block = Group("title block", (Stroke(rectangle(190, 120, 310, 146), "plain"),))
    _, after, grid = laid(Words("inside", Point(200, 135), 6.2, align="centre"), blocks=(block,))
    (there,) = after.pieces[0].blocks
    box = boxed((there,))[0].box
    assert not any(box.grown(7).meets(j) for j in joins(grid))
    assert not box.meets(words_box(words_of(after)[0]))
    assert box.left >= 5 and box.top >= 60 and box.right <= 505 and box.bottom <= 325


def test_a_block_too_wide_for_a_sheet_stays():
    """What cannot be helped is left where it was."""
    block = Group("title block", (Stroke(rectangle(100, 100, 380, 126), "plain"),))
    before, after, _ = laid(blocks=(block,))
    assert before == after


@pytest.mark.parametrize("paper", PAPERS, ids=lambda p: f"{p.name} {p.width:.0f} {p.overlap:.0f}")
def test_no_words_are_cut_on_any_paper(paper: PaperSize):
    """On every paper the words of band and template can be read, none on another."""
    layout = laid_out((waistband(), template()), paper)
    boxes = [words_box(w) for w in words_of(layout.plan)]
    assert not [b for b in boxes if any(b.meets(j) for j in joins(layout.grid))]
    assert not [(a, b) for a, b in combinations(boxes, 2) if a.grown(-0.5).meets(b.grown(-0.5))]
