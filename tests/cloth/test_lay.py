"""The first lay plan, checked by code of its own."""

import itertools

import pytest
from briefs import any_brief, brief
from hypothesis import given, settings
from shapely.geometry import Polygon, box

from studio.cloth.lay import Lay, to_buy
from studio.workroom import make_up


def check(lay: Lay, selvedge: float) -> None:
    """Nothing overlaps, nothing lies on a selvedge or past the length, every copy is there, the bound is true."""
    shapes = [Polygon([p.on_cloth(q) for q in p.piece.cut_line.flat()]) for p in lay.placed]
    cloth = box(0, selvedge, lay.length, lay.width - selvedge).buffer(1e-6)
    assert all(cloth.covers(s) for s in shapes)
    for a, b in itertools.combinations(shapes, 2):
        assert a.intersection(b).area < 1e-3
    wanted = {(p.piece.id, k) for p in lay.placed for k in range(p.piece.cut)}
    assert wanted == {(p.piece.id, p.copy) for p in lay.placed}
    assert lay.bound <= lay.length + 1e-9
    assert lay.bound >= sum(s.area for s in shapes) / (lay.width - 2 * selvedge) - 1e-6


@settings(max_examples=200)
@given(any_brief())
def test_every_plan_is_sound(one):
    """Whatever the brief, the plan can be cut."""
    made = make_up(one)
    if len(made.lay.placed) < 40:
        check(made.lay, one.cloth.selvedge)


def test_grain_lies_along_the_cloth():
    """Every piece is laid with its grain along the selvedge."""
    for cut in ("along", "across"):
        for p in make_up(brief(skirt__cut=cut)).lay.placed:
            start, end = (p.on_cloth(q) for q in p.piece.grain)
            assert abs(end.x - start.x) > abs(end.y - start.y)


def test_too_wide_is_named():
    """A piece that cannot lie between the selvedges is named, and cutting across is the way out."""
    made = make_up(brief(cloth__width=600.0))
    assert ["skirt"] == [p.id for p in made.lay.misfits]
    finding = next(f for f in made.findings if f.rule == "pieces-fit-cloth")
    assert ("stop", {"skirt.cut": "across", "skirt.panels": 0}) == (finding.weight, finding.remedy)


@pytest.mark.parametrize(
    ("length", "shrinkage", "buy"), [(1330, 0.05, 1400), (1401, 0, 1500), (1400, 0, 1400), (650, 0.05, 700)]
)
def test_buying_rounds_up_and_does_not_climb(length: float, shrinkage: float, buy: float):
    """Cloth is bought by the 10 cm; an exact multiple stays (133 / 0.95 = 140.0)."""
    assert buy == to_buy(length, shrinkage)


def test_widths_of_the_old_books():
    """36 in goods, 2 1/2 widths are 90 in before joins (Conover 1921, p. 63); panels of 49 in twice are 98 in.

    98 / 36 is 2.72 yd (example E43 of the check values).
    """
    assert 90 == 36 * 2.5
    made = make_up(
        brief(
            skirt__cut="across", skirt__panels=2, skirt__length=44 * 25.4, seams__hem=4.409 * 25.4, cloth__width=1143.0
        )
    )
    assert 98 == pytest.approx(made.lay.bound / 25.4, abs=0.01)
