"""Every remedy about the cloth mends, on printed, folded, one-way and matched cloths with pieces held by hand."""

import random
from typing import Any

import pytest
from briefs import brief

from studio.brief import Brief, Held, PrintBand
from studio.styles import rack
from studio.units import spell
from studio.workroom import Docket, make_up

ABOUT_CLOTH = {
    "one-way-respected", "print-matches-at-seam", "motif-inside-face", "held-on-cloth", "pieces-fit-cloth",
    "border-on-cloth", "border-runs-along",
}  # fmt: skip


def printed(style: str, chance: random.Random) -> Brief:
    """A style on some cloth, with half of its pieces held near where the plan has them, well or ill."""
    width = chance.choice((700.0, 900.0, 1100.0, 1400.0, 1600.0))
    cloth: dict[str, Any] = {
        "cloth__width": width, "cloth__one_way": chance.random() < 0.6, "cloth__match": chance.random() < 0.5,
        "cloth__lies": chance.choice(("open", "open", "folded")), "cloth__repeat": chance.choice((None, 90.0, 320.0)),
        "cloth__offset": chance.uniform(0, 300), "cloth__bands": tuple(_band(chance, width) for _ in range(chance.randint(0, 3))),
    }  # fmt: skip
    if "skirt.cut" in rack.declarations(rack.usual("cm", style)):
        cloth["skirt__cut"] = chance.choice(("along", "across"))
    one = brief(style, **cloth)
    held = []
    for p in make_up(one).lay.placed:
        if chance.random() < 0.5:
            x, y = max(0.0, p.at.x + chance.choice((0, 0, 50, 1000))), max(0.0, p.at.y + chance.choice((0, 0, 40, -30)))
            turn = (p.turn + chance.choice((0, 0, 180, 90))) % 360
            held.append(Held(p.piece.id, p.copy, x, y, turn, p.mirrored))  # type: ignore[arg-type]
    return rack.edit(one, {"cloth.held": tuple(held)})


def _band(chance: random.Random, width: float) -> PrintBand:
    start = chance.uniform(0, width - 60)
    return PrintBand(
        start, start + chance.uniform(10, 150), chance.choice(("skirt", "waistband", "tier 1", "tier 2")),
        chance.choice(("hem", "top", "fold", "face centre")), chance.choice(("either", "first", "second")),
    )  # fmt: skip


def stops(made: Docket) -> set[tuple[str, str, str]]:
    """The stops of a docket."""
    return {(f.rule, f.where, f.piece) for f in made.findings if f.weight == "stop"}


@pytest.mark.parametrize("style", tuple(rack.RACK))
def test_every_remedy_about_the_cloth_mends(style: str):
    """Whatever the cloth, and wherever a hand has put the pieces: one press makes the finding go away and stops nothing
    else.
    """
    chance, tried = random.Random(style), 0
    for _ in range(60):
        made = make_up(printed(style, chance))
        for f in made.findings:
            if f.rule in ABOUT_CLOTH and f.remedy is not None:
                tried += 1
                after = make_up(rack.edit(made.brief, f.remedy))
                assert (f.rule, f.where, f.piece, f.says.text) not in {
                    (g.rule, g.where, g.piece, g.says.text) for g in after.findings
                }, f
                assert stops(after) <= stops(made), f
    assert tried >= 60


def test_a_remedy_that_takes_the_skirt_off_its_border_says_so():
    """Cut along too narrow a cloth, a skirt with a border fits only cut across: the button says what that costs.
    Without a border it is not spoken of.
    """
    for bands, says in (
        ((PrintBand(60.0, 200.0),), "Cut across, off the border"),
        ((), "Cut across, as few panels as fit"),
    ):
        made = make_up(brief(skirt__cut="along", cloth__width=650.0, cloth__bands=bands))
        (found,) = [f for f in made.findings if f.rule == "pieces-fit-cloth"]
        assert found.does is not None and says == spell(found.does, "cm")
