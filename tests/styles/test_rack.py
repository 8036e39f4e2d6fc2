"""The rack: finding styles, and briefs at their usual values."""

import pytest

from studio.styles import rack
from studio.units import read_length, write_length
from studio.workroom import make_up


def test_in_inches_what_is_shown_adds_up():
    """A skirt begun in inches is made of eighths: band and hem are cut as their printed numbers add up."""
    docket = make_up(rack.usual("in"))
    brief, box = docket.brief, docket.draft.piece("waistband").cut_line.box

    def shown(mm: float) -> float:
        return read_length(write_length(mm, "in", bare=True), "in")

    a = shown(brief.seams.allowance)
    band = shown(brief.body.waist) + shown(brief.waistband.ease) + shown(brief.waistband.extension) + 2 * a
    assert band == pytest.approx(shown(box.width))
    assert 2 * shown(brief.waistband.width) + 2 * a == pytest.approx(shown(box.height))
    skirt = docket.draft.piece("skirt").cut_line.box
    assert a + shown(brief.skirt.length) + shown(brief.hem) == pytest.approx(shown(skirt.height))


def test_the_usual_skirt_in_inches_has_nothing_to_mend():
    """Round numbers of inches make a good skirt too."""
    assert () == make_up(rack.usual("in")).findings
