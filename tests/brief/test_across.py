"""Bands across a cloth: where one more may lie, and what keeps one from lying where it was typed."""

import pytest
from briefs import any_brief, brief
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from studio.brief import Brief, PrintBand
from studio.brief.across import LEAST, amiss, next_band
from studio.brief.bands import MOST
from studio.cloth.ways import shown
from studio.styles import rack
from studio.units import Unit, spell
from studio.workroom import make_up


@pytest.mark.parametrize("unit", ["cm", "in"])
@pytest.mark.parametrize("style", ["gathered", "tiered"])
def test_bands_added_one_by_one_need_nothing_mended(style: str, unit: Unit):
    """As many bands as there is something to show them are added to a usual cloth, each for what had none, in round
    numbers of the unit, and no rule has anything to say of them.
    """
    one = rack.edit(rack.usual(unit, style), {"skirt.cut": "along"})
    asked = tuple(shown(make_up(one).pieces))
    before = {f.rule for f in make_up(one).findings}
    for holds in asked[:2]:
        band = next_band(one, asked, unit)
        assert band is not None and holds == band.holds
        assert 0 == pytest.approx(band.start / (10 if unit == "cm" else 12.7) % 1)
        one = rack.edit(one, {"cloth.bands": (*one.cloth.bands, band)})
    assert before == {f.rule for f in make_up(one).findings}


@given(any_brief(), st.sampled_from(["cm", "in"]))
@settings(suppress_health_check=[HealthCheck.too_slow])
def test_a_band_that_is_added_has_room(one: Brief, unit: Unit):
    """Whatever the cloth and its bands, one more lies on it beside all others, or none is added."""
    band = next_band(one, ("skirt", "waistband", "nothing"), unit)
    if band is not None:
        assert band.end - band.start >= LEAST
        assert band.start >= one.cloth.selvedge - 1e-6
        assert band.end <= one.cloth.washed - one.cloth.selvedge + 1e-6
        assert amiss(band.start, band.end, one.cloth.bands, one.cloth) is None
        assert len(one.cloth.bands) < MOST


def test_there_is_room_until_there_is_none():
    """Adding goes on until twelve bands lie on the cloth, or it is covered."""
    one = brief()
    while band := next_band(one, ("skirt", "waistband", "nothing"), "cm"):
        one = rack.edit(one, {"cloth.bands": (*one.cloth.bands, band)})
    covered = sum(b.end - b.start for b in one.cloth.bands)
    assert MOST == len(one.cloth.bands) or covered > one.cloth.usable - 12 * LEAST


@pytest.mark.parametrize(
    ("start", "end", "says"),
    [
        (200, 100, "A band goes from less to more, not from 20.0 to 10.0 cm."),
        (100, 100, "A band goes from less to more, not from 10.0 to 10.0 cm."),
        (1300, 1410, "The cloth ends at 140.0 cm."),
        (100, 260, "It would lie over the band from 20.0 to 40.0 cm."),
        (250, 300, "It would lie over the band from 20.0 to 40.0 cm."),
        (100, 200, ""),
        (400, 1400, ""),
    ],
)
def test_what_keeps_a_band_from_its_place(start: float, end: float, says: str):
    """From less to more, on the cloth, and beside the others: bands may touch."""
    said = amiss(start, end, (PrintBand(200, 400),), brief().cloth)
    assert says == (spell(said, "cm") if said else "")


def test_the_wash_is_reckoned_with():
    """On cloth that shrinks across, a band ends where the washed cloth does."""
    said = amiss(0, 1390, (), brief(cloth__shrinkage_across=0.02).cloth)
    assert said is not None
    assert "After the wash the cloth ends at 137.2 cm." == spell(said, "cm")


def test_what_a_skirt_can_show():
    """A skirt shows bands on its hem, its waistband where it has one, and its tiers."""

    def kinds(one: Brief) -> list[str]:
        return list(shown(make_up(one).pieces))

    assert ["skirt", "waistband", "nothing"] == kinds(brief())
    assert ["skirt", "nothing"] == kinds(brief("straight", waistband__kind="faced"))
    assert ["skirt", "waistband", "tier 1", "tier 2", "nothing"] == kinds(brief("tiered", skirt__tiers=2))
