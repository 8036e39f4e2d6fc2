"""Edge gauges: their strokes measured on the page, against the numbers of the brief."""

from typing import Any

import pytest
from briefs import any_brief, brief
from hypothesis import given, settings
from hypothesis import strategies as st
from looked_over import box_of, group, outside, overlapping, strokes, texts_on, words_on

from studio.brief import Brief
from studio.drawing import Group
from studio.drawing.lettering import LEAST
from studio.paper.edge_gauges import edge_gauges
from studio.paper.page import Page
from studio.paper.sizes import PaperSize, paper_size
from studio.paper.template import Moves, moves
from studio.styles import rack
from studio.units import Unit, write_length
from studio.workroom import make_up

PAPERS = ("A4", "US Letter", "A3", "roll")


def gauges(one: Brief, unit: Unit = "cm", *, moved: bool = True) -> tuple[Page, ...]:
    """The pages of a brief, with the template that its paper takes."""
    docket, paper = make_up(one), paper_size(one.paper)
    return edge_gauges(docket.pieces, one.title, unit, paper, template_of(one) if moved else None)


def template_of(one: Brief) -> Moves:
    """How the first panel's template is moved."""
    return moves(make_up(one).draft.piece("skirt"), min(paper_size(one.paper).live))


def gauge(pages: tuple[Page, ...], name: str) -> Group:
    """The gauge of that name, on whichever page it is."""
    for page in pages:
        try:
            return group(page.drawing, name)
        except KeyError:
            continue
    raise KeyError(name)


@settings(max_examples=150)
@given(any_brief(), st.sampled_from(PAPERS), st.sampled_from(("cm", "in")))
def test_any_page_can_be_read(one: Brief, size: str, unit: Unit):
    """On A4, Letter, A3 and a roll no word lies on another, all is printed, and nothing is smaller than 3 mm
    (2.8 in the foot)."""
    one = rack.edit(one, {"paper.size": size})
    for page in gauges(one, unit):
        assert [] == overlapping(page)
        assert [] == outside(page, one.paper.margin)
        foot = max(w.at.y for w in words_on(page))
        assert all(w.height >= (2.8 if w.at.y == foot else LEAST) - 1e-9 for w in words_on(page))


@settings(max_examples=100)
@given(any_brief(), st.sampled_from(PAPERS))
def test_every_gauge_is_there_or_its_absence_is_said(one: Brief, size: str):
    """No gauge goes missing without a word."""
    pages = gauges(rack.edit(one, {"paper.size": size}), moved=False)
    said = " ".join(" ".join(texts_on(p)) for p in pages)
    for name, shown in (
        ("waist gauge", "Waist gauge"),
        ("hem gauge", "Hem gauge"),
        ("Band end", "Band end"),
        ("Plain end", "Plain end"),
    ):
        there = any(_has(p, name) for p in pages)
        assert there != (f"{shown} left out:" in said), name


def _has(page: Page, name: str) -> bool:
    try:
        group(page.drawing, name)
    except KeyError:
        return False
    return True


@settings(max_examples=100)
@given(any_brief())
def test_gauges_are_true(one: Brief):
    """Measured on the page: seam, opening and bar lie where the brief says, and so do hem fold and first turn."""
    pages = gauges(one, moved=False)
    waist = gauge(pages, "waist gauge").marks
    edge, seam = box_of(waist, "cut"), one.seams.allowance
    level = [s.path.box for s in strokes(waist, "seam") if s.path.box.height == 0]
    upright = [s.path.box for s in strokes(waist, "seam") if s.path.box.width == 0]
    assert [seam] == pytest.approx([b.top - edge.top for b in level])
    side = [] if one.opening.kind == "none" else [30.0 if one.opening.kind == "wrap" else seam]
    assert side == pytest.approx([b.left - edge.left for b in upright])
    bars = [s.path.box.left - edge.left for s in strokes(waist, "notch")]
    assert all(bar == pytest.approx(side[0] + one.gathers.end_gap) for bar in bars)
    if any(_has(p, "hem gauge") for p in pages):
        hem = gauge(pages, "hem gauge").marks
        raw = box_of(hem, "cut").bottom
        turned = one.seams.hem_kind != "single" and 0 < one.first_turn < one.hem
        turn = [one.first_turn] if turned else []
        drawn = sorted(raw - s.path.box.top for s in strokes(hem, "fold"))
        assert [*turn, one.hem] == pytest.approx(drawn)


def test_gather_rows_lie_either_side_of_the_seam():
    """Two rows at an allowance of 1.5: 1 and 2 cm from the raw edge (common practice, no source), from the bar on."""
    waist = gauge(gauges(brief()), "waist gauge").marks
    edge = box_of(waist, "cut")
    rows = [s.path.box for s in strokes(waist, "gather")]
    assert [10.0, 20.0] == pytest.approx([b.top - edge.top for b in rows])
    assert [35.0, 35.0] == pytest.approx([b.left - edge.left for b in rows])


def test_the_band_end_is_true():
    """The usual hole is 2.1 (18 and 3 by Bulletin 576: diameter and thickness), 1.5 from the end, in the middle of 3;
    the centre back lies 4 from the end."""
    end = gauge(gauges(brief()), "Band end").marks
    edge = box_of(end, "cut")
    assert 30.0 == pytest.approx(edge.height)
    hole = next(s.path.box for s in strokes(end, "notch") if s.path.box.height == 0)
    assert (15.0, 21.0, 15.0) == pytest.approx((edge.right - hole.right, hole.width, hole.top - edge.top))
    assert 40.0 == pytest.approx(edge.right - box_of(end, "centre").left)


def test_the_plain_end_is_true():
    """The button lies over the hole's outer end when the band is closed: 4 − 1.5 = 2.5 from the plain end."""
    end = gauge(gauges(brief()), "Plain end").marks
    edge, button = box_of(end, "cut"), box_of(end, "button")
    assert (25.0, 15.0) == pytest.approx((button.centre.x - edge.left, button.centre.y - edge.top), abs=1e-3)
    assert 18.0 == pytest.approx(button.width, abs=0.02)


@pytest.mark.parametrize("count", [2, 3, 5])
def test_buttonholes_stand_evenly(count: int):
    """Several holes share the band evenly between the insets from fold and seam."""
    one = brief(fastening__count=count, waistband__width=120.0)
    end = gauge(gauges(one), "Band end").marks
    edge = box_of(end, "cut")
    heights = [s.path.box.top - edge.top for s in strokes(end, "notch") if s.path.box.height == 0]
    step = (120 - 2 * 15) / (count - 1)
    assert [15 + step * k for k in range(count)] == pytest.approx(heights)


def test_hook_and_bar():
    """The hook lies 3 mm from the extension's end (New Mexico State Univ. Extension C-232: 1/8 in); the bar so that
    the band closes true."""
    pages = gauges(brief(fastening__kind="hook and bar"))
    over, under = gauge(pages, "Band end").marks, gauge(pages, "Plain end").marks
    assert 3.0 == pytest.approx(box_of(over, "cut").right - box_of(over, "button").right)
    assert 37.0 == pytest.approx(box_of(under, "button").centre.x - box_of(under, "cut").left)


def test_a_deep_hem_and_a_high_band_go_on_a_further_page():
    """What is too high for a page on its side stands on an upright one, still true."""
    pages = gauges(brief(seams__hem=200.0, waistband__width=150.0, paper__size="US Letter"), moved=False)
    assert [True, False] == [p.size.width > p.size.height for p in (pages[0], pages[-1])]
    hem = gauge(pages[1:], "hem gauge").marks
    assert 200.0 == pytest.approx(box_of(hem, "cut").bottom - min(s.path.box.top for s in strokes(hem, "fold")))
    assert 150.0 == pytest.approx(box_of(gauge(pages[1:], "Band end").marks, "cut").height)


def test_a_gauge_larger_than_the_paper_is_said():
    """A hem of 20 has no true gauge on a paper 18 high: the page says so in a line, and holds the others."""
    pages = edge_gauges(make_up(brief(seams__hem=200.0)).pieces, "x", "cm", PaperSize("small", 180, 180))
    said = " ".join(" ".join(texts_on(p)) for p in pages)
    assert "Hem gauge left out: it is larger than the paper." in said
    assert [False, True] == [any(_has(p, name) for p in pages) for name in ("hem gauge", "waist gauge")]
    assert [] == [pair for p in pages for pair in overlapping(p)]


def test_a_fastening_off_the_band_is_said():
    """Buttons 7 from the edges of a band of 3 lie on no band; the page says so in a line."""
    said = " ".join(" ".join(texts_on(p)) for p in gauges(brief(fastening__edge_inset=70.0, fastening__count=2)))
    assert "Band end left out: the fastening does not lie on the band." in said


@pytest.mark.parametrize(("unit", "long"), [("cm", 50.0), ("in", 50.8)])
def test_each_page_has_a_scale(unit: Unit, long: float):
    """Five centimetres, or two inches, to measure before anything is cut (1 in is 25.4 mm by definition)."""
    for page in gauges(brief(seams__hem=200.0), unit):
        assert any(s.path.box.width == pytest.approx(long) for s in strokes(page.drawing, "plain"))


@pytest.mark.parametrize("changes", [{}, {"skirt__fullness": 5.0, "body__waist": 2000.0}, {"skirt__panels": 4}])
def test_running_totals_reach_the_cut_width(changes: dict[str, Any]):
    """After each move the tape shows so many times the template's width; after the last, the panel's cut width."""
    one = brief(**changes)
    step, panel = template_of(one), make_up(one).draft.piece("skirt")
    drawn = gauge(gauges(one), "moving the template")
    said = [m.text for m in drawn.marks if hasattr(m, "text")]
    totals = [step.width * k for k in range(1, step.count)] + [panel.cut_line.box.width]
    assert step.count > 1
    assert all(write_length(t, "cm", bare=True) in said for t in totals)
    cells = [s.path.box.width for s in strokes(drawn.marks, "plain")]
    assert step.count == len(cells)
    assert step.last / step.width == pytest.approx(cells[-1] / cells[0])


def test_a_narrow_panel_is_not_moved():
    """A template as wide as its panel is laid down once, and nothing is said of moving."""
    one = brief(skirt__panels=24)
    assert 1 == template_of(one).count
    assert not any(_has(p, "moving the template") for p in gauges(one))


def test_the_usual_gauges_fit_one_sheet():
    """One A4 holds all that a usual skirt needs at true size."""
    assert 1 == len(gauges(brief()))


LEFT_OUT = [
    ("elastic", {"opening__kind": "none"}, "Band end left out: the band is a ring."),
    ("folded", {"opening__kind": "none"}, "Plain end left out: the band is a ring."),
    ("contour", {}, "Band end left out: the band is curved; take its end from the pattern."),
    ("bound", {}, "Band end left out: the ends only meet, with a hook and an eye."),
    ("bound", {"opening__kind": "wrap"}, "Band end left out: the band is too narrow."),
    ("faced", {}, "Plain end left out: the waist is faced and has no band."),
]


@pytest.mark.parametrize(("kind", "changes", "says"), LEFT_OUT)
def test_a_band_without_such_an_end_is_said(kind: str, changes: dict[str, Any], says: str):
    """Where a band has no end to take a gauge of, the page says why, and holds the others."""
    pages = gauges(brief(waistband__kind=kind, **changes))
    assert says in " ".join(" ".join(texts_on(p)) for p in pages)
    assert any(_has(p, "waist gauge") for p in pages)


def test_the_end_of_a_band_in_two_is_true():
    """Its top edge is the seam to the facing: the hole lies in the middle of 3, as in a folded band."""
    end = gauge(gauges(brief(waistband__kind="two-piece")), "Band end").marks
    edge = box_of(end, "cut")
    hole = next(s.path.box for s in strokes(end, "notch") if s.path.box.height == 0)
    assert (30.0, 15.0, 15.0) == pytest.approx((edge.height, edge.right - hole.right, hole.top - edge.top))


def test_snaps_have_their_place_on_both_ends():
    """A snap 1 cm from the end, and its other half where the band closes true: 4 − 1 = 3 from the plain end."""
    pages = gauges(brief(fastening__kind="snap"))
    over, under = gauge(pages, "Band end").marks, gauge(pages, "Plain end").marks
    assert 10.0 == pytest.approx(box_of(over, "cut").right - box_of(over, "button").centre.x)
    assert 30.0 == pytest.approx(box_of(under, "button").centre.x - box_of(under, "cut").left)


@pytest.mark.parametrize("style", tuple(rack.RACK))
def test_every_style_has_its_gauges_or_says_why_not(style: str):
    """Curved edges have no gauge to slide along them; the page says so."""
    one = brief(style)
    docket = make_up(one)
    pages = edge_gauges(docket.pieces, one.title, "cm", paper_size(one.paper))
    said = " ".join(" ".join(texts_on(p)) for p in pages)
    for name, shown in (("waist gauge", "Waist gauge"), ("hem gauge", "Hem gauge"), ("Band end", "Band end")):
        assert any(_has(p, name) for p in pages) != (f"{shown} left out:" in said), name
    assert [] == [pair for p in pages for pair in overlapping(p)]


def test_a_faced_hem_has_no_gauge():
    """A hem that is faced is sewn, not turned; the page says so."""
    assert "Hem gauge left out: the hem is faced." in " ".join(texts_on(gauges(brief(seams__hem_kind="faced"))[0]))
