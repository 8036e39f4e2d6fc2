"""Pieces held by hand: what nap, match, band and grain ask of them is said, and one press puts them right."""

from typing import Any

import pytest
from briefs import brief
from msgspec.structs import replace

from studio.brief import Brief, Held, PrintBand
from studio.check import Finding
from studio.styles import rack
from studio.units import spell
from studio.workroom import Docket, make_up

RULES = ("one-way-respected", "print-matches-at-seam", "motif-inside-face", "held-on-cloth")


def holding(one: Brief, **changes: dict[str, Any]) -> Brief:
    """A brief whose pieces are held where they lie now, some of them otherwise; `skirt__1` is the second copy."""
    held = []
    for p in make_up(one).lay.placed:
        lies = Held(p.piece.id, p.copy, p.at.x, p.at.y, p.turn, p.mirrored)  # type: ignore[arg-type]
        if (change := changes.get(f"{p.piece.id}__{p.copy}")) is not None:
            held.append(replace(lies, **{k: v(getattr(lies, k)) for k, v in change.items()}))
    return rack.edit(one, {"cloth.held": tuple(held)})


def told(one: Brief) -> list[Finding]:
    """What these rules say of it, but for notes."""
    return [f for f in make_up(one).findings if f.rule in RULES and f.weight != "note"]


def half_round(turn: int) -> int:
    """Turned end for end."""
    return (turn + 180) % 360


def quarter(turn: int) -> int:
    """Turned to the other grain."""
    return (turn + 90) % 360


ALONG = brief(skirt__cut="along", skirt__panels=2, cloth__width=1500.0)
NAP = rack.edit(ALONG, {"cloth.one_way": True})
MATCH = rack.edit(ALONG, {"cloth.match": True, "cloth.repeat": 320.0, "cloth.offset": 40.0})
BORDER = brief(skirt__cut="along", cloth__selvedge=10.0, seams__hem=30.0, skirt__panels=2, cloth__width=1600.0,
               cloth__bands=(PrintBand(60.0, 200.0),))  # fmt: skip

ILL: list[tuple[str, Brief, str, str, str]] = [
    ("one-way-respected", holding(NAP, skirt__0={"turn": half_round}), "doubt",
     "Skirt is held the other way up on cloth that has a top.", "Turn it"),
    ("one-way-respected", holding(NAP, skirt__0={"turn": half_round}, waistband__0={"turn": half_round}), "doubt",
     "Waistband is held the other way up on cloth that has a top.", "Turn them"),
    ("print-matches-at-seam", holding(MATCH, skirt__1={"x": lambda x: x + 25.0}), "doubt",
     "Skirt is held 2.5 cm from where a motif starts; the print breaks at its seams.", "Move it to a motif"),
    ("motif-inside-face", holding(BORDER, skirt__0={"y": lambda y: y + 300.0, "x": lambda x: x + 2000.0}), "doubt",
     "Skirt is held 30.0 cm from its place on its band of the print.", "Lay it on its band"),
    ("motif-inside-face", holding(BORDER, skirt__0={"turn": half_round}), "doubt",
     "Skirt is held turned, and off its band of the print.", "Lay it on its band"),
    ("held-on-cloth", holding(ALONG, waistband__0={"turn": quarter, "x": lambda x: x + 4000.0, "y": lambda _: 20.0}),
     "doubt", "Waistband is held across the grain.", "Let it go"),
]  # fmt: skip


@pytest.mark.parametrize(("rule", "one", "weight", "says", "does"), ILL)
def test_a_hand_that_breaks_nap_match_or_band_is_told(rule: str, one: Brief, weight: str, says: str, does: str):
    """What is wrong, once, by one rule; and one press after which no rule has anything to say of what is held."""
    (found,) = told(one)
    assert (rule, weight, says, does) == (found.rule, found.weight, spell(found.says, "cm"), spell(found.does, "cm"))
    after = make_up(rack.edit(one, found.remedy))
    assert [] == told(after.brief)
    if "them" not in does and does != "Let it go":
        assert len(one.cloth.held) == len(after.brief.cloth.held)


def lies(made: Docket, piece: str, copy: int) -> tuple[float, float, int]:
    """Where a copy lies, and how it is turned."""
    p = next(p for p in made.lay.placed if (p.piece.id, p.copy) == (piece, copy))
    return p.at.x, p.at.y, p.turn


def test_a_panel_moved_to_a_motif_stays_near():
    """Put right, a panel lies less than a repeat from where the hand had put it, and where a motif starts."""
    one = holding(MATCH, skirt__1={"x": lambda x: x + 140.0})
    (found,) = told(one)
    before, after = make_up(one), make_up(rack.edit(one, found.remedy))
    x, y, turn = lies(before, "skirt", 1)
    assert (x - 140.0, y, turn) == pytest.approx(lies(after, "skirt", 1))


def test_what_cannot_be_put_right_where_it_is_is_let_go():
    """Where another piece is held in the way of a panel's motif, the panel is let go."""
    one = holding(MATCH, skirt__1={"x": lambda x: x + 140.0})
    first = lies(make_up(one), "skirt", 1)
    in_the_way = Held("waistband", 0, max(0.0, first[0] - 130.0), first[1] + 10.0)
    apart = replace(one.cloth.held[0], y=first[1], x=first[0])
    two = rack.edit(one, {"cloth.held": (apart, in_the_way)})
    found = next(f for f in told(two) if f.rule == "print-matches-at-seam")
    assert "Let it go" == spell(found.does, "cm")
    assert [in_the_way] == list(rack.edit(two, found.remedy).cloth.held)


def test_what_agrees_is_left_alone():
    """All pieces the other way up agree with each other, and so do panels that all lie as far past a motif; and on
    cloth with no top any piece may be turned.
    """
    every = {name: {"turn": half_round} for name in ("skirt__0", "skirt__1", "waistband__0")}
    assert [] == told(holding(NAP, **every))
    assert [] == told(holding(ALONG, skirt__0={"turn": half_round}))
    past = {"x": lambda x: x + 160.0}
    assert [] == told(holding(MATCH, skirt__0=past, skirt__1=past))


def test_what_is_held_as_it_lay_is_as_it_should_be():
    """Held where the plan had put them, pieces of every style on matched, one-way, bordered cloth want nothing."""
    for style in rack.RACK:
        for changes in ({"cloth__one_way": True}, {"cloth__repeat": 300.0, "cloth__match": True},
                        {"cloth__bands": (PrintBand(60.0, 200.0),), "cloth__width": 1600.0}):  # fmt: skip
            one = brief(style, **changes)
            every = {f"{p.piece.id}__{p.copy}": {} for p in make_up(one).lay.placed}
            assert told(one) == told(holding(one, **every))


def test_bands_along_both_selvedges_are_asked_of_cloth_with_a_top():
    """A border on each edge turns panels either way up: on one-way cloth one of them is left unused; one border alone
    turns every piece that is cut along, the waistband too.
    """
    bands = (PrintBand(60.0, 200.0), PrintBand(1400.0, 1430.0, "waistband", "face centre"))
    both = rack.edit(BORDER, {"cloth.bands": bands, "cloth.one_way": True})
    (found,) = told(both)
    says = "The print’s band at 140.0 cm asks for pieces the other way up than the rest; this cloth has a top."
    assert ("one-way-respected", says) == (found.rule, spell(found.says, "cm"))
    after = make_up(rack.edit(both, found.remedy))
    assert [] == told(after.brief)
    for made in (after, make_up(rack.edit(BORDER, {"cloth.one_way": True}))):
        assert {180} == {p.turn for p in made.lay.placed}
    assert {0, 180} == {p.turn for p in make_up(both).lay.placed}
    assert [] == told(rack.edit(both, {"cloth.one_way": False}))
