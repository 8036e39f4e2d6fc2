"""Drafted pieces on paper: whole, and as templates that are moved along."""

import itertools

import pytest
from briefs import any_brief, brief
from hypothesis import given, settings
from msgspec.structs import replace

from studio.brief import Brief
from studio.draft.cutting import cut_words
from studio.drawing import Stroke, Words, flat_marks
from studio.drawing.lettering import words_box
from studio.paper.pattern import Said, pattern_piece
from studio.paper.printed import printed
from studio.paper.template import is_panel, moves, template
from studio.paper.whole import one_sheet, own_sheet
from studio.units import Unit
from studio.workroom import make_up


def said(one: Brief, unit: Unit = "cm") -> Said:
    """A brief and its unit, for the first piece."""
    return Said(one, unit, "1")


def texts(marks: object) -> str:
    """All words of a drawing, one after the other."""
    return " | ".join(m.text for m in flat_marks(marks) if isinstance(m, Words))  # type: ignore[arg-type]


def test_a_whole_piece_is_the_drafted_piece():
    """The cut line on paper is the drafted one, to the last digit."""
    for piece in make_up(brief()).pieces:
        drawn = pattern_piece(piece, said(brief()))
        cuts = [m for m in flat_marks(drawn.drawing) if isinstance(m, Stroke) and m.ink == "cut"]
        assert [piece.cut_line] == [c.path for c in cuts]


def test_words_are_in_the_makers_unit():
    """An inch user reads inches on every piece, and never a centimetre."""
    one = brief(body__waist=27.5 * 25.4, waistband__ease=0.5 * 25.4)
    for piece in make_up(one).pieces:
        drawn = pattern_piece(piece, said(one, "in"))
        everything = texts((*drawn.drawing, *drawn.blocks))
        assert " cm" not in everything
        assert "27 1/2" in everything


def test_words_on_a_pieces_own_sheet_can_be_read():
    """Printed true on a roll, name and "cut 1" are at least 7 mm high, words on lines 3.2, and nothing less than 3."""
    one = brief()
    for piece in make_up(one).pieces:
        words = [m for m in flat_marks(own_sheet("1", piece, said(one)).drawing) if isinstance(m, Words)]
        assert all(w.height >= 7 for w in words if w.text in (piece.name, cut_words(piece)))
        assert all(w.height >= 3.2 for w in words if w.patch)
        assert min(w.height for w in words) >= 3


def test_every_whole_piece_names_its_grain():
    """Band, panel and interfacing say beside the arrow what it runs along."""
    for piece in make_up(brief()).pieces:
        assert "grain, along the selvedge" in texts(pattern_piece(piece, said(brief())).drawing)


@pytest.mark.parametrize("changes", [{}, {"paper__size": "US Letter"}, {"paper__overlap": 8.0}, {"skirt__panels": 12}])
def test_no_printed_word_is_too_small(changes: dict[str, object]):
    """On first page, map, strips, lists and gauges nothing is smaller than 2.8 mm, and that only in the page's foot."""
    one = brief(**changes)
    docket = make_up(one)
    for page in printed(docket.pieces, docket.notions, said(one)):
        words = [m for m in flat_marks(page.drawing) if isinstance(m, Words)]
        assert min(w.height for w in words) >= 2.8
        assert all(w.height >= 3 for w in words if w.at.y < page.size.height - 12)


@pytest.mark.parametrize(("cut", "words"), [("along", "cut 1"), ("across", "cut 2, one mirrored")])
def test_how_many_to_cut(cut: str, words: str):
    """A pair says that one of the two is mirrored."""
    assert words == cut_words(make_up(brief(skirt__cut=cut)).draft.piece("skirt"))


def test_title_block_says_what_the_piece_is():
    """Name, number, cut, cloth, for whom, allowance, grain and cut size stand on the piece."""
    one = brief(who="Ines", skirt__cut="across")
    drawn = pattern_piece(make_up(one).draft.piece("skirt"), said(one))
    for words in (
        "Skirt",
        "cut 2, one mirrored",
        "main",
        "Ines, waist 70.0",
        "1.5, hem 4.0: included",
        "down",
        "74.0 × 67.5",
    ):
        assert words in texts(drawn.blocks)


@settings(max_examples=60)
@given(any_brief())
def test_moves_add_up(one: Brief):
    """All moves of a template together are the panel's cut width, and the last is never wider than the template."""
    for piece in make_up(one).pieces:
        if not is_panel(piece):
            continue
        step = moves(piece, 173.0)
        assert piece.cut_line.box.width == pytest.approx((step.count - 1) * step.width + step.last)
        assert 0 < step.last <= step.width + 1e-6
        assert step.count == 1 or step.width % 10 == 0


def test_template_carries_every_line():
    """The seam, both gather rows, hem fold and first turn lie on the template as far from the edge as on the panel."""
    one = brief()
    panel = make_up(one).draft.piece("skirt")
    drawn = template(panel, said(one), moves(panel, 173.0))
    lines = [m for m in flat_marks(drawn.drawing) if isinstance(m, Stroke) and m.ink in ("seam", "gather", "fold")]
    at = {round(m.path.start.x, 6) for m in lines if abs(m.path.start.x - m.path.end.x) < 1e-9}
    assert {15.0, 10.0, 20.0, 15.0 + 620, 15.0 + 620 + 30} == at
    assert 675.0 == drawn.outline.box.width


def test_template_says_how_to_move_it():
    """How often to lay it, what the last move takes, and where the notches are, from the cut end."""
    one = brief()
    panel = make_up(one).draft.piece("skirt")
    drawn = template(panel, said(one), moves(panel, 173.0))
    everything = texts((*drawn.drawing, *drawn.blocks))
    assert "Lay it 10 times" in everything
    assert "Notches, from the first edge: 37.0, 72.5, 108.0." in everything.replace(" | ", " ")
    assert "Tape the whole: 145.0." in everything.replace(" | ", " ")


@settings(max_examples=60)
@given(any_brief())
def test_everything_fits_its_own_sheet(one: Brief):
    """A sheet of its own holds a piece with all its words, and one large sheet holds all pieces."""
    docket = make_up(one)
    pages = [own_sheet("1", p, said(one)) for p in docket.pieces] + [one_sheet(docket.pieces, said(one))]
    for page in pages:
        for mark in flat_marks(page.drawing):
            if isinstance(mark, Stroke):
                box = mark.path.box
                assert page.box.left <= box.left + 1e-6 and box.right <= page.box.right + 1e-6
                assert page.box.top <= box.top + 1e-6 and box.bottom <= page.box.bottom + 1e-6


@pytest.mark.parametrize("cut", ["along", "across"])
@pytest.mark.parametrize("width", [30.0, 40.0, 50.0])
def test_no_words_on_words(cut: str, width: float):
    """On a piece of usual size no words cover other words."""
    one = brief(skirt__cut=cut, waistband__width=width, who="Ines")
    for piece in make_up(one).pieces:
        drawn = pattern_piece(piece, said(one))
        boxes = [(m.text, words_box(m)) for m in flat_marks((*drawn.drawing, *drawn.blocks)) if isinstance(m, Words)]
        for (a, p), (b, q) in itertools.combinations(boxes, 2):
            assert not p.grown(-0.3).meets(q.grown(-0.3)), (piece.id, a, b)


@pytest.mark.parametrize("unit", ["cm", "in"])
@pytest.mark.parametrize("last", [16.0, 20.6, 24.0, 100.0])
def test_words_on_a_template_stand_apart(unit: Unit, last: float):
    """Wherever the last move ends, no words of the template lie on others."""
    one = brief()
    panel = make_up(one).draft.piece("skirt")
    drawn = template(panel, said(one, unit), replace(moves(panel, 173.0), last=last))
    words = [m for m in flat_marks(drawn.drawing) if isinstance(m, Words)]
    for a, b in itertools.combinations(words, 2):
        assert not words_box(a).grown(-0.1).meets(words_box(b).grown(-0.1)), (a.text, b.text)
