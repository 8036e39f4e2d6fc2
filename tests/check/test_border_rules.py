"""Rules about a print in bands: a border on the hem, a motif on the waistband's face."""

from typing import Any

import pytest
from briefs import brief

from studio.brief import PrintBand
from studio.styles import rack
from studio.units import spell
from studio.workroom import make_up

CLOTH = {"skirt__cut": "along", "cloth__selvedge": 10.0, "seams__hem": 30.0}
BORDER = PrintBand(60, 200)
FACE = PrintBand(1300, 1330, "waistband", "face centre")

WRONG: list[tuple[str, dict[str, Any], str, dict[str, Any] | None]] = [
    (
        "border-runs-along", {"skirt__cut": "across", "cloth__bands": (BORDER,)},
        "The print’s band at 6.0 cm runs along the selvedge, and Skirt is cut across the cloth.",
        {"skirt.cut": "along"},
    ),
    (
        "border-runs-along", {**CLOTH, "cloth__lies": "folded", "cloth__width": 2400.0, "cloth__bands": (BORDER,)},
        "On folded cloth no piece can be laid on the print’s band at 6.0 cm.", {"cloth.lies": "open"},
    ),
    (
        "border-on-cloth", {**CLOTH, "cloth__bands": (PrintBand(30, 200),)},
        "On the print’s band at 3.0 cm, 1.0 cm of Skirt would be off the cloth.", {"seams.hem": 20.0},
    ),
    (
        "border-on-cloth", {**CLOTH, "cloth__bands": (PrintBand(0, 220),), "seams__hem": 40.0},
        "On the print’s band at 0.0 cm, 5.0 cm of Skirt would be off the cloth.", {"cloth.bands": (PrintBand(50, 220),)},
    ),
    (
        "border-on-cloth", {**CLOTH, "cloth__bands": (PrintBand(1180, 1400),), "seams__hem": 40.0},
        "On the print’s band at 118.0 cm, 5.0 cm of Skirt would be off the cloth.", {"cloth.bands": (PrintBand(1180, 1350),)},
    ),
    (
        "border-on-cloth", {**CLOTH, "cloth__bands": (PrintBand(1350, 1380, "waistband", "face centre"),)},
        "On the print’s band at 135.0 cm, 0.5 cm of Waistband would be off the cloth.", None,
    ),
    (
        "motif-inside-face", {**CLOTH, "cloth__bands": (PrintBand(1200, 1240, "waistband", "face centre"),)},
        "The waist of Waistband cuts the print’s band at 120.0 cm, 0.5 cm from its edge.", {"waistband.width": 40.0},
    ),
]  # fmt: skip


@pytest.mark.parametrize(("rule", "changes", "says", "remedy"), WRONG)
def test_a_border_out_of_place_is_told(rule: str, changes: dict[str, Any], says: str, remedy: dict[str, Any] | None):
    """What is wrong, in numbers, and the one edit that mends it."""
    made = make_up(brief(**changes))
    found = [f for f in made.findings if f.rule == rule]
    assert [(says, remedy)] == [(spell(f.says, "cm"), f.remedy) for f in found]
    if remedy is not None:
        assert rule not in {f.rule for f in make_up(rack.edit(made.brief, remedy)).findings}


def test_the_band_by_its_fold_shows_the_motif_and_by_its_hem_does_not():
    """A waistband laid by its seam line has the motif run over the fold; the remedy lays its face on the band."""
    one = brief(**CLOTH, cloth__bands=(PrintBand(1200, 1220, "waistband", "hem"),), waistband__width=15.0)
    found = [f for f in make_up(one).findings if f.rule == "motif-inside-face"]
    assert 1 == len(found)
    assert {"waistband.width": 20.0} == found[0].remedy


def test_a_motif_in_its_place_is_let_be():
    """A border on the hem and a narrow one on the band's face are as they should be."""
    made = make_up(brief(**CLOTH, cloth__bands=(BORDER, FACE)))
    assert not {"border-runs-along", "border-on-cloth", "motif-inside-face"} & {f.rule for f in made.findings}


@pytest.mark.parametrize(
    ("start", "remedy", "does"),
    [
        (30.0, {"seams.hem": 15.0, "seams.first_turn": 7.0}, "Hem 1.5 cm"),
        (25.0, {"seams.hem_kind": "faced"}, "Faced hem"),
        (8.0, None, "Lay the hem line at 5.0 cm"),
    ],
)
def test_a_border_near_the_selvedge_is_mended_without_a_second_doubt(start: float, remedy: Any, does: str):
    """A shallower hem comes with its first turn; one narrower than a narrow hem is faced; else the hem line is laid
    farther in, and the button says so. After the press nothing is said of hem or border.
    """
    wide = 15.0 if start > 8 else 10.0
    made = make_up(
        brief(skirt__cut="along", cloth__selvedge=wide, seams__allowance=10.0, cloth__bands=(PrintBand(start, 200.0),))
    )
    (found,) = [f for f in made.findings if f.rule == "border-on-cloth"]
    assert found.does is not None and found.remedy is not None
    assert does == spell(found.does, "cm")
    assert remedy in (None, found.remedy)
    after = {f.rule for f in make_up(rack.edit(made.brief, found.remedy)).findings}
    assert {"border-on-cloth", "motif-inside-face", "first-turn-inside-hem"}.isdisjoint(after)
