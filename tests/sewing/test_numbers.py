"""Every length that a step speaks is measured on the drafted pieces, or is a length of the trade that is listed here.

For each sentence of the sewing order there is a measure in `measures`; no sentence with a length is let through that
has none.
"""

from collections.abc import Iterator
from typing import Any

import pytest
from briefs import brief
from measures import MEASURED, TRADE, lengths, template
from ruler import Ruler, beyond

from studio.brief import Brief
from studio.draft.making import Making
from studio.sewing import sewing_order
from studio.styles import rack
from studio.words import Phrase

BANDS = ("folded", "two-piece", "contour", "elastic", "bound", "faced")
OPENINGS = ("invisible", "lapped", "centred", "placket", "wrap", "none")
HELD = ("buttons", "hook and bar", "snap")
HEMS = ("turned twice", "single", "narrow", "faced")


def variants(style: str) -> Iterator[Brief]:
    """Every band with every opening; the rest goes round."""
    for k, (band, opens) in enumerate((b, o) for b in BANDS for o in OPENINGS):
        if (band, opens) == ("elastic", "wrap"):  # a ring that laps cannot be, which a finding says
            continue
        yield brief(
            style, waistband__kind=band, opening__kind=opens, fastening__kind=HELD[k % 3], seams__hem_kind=HEMS[k % 4],
            pockets__kind=("none", "patch", "in seam")[k // 2 % 3], lining__kind=("none", "straight", "A-line")[k % 3],
            opening__place=("centre back", "side", "front")[k // 4 % 3], seams__allowance=(15.0, 12.0)[k % 2],
        )  # fmt: skip


MORE: dict[str, tuple[dict[str, Any], ...]] = {
    "straight": ({"skirt__slit": "vent"}, {"skirt__slit": "slit", "opening__place": "front"}),
    "gathered": (
        {"opening__zip_on_hand": 400.0}, {"fastening__count": 3, "waistband__width": 80.0}, {"gathers__rows": 1},
        {"fastening__kind": "hook and bar", "waistband__width": 80.0}, {"skirt__panels": 4}, {"gathers__rows": 3},
    ),
    "circle": ({"skirt__bias_relief": 10.0}, {"skirt__fraction": 1.5, "cloth__width": 1100.0}),
    "tiered": ({"skirt__tiers": 4, "opening__zip_stop": 300.0}, {"opening__zip_stop": 150.0}),
    "pleated": ({"skirt__pleat_kind": "inverted"}, {"skirt__pleat_kind": "knife to the left"}),
}  # fmt: skip


def misspoken(one: Brief) -> list[tuple[str, str, object, object]]:
    """Every sentence whose lengths are not what is measured; the sentence, what it says, what is measured."""
    draft = rack.draft(one)
    ruler, found = Ruler(one, draft), []
    for step in sewing_order(one, draft):
        for says in step.says:
            if spoken := lengths(says):
                found += [(step.key, says.text, spoken, is_) for is_ in _measured(ruler, step, says) if is_ is not None]
    return found


def _measured(ruler: Ruler, step: Making, says: Phrase) -> Iterator[object]:
    """What is measured where it is not what is said."""
    spoken, text = lengths(says), template(says)
    if text in TRADE:
        if [TRADE[text]] != pytest.approx(list(spoken.values())):
            yield TRADE[text]
        return
    if (name := f"{step.key.partition('/')[0]}|{text}") not in MEASURED:
        yield "no measure"
        return
    for key, measured in MEASURED[name](ruler, says).items():
        if key == "":  # of a row that is read in several sentences each must be one of them
            assert isinstance(measured, list)
            if not all(min(abs(x - m) for m in measured) < 0.05 for x in spoken.values()):
                yield measured
        elif key in spoken and spoken[key] != pytest.approx(measured, abs=0.05):
            yield {key: measured}


def test_what_is_cut_for_turning():
    """A slit is turned under by 3 cm, a vent lies over itself by 4 to 5 cm (common practice, no source); no notch goes
    deeper than half of the allowance.
    """
    slit, vent = (rack.draft(brief("straight", skirt__slit=kind)).piece("back") for kind in ("slit", "vent"))
    assert 30.0 == pytest.approx(beyond(slit, "right slit"))
    assert 40 <= vent.edge("vent top").path.box.width <= 50
    for allowance in (8.0, 15.0):
        draft = rack.draft(brief("gored", seams__allowance=allowance))
        assert all(s.size <= allowance / 2 for p in draft.pieces for s in p.spots if s.role == "notch")


@pytest.mark.parametrize("style", rack.RACK)
def test_every_length_that_is_spoken_is_the_drafts_own(style: str):
    """Whatever band, opening, hem, pocket and lining: what a step says can be measured is so on the pieces (to 0.05
    mm), and what it takes from the trade is what the trade says.
    """
    for one in (*variants(style), *(brief(style, **more) for more in MORE.get(style, ()))):
        assert [] == misspoken(one)


def test_no_sentence_is_measured_for_nothing():
    """Every measure is of a sentence that some skirt says."""
    said = {
        f"{step.key.partition('/')[0]}|{template(says)}"
        for style in rack.RACK
        for one in (*variants(style), *(brief(style, **more) for more in MORE.get(style, ())))
        for step in sewing_order(one, rack.draft(one))
        for says in step.says
    }
    assert set() == MEASURED.keys() - said - RARE
    assert set() == TRADE.keys() - {name.partition("|")[2] for name in said} - RARE


RARE = {"darts|{p:word}: one dart, {w} wide at the waist and {l} long."}
"""Said of skirts that are not among these."""
