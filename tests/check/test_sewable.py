"""What cannot be sewn is named, and the nearest that can is one step away."""

import itertools
from typing import Any

import pytest
from briefs import brief

from studio.check import Finding
from studio.styles import rack
from studio.units import spell
from studio.workroom import make_up

BANDS = ("folded", "two-piece", "contour", "elastic", "bound", "faced")
OPENINGS = ("invisible", "lapped", "centred", "placket", "wrap", "none")
HELD = ("buttons", "hook and bar", "snap")


def named(style: str = "gathered", **changes: Any) -> list[Finding]:
    """What cannot be sewn."""
    return [f for f in make_up(brief(style, **changes)).findings if f.rule == "can-be-sewn"]


CANNOT: list[tuple[dict[str, Any], str, dict[str, Any]]] = [
    ({"waistband__kind": "elastic"}, "Elastic runs through its casing all round; an opening would part it.", {"opening.kind": "none"}),
    ({"waistband__kind": "bound"}, "A bound edge takes no buttonhole.", {"fastening.kind": "hook and bar"}),
    ({"waistband__kind": "bound", "fastening__kind": "snap"}, "The ends of a bound edge meet above the zip, and a snap wants them to lap.", {"fastening.kind": "hook and bar"}),
    ({"waistband__kind": "bound", "opening__kind": "placket"}, "A placket wants a band that laps over it; a bound edge does not.", {"opening.kind": "lapped", "fastening.kind": "hook and bar"}),
    ({"waistband__kind": "faced", "fastening__kind": "hook and bar"}, "A gathered waist cannot be faced: a facing lies flat.", {"waistband.kind": "folded"}),
    ({"opening__kind": "placket", "waistband__extension": 10.0}, "A placket as narrow as the extension of 1.0 cm cannot be turned; 1.5 cm can.", {"waistband.extension": 40.0}),
]  # fmt: skip


@pytest.mark.parametrize(("changes", "says", "remedy"), CANNOT)
def test_it_is_named(changes: dict[str, Any], says: str, remedy: dict[str, Any]):
    """Each says why in one sentence, stops, and offers the nearest that can be sewn."""
    found = named(**changes)
    assert [("stop", says, remedy)] == [(f.weight, spell(f.says, "cm"), f.remedy) for f in found]


def test_a_wrap_wants_straight_edges():
    """A straight skirt's sides are shaped over the hips and cut alike: a wrap opens at its back, or at its front."""
    found = named("straight", opening__kind="wrap", opening__place="side")
    assert [("stop", {"opening.place": "centre back"})] == [(f.weight, f.remedy) for f in found]
    assert [] == [
        f for p in ("centre back", "front") for f in named("straight", opening__kind="wrap", opening__place=p)
    ]
    assert [] == named("gored", opening__kind="wrap", opening__place="side")


def test_pleats_cannot_be_faced():
    """A pleated waist is named as such."""
    found = named("pleated", waistband__kind="faced", fastening__kind="hook and bar")
    assert ["A pleated waist cannot be faced: a facing lies flat."] == [spell(f.says, "cm") for f in found]


@pytest.mark.parametrize("style", [s for s in rack.RACK if s in ("circle", "gored", "straight")])
def test_what_lies_flat_can_be_faced(style: str):
    """Circles, gores and darts can."""
    assert [] == named(style, waistband__kind="faced", fastening__kind="hook and bar")


def test_gathers_can_hang_on_a_shaped_band():
    """A contour band takes gathers as any band does."""
    assert [] == named(waistband__kind="contour", waistband__width=60.0)


WAYS = list(itertools.product(BANDS, OPENINGS, HELD))


@pytest.mark.parametrize("style", tuple(rack.RACK))
def test_every_way_that_cannot_is_mended_in_one_step(style: str):
    """Over every band, opening and fastening: a remedy ends what it is for and brings no new stop."""
    met = 0
    for band, opening, held in WAYS:
        one = brief(style, waistband__kind=band, opening__kind=opening, fastening__kind=held)
        docket = make_up(one)
        stops = {(f.rule, f.says.text) for f in docket.findings if f.weight == "stop"}
        for finding in (f for f in docket.findings if f.rule == "can-be-sewn"):
            assert finding.weight == "stop"
            assert finding.remedy is not None
            assert finding.does is not None
            after = make_up(rack.edit(one, finding.remedy)).findings
            assert finding.says.text not in {f.says.text for f in after if f.rule == "can-be-sewn"}
            assert {(f.rule, f.says.text) for f in after if f.weight == "stop"} <= stops, (band, opening, held)
            met += 1
    assert met > 20


@pytest.mark.parametrize("changes", [{}, {"cloth__width": 300.0, "cloth__selvedge": 80.0, "seams__allowance": 40.0}])
def test_the_nearest_fits_the_cloth_and_the_length(changes: dict[str, Any]):
    """Where the band counts in the length, the skirt below a new band stays as long, and the band fits the cloth."""
    one = brief(waistband__kind="faced", waistband__width=150.0, skirt__length_includes_band=True, **changes)
    finding = next(f for f in make_up(one).findings if f.where == "waistband.kind")
    mended = make_up(rack.edit(one, finding.remedy or {}))
    assert one.finished_length == mended.brief.finished_length
    assert "waistband" not in {p.id for p in mended.lay.misfits}


@pytest.mark.parametrize("kind", ["folded", "two-piece", "contour", "elastic"])
def test_a_band_too_wide_for_the_cloth_is_made_to_fit(kind: str):
    """Whatever its kind, a band wider than the cloth is mended in one step."""
    one = brief(
        waistband__kind=kind, waistband__width=150.0, waistband__elastic=100.0, cloth__width=300.0,
        cloth__selvedge=80.0, seams__allowance=40.0, opening__kind="none" if kind == "elastic" else "invisible",
    )  # fmt: skip
    docket = make_up(one)
    finding = next(f for f in docket.findings if f.rule == "pieces-fit-cloth" and f.piece == "waistband")
    mended = make_up(rack.edit(one, finding.remedy or {}))
    assert "waistband" not in {p.id for p in mended.lay.misfits}


def test_a_wide_straight_band_is_better_shaped():
    """Above 5 cm (common practice, no source) a straight band is offered as a contour band; where the cloth is too
    narrow for its curve, 5 cm are.
    """
    for changes, remedy in (
        ({}, {"waistband.kind": "contour"}),
        ({"cloth__width": 300.0, "cloth__selvedge": 80.0, "waistband__width": 110.0}, {"waistband.width": 50.0}),
    ):
        one = brief(**({"waistband__width": 60.0} | changes))
        found = next(f for f in make_up(one).findings if f.rule == "band-needs-shape")
        assert remedy == found.remedy
        assert "band-needs-shape" not in {f.rule for f in make_up(rack.edit(one, remedy)).findings}


def test_a_wrap_that_hardly_laps_is_lengthened():
    """A hole further from the end than the wrap laps cannot close true; the overlap is made to."""
    one = brief(opening__kind="wrap", opening__overlap=50.0, fastening__end_inset=72.0)
    found = next(f for f in make_up(one).findings if f.rule == "closed-girth-holds")
    assert "The band closes 2.2 cm too tight." == spell(found.says, "cm")
    assert {"opening.overlap": 75.0, "fastening.button_inset": None} == found.remedy
    assert "closed-girth-holds" not in {f.rule for f in make_up(rack.edit(one, found.remedy or {})).findings}


def test_buttons_crowded_down_a_placket():
    """Twenty buttons do not go down 20 cm; as many as fit do."""
    one = brief(opening__kind="placket", opening__buttons=20)
    found = next(f for f in make_up(one).findings if f.rule == "button-fits-band")
    assert "20 buttons down an opening of 20.0 cm leave 1.0 cm for each; its hole wants 3.3 cm." == spell(
        found.says, "cm"
    )
    assert "button-fits-band" not in {f.rule for f in make_up(rack.edit(one, found.remedy or {})).findings}
