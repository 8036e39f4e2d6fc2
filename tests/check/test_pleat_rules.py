"""The rules about pleats find what they are for, and their remedies cure it."""

from typing import Any

import pytest
from briefs import any_brief, bodies, brief
from hypothesis import given, settings

from studio.brief import Brief
from studio.check import Finding
from studio.styles import rack
from studio.units import spell
from studio.workroom import make_up

RULES = ("pleats-stay-shut-at-hip", "pleats-overlap", "pleats-take-cloth")


def pleated(**changes: Any) -> Brief:
    """The usual pleated skirt with other numbers of its own, or of the brief."""
    return brief("pleated", **{k if "__" in k else f"skirt__{k}": v for k, v in changes.items()})


def found(rule: str, one: Brief) -> list[Finding]:
    """What one rule finds."""
    return [f for f in make_up(one).findings if f.rule == rule]


WRONG: list[tuple[str, dict[str, Any], str, str]] = [
    (RULES[0], {"stitched_down": False}, "doubt", "Hips and ease of 100.0 cm open each fold by 1.5 cm; released from the waist, only folds of 5.8 cm stay shut."),
    (RULES[0], {"stitched_down": False, "pleat_kind": "box"}, "doubt", "Hips and ease of 100.0 cm open each fold by 0.7 cm; released from the waist, only folds of 2.9 cm stay shut."),
    (RULES[1], {"pleat_depth": 60.0}, "note", "Folds of 6.0 cm under faces of 5.0 cm lie over each other: 5 layers at the waist."),
    (RULES[1], {"pleat_depth": 110.0, "stitched_down": False, "body__hip": 700.0}, "note", "Folds of 11.0 cm under faces of 3.6 cm lie over each other: 9 layers at the waist."),
    (RULES[1], {"pleat_depth": 40.0, "pleat_kind": "inverted"}, "note", "Folds of 4.0 cm under faces of 5.0 cm lie over each other: 7 layers at the waist."),
    (RULES[2], {"pleats_by": "number and cloth", "flat": 900.0}, "doubt", "Cloth of 90.0 cm leaves no folds round 100.0 cm; the pleats are drafted from 108.0 cm."),
]  # fmt: skip


@pytest.mark.parametrize(("rule", "changes", "weight", "says"), WRONG)
def test_rule_finds(rule: str, changes: dict[str, Any], weight: str, says: str):
    """The rule says what is wrong, in lengths, and its remedy mends it."""
    one = pleated(**changes)
    finding = found(rule, one)[0]
    assert (weight, says) == (finding.weight, spell(finding.says, "cm"))
    assert finding.remedy is not None
    assert finding.does is not None
    assert [] == found(rule, rack.edit(one, finding.remedy))


@pytest.mark.parametrize("rule", RULES)
@pytest.mark.parametrize("style", ["gathered", "pleated"])
def test_usual_skirts_have_nothing_to_mend(rule: str, style: str):
    """The usual pleated skirt is a good one, and other skirts have no pleats to look at."""
    assert [] == found(rule, brief(style))


def test_stitched_down_stays_shut_on_every_body():
    """Pleats stitched to the hips never stand open there, on any of 127 people."""
    for person in bodies()[::2]:
        assert [] == found(RULES[0], pleated(**{k.replace(".", "__"): v for k, v in person.items()}))


def test_a_deeper_fold_cures_where_it_is_no_deeper_than_full():
    """Hips of 76 over a waist of 71 open shallow folds; folds of 1.8, far from full, stay shut without stitching."""
    one = pleated(stitched_down=False, body__hip=760.0, pleat_depth=15.0)
    finding = found(RULES[0], one)[0]
    assert finding.remedy is not None
    assert 18.0 == finding.remedy["skirt.pleat_depth"]
    mended = rack.edit(one, finding.remedy)
    assert not mended.skirt.stitched_down  # type: ignore[attr-defined]
    assert [] == found(RULES[0], mended)


def test_more_pleats_keep_shut_too():
    """Each of more pleats of one depth opens by less: 39 of 3 cm stay shut where 38 do not."""
    for count, open_ in ((38, True), (39, False)):
        one = pleated(stitched_down=False, pleat_depth=30.0, pleats=count)
        assert open_ == bool(found(RULES[0], one))


def test_without_hips_nothing_is_said_of_them():
    """With no hip measurement, the opening's note says that it is missing; pleats are not judged by a guess."""
    assert [] == found(RULES[0], pleated(stitched_down=False, body__hip=None))


def test_overlap_names_full_pleats():
    """The remedy of overlapping folds are full ones, as deep as the face, or half of it from both sides."""
    for kind, depth in (("knife to the left", 50.0), ("box", 25.0)):
        one = pleated(pleat_kind=kind, pleat_depth=90.0)
        finding = found(RULES[1], one)[0]
        assert finding.remedy is not None
        assert depth == make_up(rack.edit(one, finding.remedy)).fact("pleat_depth")


@settings(max_examples=60)
@given(any_brief("pleated"))
def test_every_remedy_cures(one: Brief):
    """Whatever is typed, a remedy of these rules cures what it is for and brings no new stop."""
    docket = make_up(one)
    stops = {(f.rule, f.where, f.piece) for f in docket.findings if f.weight == "stop"}
    for finding in (f for f in docket.findings if f.rule in RULES and f.remedy is not None):
        mended = make_up(rack.edit(one, finding.remedy or {}))
        assert finding.rule not in {f.rule for f in mended.findings}
        assert {(f.rule, f.where, f.piece) for f in mended.findings if f.weight == "stop"} <= stops
