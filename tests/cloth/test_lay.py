"""The first lay plan, checked by code of its own."""

import itertools

import pytest
from briefs import any_brief, brief
from hypothesis import given, settings
from shapely.geometry import Polygon, box

from studio.cloth.lay import Lay
from studio.geometry import Point
from studio.units import shop_length
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


def test_a_turned_piece_is_turned_and_not_mirrored():
    """Going round a piece on the cloth one goes the same way as on paper, unless the copy is the mirrored one."""
    for cut in ("along", "across"):
        for p in make_up(brief(skirt__cut=cut)).lay.placed:
            a, b, c = (p.on_cloth(q) for q in (Point(0, 0), Point(10, 0), Point(10, 10)))
            clockwise = (b.x - a.x) * (c.y - b.y) - (b.y - a.y) * (c.x - b.x) > 0
            assert clockwise != p.mirrored


def test_the_hem_lies_towards_a_selvedge():
    """Cut along, a panel's hem lies nearer a selvedge than its waist, so that a border falls on the hem."""
    made = make_up(brief(cloth__on_hand=900.0))
    panels = [p for p in made.lay.placed if p.piece.id == "skirt"]
    assert 2 == len(panels)
    for p in panels:
        hem, waist = (p.on_cloth(p.piece.edge(name).path.start).y for name in ("hem", "waist"))
        assert min(hem, 1400 - hem) < min(waist, 1400 - waist)


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
    assert buy == shop_length(length / (1 - shrinkage), "cm")
