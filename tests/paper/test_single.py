"""Single pages: what flows, and what the foot says."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from looked_over import outside, overlapping, texts_on

from studio.drawing import flat_marks
from studio.drawing.furniture import stroke
from studio.paper.page import Size
from studio.paper.single import Block, body, flow, lying, single, upright
from studio.paper.sizes import SHEETS, PaperSize


def block(name: float, height: float, head: Block | None = None) -> Block:
    """A block with one stroke that is as high as the block, and so long."""
    return Block((stroke("plain", (0, 0), (name, height)),), height, 2, head)


@given(st.lists(st.floats(1, 40), max_size=30))
def test_blocks_are_never_cut_nor_lost(heights: list[float]):
    """Everything is printed once, in order, within the page and below what comes before."""
    columns = flow([block(k + 1, h) for k, h in enumerate(heights)], 100)
    seen = []
    for column in columns:
        y = 0.0
        for mark in flat_marks(column.marks):
            box = mark.path.box  # type: ignore[union-attr]
            assert y - 1e-9 <= box.top
            assert box.bottom <= 100 + 1e-9
            y = box.bottom
            seen.append(round(box.width))
        assert y == pytest.approx(column.used)
    assert list(range(1, len(heights) + 1)) == seen


def test_a_list_that_goes_on_has_its_heads_again():
    """A row that begins a page stands under the heads of its list."""
    head = block(9, 10)
    first, second = flow([block(1, 60, head), block(2, 60, head)], 100)
    assert (1, 2) == (len(first.marks), len(second.marks))
    assert 60.0 == first.used
    assert 10 + 2 + 60 == second.used


@pytest.mark.parametrize("margin", [3.0, 10.0, 15.0, 30.0])
@pytest.mark.parametrize("name", [*SHEETS, "roll"])
def test_heading_and_foot_are_printed(name: str, margin: float):
    """Also with the widest margins a printer has, and with a title as long as can be typed."""
    paper = PaperSize(name, *SHEETS.get(name, Size(280, 5000)), margin, roll=name == "roll")
    for size in (upright(paper), lying(paper)):
        page = single(size, margin, "Chalk list", "W" * 80, (), ("All numbers in cm.", "W" * 80))
        assert [] == outside(page, margin)
        assert [] == overlapping(page)
        assert "All numbers in cm." in texts_on(page)
        room = body(size, margin)
        assert room.width > 140
        assert room.height > 110


def test_a_page_lies_or_stands():
    """A sheet can lie on its side; a roll only lies one way."""
    a4 = PaperSize("A4", 210, 297)
    assert (Size(210, 297), Size(297, 210)) == (upright(a4), lying(a4))
    assert upright(a4) == upright(a4.turned())
    roll = PaperSize("roll", 914.4, 5000, roll=True)
    assert upright(roll) == lying(roll)
    assert 914.4 == upright(roll).width
