"""The booklet: every page keeps its margins on both papers, nothing is cut, and its words can be read back."""

import re
from pathlib import Path

import pypdf
import pytest
from briefs import any_brief, brief
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from looked_over import outside, overlapping, texts_on, words_on
from reading_back import page_sizes

from studio.__main__ import main
from studio.brief import Brief
from studio.draft.cutting import cut_words
from studio.drawing import Stroke, Words, flat_marks
from studio.drawing.lettering import LEAST
from studio.geometry import Point
from studio.paper.booklet import FOOT, SIDE, TOP, booklet
from studio.paper.booklet_flow import MOST_SPREAD, Part, columns
from studio.paper.page import Page
from studio.paper.pattern import Said
from studio.paper.pdf import write_pdf
from studio.sewing import sewing_order
from studio.styles import rack
from studio.units import Unit, spell, write_length
from studio.words import tr
from studio.workroom import make_up

PAPERS = {"A4": (210.0, 297.0), "US Letter": (215.9, 279.4)}  # ISO 216; 8.5 by 11 in
STYLES = tuple(rack.RACK)


def pages_of(one: Brief, unit: Unit = "cm") -> tuple[Page, ...]:
    """The booklet of a brief."""
    docket = make_up(one)
    return booklet(docket.draft, docket.notions, Said(one, unit))


def full(style: str, size: str = "A4") -> Brief:
    """A skirt with much to say."""
    return brief(
        style, paper__size=size, lining__kind="straight", pockets__kind="in seam", waistband__kind="contour", who="Ida",
    )  # fmt: skip


@pytest.mark.parametrize("size", PAPERS)
@pytest.mark.parametrize("style", STYLES)
def test_every_page_keeps_its_margins(style: str, size: str):
    """On A4 and on US Letter nothing stands nearer the edge than the page allows: 18 at the sides and at the top, the
    foot line within its 20.
    """
    for number, page in enumerate(pages_of(full(style, size)), 1):
        assert PAPERS[size] == tuple(page.size)
        assert [] == outside(page, 11 - 1), number  # the foot's own words stand 11 above the paper's edge
        room = page.box._replace(left=SIDE - 1.1, right=page.size.width - SIDE + 1.1, top=TOP - 1.1)
        for words in words_on(page):
            assert room.left <= words.at.x <= room.right, (number, words.text)
            assert room.top <= words.at.y, (number, words.text)
        body = [w for w in words_on(page) if w.at.y > page.size.height - FOOT + 1e-6]
        assert len(body) <= 2, number


@pytest.mark.parametrize("size", PAPERS)
@pytest.mark.parametrize("style", STYLES)
def test_no_words_lie_on_others(style: str, size: str):
    """Words in pictures, tables and steps keep clear of each other, and none is smaller than a page may have."""
    for number, page in enumerate(pages_of(full(style, size)), 1):
        assert [] == overlapping(page), number
        assert all(w.height >= LEAST - 1e-9 for w in words_on(page)), number


@pytest.mark.parametrize("size", PAPERS)
def test_a_step_is_never_cut(size: str):
    """A step's number, its picture and all its words stand on one page; each step comes once, in order."""
    one = full("straight", size)
    order = sewing_order(one, make_up(one).draft)
    found: list[str] = []
    for page in pages_of(one):
        words = words_on(page)
        numbers = [w for w in words if w.face == "serif" and w.colour == "accent"]
        titles = [w for w in words if w.face == "semibold" and w.height > 4 and w.at.x > SIDE + 20]
        assert len(numbers) == len([t for t in titles if t.text in {m.title for m in order}])
        found += [w.text for w in numbers]
    assert [str(k) for k in range(1, len(order) + 1)] == found


def test_a_heading_goes_with_what_follows():
    """No heading is left alone at the foot of a page."""
    for size in PAPERS:
        for style in STYLES:
            for page in pages_of(full(style, size))[1:]:
                heads = [w for w in words_on(page) if w.face == "serif" and w.height == 6.2]
                for head in heads:
                    assert any(w.at.y > head.at.y and w.at.y < page.size.height - FOOT for w in words_on(page)), (
                        head.text
                    )


def test_the_papers_are_laid_out_each_by_itself():
    """Letter is no scaled A4: steps stand elsewhere, letters are as large."""
    a4, letter = (pages_of(full("pleated", size)) for size in PAPERS)
    heights = [{w.height for p in pages for w in words_on(p) if w.face == "regular"} for pages in (a4, letter)]
    assert {3.8, 3.2} <= heights[0] & heights[1]
    assert [p.drawing for p in a4] != [p.drawing for p in letter]


def test_a_roll_has_a_booklet_too():
    """Whoever prints on a roll gets a booklet for the desk: A4, or US Letter in inches."""
    one = brief(paper__size="roll")
    assert PAPERS["A4"] == tuple(pages_of(one)[0].size)
    assert PAPERS["US Letter"] == tuple(pages_of(one, "in")[0].size)


def test_the_cover_has_the_finished_numbers():
    """Title, for whom, and what the skirt measures when it is done."""
    one = brief(title="A meadow skirt", who="Ida", skirt__length=615.0)
    texts = texts_on(pages_of(one)[0])
    assert {"A meadow skirt", "for Ida", "71.0", "61.5", "3.0"} <= set(texts)


@pytest.mark.parametrize("title", ["", "Ida’s long meadow skirt for the summer fair on the green", "W" * 80])
def test_any_title_stays_on_the_cover(title: str):
    """A long title is set smaller, on more lines, or cut short; it never runs off the page."""
    assert [] == outside(pages_of(brief(title=title, who="x" * 80))[0], 10)


def test_the_cut_chart_has_every_piece():
    """Each piece with how many are cut, as the pattern says it."""
    one = full("straight")
    texts = " ".join(t for p in pages_of(one) for t in texts_on(p))
    for piece in make_up(one).pieces:
        assert cut_words(piece) in texts
        box = piece.cut_line.box
        assert f"{write_length(box.width, 'cm', bare=True)} × {write_length(box.height, 'cm', bare=True)}" in texts


def test_measurements_say_how_to_take_them():
    """The words are those of the form, and what is not known is said to be so."""
    one = brief(body__height=None)
    texts = " ".join(texts_on(pages_of(one)[1]))
    known = rack.declarations(one)
    for path in ("body.waist", "body.hip"):
        assert tr(known[path].hint) in texts
    assert "not known" in texts
    assert "71.0 cm + 2 × 20.0 cm = 111.0 cm" in texts  # B + 2 stops
    assert "it passes with 15.0 cm to spare" in texts


def test_boxes_to_tick():
    """Every step has a box, and so has everything to buy."""
    one = brief()
    docket = make_up(one)
    squares = [
        m for p in pages_of(one) for m in flat_marks(p.drawing)
        if isinstance(m, Stroke) and m.ink == "plain" and m.fill is None and len(m.path.curves) == 4
        and m.path.box.width == pytest.approx(m.path.box.height) and m.path.box.width in (pytest.approx(4), pytest.approx(5))
    ]  # fmt: skip
    assert len(docket.notions) + len(sewing_order(one, docket.draft)) == len(squares)


@pytest.mark.paints
@pytest.mark.parametrize("unit", ["cm", "in"])
def test_read_back(tmp_path: Path, unit: Unit):
    """pypdf reads every sentence of every step from the printed booklet, and its pages at the paper's size."""
    one = brief("pleated", title="Test skirt", paper__size="US Letter")
    docket = make_up(one)
    there = tmp_path / "booklet.pdf"
    list(write_pdf(there, booklet(docket.draft, docket.notions, Said(one, unit)), one.title))
    assert all(size == pytest.approx(PAPERS["US Letter"], abs=0.01) for size in page_sizes(there))
    read = " ".join(page.extract_text() for page in pypdf.PdfReader(there).pages)
    plain = re.sub(r"\s+", "", read)
    for step in sewing_order(one, docket.draft):
        for sentence in step.says:
            assert re.sub(r"\s+", "", spell(sentence, unit)) in plain


@pytest.mark.paints
def test_the_command_writes_a_booklet(tmp_path: Path):
    """`export --booklet` writes one PDF, and nothing else."""
    assert 0 == main(["export", "--out", str(tmp_path), "--booklet", "--set", "skirt.style=circle"])
    (there,) = tmp_path.iterdir()
    assert there.name.endswith("-booklet.pdf")
    assert len(pypdf.PdfReader(there).pages) > 3


def test_loose_parts_share_what_is_left():
    """Steps of a page are moved apart evenly, never by more than 9 mm, and not on the last page."""

    def part(loose: bool) -> Part:
        return Part((Words("x", Point(0, 0), 3.0),), 30.0, loose=loose)

    first, last = columns([part(True)] * 5, 100.0)
    assert [0.0, 35.0, 70.0] == [m.at.y for m in first if isinstance(m, Words)]
    assert [0.0, 30.0] == [m.at.y for m in last if isinstance(m, Words)]
    assert 5.0 <= MOST_SPREAD
    wide, _ = columns([part(True)] * 3, 85.0)
    assert [0.0, 30.0 + MOST_SPREAD] == [m.at.y for m in wide if isinstance(m, Words)]


@pytest.mark.parametrize("style", STYLES)
@settings(max_examples=8, suppress_health_check=[HealthCheck.too_slow])
@given(data=st.data())
def test_anything_the_form_allows_makes_a_booklet(style: str, data: st.DataObject):
    """However odd the numbers, every page keeps clear of the paper's edge."""
    one = data.draw(any_brief(style))
    for page in pages_of(one, "in"):
        assert [] == outside(page, 8)


def test_no_page_holds_a_spare_part_alone():
    """Lines to write on come only where a page has room left for them."""
    words = (Words("x", Point(0, 0), 3.0),)
    parts = [Part(words, 60.0), Part((), 10.0, heading=True), Part(words, 30.0, spare=True)]
    assert [2, 1] == [len(columns(parts, height)[0]) for height in (100.0, 99.0)]
    assert 1 == len(columns(parts, 99.0))
