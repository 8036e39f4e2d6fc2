"""The folded preview: a few pleats in their true proportions, in the room it is given."""

from itertools import pairwise

import pytest
from briefs import any_brief, brief
from hypothesis import given, settings

from studio.brief import Brief
from studio.drawing import Stroke, Words, flat_marks
from studio.drawing.lettering import words_box
from studio.drawing.pleat_section import ROOM, pleat_section
from studio.geometry import Path
from studio.workroom import make_up

KINDS = ("knife to the left", "knife to the right", "box", "inverted")


def cloth(one: Brief) -> Path:
    """The cloth in the preview."""
    return next(m.path for m in flat_marks(pleat_section(one, make_up(one).draft)) if isinstance(m, Stroke))


@settings(max_examples=40)
@given(any_brief("pleated"))
def test_it_stays_in_its_room(one: Brief):
    """Whatever the pleats, cloth, measured lines and words lie in 66 by 45 mm."""
    for mark in flat_marks(pleat_section(one, make_up(one).draft)):
        box = mark.path.box if isinstance(mark, Stroke) else words_box(mark)
        assert box.joined(ROOM.grown(0.01)) == ROOM.grown(0.01)


@pytest.mark.parametrize("kind", ["knife to the left", "knife to the right"])
@pytest.mark.parametrize("depth", [20.0, 50.0, 75.0])
def test_knife_pleats_are_in_proportion(kind: str, depth: float):
    """Folds lie a face apart, and each hidden fold a depth beside its own, the way the pleat is laid."""
    points = cloth(brief("pleated", skirt__pleat_kind=kind, skirt__pleat_depth=depth)).flat()
    top = min(p.y for p in points)
    folds = [p.x for p in points if p.y == top]
    hidden = [p.x for p in points if p.y == max(q.y for q in points)]
    face = folds[1] - folds[0]
    assert (face > 0) == (kind == "knife to the left")
    assert depth / 50 == pytest.approx((hidden[0] - folds[0]) / face)
    assert [face] * (len(folds) - 1) == pytest.approx([b - a for a, b in pairwise(folds)])


@pytest.mark.parametrize("kind", ["box", "inverted"])
def test_what_meets_in_the_middle(kind: str):
    """A box has its face in the middle of the preview; inverted pleats meet there."""
    points = cloth(brief("pleated", skirt__pleat_kind=kind)).flat()
    top = min(p.y for p in points)
    folds = [p.x - ROOM.centre.x for p in points if p.y == top]
    assert (min(abs(x) for x in folds) < 1) == (kind == "inverted")
    assert sum(folds) == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize(("depth", "layers"), [(30.0, "3 layers"), (60.0, "5 layers")])
def test_it_says_what_it_shows(depth: float, layers: str):
    """Face, depth and layers are in words, in the maker's unit."""
    one = brief("pleated", skirt__pleat_depth=depth)
    said = [m.text for m in flat_marks(pleat_section(one, make_up(one).draft)) if isinstance(m, Words)]
    assert {"outside", "face 5.0", layers} <= set(said)
    inches = [m.text for m in flat_marks(pleat_section(one, make_up(one).draft, "in")) if isinstance(m, Words)]
    assert "face 2" in inches


def test_other_skirts_have_none():
    """A skirt without pleats has no preview."""
    assert () == pleat_section(brief(), make_up(brief()).draft)
