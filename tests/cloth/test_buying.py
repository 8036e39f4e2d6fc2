"""What to buy, against worked yardages."""

import math

import pytest
from briefs import INCH, any_brief, brief
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from studio.brief import Brief
from studio.cloth.buying import whole_repeats
from studio.cloth.lay import lay_out
from studio.cloth.left_over import cut_area, left_over, skirt_weight, weight
from studio.cloth.ways import across, grain_down
from studio.draft import Notion
from studio.shopping import besides
from studio.units import shop_length, spell, write_metres
from studio.workroom import Docket, make_up

YARD = 36 * INCH


def bought(docket: Docket, what: str) -> Notion:
    """That line of the list."""
    return next(n for n in docket.notions if n.what == what)


def said(docket: Docket, what: str, unit: str = "cm") -> str:
    """Its words."""
    return spell(bought(docket, what).words, "cm" if unit == "cm" else "in")


@pytest.mark.parametrize(
    ("inches", "buy"),
    [(98, "2 3/4 yd"), (147, "4 1/8 yd"), (187, "5 1/4 yd"), (72, "2 yd"), (0, "0 yd")],
)
def test_yards_round_up_to_an_eighth(inches: float, buy: str):
    """Two and three panels of 49 in take 98 and 147 in: 2 3/4 and 4 1/8 yd (example E43, an Extension circular's rule);
    13 × 14 + 5 = 187 in is 5 1/4 yd (example E42, a sewing page); two yards just are two yards.
    """
    assert buy == write_metres(inches * INCH, "in", up=True)
    assert write_metres(shop_length(inches * INCH, "in"), "in") == buy


def test_shrinking_divides():
    """A length of 65 at 5 % is cut 68.42, not 68.25 (example E51); 1, 3 and 8 % are 1.0101, 1.0309 and 1.0870 times."""
    for s, times in ((0.01, 1.0101), (0.03, 1.0309), (0.05, 1.0526), (0.08, 1.0870)):
        made = make_up(brief(cloth__shrinkage=s))
        assert times == pytest.approx(made.fact("cloth_needed") / made.lay.length, abs=5e-5)
    assert 684.2 == pytest.approx(650 / (1 - 0.05), abs=0.05)


def test_two_panels_at_five_per_cent():
    """133 cm of panels is just 140.0 before the wash, and bought as 1.40 m (example E45)."""
    one = brief(body__waist=700.0, waistband__ease=10.0, skirt__length=600.0, seams__hem=50.0, skirt__cut="across",
                skirt__panels=2, cloth__shrinkage=0.05)  # fmt: skip
    assert (1400.0, "cloth 1.4 m, 140.0 cm wide") == (
        bought(make_up(one), "cloth").sizes["length"],
        said(make_up(one), "cloth"),
    )


def test_print_takes_whole_repeats():
    """96 in of a print that repeats every 27 is cut as 108 (a yardage chart), and one repeat more to start from."""
    assert 108.0 == whole_repeats(96.0, 27.0)
    assert 108.0 == whole_repeats(108.0, 27.0)
    plain = make_up(brief(cloth__repeat=300.0))
    placed = make_up(brief(cloth__repeat=300.0, cloth__match=True, skirt__panels=2))
    assert plain.lay.length == plain.fact("cloth_needed")
    assert math.ceil(placed.lay.length / 300) * 300 + 300 == pytest.approx(placed.fact("cloth_needed"))


def test_print_on_hand_takes_what_the_plan_takes():
    """A length on hand begins where its print does, so that the plan itself must come out of it; and one panel that
    meets only itself matches wherever it lies."""
    two = {"cloth__repeat": 300.0, "cloth__match": True, "skirt__panels": 2}
    bought = make_up(brief(**two))
    there = make_up(brief(**two, cloth__on_hand=bought.lay.length + 1))
    assert there.lay.length == pytest.approx(there.fact("cloth_needed"))
    assert "cloth-on-hand-suffices" not in {f.rule for f in there.findings}
    short = make_up(brief(**two, cloth__on_hand=bought.lay.length - 1))
    assert "cloth-on-hand-suffices" in {f.rule for f in short.findings}
    one = make_up(brief(cloth__repeat=300.0, cloth__match=True))
    assert one.lay.length == pytest.approx(one.fact("cloth_needed"))


def test_what_it_costs():
    """The cost is of what the shop cuts, in the maker's unit: tenths of a metre, or eighths of a yard."""
    made = make_up(brief(cloth__price=20.0))
    need = made.fact("cloth_needed")
    metres, yards = math.ceil(need / 100 - 1e-6) / 10, math.ceil(need / YARD * 8 - 1e-6) / 8
    assert f"costs {20 * metres:.2f}" in said(made, "cloth")
    assert f"costs {20 * yards * 0.9144:.2f}" in said(made, "cloth", "in")
    assert "costs" not in said(make_up(brief()), "cloth")
    assert said(make_up(brief(cloth__price=20.0, cloth__on_hand=9000.0)), "cloth").endswith("on hand")


def test_interfacing_is_one_length():
    """Band and placket strips are one line: a length off the interfacing's own width, on their grain."""
    made = make_up(brief(opening__kind="placket"))
    lines = [n for n in made.notions if n.what == "interfacing"]
    strips = [p for p in made.pieces if p.cloth == "interfacing"]
    assert (1, 3) == (len(lines), len(strips))
    assert 900.0 == lines[0].sizes["width"]
    longest = max(p.as_cut.box.height if grain_down(p) else p.as_cut.box.width for p in strips)
    assert longest == pytest.approx(lines[0].sizes["needed"])
    assert "interfacing 0.8 m, 90.0 cm wide" == said(made, "interfacing")
    assert not [n for n in make_up(brief(waistband__interfacing="none")).notions if n.what == "interfacing"]


def test_area_and_weight():
    """A full circle of waist 70 and length 60 in cloth of 150 g/m² is 1.551 m² and 232.6 g (example E53)."""
    one = brief("circle", body__waist=700.0, waistband__ease=0.0, skirt__length=600.0, skirt__fraction=1.0,
                skirt__bias_relief=0.0)  # fmt: skip
    panels = [p for p in make_up(one).pieces if p.id.startswith("skirt")]
    whole = sum(p.seam_line.area * p.cut * (2 if p.on_fold else 1) for p in panels)
    assert 1.551e6 == pytest.approx(whole, rel=2e-3)
    assert 232.6 == pytest.approx(weight(1.5508e6, 150.0), abs=0.1)


def test_weight_is_of_the_cut_pieces():
    """Every copy counts; without the cloth's weight there is none."""
    made = make_up(brief(cloth__weight=200.0))
    assert cut_area(made.lay) * 200 / 1e6 == skirt_weight(made.brief, made.lay)
    assert skirt_weight(make_up(brief()).brief, make_up(brief()).lay) is None


def test_what_is_left_is_whole():
    """The strip of a cloth beside a panel and the end after it are named by size, and nothing lies on them."""
    made = make_up(brief(cloth__on_hand=3000.0))
    left = left_over(made.brief, made.lay, "cm")
    assert 3000.0 - made.lay.length == pytest.approx(left.length)
    assert any(one.place.right == 3000.0 for one in left.whole)


@settings(max_examples=40)
@given(any_brief(), st.sampled_from(("cm", "in")))
def test_left_over_is_free(one: Brief, unit):
    """No piece of cloth that is named as left over lies on a piece, on another one, or off the cloth."""
    made = make_up(one)
    left = left_over(one, made.lay, unit)
    boxes = []
    for p in made.lay.placed:
        ends = [p.on_cloth(q) for q in p.piece.as_cut.flat(0.5)]
        boxes.append((min(q.x for q in ends), min(q.y for q in ends), max(q.x for q in ends), max(q.y for q in ends)))
    places = [one.place for one in left.whole]
    for k, b in enumerate(places):
        assert one.cloth.selvedge - 0.01 <= b.top and b.bottom <= one.cloth.width - one.cloth.selvedge + 0.01
        others = [*boxes, *(tuple(o) for o in places[:k])]
        assert not [
            o
            for o in others
            if min(o[2], b.right) - max(o[0], b.left) > 0.2 and min(o[3], b.bottom) - max(o[1], b.top) > 0.2
        ]
    assert sum(w.along * w.across * w.pieces for w in left.whole) <= left.area + 1


@pytest.mark.parametrize(("on_hand", "shrinkage"), [(3000.0, 0.0), (3000.0, 0.05), (None, 0.05)])
def test_left_over_is_measured_after_the_wash(on_hand: float | None, shrinkage: float):
    """What is left of 3 m that lose 5 per cent is left of 2.85 m, and of a length that is bought, of that once washed."""
    made = make_up(brief(cloth__on_hand=on_hand, cloth__shrinkage=shrinkage))
    washed = (bought(made, "cloth").sizes["length"] if on_hand is None else on_hand) * (1 - shrinkage)
    left, cloth = left_over(made.brief, made.lay, "cm"), made.brief.cloth
    assert washed - made.lay.length == pytest.approx(left.length)
    assert washed == pytest.approx(max(one.place.right for one in left.whole))
    assert left.area == pytest.approx(washed * (cloth.width - 2 * cloth.selvedge) - cut_area(made.lay))


def test_what_is_left_of_folded_cloth_opens_out():
    """Past the plan folded cloth is left in its full width between the selvedges, as open cloth is; off the fold there
    are two pieces of each, and so it is said. Both layers count.
    """
    made = make_up(brief("straight", cloth__lies="folded", cloth__on_hand=3000.0))
    left = left_over(made.brief, made.lay, "cm")
    assert (3000.0 - made.lay.length, 1400.0 - 2 * 15.0, 1) == pytest.approx(
        (left.whole[0].along, left.whole[0].across, left.whole[0].pieces)
    )
    assert left.area == pytest.approx(3000.0 * (1400.0 - 2 * 15.0) - cut_area(made.lay))
    made = make_up(brief(cloth__lies="folded", cloth__on_hand=4000.0))
    off = [one for one in left_over(made.brief, made.lay, "cm").whole if one.place.top > 1]
    assert [(2, one.place.height) for one in off] == [(one.pieces, one.across) for one in off]
    assert any(" 2 of 78.0 × 59.5 cm" in line for line in besides(made, "cm"))


def test_an_odd_piece_of_a_pair_is_one():
    """Of three cut through both layers two come from the first place and one from the second: the cloth beneath is left
    over.
    """
    made = make_up(brief("straight", cloth__lies="folded"))
    back = replace(made.draft.piece("back"), cut=3)
    lay = lay_out((back,), made.brief.cloth)
    assert [2, 2] == [p.layers for p in lay.placed]
    assert 3 * back.cut_line.area == pytest.approx(cut_area(lay))


def test_lining_is_laid_between_its_selvedges():
    """Two linings that just fit beside each other on the bare width do not between the selvedges, and take twice the
    length.
    """
    one = brief("straight", lining__kind="straight", cloth__selvedge=0.0)
    pieces = [replace(p, cloth="main") for p in make_up(one).pieces if p.cloth == "lining"]
    wide = sum(across(p, one.cloth) * p.cut for p in pieces)
    needs = [
        bought(make_up(brief("straight", lining__kind="straight", lining__width=wide, cloth__selvedge=selvedge)),
               "lining").sizes["needed"]
        for selvedge in (0.0, 10.0)
    ]  # fmt: skip
    assert 2 * needs[0] == pytest.approx(needs[1], abs=1.0)


def test_a_lining_too_wide_for_its_cloth_is_counted_by_its_length():
    """Where no lining fits across its cloth, every copy counts by its length."""
    made = make_up(brief("straight", lining__kind="straight", lining__width=300.0, cloth__selvedge=80.0))
    pieces = [p for p in made.pieces if p.cloth == "lining"]
    assert all(grain_down(p) and p.as_cut.box.width > 140.0 for p in pieces)
    assert sum(p.as_cut.box.height * p.cut for p in pieces) == pytest.approx(bought(made, "lining").sizes["needed"])
