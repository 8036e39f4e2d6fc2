"""The rule that says what a draft made of a number it could not take as it was typed."""

from typing import Any

import pytest
from briefs import brief

from studio.check import Finding
from studio.styles import rack
from studio.units import spell
from studio.workroom import make_up

SHORT = {"skirt__length": 300.0}
CASES: list[tuple[str, dict[str, Any], str, str, dict[str, Any]]] = [
    ("gored", {"skirt__sweep": 8000.0, "skirt__gores": 4},
     "The sweep asked is 800.0 cm; 4 gores so long can take 368.6 cm.", "skirt.sweep", {"skirt.sweep": 3685.0}),
    ("gored", {"skirt__flare_from": 900.0},
     "The flare asked begins 90.0 cm down; the gores can flare from 53.6 cm.", "skirt.flare_from",
     {"skirt.flare_from": 536.0}),
    ("gored", {"skirt__flare_from": 100.0},
     "The flare asked begins 10.0 cm down; the gores can flare from 20.0 cm.", "skirt.flare_from",
     {"skirt.flare_from": None}),
    ("gored", {"waistband__kind": "elastic", "opening__kind": "none", "skirt__hip_ease": 0.0},
     "Under elastic the hips have 4.0 cm of ease, not the 0.0 cm asked.", "skirt.hip_ease", {"skirt.hip_ease": 40.0}),
    ("godet", {"skirt__godet_width": 900.0},
     "The godet asked is 90.0 cm wide; one 30.0 cm high can be 62.8 cm.", "skirt.godet_width",
     {"skirt.godet_width": 628.0}),
    ("godet", {"skirt__godet_height": 900.0},
     "A godet 90.0 cm high would reach the opening; this one is 40.4 cm high.", "skirt.godet_height",
     {"skirt.godet_height": 403.0}),
    ("godet", {"skirt__godet_height": 900.0, "opening__kind": "wrap"},
     "A godet 90.0 cm high would reach the waist; this one is 60.5 cm high.", "skirt.godet_height",
     {"skirt.godet_height": 604.0}),
    ("straight", {"skirt__slit": "slit", "skirt__slit_length": 900.0},
     "The slit asked is 90.0 cm; the seam below the opening has room for 39.0 cm.", "skirt.slit_length",
     {"skirt.slit_length": 390.0}),
    ("straight", {"skirt__slit": "vent", "opening__kind": "wrap"},
     "The slit asked is 20.0 cm; there is no seam to leave open.", "skirt.slit_length", {"skirt.slit": "none"}),
    ("straight", {"skirt__shape": "A-line", "skirt__side_flare": 200.0, **SHORT},
     "The side flare asked is 20.0 cm; the hips and so short a side leave 15.0 cm.", "skirt.side_flare",
     {"skirt.side_flare": 150.0}),
    ("pleated", {"skirt__stitch_depth": 400.0, **SHORT},
     "The pleats asked are stitched down to 40.0 cm; the skirt ends at 30.0 cm.", "skirt.stitch_depth",
     {"skirt.stitch_depth": 300.0}),
    ("pleated", {"skirt__panels": 12, "skirt__pleats": 4},
     "The panels asked are 12; each takes a whole pleat, and there are 4.", "skirt.panels", {"skirt.panels": 4}),
    ("pleated", {"skirt__pleats_by": "repeat", "cloth__repeat": 10.0},
     "Repeats so small make more pleats than can be laid; each group takes 3, not 1.", "skirt.repeats",
     {"skirt.repeats": 3}),
    ("circle", {"skirt__fraction": 2.0, "skirt__panels": 2},
     "None is wider than half a circle: there are 4 panels, not 2.", "skirt.panels", {"skirt.panels": 4}),
    ("tiered", {"skirt__depths": "typed", "skirt__depth_1": 700.0},
     "Tier 1 cannot be 70.0 cm deep: a length of 62.0 cm leaves it 58.0 cm.", "skirt.depth_1",
     {"skirt.depth_1": None, "skirt.depth_2": None}),
    ("gathered", {"waistband__kind": "contour", "waistband__upper_less": 100.0},
     "A band so wide can be shorter at its top by 7.5 cm, not by 10.0 cm.", "waistband.upper_less",
     {"waistband.upper_less": 75.0}),
    ("straight", {"waistband__kind": "faced", "waistband__facing_depth": 150.0, "skirt__length": 150.0},
     "The facing asked is 15.0 cm deep; the panels have room for 11.4 cm.", "waistband.facing_depth",
     {"waistband.facing_depth": 114.0}),
    ("circle", {"seams__hem_kind": "faced", "seams__hem_facing": 150.0, "skirt__length": 120.0},
     "The hem facing asked is 15.0 cm deep; the panels have room for 7.4 cm.", "seams.hem_facing",
     {"seams.hem_facing": 73.0}),
    ("gathered", {"opening__kind": "placket", "waistband__extension": 5.0},
     "The strips of a placket are as wide as the extension, and no less than 1.5 cm; 0.5 cm was asked.",
     "waistband.extension", {"waistband.extension": 15.0}),
    ("circle", {"seams__first_turn": 14.0},
     "A hem of 1.2 cm cannot be turned under by 1.4 cm first; half of it is 0.6 cm.", "seams.first_turn",
     {"seams.first_turn": 6.0}),
]  # fmt: skip


def said(style: str, changes: dict[str, Any]) -> list[Finding]:
    """What the rule says of the usual skirt of a style with other values."""
    return [f for f in make_up(brief(style, **changes)).findings if f.rule == "as-typed"]


@pytest.mark.parametrize(("style", "changes", "says", "where", "remedy"), CASES)
def test_drawn_in_numbers_are_said(style: str, changes: dict[str, Any], says: str, where: str, remedy: dict[str, Any]):
    """What could not be taken as it was typed is said with what was made of it; one press asks for that instead."""
    finding = next(f for f in said(style, changes) if f.where == where)
    assert says == spell(finding.says, "cm")
    assert remedy == finding.remedy
    assert finding.does is not None
    mended = make_up(rack.edit(brief(style, **changes), finding.remedy or {}))
    assert where not in {f.where for f in mended.findings if f.rule == "as-typed"}


@pytest.mark.parametrize("style", list(rack.RACK))
def test_usual_numbers_are_as_typed(style: str):
    """The usual skirt of every style is drafted just as it is asked."""
    assert [] == said(style, {})


def test_a_wrap_leaves_godets_as_high_as_typed():
    """A wrap's free edges take no godet, and there is no zip stop for the others to keep clear of."""
    assert [] == said("godet", {"opening__kind": "wrap"})


def test_a_low_godet_is_as_low_as_it_was_typed():
    """A godet of 8 in a skirt of 62 is 8 high: only one that would reach the opening is drawn in."""
    piece = make_up(brief("godet", skirt__godet_height=80.0, skirt__godet_width=100.0)).draft.piece("godet")
    assert 80.0 == pytest.approx(piece.edge("right").path.length)
    assert [] == said("godet", {"skirt__godet_height": 80.0, "skirt__godet_width": 100.0})
