"""Thread, against worked examples of the trade."""

from typing import Any

import pytest
from briefs import any_brief, brief
from hypothesis import given, settings

from studio.cloth.thread import INCH, LOCKSTITCH, OVEREDGE, lockstitch_ratio, neatened, overedge_ratio, sewn, thread
from studio.styles import rack
from studio.workroom import Docket, make_up


def length(docket: Docket, size: str = "length") -> float:
    """The thread that is listed, mm."""
    return float(next(n for n in docket.notions if n.what == "thread").sizes[size])


def seams(style: str = "gathered", **changes: Any) -> float:
    """All that is sewn of a skirt, mm."""
    one = brief(style, **changes)
    return sewn(one, rack.draft(one))


def test_thread_for_a_skirt():
    """701 cm of lockstitch at 2.5 and 15 % waste is 20.2 m; 266 cm of overedge at 14 is 37.2 m (example E48, of a skirt
    in two panels without its opening: 133 sides + 142 hem + 284 rows + 142 waist twice).
    """
    usual = {"cloth__selvedge": 15.0, "skirt__fullness": 2.0, "skirt__panels": 2, "skirt__cut": "across"}
    one = brief(
        body__waist=700.0, waistband__ease=10.0, skirt__length=600.0, seams__hem=50.0, opening__kind="none", **usual
    )
    made = make_up(one)
    ends = 60.0  # the ends of the band, which the example leaves out
    assert 7010.0 + ends == pytest.approx(sewn(one, made.draft), abs=1)
    assert (thread(7010.0 + ends), 37240.0) == pytest.approx((length(made), length(made, "overedge")), abs=10)
    assert (20150.0, 20.2) == pytest.approx((thread(7010.0), round(thread(7010.0) / 1000, 1)), abs=5)
    assert 2660.0 == pytest.approx(neatened(one, made.draft), abs=1)


def test_ratios_of_the_stitches():
    """Lockstitch 2 + 2TS: 3.0 and 2.4 for cloth of 0.05 and 0.02 in at 10 to the inch; overedge 3 + 4S(W + T): 15 for a
    bite of 1/4 in (example E49); trade tables say 2.5 and about 14.
    """
    tenth = INCH / 10
    assert (3.0, 2.4) == pytest.approx((lockstitch_ratio(0.05 * INCH, tenth), lockstitch_ratio(0.02 * INCH, tenth)))
    assert 15.0 == pytest.approx(overedge_ratio(0.05 * INCH, tenth, 0.25 * INCH))
    assert (2.5, 14.0) == pytest.approx((LOCKSTITCH, OVEREDGE))


def test_a_metre_and_a_bit_of_each():
    """220 cm of lockstitch takes 550 cm; 100 cm of two-thread chain at 1.3 + 4.1 and 15 % waste 621 cm (example E50)."""
    assert 5500.0 == pytest.approx(thread(2200.0, waste=1.0))
    assert 6210.0 == pytest.approx(thread(1000.0, 1.3 + 4.1))


@pytest.mark.parametrize(
    ("style", "less", "more", "by"),
    [
        ("gathered", {"gathers__rows": 2}, {"gathers__rows": 3}, 1420.0),
        ("gathered", {"opening__zip_stop": 200.0}, {"opening__zip_stop": 180.0}, -20.0),  # both edges, less a seam
        ("gathered", {}, {"waistband__width": 40.0}, 20.0),  # two ends of a folded band, 10 taller each
        ("gathered", {}, {"pockets__kind": "patch"}, 2 * (150.0 + 2 * 155.0 + 153.0)),
    ],
)
def test_what_is_added_is_sewn(style: str, less: dict[str, Any], more: dict[str, Any], by: float):
    """One more row, a deeper opening, a wider band, pockets: each adds its own length of stitching."""
    assert by == pytest.approx(seams(style, **more) - seams(style, **less), abs=1)


def test_darts_are_sewn_once():
    """Four darts of a straight skirt, each as long as its leg, are in what is sewn; a lining's tucks are not."""
    one = brief("straight")
    draft = rack.draft(one)
    legs = sum(
        m.path.length / 2 * p.cut * (2 if p.on_fold else 1) for p in draft.pieces for m in p.lines if m.role == "dart"
    )
    bare = sum(m.path.length for p in draft.pieces for m in p.lines if m.role == "dart")
    assert 0 < legs == pytest.approx(bare)  # two legs, and two of each
    assert sewn(one, draft) > legs


@settings(max_examples=40)
@given(any_brief())
def test_thread_is_at_least_the_seams(one):
    """There is thread for the waist and the hem of any skirt, and more for neatening than none."""
    made = make_up(one)
    assert length(made) >= thread(one.waist_seam)
    assert length(made, "overedge") > 0
