"""The lay plan on paper, read back: true to its scale, nothing on top of anything, every step on it."""

import itertools
import re
from pathlib import Path
from typing import Any

import pypdf
import pytest
from briefs import any_brief, brief
from hypothesis import given, settings
from hypothesis import strategies as st
from looked_over import outside, overlapping, strokes, texts_on, words_on
from msgspec.structs import replace
from reading_back import page_sizes, seen_on

from studio.brief import Brief, Held, PrintBand
from studio.cutting import cutting_order, cutting_steps
from studio.drawing import Group
from studio.drawing.lettering import LEAST, words_box
from studio.geometry import Arc, Cubic
from studio.paper.curves import cubics
from studio.paper.lay.fit import SERIES
from studio.paper.page import Page
from studio.paper.whole import numbered
from studio.plan_pages import plan_pages, put_plan
from studio.styles import rack
from studio.trouble import Trouble
from studio.units import Unit, spell, write_length
from studio.workroom import Docket, make_up

BANDS = (PrintBand(60.0, 260.0, tops="second"), PrintBand(1290.0, 1330.0, "waistband", "face centre"))
WAYS: dict[str, dict[str, Any]] = {
    "plain": {},
    "folded": {"cloth__lies": "folded"},
    "one way, on Letter": {"cloth__one_way": True, "paper__size": "US Letter"},
    "border, 150 wide": {"skirt__cut": "along", "cloth__bands": BANDS, "cloth__repeat": 240.0, "cloth__width": 1500.0},
    "a roll, wide margins": {"paper__size": "roll", "paper__margin": 30.0, "cloth__width": 1100.0},
}
TICK = 3.6


def known(style: str, more: dict[str, Any]) -> dict[str, Any]:
    """Those of some values that a style has."""
    paths = rack.declarations(rack.usual("cm", style))
    return {k: v for k, v in more.items() if k.replace("__", ".") in paths}


def ratio(pages: tuple[Page, ...]) -> int:
    """The scale that is written at the foot."""
    (found,) = {m[1] for t in texts_on(pages[0]) if (m := re.search(r"Scale 1:(\d+)", t))}
    return int(found)


def run_on(pages: tuple[Page, ...]) -> str:
    """All words of the pages, in the order they are set."""
    return " ".join(text for page in pages for text in texts_on(page))


def boxes(page: Page) -> int:
    """How many boxes to tick a page has."""
    found = [s.path.box for s in strokes(page.drawing, "plain") if s.path.closed and s.fill is None]
    return sum(abs(b.width - TICK) < 1e-6 and abs(b.height - TICK) < 1e-6 for b in found)


def look_over(docket: Docket, unit: Unit) -> tuple[Page, ...]:
    """The pages, once nothing on them is lost: no word on another or off the page, none too small."""
    pages, margin = plan_pages(docket, unit), docket.brief.paper.margin
    for page in pages:
        assert [] == overlapping(page)
        assert [] == outside(page, margin)
        foot = max(w.at.y for w in words_on(page))
        assert all(w.height >= (2.8 if w.at.y == foot else LEAST) - 1e-9 for w in words_on(page))
    return pages


@pytest.mark.parametrize(("way", "unit"), [*zip(WAYS, itertools.cycle(("cm", "in")), strict=False), ("plain", "in")])
@pytest.mark.parametrize("style", tuple(rack.RACK))
def test_every_step_is_on_the_page(style: str, way: str, unit: Unit):
    """For every skirt, each step of the cutting order is there word for word with a box to tick, each move of the
    template with its distance and a box of its own.
    """
    docket = make_up(brief(style, **known(style, WAYS[way])))
    pages = look_over(docket, unit)
    said, steps = run_on(pages), cutting_steps(docket)
    for step in steps:
        assert all(spell(s, unit) in said for s in step.says)
        assert all(write_length(m.begins, unit, bare=True) in said for m in step.moves)
    ticked = sum(not s.caution for s in steps) + sum(len(s.moves) for s in steps)
    assert ticked == sum(map(boxes, pages))
    assert len(cutting_order(docket)) == sum(len(s.says) + len(s.moves) for s in steps)


@settings(max_examples=60)
@given(
    st.sampled_from(tuple(rack.RACK)).flatmap(any_brief),
    st.sampled_from(("A4", "US Letter", "A3", "roll")),
    st.sampled_from(("cm", "in")),
)
def test_any_plan_can_be_read(one: Brief, size: str, unit: Unit):
    """Whatever the skirt, the cloth and the paper: a plan that fits is printed, at a standard scale (ISO 5455)."""
    docket = make_up(rack.edit(one, {"paper.size": size}))
    if docket.lay.misfits:
        with pytest.raises(Trouble, match="no plan to print"):
            plan_pages(docket, unit)
        return
    assert ratio(look_over(docket, unit)) in SERIES


@pytest.mark.paints
@pytest.mark.parametrize("style", ["gathered", "gored", "circle", "tiered"])
def test_pieces_are_true_to_scale(style: str, tmp_path: Path):
    """Read back by pypdf, each piece on paper times the scale is the piece, and all lie where the plan lays them: within
    0.1 mm of paper. Curves are compared by their ends and handles, which is what a PDF holds.
    """
    docket = make_up(brief(style, **known(style, WAYS["border, 150 wide"])))
    put_plan(tmp_path / "plan.pdf", docket, "cm")
    k = ratio(plan_pages(docket, "cm"))
    page = pypdf.PdfReader(tmp_path / "plan.pdf").pages[0]
    cuts = [s for s in seen_on(page) if s.stroked and abs(s.width - 0.5) < 0.01]
    origins: list[set[tuple[float, float]]] = []
    for p in docket.lay.placed:
        runs = (cubics(c) if isinstance(c, Arc) else (c,) for c in p.outline.curves)
        ends = (
            q
            for run in runs
            for c in run
            for q in (c.start, c.end, *((c.leave, c.arrive) if isinstance(c, Cubic) else ()))
        )
        outline = [p.on_cloth(q) for q in ends]
        wide, high = (max(v) - min(v) for v in zip(*outline, strict=True))
        fits = [s for s in cuts if abs(s.size[0] * k - wide) < 0.1 * k and abs(s.size[1] * k - high) < 0.1 * k]
        assert fits, p.piece.id
        at = [min(v) / k for v in zip(*outline, strict=True)]
        origins.append({(s.corner[0] - at[0], s.corner[1] - at[1]) for s in fits})
    assert any(
        all(any(abs(x - u) < 0.1 and abs(y - v) < 0.1 for u, v in one) for one in origins) for x, y in origins[0]
    )


@pytest.mark.paints
@pytest.mark.parametrize(("size", "wide", "high"), [("A4", 297, 210), ("A3", 420, 297), ("US Letter", 279.4, 215.9)])
def test_pages_lie_and_have_the_papers_size(size: str, wide: float, high: float, tmp_path: Path):
    """ISO 216, and 11 by 8.5 in, to 0.01 mm."""
    put_plan(tmp_path / "plan.pdf", make_up(brief(paper__size=size)), "cm")
    for found in page_sizes(tmp_path / "plan.pdf"):
        assert (wide, high) == pytest.approx(found, abs=0.01)


@pytest.mark.parametrize(("fullness", "scale", "width"), [(2.0, 10, 1500.0), (4.0, 20, 1400.0), (9.0, 50, 1400.0)])
def test_a_long_lay_is_drawn_smaller(fullness: float, scale: int, width: float):
    """One ten times smaller where it fits, 150 cm wide cloth on A4 too; else twenty, else fifty times (ISO 5455)."""
    docket = make_up(brief(skirt__cut="along", skirt__fullness=fullness, cloth__width=width))
    assert scale == ratio(look_over(docket, "cm"))


def test_numbers_are_those_of_the_sheets():
    """The number on a piece's black square is that of its sheets and of the page of what to cut."""
    docket = make_up(brief("godet"))
    white = [w.text for page in plan_pages(docket, "cm") for w in words_on(page) if w.colour == "white"]
    for number, piece in numbered(docket.pieces):
        copies = sum(p.piece.id == piece.id for p in docket.lay.placed)
        assert white.count(number) == 2 * copies  # on the cloth and at its step


def test_the_moves_of_the_template_are_ticks_on_the_piece():
    """Each move has a tick at either edge of the panel, where it begins, and its number and distance beside it."""
    docket = make_up(brief(**WAYS["border, 150 wide"]))
    pages = plan_pages(docket, "cm")
    step = next(s for s in cutting_steps(docket) if s.moves)
    ticks = [s.path.box for s in strokes(pages[0].drawing, "plain") if s.colour == "accent"]
    xs = sorted({round(t.left, 3) for t in ticks})
    assert 2 * len(step.moves) == len(ticks)
    apart = {round((b - a) * ratio(pages), 1) for a, b in itertools.pairwise(xs)}
    assert apart == {round(step.moves[0].wide, 1)}
    reds = [w.text for w in words_on(pages[0]) if w.colour == "accent"]
    wide = [m for m in step.moves if not m.narrow]
    assert all(str(m.number) in reds and write_length(m.begins, "cm", bare=True) in reds for m in wide)


def test_distances_are_read_from_one_end():
    """Across, the edges of every piece from the first selvedge; along, from the cut end: the running totals."""
    docket = make_up(brief(**WAYS["border, 150 wide"]))
    said = [w.text for w in words_on(plan_pages(docket, "cm")[0]) if w.ink == "dimension"]
    for p in docket.lay.placed:
        for mm in (p.at.y, p.at.y + p.across):
            assert write_length(mm, "cm", bare=True) in said
    assert {"0.0", "150.0"} <= set(said)


def test_the_print_is_sketched_and_its_bands_named():
    """One flower a repeat along each band, inside the cloth; a bracket says what the band is for."""
    docket = make_up(brief(**WAYS["border, 150 wide"]))
    (page, *_) = plan_pages(docket, "cm")
    sketch = next(m for m in page.drawing if isinstance(m, Group) and m.name == "print")
    assert sketch.clip is not None
    stems = {round(m.path.start.x, 3) for m in strokes(sketch.marks, "print") if len(m.path.curves) == 1}
    assert {24.0} == {round(b - a, 3) for a, b in itertools.pairwise(sorted(stems))}
    assert {"for the skirt", "for the waistband"} <= set(texts_on(page))
    assert any(t.startswith("hem line, 6.0") for t in texts_on(page))


def test_folded_cloth_and_held_pieces_say_so():
    """On folded cloth the fold is on top and a half lies on it; a piece that was put by hand is held."""
    docket = make_up(brief("straight", cloth__lies="folded"))
    said = texts_on(plan_pages(docket, "cm")[0])
    assert {"fold", "selvedges", "on the fold"} <= set(said)
    assert "first selvedge" not in said
    band = next(p for p in docket.lay.placed if p.piece.id == "waistband")
    held = replace(docket.brief, cloth=replace(docket.brief.cloth, held=(Held("waistband", 0, 50.0, band.at.y),)))
    assert "held" in " ".join(texts_on(plan_pages(make_up(held), "cm")[0]))


def test_inches_throughout():
    """Who reads inches reads no centimetres: 1450 mm are 57 1/8 in (by hand, 57.09)."""
    pages = plan_pages(make_up(brief(**WAYS["border, 150 wide"])), "in")
    assert "takes 57 1/8 in" in texts_on(pages[0])
    assert not re.search(r"\bcm\b|\d\.\d", run_on(pages))


@pytest.mark.paints
def test_a_plan_with_a_misfit_is_not_printed(tmp_path: Path):
    """The piece is named, and no file is left."""
    with pytest.raises(Trouble, match="Skirt does not fit the cloth"):
        put_plan(tmp_path / "plan.pdf", make_up(brief(cloth__width=600.0)), "cm")
    assert [] == list(tmp_path.iterdir())


def test_a_plan_longer_than_the_cloth_on_hand_says_so_on_paper():
    """Too little on hand, and a band that nothing lies on, are on the printed page."""
    bands = (PrintBand(60.0, 260.0),)
    said = run_on(plan_pages(make_up(brief("circle", cloth__on_hand=1000.0, cloth__bands=bands)), "cm"))
    assert "100.0 cm is on hand" in said
    assert "for the skirt; bare" in said
    assert "no piece lies on it" in said


@pytest.mark.parametrize("lies", ["open", "folded"])
@pytest.mark.parametrize("style", ["gathered", "straight", "circle"])
def test_words_about_lines_and_rests_keep_clear_of_the_print(style: str, lies: str):
    """What names a line on a band, or what is left over, lies on no motif; where it can't, the steps have it."""
    bands = (PrintBand(50.0, 250.0, tops="second"), PrintBand(1290.0, 1330.0, "waistband", "face centre"))
    more = {"skirt__cut": "along", "cloth__lies": lies, "cloth__bands": bands, "cloth__repeat": 240.0}
    page = plan_pages(make_up(brief(style, **known(style, more))), "cm")[0]
    sketch = next(m for m in page.drawing if isinstance(m, Group) and m.name == "print")
    motifs = [s.path.box for s in strokes(sketch.marks, "print")]
    assert motifs
    told = [
        w
        for w in words_on(page)
        if re.match(r"(hem line|middle of its face), |left over|(\d of )?[\d.]+ × [\d.]+$", w.text)
    ]
    assert told
    for words in told:
        assert not any(words_box(words).meets(box) for box in motifs), words.text
