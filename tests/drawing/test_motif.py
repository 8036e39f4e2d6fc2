"""The print as it is suggested: a flower a repeat, standing as the motif stands."""

import pytest

from studio.brief import Cloth, PrintBand
from studio.drawing.motif import motif, places


def test_a_flower_a_repeat():
    """From 0 to 1 m, a repeat of 240 mm that starts at 50 mm has its flowers in the middle of each repeat."""
    cloth, band = Cloth(repeat=240.0, offset=50.0), PrintBand(100, 300)
    found = places(cloth, band, 0, 1000)
    assert [-70, 170, 410, 650, 890] == pytest.approx([p.x for p in found])
    assert {200.0} == {p.y for p in found}


@pytest.mark.parametrize(("tops", "way"), [("first", 1), ("second", -1)])
def test_it_stands_on_its_stem(tops: str, way: int):
    """The stem's foot points away from the edge that its top points to; all of it lies within its band."""
    band = PrintBand(100, 300, tops=tops)  # type: ignore[arg-type]
    stem, head, *_ = motif(Cloth(repeat=240.0), band)
    assert way * stem.start.y > 0 > way * head.box.centre.y
    assert all(abs(y) <= 100 for path in motif(Cloth(repeat=240.0), band) for y in (path.box.top, path.box.bottom))


def test_where_it_stands_either_way_it_is_round():
    """Turned half round it is the same."""
    drawn = motif(Cloth(), PrintBand(0, 200))
    tops, feet = min(p.box.top for p in drawn), max(p.box.bottom for p in drawn)
    assert -tops == pytest.approx(feet)
