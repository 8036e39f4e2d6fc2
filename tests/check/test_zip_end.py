"""A zip is longer than its opening: its tail has to end somewhere too."""

from typing import Any

import pytest
from briefs import brief

from studio.check import Finding
from studio.styles import rack
from studio.workroom import make_up

SMALL = {"body__waist": 520.0, "body__hip": 560.0, "body__waist_to_hip": 110.0, "body__height": 1000.0}


def named(one: Any) -> list[Finding]:
    """What is said of the zip's end."""
    return [f for f in make_up(one).findings if f.rule == "zip-above-hem"]


@pytest.mark.parametrize(
    ("one", "remedy"),
    [
        (brief("gathered", skirt__length=220.0, **SMALL), {"opening.zip_stop": 155.0}),
        (brief("circle", skirt__length=230.0), {"opening.zip_stop": 175.0}),
        (brief("gathered", skirt__length=250.0, body__hip=1090.0, body__waist=700.0), {"opening.kind": "lapped"}),
    ],
)
def test_a_zip_ends_above_the_hem(one: Any, remedy: dict[str, Any]):
    """An invisible zip runs on 2.5 cm past its stop and is sold in lengths (common practice, no source): on a short
    skirt a shorter stop is offered that still passes the hips, or a zip that ends at its stop.
    """
    assert [("doubt", remedy)] == [(f.weight, f.remedy) for f in named(one)]
    after = make_up(rack.edit(one, remedy))
    assert not {"zip-above-hem", "opening-passes-hips"} & {f.rule for f in after.findings}


def test_a_zip_cut_short_ends_where_it_is_cut():
    """One on hand that is too long is tacked where the need ends, and cut 2 cm below."""
    assert [] == named(brief(opening__zip_on_hand=700.0))
    assert [] == named(brief(skirt__length=285.0, opening__zip_on_hand=700.0))
    assert 1 == len(named(brief(skirt__length=284.0, opening__zip_on_hand=700.0)))
