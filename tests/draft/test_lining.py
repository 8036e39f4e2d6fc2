"""A lining: shorter than the skirt, caught at its waist, its darts laid as tucks."""

import pytest
from briefs import bodies, brief

from studio.draft import walked
from studio.styles import rack
from studio.workroom import Docket, make_up


def lined(style: str = "gathered", **changes: object) -> Docket:
    """A skirt with a straight lining."""
    return make_up(brief(style, **({"lining__kind": "straight"} | changes)))


@pytest.mark.parametrize("style", rack.RACK)
def test_lining_is_caught_in_the_waist_seam(style: str):
    """On each tenth of 254 bodies its waist is as long as the skirt's, tucks laid and gathers drawn up."""
    for body in bodies()[::10]:
        made = lined(style, **{k.replace(".", "__"): v for k, v in body.items()})
        pieces = {p.id: p for p in made.pieces}
        seam = next(s for s in made.draft.seams if s.name == "lining")
        assert made.brief.waist_seam == pytest.approx(walked(seam.one, pieces), abs=0.1)
        assert walked(seam.one, pieces) == pytest.approx(walked(seam.other, pieces), abs=0.1)


@pytest.mark.parametrize("shorter", [20.0, 25.0])
def test_lining_is_shorter(shorter: float):
    """It ends 2 to 2.5 above the skirt's hem (common practice, no source)."""
    made = lined(lining__shorter=shorter)
    hem = made.draft.piece("lining-front").edge("hem").path.start.y
    assert made.brief.finished_length - shorter == pytest.approx(hem)


def test_tucks_turn_the_other_way():
    """Its darts are laid as tucks, turned away from the centre: the waist runs on into the roof from the
    centre's side, where a dart's does from the other (common practice, no source)."""
    front, own = lined().draft.piece("lining-front"), lined("straight").draft.piece("front")
    kinks = []
    for edge in (front.edge("waist"), own.edge("waist")):
        start, end = edge.closes[-1]
        kinks.append([abs(edge.path.direction(x - 0.01).cross(edge.path.direction(x + 0.01))) for x in (start, end)])
    tuck, dart = kinks
    assert tuck[0] > 0.01 > tuck[1]
    assert dart[1] > 0.01 > dart[0]
    tucks = [m.words.text for m in front.lines if m.role == "dart" and m.words]
    assert tucks
    assert all(text.startswith("tuck") for text in tucks)


def test_a_line_lining_lets_a_step_through():
    """A straight one is short of a stride, which is said; an A-line is not."""
    assert "lining-lets-step" in {f.rule for f in lined().findings}
    assert "lining-lets-step" not in {f.rule for f in lined(lining__kind="A-line").findings}


def test_a_wrap_is_not_lined():
    """A lining would show where a wrap opens: it is named, and left out."""
    made = lined(opening__kind="wrap", opening__place="front")
    finding = next(f for f in made.findings if f.rule == "lining-can-hang")
    assert finding.remedy == {"lining.kind": "none"}
    assert not [p for p in made.pieces if p.cloth == "lining"]


def test_lining_cloth_is_bought_by_its_own_width():
    """Two backs of 29 and a front of 52 lie side by side on 140: one length of 0.7 m; on 90 wide, two."""
    wide = next(n for n in lined().notions if n.what == "lining")
    narrow = next(n for n in lined(lining__width=900.0).notions if n.what == "lining")
    assert (700.0, 1400.0) == (wide.sizes["length"], narrow.sizes["length"])
