"""The rack: finding styles, and briefs at their usual values."""

from typing import Any

import pytest
from briefs import value_of
from hypothesis import given
from hypothesis import strategies as st

from studio.brief import Brief
from studio.brief.typed import is_usual
from studio.history import History
from studio.styles import rack
from studio.units import Unit, read_length, write_length
from studio.workroom import make_up


def test_in_inches_what_is_shown_adds_up():
    """A skirt begun in inches is made of eighths: band and hem are cut as their printed numbers add up."""
    docket = make_up(rack.usual("in"))
    brief, box = docket.brief, docket.draft.piece("waistband").cut_line.box

    def shown(mm: float) -> float:
        return read_length(write_length(mm, "in", bare=True), "in")

    a = shown(brief.seams.allowance)
    band = shown(brief.body.waist) + shown(brief.waistband.ease) + shown(brief.waistband.extension) + 2 * a
    assert band == pytest.approx(shown(box.width))
    assert 2 * shown(brief.waistband.width) + 2 * a == pytest.approx(shown(box.height))
    skirt = docket.draft.piece("skirt").cut_line.box
    assert a + shown(brief.skirt.length) + shown(brief.hem) == pytest.approx(shown(skirt.height))


def test_the_usual_skirt_in_inches_has_nothing_to_mend():
    """Round numbers of inches make a good skirt too."""
    assert () == make_up(rack.usual("in")).findings


def dressed(history: History, style: str, unit: Unit) -> History:
    """The skirt in another style, as the desk makes it."""
    return history.edit(rack.restyled(history.now, style, unit, history.worn()))


def own(one: Brief) -> list[str]:
    """The paths of a style's numbers."""
    return [path for path in rack.declarations(one) if path.startswith("skirt.") and path != "skirt.style"]


@given(st.data(), st.sampled_from(("cm", "in")), st.lists(st.sampled_from(list(rack.RACK)), min_size=1, max_size=4))
def test_a_skirt_comes_back_from_other_styles_as_it_was(data: st.DataObject, unit: Unit, styles: list[str]):
    """Whatever was set, in centimetres or inches: through other styles and back again it is the same skirt."""
    start = rack.usual(unit, data.draw(st.sampled_from(list(rack.RACK))))
    known = rack.declarations(start)
    paths = data.draw(st.lists(st.sampled_from(own(start)), unique=True))
    history = History(start).edit(rack.edit(start, {path: data.draw(value_of(known[path])) for path in paths}))
    one = history.now
    for style in (*styles, rack.style_of(one)):
        history = dressed(history, style, unit)
    assert one == history.now


PAIRS = [
    (a, b, path)
    for a in rack.RACK
    for b in rack.RACK
    for path in own(rack.usual("cm", a))
    if a != b and path in rack.declarations(rack.usual("cm", b))
]
"""Two styles, and a number that both have."""


def others(one: Brief, path: str) -> list[Any]:
    """Two values of a number that are not usual, or the only one there is."""
    known = rack.declarations(one)[path]
    if known.kind in ("choice", "switch"):
        return [v for v in known.options or (True, False) if not is_usual(known, v)]
    low, high = known.least + (known.most - known.least) / 3, known.least + (known.most - known.least) / 2
    return [int(low), int(high)] if known.kind == "count" else [low, high]


@pytest.mark.parametrize("unit", ["cm", "in"])
def test_what_two_styles_share_is_as_it_was_last_set(unit: Unit):
    """A number set in one style goes on into another; set again there, back to usual too, it comes back as it is."""
    for a, b, path in PAIRS:
        start = rack.usual(unit, a)
        for last in (*others(start, path), rack.value(rack.usual(unit, b), path)):
            history = History(start).edit(rack.edit(start, {path: others(start, path)[0]}))
            history = dressed(history, b, unit)
            assert others(start, path)[0] == rack.value(history.now, path), (a, b, path)
            history = history.finish().edit(rack.edit(history.now, {path: last}))
            assert last == rack.value(dressed(history, a, unit).now, path), (a, b, path)


@pytest.mark.parametrize("unit", ["cm", "in"])
@pytest.mark.parametrize("style", list(rack.RACK))
def test_an_untouched_skirt_in_another_style_is_that_styles_usual_one(style: str, unit: Unit):
    """Nothing set, nothing carried: the other style begins at its own usual values, in round numbers of the unit."""
    for other in rack.RACK:
        for begun in ("cm", "in"):
            now = rack.restyled(rack.usual(begun, style), other, unit)
            assert other == style or rack.usual(unit, other).skirt == now.skirt


def test_a_number_too_large_for_a_style_waits_for_one_that_takes_it():
    """Twenty panels are more than a circle has, and come back with the gathers; a file never holds what it refuses."""
    start = rack.edit(rack.usual("cm", "gathered"), {"skirt.panels": 20})
    history = dressed(History(start), "circle", "cm")
    assert 0 == rack.value(history.now, "skirt.panels")
    assert 20 == rack.value(dressed(history, "gathered", "cm").now, "skirt.panels")
