"""What the cloth on hand makes."""

import pytest
from briefs import brief

from studio.check.makes import comes_out, cuts_out, helpful, largest, makes, numbers, takes
from studio.cloth.better import plans
from studio.styles import rack
from studio.workroom import make_up

STYLES = tuple(rack.RACK)


@pytest.mark.parametrize("on_hand", [900.0, 1300.0, 2300.0, 4000.0])
@pytest.mark.parametrize("style", STYLES)
def test_every_choice_cuts_out(style: str, on_hand: float):
    """Each choice, taken, comes out of the length on hand, with every piece between the selvedges and no finding of
    either.
    """
    one = brief(style, cloth__on_hand=on_hand)
    for choice in makes(one):
        made = make_up(rack.edit(one, choice.edit))
        assert choice.needed == made.fact("cloth_needed") <= on_hand + 1e-6
        assert {"cloth-on-hand-suffices", "pieces-fit-cloth"}.isdisjoint({f.rule for f in made.findings})


@pytest.mark.parametrize("grams", [None, 140.0, 400.0])
@pytest.mark.parametrize("style", STYLES)
def test_no_choice_of_fullness_is_too_bulky(style: str, grams: float | None):
    """However much cloth there is, no choice but a length brings the doubt that the gathers are bulky."""
    one = brief(style, cloth__on_hand=9000.0, cloth__weight=grams)
    choices = [c for c in makes(one) if "skirt.length" not in c.edit]
    assert choices
    for choice in choices:
        assert "gathers-too-bulky" not in {f.rule for f in make_up(rack.edit(one, choice.edit)).findings}


@pytest.mark.parametrize("on_hand", [900.0, 1300.0, 2300.0])
@pytest.mark.parametrize(("style", "path"), [(s, path) for s in STYLES for path in numbers(brief(s))])
def test_one_step_more_does_not(style: str, path: str, on_hand: float):
    """The most that cuts out is the most: one step more is too much, too bulky, or more than the form takes."""
    one = brief(style, cloth__on_hand=on_hand)
    flat = path != "skirt.length"
    declared, most = rack.declarations(one)[path], largest(one, path)
    if most is None:
        assert not cuts_out(rack.edit(one, {path: type(declared.usual)(declared.least)}), flat=flat)
        return
    assert cuts_out(rack.edit(one, {path: most}), flat=flat)
    more = most + declared.step
    if more <= declared.most:
        more = round(more) if declared.kind == "count" else round(more, 6)
        assert not cuts_out(rack.edit(one, {path: more}), flat=flat)


def test_on_hand_or_nothing():
    """Without a length on hand there is nothing to choose; nor where the band alone is too wide for the cloth."""
    assert () == makes(brief())
    assert takes(brief(cloth__width=400.0, cloth__on_hand=3000.0)) is None


def test_the_skirt_as_it_stands_is_no_choice():
    """A number that is already the most is not offered again."""
    one = brief(cloth__on_hand=2300.0)
    first = makes(one)[0]
    assert first.edit not in [c.edit for c in makes(rack.edit(one, first.edit))]


def test_nothing_is_given_up_for_a_poor_plan():
    """A circle that a better plan gets out of the cloth on hand is not to be halved or shortened; while only the plan
    at a glance is known, it is.
    """
    one = brief("circle", cloth__width=1500.0, cloth__on_hand=2300.0)
    docket, found = make_up(one), makes(one)
    assert not cuts_out(one)
    assert {"skirt.fraction", "skirt.length"} <= {path for m in found if m.less for path in m.edit}
    assert found == helpful(found, one, docket.lay)
    lay = min(plans(docket.pieces, one.cloth, 3.0), key=lambda plan: plan.length)
    assert comes_out(one, lay)
    kept = helpful(found, one, lay)
    assert not any(m.less for m in kept)
    assert [m for m in found if "skirt.style" in m.edit] == [m for m in kept if "skirt.style" in m.edit]
    assert all(m.proven == make_up(rack.edit(one, m.edit)).lay.proven for m in found)
