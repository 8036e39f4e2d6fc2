"""What is kept and what is made anew when a brief is made up."""

import pytest
from briefs import brief
from msgspec.structs import replace

from studio.brief import Held, PrintBand
from studio.cloth.better import plans
from studio.cloth.found import MOST, Found, ground
from studio.cloth.placed import Lay
from studio.styles import rack
from studio.workroom import Docket, bettered, make_up, relaid


@pytest.fixture(scope="module")
def better() -> Docket:
    """Gores on a plan by their shapes, shorter than the one at a glance."""
    first = make_up(brief("gored"))
    *_, best = plans(first.pieces, first.brief.cloth, 1.0)
    docket = relaid(first, best)
    assert docket.lay.length < first.lay.length
    assert docket.fact("cloth_needed") < first.fact("cloth_needed")
    return docket


def kept(*dockets: Docket) -> Found:
    """The memory of these lays."""
    found = Found()
    for d in dockets:
        found = found.kept(ground(d.pieces, d.brief.cloth), d.lay)
    return found


@pytest.mark.parametrize(
    "edit",
    [
        {"fastening.button_diameter": 20.0}, {"gathers.rows": 3}, {"cloth.name": "Blue"}, {"cloth.price": 9.0},
        {"cloth.weight": 120.0}, {"cloth.on_hand": 1234.0}, {"cloth.shrinkage": 0.05}, {"cloth.photo": "abc"},
        {"title": "For Sunday"}, {"paper.size": "A3"}, {"lining.kind": "A-line"},
    ],
)  # fmt: skip
def test_an_edit_that_touches_no_piece_on_the_cloth_keeps_the_plan(better: Docket, edit: dict):
    """Buttons, a name, a price, the length on hand: the plan that was found stays, of the pieces as they are now."""
    same = make_up(rack.edit(better.brief, edit), kept(better))
    assert better.lay.length == same.lay.length
    assert {id(p) for p in same.pieces} >= {id(p.piece) for p in same.lay.placed}


@pytest.mark.parametrize(
    "edit",
    [
        {"skirt.length": 700.0}, {"cloth.width": 1500.0}, {"cloth.gap": 3.0}, {"cloth.one_way": True},
        {"cloth.lies": "folded"}, {"cloth.selvedge": 20.0}, {"cloth.shrinkage_across": 0.02}, {"skirt.gores": 8},
        {"cloth.held": (Held("waistband", 0, 10.0, 20.0),)}, {"cloth.bands": (PrintBand(20.0, 90.0, "waistband"),)},
    ],
)  # fmt: skip
def test_an_edit_that_moves_a_line_asks_for_a_new_plan(better: Docket, edit: dict):
    """Another length, another width, a piece held: made up with what was found before or without, it is the same."""
    other = rack.edit(better.brief, edit)
    assert make_up(other) == make_up(other, kept(better))


def test_a_step_taken_back_brings_the_found_plan_back(better: Docket):
    """Through edits and back, each skirt has the plan that was found for it; the memory stays small."""
    others = [make_up(rack.edit(better.brief, {"skirt.length": 500.0 + 5 * k})) for k in range(MOST + 3)]
    few, many = kept(better, *others[: MOST - 1]), kept(better, *others)
    assert better.lay.length == make_up(better.brief, few).lay.length
    assert MOST == len(many.plans) == len(kept(*others, *others).plans)
    assert make_up(better.brief) == make_up(better.brief, many)
    shorter = make_up(better.brief, kept(make_up(better.brief), better)).lay
    assert better.lay.length == shorter.length


def test_a_line_that_moves_on_its_piece_asks_for_a_new_lay():
    """A deeper hem on a shorter skirt leaves the cut line as it was, but not where the hem lies on its band: made up
    from before or not, the docket is the same.
    """
    band = PrintBand(1000.0, 1120.0)
    one = brief(skirt__cut="along", cloth__bands=(band,), cloth__width=1500.0, seams__hem=40.0, skirt__length=620.0)
    other = rack.edit(one, {"seams.hem": 50.0, "skirt.length": 610.0})
    assert make_up(one).draft.piece("skirt").cut_line == make_up(other).draft.piece("skirt").cut_line
    assert make_up(other) == make_up(other, kept(make_up(one)))


def test_a_better_plan_is_never_longer(monkeypatch: pytest.MonkeyPatch):
    """Of the plans that come, only a shorter one is taken, or one as long of which more is proven; in whatever order."""
    first = make_up(brief("gored"))
    lay, off = first.lay, first.lay.length - first.lay.bound
    longer = replace(lay, length=lay.length + 50, bound=lay.length + 50)
    surer, shorter = replace(lay, bound=lay.bound + off / 4), replace(lay, length=lay.length - off / 2)

    def found(*lays: Lay) -> Lay:
        monkeypatch.setattr("studio.workroom.plans", lambda *_: iter(lays))
        return bettered(first, 1.0).lay

    assert lay is found(longer)
    assert lay is found()
    assert surer == found(surer, lay, longer)
    assert shorter == found(longer, shorter, surer, longer)
