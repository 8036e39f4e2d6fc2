"""The papers."""

import pytest

from studio.brief.records import Paper
from studio.paper.sizes import LONGEST, PaperSize, paper_size


@pytest.mark.parametrize(
    ("name", "size", "live"),
    [
        ("A4", (210, 297), (173, 260)),  # ISO 216
        ("A3", (297, 420), (260, 383)),  # ISO 216
        ("US Letter", (8.5 * 25.4, 11 * 25.4), (178.9, 242.4)),  # 8.5 by 11 in
    ],
)
def test_papers_are_true(name, size, live):
    """Each paper has the size its standard gives, and shows 37 mm less of the drawing."""
    paper = paper_size(Paper(size=name))
    assert size == pytest.approx((paper.width, paper.height))
    assert live == pytest.approx(paper.live)
    assert live[::-1] == pytest.approx(paper.turned().live)


def test_margin_and_overlap_are_the_makers():
    """A printer with a wide blank edge gets a smaller drawing on each sheet."""
    assert (210 - 40 - 5 - 8, 297 - 40 - 5 - 8) == paper_size(Paper(margin=20, overlap=8)).live


def test_a_roll_is_as_wide_as_it_is():
    """A roll of 36 in is 914.4 mm wide, never turned, and its pages stay below what a PDF can hold."""
    roll = paper_size(Paper(size="roll", roll_width=914.4))
    assert roll == roll.turned()
    assert 914.4 == roll.width
    assert roll.height < LONGEST == 200 * 25.4  # 14 400 units of 1/72 in, ISO 32000-1 annex C


def test_sizes_are_values():
    """The same paper is the same paper."""
    assert PaperSize("A4", 210, 297) == paper_size(Paper())
