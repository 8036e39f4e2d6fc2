"""Arcs as cubics."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio.geometry import Arc, Path, Point
from studio.paper.curves import cubics


@given(st.floats(1, 2000), st.floats(-360, 360), st.floats(-360, 360).filter(lambda s: abs(s) > 0.01))
def test_a_cubic_stays_on_its_arc(radius, first, sweep):
    """No curve leaves its arc by more than 5 parts in a million of the radius, and all meet end to start."""
    arc = Arc(Point(3, 4), radius, first, sweep)
    found = cubics(arc)
    assert arc.start.distance(found[0].start) < 1e-9
    assert arc.end.distance(found[-1].end) < 1e-9
    for k, c in enumerate(found):
        for share in (0.2, 0.5, 0.8):
            assert radius == pytest.approx(c.at(share).distance(arc.centre), rel=5e-6)
        assert arc.at((k + 0.5) / len(found)).distance(c.at(0.5)) < radius * 1e-5
    assert Path(found).length == pytest.approx(arc.length, rel=1e-5)
