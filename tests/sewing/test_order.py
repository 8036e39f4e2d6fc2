"""The sewing order: what is asked for is there, once, in the order of a workroom, with the draft's own numbers."""

import re
from collections.abc import Iterator
from typing import Any, get_args

import pytest
from briefs import brief
from making import order, said

from studio.brief import Brief
from studio.draft.bands.elastic import JOIN
from studio.draft.fastening import button_place, closed_girth, hole_length, inset
from studio.draft.making import Phase
from studio.draft.seam import notches
from studio.sewing import ALWAYS, CAUTIONS, cautions, sewing_order, sewing_text
from studio.styles import rack
from studio.units import spell, write_length
from studio.words import Phrase

BANDS = ("folded", "two-piece", "contour", "elastic", "bound", "faced")
OPENINGS = ("invisible", "lapped", "centred", "placket", "wrap", "none")
HELD = ("buttons", "hook and bar", "snap")
MOST_WORDS = 20


def keys(style: str = "gathered", **changes: Any) -> list[str]:
    """What the steps of a brief are known by."""
    return [m.key for m in order(brief(style, **changes))]


def every(style: str) -> Iterator[Brief]:
    """Every band with every opening, the fastening going round."""
    for k, (band, opens) in enumerate((b, o) for b in BANDS for o in OPENINGS):
        yield brief(style, waistband__kind=band, opening__kind=opens, fastening__kind=HELD[k % 3])


def sentences(phrases: tuple[Phrase, ...]) -> Iterator[str]:
    """One by one, as they are read."""
    for text in phrases:
        yield from re.split(r"(?<=[.!?])\s+", spell(text, "cm"))


@pytest.mark.parametrize("style", rack.RACK)
def test_every_skirt_can_be_sewn(style: str):
    """Whatever band and opening are chosen, steps come once each, in the order of the phases, about pieces there are.

    No sentence is longer than 20 words (common practice of plain language, no source).
    """
    phases = get_args(Phase)
    for one in every(style):
        draft = rack.draft(one)
        steps = sewing_order(one, draft)
        assert len(steps) == len({m.key for m in steps})
        places = [phases.index(m.phase) for m in steps]
        assert sorted(places) == places
        assert {m.shows.piece for m in steps if m.shows} <= {p.id for p in draft.pieces}
        assert {c for m in steps for c in m.cautions} <= set(CAUTIONS)
        assert [] == [s for m in steps for s in sentences(m.says) if len(s.split()) > MOST_WORDS]
        assert all(m.says and all(s.strip() for s in sentences(m.says)) for m in steps)


def test_all_marks_named_by_a_step_are_there():
    """What a picture is to show in the accent exists on its piece, for at least one of its edges or lines."""
    for style in rack.RACK:
        draft = rack.draft(brief(style))
        for step in sewing_order(brief(style), draft):
            if step.shows and step.shows.edges:
                names = {e.name for e in draft.piece(step.shows.piece).edges}
                assert names & set(step.shows.edges), (style, step.key)


def test_cautions_fit_one_line():
    """A caution is read at a glance: 20 words a sentence at most."""
    assert [] == [s for s in sentences((*CAUTIONS.values(), *ALWAYS)) if len(s.split()) > MOST_WORDS]


def test_wash_comes_first_and_wear_last():
    """Cloth is washed before it is cut, marked before it is sewn; the hem comes after the band, pressing last."""
    found = keys()
    wanted = ["prepare", "cut", "mark", "zip", "gather", "band", "holes", "hem", "press", "wear"]
    assert wanted == [k for k in found if k in wanted]


def test_steps_change_with_the_style():
    """Each style brings its own: gathers, pleats, tiers, a stayed waist, darts, godets."""
    own = {
        "gathered": "gather", "pleated": "pleats", "tiered": "tier/2", "circle": "stay", "straight": "darts",
        "godet": "godets",
    }  # fmt: skip
    for style, key in own.items():
        assert key in keys(style)
        assert [style] == [s for s in own if s == style or (key in keys(s) and key not in ("gather",))]


def test_steps_change_with_the_opening():
    """A zip, a placket, a wrap, or nothing at all."""
    own = {
        "invisible": "zip",
        "lapped": "zip",
        "centred": "zip",
        "placket": "placket",
        "wrap": "wrap edges",
        "none": "",
    }
    for kind, key in own.items():
        found = {k for k in keys(opening__kind=kind) if k in ("zip", "placket", "wrap edges")}
        assert ({key} if key else set()) == found


def test_an_invisible_zip_goes_in_before_its_seam_and_a_centred_one_after():
    """An invisible zip is set while the seam is open; the others into a seam sewn up to the stop (common practice, no
    source).
    """
    hidden, centred = keys(opening__kind="invisible"), keys(opening__kind="centred")
    assert hidden.index("zip") < hidden.index("opening seam")
    assert centred.index("opening seam") < centred.index("zip")


def test_steps_change_with_the_fastening():
    """Holes are only worked for buttons; a ring of elastic has nothing to close."""
    assert "holes" in keys(fastening__kind="buttons")
    assert "holes" not in keys(fastening__kind="snap")
    assert "Sockets" in said(brief(fastening__kind="snap"), "fastening")
    assert "Bars" in said(brief(fastening__kind="hook and bar"), "fastening")
    ring = keys(waistband__kind="elastic", opening__kind="none")
    assert {"band ring", "casing", "elastic"} <= set(ring)
    assert not {"fastening", "holes"} & set(ring)


def test_the_button_meets_its_hole():
    """Hole and button are put where the draft puts them: b = x − i, so that the band closes at B."""
    one = brief(waistband__extension=45.0, fastening__end_inset=17.0)
    length = write_length(hole_length("flat", 18, 3), "cm")
    assert f"buttonhole {length} long in the extension" in said(one, "holes")
    assert f"begins {write_length(inset(one), 'cm')} from that end" in said(one, "holes")
    assert f"to the plain end, {write_length(button_place(one), 'cm')} from that end" in said(one, "fastening")
    assert 45.0 - 17.0 == button_place(one)
    assert f"measure it: {write_length(closed_girth(one), 'cm')}" in said(one, "fastening")


def test_the_end_that_laps_is_named():
    """The extension lies on the wearer's left behind, at the front of a side opening, on her right in front (New Mexico
    State Univ. Extension C-232 for the front; the others common practice, no source).
    """
    lies = {
        "centre back": "on the wearer’s left",
        "side": "at the front of the opening",
        "front": "on the wearer’s right",
    }
    for place, words in lies.items():
        assert words in said(brief(opening__place=place), "band")


def test_notches_are_read_from_the_band():
    """Where band and skirt are pinned is where the draft's notches meet."""
    one = brief(body__waist=812.0)
    draft = rack.draft(one)
    seam = next(s for s in draft.seams if s.name == "waist")
    places = [at for at in notches(seam.other, {p.id: p for p in draft.pieces}) if at > 1]
    *before, last = [write_length(at, "cm", bare=True) for at in places]
    assert f"Pin the notches {', '.join(before)} and {last} cm from its plain end." in said(one, "band")


def test_gather_rows_lie_where_the_draft_has_them():
    """Rows are counted from the raw edge as they are marked: seam allowance and place together."""
    one = brief(gathers__rows=3)
    piece = rack.draft(one).piece("skirt")
    downs = sorted({m.path.start.y + one.seams.allowance for m in piece.lines if m.role == "gather"})
    *before, last = [write_length(at, "cm", bare=True) for at in downs]
    assert f"They run {', '.join(before)} and {last} cm below the raw edge." in said(one, "gather")
    assert "Stitch 3 rows" in said(one, "gather")


def test_tiers_are_drawn_up_to_the_tier_above():
    """Each tier's flat width is drawn up to the width of the one above it."""
    one = brief("tiered")
    draft = rack.draft(one)
    flat, above = (write_length(draft.fact(f"tier_{n}_width"), "cm") for n in (3, 2))
    assert f"Draw {flat} up to {above}" in said(one, "tier/3")


def test_tiers_are_joined_before_an_opening_through_them():
    """An opening that runs on into the next tier is made when the tiers are one; a short one before."""
    assert (k := keys("tiered", opening__zip_stop=400.0)).index("tier/2") < k.index("zip")
    assert (k := keys("tiered", opening__zip_stop=100.0)).index("zip") < k.index("tier/2")


def test_darts_are_counted_as_worn():
    """Darts are counted on all panels as cut, and measured as drafted."""
    one = brief("straight")
    draft = rack.draft(one)
    text = said(one, "darts")
    counts = [int(n) for n in re.findall(r"(\d+) darts", text)]
    assert 2 * (draft.fact("back_darts") + draft.fact("front_darts")) == sum(counts)
    assert f"{write_length(draft.fact('back_dart'), 'cm')} wide" in text


def test_elastic_is_cut_as_bought():
    """The elastic is cut as the notion says, and its ring is shorter by the join."""
    one = brief(waistband__kind="elastic", opening__kind="none")
    notion = next(n for n in rack.draft(one).notions if n.what == "elastic")
    long = float(notion.sizes["length"])
    assert f"Cut the elastic {write_length(long, 'cm')} long" in said(one, "elastic")
    assert f"the ring measures {write_length(long - JOIN, 'cm')}" in said(one, "elastic")


def test_pockets_come_while_the_panels_are_flat():
    """Patches and bags are set before the seams close."""
    for kind in ("patch", "in seam"):
        found = keys("straight", pockets__kind=kind)
        assert found.index("pockets") < found.index("seams")
    assert "pockets" not in keys("straight")


def test_godet_seams_stop_at_their_points():
    """With godets the panel seams end where the godets begin, as long as the draft has them."""
    one = brief("godet")
    short = rack.draft(one).piece("gore").edge("right").path.length
    assert f"each {write_length(short, 'cm')} down to the point of the godet" in said(one, "seams")


def test_a_caution_is_said_once():
    """Each caution stands at the first step that needs it, so that it is still read."""
    found = [c for step in cautions(order(brief())) for c in step]
    assert len(found) == len(set(found))
    assert {"iron", "shears", "needle", "general"} <= set(found)


def test_small_parts_are_named_for_a_child():
    """A child's skirt brings the caution about small parts (16 CFR 1501, from memory of its title); a grown one not."""
    child = brief(body__height=1100.0, body__waist=540.0)
    assert "small parts" in {c for m in order(child) for c in m.cautions}
    assert "small parts" not in {c for m in order(brief()) for c in m.cautions}


def test_the_text_has_a_box_for_each_step():
    """Printed, every step has its number and a box to tick; in inches no centimetre is left."""
    steps = order(brief())
    lines = list(sewing_text(brief(), steps, "in"))
    boxes = [line for line in lines if line.startswith("[ ]")]
    assert [f"[ ] {n:>2}  {m.title}" for n, m in enumerate(steps, 1)] == boxes
    assert not any(" cm" in line for line in lines)
    assert max(map(len, lines)) <= 84


def test_each_interfacing_goes_to_its_own_piece():
    """Both strips of a placket are interfaced, each with its own piece."""
    one = brief(opening__kind="placket")
    assert "wrong side of the placket, over" in said(one, "interface/interfacing-placket")
    assert "wrong side of the placket, under" in said(one, "interface/interfacing-placket-under")


def test_sides_are_measured_from_cut_edge_to_cut_edge():
    """The sides of a straight panel are as long as its cut piece is tall; those of half a circle are half as long."""
    one = brief()
    tall = rack.draft(one).piece("skirt").cut_line.box.height
    assert f"longest about {write_length(tall, 'cm')}" in said(one, "neaten")
    circle = brief("circle")
    across = rack.draft(circle).piece("skirt").cut_line.box.height
    longest = re.search(r"about ([\d.]+) cm", said(circle, "neaten"))
    assert longest is not None
    assert float(longest[1]) * 10 < across / 2
