"""How much cloth goes into a seam: at the waist, and where tiers join."""

from typing import Any

import pytest
from briefs import brief

from studio.check import Finding
from studio.styles import rack
from studio.workroom import make_up

TYPED = {"skirt__ratios": "typed", "skirt__ratio_1": 1.4, "skirt__ratio_2": 3.0, "skirt__ratio_3": 3.0}


def bulky(one: Any) -> list[Finding]:
    """What is said of gathers."""
    return [f for f in make_up(one).findings if f.rule == "gathers-too-bulky"]


@pytest.mark.parametrize(
    ("style", "changes", "where", "remedy"),
    [
        ("gathered", {"skirt__fullness": 2.0, "cloth__weight": 400.0}, "skirt.fullness", {"skirt.fullness": 1.4}),
        ("tiered", {"skirt__ratio": 2.0, "cloth__weight": 400.0}, "skirt.ratio", {"skirt.ratio": 1.4}),
        ("tiered", {**TYPED, "cloth__weight": 600.0}, "skirt.ratio_2", {"skirt.ratio_2": 1.5, "skirt.ratio_3": 1.5}),
        ("tiered", {"skirt__ratios": "full spin", "cloth__weight": 400.0}, "skirt.ratios",
         {"skirt.ratio": 1.4, "skirt.ratios": "same"}),
        ("circle", {"skirt__fraction": 2.0, "cloth__weight": 400.0}, "skirt.fraction", {"skirt.fraction": 1.4}),
    ],
)  # fmt: skip
def test_every_gathered_seam_is_judged(style: str, changes: dict[str, Any], where: str, remedy: dict[str, Any]):
    """Heavy cloth gathers 1.5 to 1 at the most (common practice, no source): at the waist 1.4, for what lies flat
    beside the opening, and at lower joins all of it. The finding points at the number that is too much, and mends it.
    """
    one = brief(style, **changes)
    assert [(where, remedy)] == [(f.where, f.remedy) for f in bulky(one)]
    assert [] == bulky(rack.edit(one, remedy))


def test_a_lower_join_has_no_flat_ends():
    """Below the opening a ring is gathered all round: 1.5 to 1 is 1.5."""
    kept = {**TYPED, "skirt__ratio_2": 1.5, "skirt__ratio_3": 1.5, "cloth__weight": 600.0}
    assert [] == bulky(brief("tiered", **kept))
    assert 1 == len(bulky(brief("tiered", **{**kept, "skirt__ratio_3": 1.55})))
