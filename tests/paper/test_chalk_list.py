"""The chalk list as it is printed: every station with its distance, nothing on top of anything."""

import re
from typing import Any

import pytest
from briefs import any_brief, brief
from hypothesis import given, settings
from hypothesis import strategies as st
from looked_over import outside, overlapping, strokes, texts_on, words_on

from studio.brief import Brief
from studio.draft import Piece
from studio.drawing.lettering import LEAST
from studio.paper.chalk_list import chalk_list
from studio.paper.page import Page
from studio.paper.pattern import Said
from studio.paper.printed import printed, straight_band
from studio.paper.sizes import PaperSize, paper_size
from studio.paper.stations import stations
from studio.paper.template import is_panel
from studio.styles import rack
from studio.units import Unit, write_length
from studio.workroom import make_up

PAPERS = ("A4", "US Letter", "A3", "roll")
TICK = 3.6


def lists(one: Brief, unit: Unit = "cm") -> list[tuple[Piece, tuple[Page, ...]]]:
    """The pages of every panel, the band with the last."""
    docket, paper = make_up(one), paper_size(one.paper)
    panels = [p for p in docket.pieces if is_panel(p)]
    band = straight_band(docket.pieces)
    return [(p, chalk_list(p, one.title, unit, paper, band if p is panels[-1] else None)) for p in panels]


def ticks(page: Page) -> int:
    """How many boxes to tick a page has."""
    boxes = [s.path.box for s in strokes(page.drawing, "plain") if s.path.closed]
    return sum(TICK == pytest.approx(b.width) and TICK == pytest.approx(b.height) for b in boxes)


@settings(max_examples=120)
@given(any_brief(), st.sampled_from(PAPERS), st.sampled_from(("cm", "in")))
def test_any_list_can_be_read(one: Brief, size: str, unit: Unit):
    """On A4, Letter, A3 and a roll no word lies on another, all is printed, and nothing is smaller than 3 mm
    (2.8 in the foot)."""
    one = rack.edit(one, {"paper.size": size})
    for _, pages in lists(one, unit):
        for page in pages:
            assert [] == overlapping(page)
            assert [] == outside(page, one.paper.margin)
            foot = max(w.at.y for w in words_on(page))
            assert all(w.height >= (2.8 if w.at.y == foot else LEAST) - 1e-9 for w in words_on(page))


@settings(max_examples=60)
@given(any_brief(), st.sampled_from(PAPERS), st.sampled_from(("cm", "in")))
def test_every_station_is_listed_with_a_box_to_tick(one: Brief, size: str, unit: Unit):
    """The pages hold each distance of the piece, in the maker's unit, and as many boxes as stations."""
    one = rack.edit(one, {"paper.size": size})
    band = straight_band(make_up(one).pieces)
    found_lists = lists(one, unit)
    last = found_lists[-1][0]
    for panel, pages in found_lists:
        listed = [stations(p) for p in ([panel, band] if band and panel is last else [panel])]
        said = [text for page in pages for text in texts_on(page)]
        every = [s for found in listed for s in (*found.along, *found.down)]
        assert len(every) == sum(map(ticks, pages))
        for s in every:
            assert write_length(s.distance, unit, bare=True) in said
            assert s.name in said
        for found in listed:
            assert write_length(found.diagonal, unit, bare=True) in " ".join(said)


def marks(one: Brief) -> tuple[Piece, Page]:
    """The first panel of a brief and the first page of its list."""
    return next((piece, pages[0]) for piece, pages in lists(one))


@pytest.mark.parametrize("changes", [{}, {"skirt__panels": 3}, {"skirt__fullness": 5.0}, {"skirt__panels": 12}])
def test_the_rectangle_is_to_scale(changes: dict[str, Any]):
    """The drawing has the proportions of the piece, and its notches and folds stand where they lie on the cloth."""
    piece, page = marks(brief(**changes))
    cut = strokes(page.drawing, "cut")[0].path.box
    whole = piece.cut_line.box
    scale = cut.width / whole.width
    assert whole.height * scale == pytest.approx(cut.height)
    notches = [s.at.x - whole.left for s in piece.spots if s.role == "notch"]
    drawn = [(s.path.start.x - cut.left) / scale for s in strokes(page.drawing, "notch") if s.path.start.y == cut.top]
    assert sorted(notches) == pytest.approx(sorted(drawn))
    folds = [m.path.start.y - whole.top for m in piece.lines if m.role in ("hem", "first turn")]
    assert sorted(folds) == pytest.approx(
        sorted((s.path.start.y - cut.top) / scale for s in strokes(page.drawing, "fold"))
    )


def test_the_diagonals_are_written_once_as_a_tape_reads_them():
    """The usual skirt is 145 by 67.5: both diagonals 159.9 (Pythagoras, by hand)."""
    _, page = marks(brief())
    assert "both diagonals 159.9" in texts_on(page)
    assert any(text.startswith("Measure both diagonals. Equal, and 159.9, means square.") for text in texts_on(page))


def test_inches_throughout():
    """Who reads inches reads no centimetres; the foot says so once. 1450 mm are 57 1/8 in (by hand, 57.09)."""
    _, pages = lists(brief(), "in")[0]
    said = texts_on(pages[0])
    assert any(text.startswith("All numbers in inches.") for text in said)
    assert "57 1/8" in said
    assert not any(re.search(r"\bcm\b|\d\.\d", text) for text in said)


def test_the_band_stands_below_where_there_is_room():
    """On A3 the band is on the same page, to the same scale; on A4 it has a page of its own."""
    a4, a3 = (lists(brief(paper__size=size))[0][1] for size in ("A4", "A3"))
    assert (2, 1) == (len(a4), len(a3))
    skirt, band = (s.path.box for s in strokes(a3[0].drawing, "cut"))
    assert 1450 / skirt.width == pytest.approx(780 / band.width)
    assert "Waistband, cut 1" in texts_on(a4[1])


def test_the_band_is_listed_after_every_panel():
    """Four sheets of a skirt in panels come in the order they are chalked: the panels, the band, then the gauges."""
    one = brief(skirt__panels=4)
    titles = [texts_on(page)[:2] for page in printed(make_up(one).pieces, (), Said(one, "cm"))]
    lists_and_gauges = titles[-4:]
    assert [
        ["Chalk list", "Skirt back, cut 2, one mirrored"],
        ["Chalk list", "Skirt front, cut 2, one mirrored"],
        ["Chalk list", "Waistband, cut 1"],
        ["Edge gauges, true size", one.title],
    ] == lists_and_gauges


def test_a_long_list_goes_on_under_its_heads():
    """Twelve sections on a short page: the list runs on to a second page, which has the heads again."""
    paper = PaperSize("A4", 210, 180)
    panel = make_up(brief(gathers__sections=12)).draft.piece("skirt")
    pages = chalk_list(panel, "x", "cm", paper)
    assert len(pages) > 1
    for page in pages[1:]:
        assert [] == overlapping(page)
        assert any(text.endswith("continued") for text in texts_on(page))
        assert ticks(page) == 0 or "from A1" in texts_on(page)
    assert ticks(pages[1]) > 0


def test_the_side_to_chalk_is_said():
    """Panels are chalked from behind, the mirrored one from the other end; a band only right side up."""
    says = {piece.id: " ".join(texts_on(pages[0])) for piece, pages in lists(brief(skirt__panels=3))}
    assert "On the mirrored" in says["skirt"]
    assert "mirrored" not in says["skirt-across"]
    band = make_up(brief()).draft.piece("waistband")
    (page,) = chalk_list(band, "x", "cm", paper_size(brief().paper))
    said = " ".join(texts_on(page))
    assert "right side up" in said
    assert "wrong side" not in said


def test_the_selvedge_runs_with_the_grain():
    """Cut along, the selvedge runs with the letters; cut across, with the numbers."""
    for cut, runs in (("along", "The selvedge runs from A to"), ("across", "The selvedge runs from 1 to")):
        _, page = marks(brief(skirt__cut=cut))
        assert any(text.startswith(runs) for text in texts_on(page))
