"""The page of what to have ready and what to cut."""

import pytest
from briefs import any_brief, brief
from hypothesis import given
from looked_over import outside, overlapping, strokes, texts_on, words_on

from studio.brief import Brief
from studio.paper.page import Page
from studio.paper.pattern import Said
from studio.paper.ready import ready_pages
from studio.paper.sizes import paper_size
from studio.paper.whole import numbered
from studio.units import Unit, spell
from studio.workroom import make_up


def pages(one: Brief, unit: Unit = "cm") -> list[Page]:
    """The pages of a brief."""
    docket = make_up(one)
    return list(ready_pages(numbered(docket.pieces), docket.notions, Said(one, unit), paper_size(one.paper)))


@pytest.mark.parametrize("unit", ["cm", "in"])
def test_all_that_is_needed_can_be_ticked_off(unit: Unit):
    """Cloth, zip, button, interfacing and thread are listed in the maker's unit, each with a box to tick."""
    one = brief()
    (page,) = pages(one, unit)
    notions = make_up(one).notions
    assert {"cloth", "zip", "button", "interfacing", "thread"} == {n.what for n in notions}
    assert {spell(n.words, unit) for n in notions} <= set(texts_on(page))
    boxes = [s.path.box for s in strokes(page.drawing, "plain")]
    assert len(notions) == sum(abs(b.width - 3.6) < 0.01 and abs(b.height - 3.6) < 0.01 for b in boxes)


def test_every_piece_is_listed_with_its_cut():
    """Number, name, how many, the cut size and how it comes on paper stand in one row."""
    (page,) = pages(brief(skirt__panels=4, paper__panels="chalk list"))
    rows: dict[float, list[str]] = {}
    for word in words_on(page):
        rows.setdefault(round(word.at.y, 3), []).append(word.text)
    assert ["1", "Waistband", "cut 1", "78.0 × 9.0", "whole"] in rows.values()
    assert ["2", "Skirt back", "cut 2, one mirrored", "38.5 × 67.5", "chalk list"] in rows.values()


@given(any_brief())
def test_any_page_can_be_read(one: Brief):
    """Whatever is made, nothing runs off the page, lies on other words or is set too small."""
    margin = paper_size(one.paper).margin
    for unit in ("cm", "in"):
        for page in pages(one, unit):
            assert [] == overlapping(page)
            assert [] == outside(page, margin)
            assert min(w.height for w in words_on(page)) >= 2.8
