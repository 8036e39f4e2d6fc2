"""Labels beside a row of places."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio.paper.spread import labelled, spread

sizes = st.floats(0.5, 6)


@st.composite
def row(draw: st.DrawFn) -> tuple[list[float], list[float], float, float]:
    """Places in order with sizes that fit between two bounds."""
    places = sorted(draw(st.lists(st.floats(0, 100), min_size=1, max_size=15)))
    size = [draw(sizes) for _ in places]
    low = draw(st.floats(-20, 20))
    return places, size, low, low + sum(size) + draw(st.floats(0, 80))


@given(row())
def test_nothing_lies_on_its_neighbour_or_past_the_bounds(given_row):
    """However close the marks are, each label can be read."""
    places, size, low, high = given_row
    at = spread(places, size, low, high)
    edges = [(a - s / 2, a + s / 2) for a, s in zip(at, size, strict=True)]
    assert edges[0][0] >= low - 1e-6
    assert edges[-1][1] <= high + 1e-6
    assert all(b[0] >= a[1] - 1e-6 for a, b in pairwise(edges))


@given(row(), st.data())
def test_no_other_way_moves_the_labels_less(given_row, data):
    """Labels stay as near to their marks as they can, and no other allowed order of places is nearer (squares)."""
    places, size, low, high = given_row
    at = spread(places, size, low, high)
    slack = high - low - sum(size)
    shares = data.draw(st.lists(st.floats(0, 1), min_size=len(size) + 1, max_size=len(size) + 1))
    white = [slack * s / max(1.0, sum(shares)) for s in shares]
    other, edge = [], low
    for gap, long in zip(white, size, strict=False):
        other.append(edge + gap + long / 2)
        edge += gap + long

    def moved(where: list[float]) -> float:
        return sum((a - p) ** 2 for a, p in zip(where, places, strict=True))

    assert moved(at) <= moved(other) + 1e-6


def test_labels_with_room_stay_where_they_belong():
    """Marks that lie well apart have their letters right over them."""
    assert [10.0, 20.0, 40.0] == pytest.approx(spread([10, 20, 40], [3, 3, 3], 0, 50))
    assert [8.5, 11.5] == pytest.approx(spread([10, 10], [3, 3], 0, 50))
    assert [1.5, 4.5] == pytest.approx(spread([0, 0], [3, 3], 0, 50))
    assert [] == spread([], [], 0, 1)


def test_labels_that_do_not_fit_share_one():
    """Where there is room for three labels, the nearest marks are named together."""
    found = labelled(["1", "2", "3", "4"], [0, 1, 2, 20], lambda text: 4.0, 0, 13)
    assert ["1–2", "3", "4"] == [a.text for a in found]
    found = labelled(["1", "2", "3", "4"], [0, 1, 2, 20], lambda text: 4.0, 0, 9)
    assert ["1–3", "4"] == [a.text for a in found]
    assert 1.0 == found[0].place
    assert found[0].moved
