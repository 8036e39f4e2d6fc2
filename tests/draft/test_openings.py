"""Openings and what fastens them, against handbooks, an old placket, and plain arithmetic."""

import pytest
from briefs import INCH, any_brief, brief
from hypothesis import given, settings

from studio.draft import Piece, walked
from studio.draft.bands.outline import LAPPED
from studio.workroom import Docket, make_up

PLACKET = {"opening__kind": "placket"}


def sizes(docket: Docket, what: str) -> dict[str, float | int | str]:
    """The sizes of what is to be had ready."""
    return dict(next(n for n in docket.notions if n.what == what).sizes)


def at(piece: Piece, role: str) -> list[tuple[float, float]]:
    """Where the spots of a role are, in order."""
    return [(s.at.x, s.at.y) for s in piece.spots if s.role == role]


def test_an_old_placket():
    """The continuous lap of The New Dressmaker (1921, ch. 21) is a strip of twice the opening by 3 3/4 in. Cut in two,
    finished 1 1/2 in wide with turnings of 3/8 in, it is as wide, and between its seams as long.
    """
    docket = make_up(brief(
        **PLACKET, opening__zip_stop=10 * INCH, waistband__extension=1.5 * INCH, seams__allowance=0.375 * INCH,
    ))  # fmt: skip
    strips = [docket.draft.piece(n) for n in ("placket", "placket-under")]
    assert [3.75, 3.75] == pytest.approx([s.cut_line.box.width / INCH for s in strips])
    assert 2 * 10 == pytest.approx(sum(s.edge("seam").path.length for s in strips) / INCH)


def test_snaps_about_two_inches_apart():
    """Down an opening of 10 to 11 in the old book puts snaps about 2 in apart (The New Dressmaker, 1921, ch. 21)."""
    docket = make_up(brief(**PLACKET, opening__zip_stop=10.5 * INCH, fastening__kind="snap"))
    places = [y for _, y in at(docket.draft.piece("placket"), "snap")]
    apart = [b - a for a, b in zip([0.0, *places], places, strict=False)]
    assert [2.0] * len(apart) == pytest.approx([a / INCH for a in apart], abs=0.25)
    assert places == [y for _, y in at(docket.draft.piece("placket-under"), "snap")]


def test_buttons_down_a_placket_stand_under_the_bands():
    """Holes and buttons go on in line with the band's own, evenly: (last − first)/(n − 1) (example E34's rule). The
    over strip's edge is flush with the band's end, the hole begins 3 mm above its button.
    """
    docket = make_up(brief(**PLACKET, opening__buttons=3, opening__zip_stop=210.0))
    over, under = docket.draft.piece("placket"), docket.draft.piece("placket-under")
    assert 40.0 == over.edge("top").path.length / 2
    holes = [m.path for m in over.lines if m.role == "buttonhole"]
    assert [60.0, 120.0, 180.0] == pytest.approx([y for _, y in at(under, "button")])
    assert [57.0, 117.0, 177.0] == pytest.approx([h.start.y for h in holes])
    assert {21.0} == {h.length for h in holes}
    assert {25.0} == {h.start.x for h in holes} == {x for x, _ in at(under, "button")}
    assert 4 == sizes(docket, "button")["count"]


@settings(max_examples=60)
@given(any_brief())
def test_placket_strips_walk(one):
    """Both strips are as long as the edges of the opening, through every panel it runs along."""
    docket = make_up(one)
    pieces = {p.id: p for p in docket.pieces}
    seams = [s for s in docket.draft.seams if s.name == "placket"]
    assert len(seams) == (2 if one.opening.kind == "placket" else 0)
    for seam in seams:
        assert one.stop == pytest.approx(walked(seam.one, pieces))
        assert one.stop == pytest.approx(walked(seam.other, pieces), abs=0.1)


def test_a_placket_runs_on_through_the_tiers():
    """An opening of 30 through a first tier of about 21 takes both tiers' edges to the strip."""
    docket = make_up(brief("tiered", **PLACKET, opening__zip_stop=300.0))
    pieces = {p.id: p for p in docket.pieces}
    for seam in (s for s in docket.draft.seams if s.name == "placket"):
        assert 2 == len(seam.other)
        assert 300.0 == pytest.approx(walked(seam.other, pieces), abs=0.1)


@pytest.mark.parametrize(
    ("place", "first", "across", "laps"),
    [
        ("centre back", "centre back", "centre front", "left laps over right"),
        ("front", "centre front", "centre back", "right laps over left"),
        ("side", "side", "side", "front laps over back"),
    ],
)
def test_words_follow_the_opening(place: str, first: str, across: str, laps: str):
    """The band is marked from where the skirt opens; in front a woman's right laps over her left (New Mexico State
    Univ. Extension C-232).
    """
    band = make_up(brief(opening__place=place)).draft.piece("waistband")
    marks = sorted((m.path.start.x, m.words.text) for m in band.lines if m.role in ("centre", "quarter") and m.words)
    assert (first, across) == (marks[-1][1], marks[1][1])
    assert laps in {n.words.text for n in band.notes}
    assert laps == LAPPED[place].text


@pytest.mark.parametrize("kind", ["bound", "faced"])
def test_ends_that_meet_are_hooked(kind: str):
    """Above a zip the ends of an edge without a band meet: a hook 1/8 in back (New Mexico State Univ. Extension C-232)
    and an eye as far out close it at B.
    """
    style = "gathered" if kind == "bound" else "circle"
    docket = make_up(brief(style, waistband__kind=kind, fastening__kind="hook and bar"))
    assert 1 == sizes(docket, "hook and eye")["count"]
    assert 710.0 == docket.fact("closed_girth")
    spots = [s for p in docket.pieces for s in p.spots if s.role in ("hook", "bar")]
    assert ["bar", "hook"] == sorted(s.role for s in spots)
    if kind == "bound":
        hook, eye = (next(s for s in spots if s.role == r) for r in ("hook", "bar"))
        assert (710.0 - INCH / 8, -INCH / 8) == pytest.approx((hook.at.x + hook.size / 2, eye.at.x), abs=0.2)


@pytest.mark.parametrize("held", ["buttons", "hook and bar", "snap"])
@pytest.mark.parametrize("kind", ["folded", "two-piece"])
def test_a_wrap_closes_at_b(kind: str, held: str):
    """The waist seam counts the overlap, and what fastens it lies so that the waist closes at B; a snap inside holds
    the edge underneath.
    """
    docket = make_up(brief(waistband__kind=kind, opening__kind="wrap", fastening__kind=held))
    assert (960.0, 710.0) == (docket.fact("waist_seam"), docket.fact("closed_girth"))
    band = docket.draft.piece("waistband")
    assert 960.0 == band.edge("waist").path.length
    assert not [e for e in band.edges if e.name == "extension"]
    snaps = [x for x, _ in at(band, "snap")][-2:]
    assert 710.0 == pytest.approx(snaps[1] - snaps[0])
    assert (2 if held == "snap" else 1) == sizes(docket, "snap")["count"]


def test_a_wraps_free_edges_are_turned_under():
    """Both edges of a wrap run free to the hem, 3 cm turned under (common practice, no source), and nothing is sewn
    to them.
    """
    docket = make_up(brief(opening__kind="wrap"))
    free = [e for p in docket.pieces for e in p.edges if e.name.endswith("opening")]
    assert 2 == len(free)
    assert {("", 30.0, 620.0)} == {(e.sews_to, e.allowance, e.path.length) for e in free}
    assert not [n for n in docket.notions if n.what == "zip"]


def test_snaps_on_a_band_close_true():
    """A snap 1 cm from the end takes its other half where the band closes at B."""
    docket = make_up(brief(fastening__kind="snap"))
    over, under = [x for x, _ in at(docket.draft.piece("waistband"), "snap")]
    assert 710.0 == pytest.approx(over - under)
    assert 740.0 == pytest.approx(over)


def test_no_opening_wants_nothing():
    """Elastic without an opening needs neither zip nor hook nor button."""
    docket = make_up(brief(waistband__kind="elastic", opening__kind="none"))
    assert {"cloth", "elastic", "thread"} == {n.what for n in docket.notions}
