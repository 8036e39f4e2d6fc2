"""A print that runs on across the seams."""

import itertools

import pytest
from briefs import any_brief, brief
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from studio.brief import PrintBand
from studio.draft.match import matched
from studio.styles import rack
from studio.units import spell
from studio.workroom import make_up

MATCHED = {"skirt__cut": "along", "cloth__match": True, "cloth__repeat": 320.0}


def test_the_nearest_whole_repeats_are_taken():
    """2 × 71.0 = 142.0 cm of a print that repeats every 32 cm becomes 4 repeats in one panel, 128.0; in two panels
    each is 2 repeats. Derived by hand.
    """
    assert 1280 == matched(brief(**MATCHED), "along", 1420, 1)
    assert 1280 == matched(brief(**MATCHED), "along", 1420, 2)
    assert 1600 == matched(brief(**MATCHED), "along", 1441, 1)
    assert 320 == matched(brief(**MATCHED), "along", 100, 1)
    assert 1420 == matched(brief(**MATCHED), "across", 1420, 1)
    assert 640 == matched(brief(**MATCHED), "along", 960, 1, room=900)


@settings(max_examples=80)
@given(st.sampled_from(("gathered", "tiered")).flatmap(any_brief), st.floats(20, 400))
def test_panels_are_whole_repeats(one, repeat: float):
    """Whatever the skirt, matched along the cloth every panel is whole repeats wide between its seams."""
    one = rack.edit(one, {"skirt.cut": "along", "cloth.match": True, "cloth.repeat": repeat})
    made = make_up(one)
    assume("can-be-sewn" not in {f.rule for f in made.findings})
    for piece in made.pieces:
        if piece.cloth == "main" and 0 < piece.row < 10:
            times = piece.edge("hem" if any(e.name == "hem" for e in piece.edges) else "foot").path.length / repeat
            assert times == pytest.approx(round(times), abs=1e-6)
            assert round(times) >= 1


def test_the_change_in_fullness_is_said():
    """A note says how far the print moved the fullness, and one press makes it the maker's own."""
    made = make_up(brief(**MATCHED))
    (found,) = [f for f in made.findings if f.rule == "print-matches-at-seam"]
    assert "note" == found.weight
    assert "To match the print at the seams the cloth is 1.80 times the seam, not 2.00." == spell(found.says, "cm")
    after = make_up(rack.edit(made.brief, found.remedy))
    assert "print-matches-at-seam" not in {f.rule for f in after.findings}
    assert made.fact("flat_width") == after.fact("flat_width")


def test_motifs_meet_where_they_are_marked():
    """Both side seams carry match marks at the same heights: at the top of the border where there is one, and up the
    seam at every repeat where panels are cut across.
    """
    border = PrintBand(60.0, 200.0)
    ways = ({**MATCHED, "cloth__bands": (border,)}, {**MATCHED, "skirt__cut": "across"})
    for changes, heights in zip(ways, ([140.0], [320.0]), strict=True):
        panel = next(p for p in make_up(brief(**changes)).pieces if p.id.startswith("skirt"))
        hem = panel.edge("hem").path.start.y
        marks = [s for s in panel.spots if s.words and s.words.text == "match"]
        for side in ("left", "right"):
            assert heights == pytest.approx(sorted(hem - s.at.y for s in marks if s.on == side))


def test_a_print_of_unknown_repeat_is_asked_for():
    """Matching without a repeat is doubted, and pleats that break the motif too."""
    made = make_up(brief(cloth__match=True))
    (found,) = [f for f in made.findings if f.rule == "print-matches-at-seam"]
    assert ("doubt", {"cloth.match": False}) == (found.weight, found.remedy)
    pleats = make_up(brief("pleated", cloth__match=True, cloth__repeat=410.0))
    (found,) = [f for f in pleats.findings if f.rule == "print-matches-at-seam"]
    assert "doubt" == found.weight
    by_print = make_up(brief("pleated", skirt__pleats_by="repeat", cloth__match=True, cloth__repeat=110.0))
    assert "print-matches-at-seam" not in {f.rule for f in by_print.findings}


def test_matched_panels_lie_on_the_cloth_at_one_phase():
    """What is matched in the draft is matched on the cloth: every panel starts where the same motif does."""
    made = make_up(brief(**MATCHED, skirt__panels=2, cloth__offset=55.0))
    starts = [p.on_cloth(p.piece.edge("left").path.end).x for p in made.lay.placed if p.piece.id == "skirt"]
    for one, other in itertools.combinations(starts, 2):
        assert ((one - other) / 320) == pytest.approx(round((one - other) / 320), abs=1e-6)
