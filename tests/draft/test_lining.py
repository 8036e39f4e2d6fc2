"""A lining: as long, as wide and as open as it should be, and caught where the skirt is."""

import itertools
import math
from typing import Any

import pytest
from briefs import any_brief, bodies, brief
from hypothesis import given, settings
from hypothesis import strategies as st

from studio.draft import Piece, notches, walked
from studio.draft.lining import lining_block
from studio.draft.marks import NOTCH
from studio.styles import rack
from studio.units import spell
from studio.workroom import Docket, make_up

STYLES = tuple(rack.RACK)
KINDS = ("straight", "A-line")
BANDS = ("folded", "two-piece", "contour", "elastic", "bound", "faced")
CLOSED = ("invisible", "lapped", "centred", "placket", "none")
PLACES = ("centre back", "side", "front")


def made(style: str = "gathered", kind: str = "straight", **changes: Any) -> Docket:
    """What is made up of the usual skirt with a lining."""
    return make_up(brief(style=style, lining__kind=kind, **changes))


def panels(docket: Docket) -> list[Piece]:
    """Back and front of the lining."""
    return [p for p in docket.pieces if p.id in ("lining-back", "lining-front")]


def check_caught(docket: Docket) -> None:
    """The lining walks along the band, and each of its waist notches meets one of the band's or an end there."""
    pieces = {p.id: p for p in docket.pieces}
    seams = [s for s in docket.draft.seams if s.name == "lining"]
    assert 1 == len(seams)
    seam, waist = seams[0], next(s for s in docket.draft.seams if s.name == "waist")
    assert waist.other == seam.other
    assert walked(seam.one, pieces) == pytest.approx(docket.fact("waist_seam"), abs=0.1)
    assert walked(seam.other, pieces) == pytest.approx(docket.fact("waist_seam"), abs=0.1)
    ends = [walked(seam.other[:k], pieces) for k in range(len(seam.other) + 1)]
    there = [*notches(seam.other, pieces), *ends]
    for n in notches(seam.one, pieces):
        assert min(abs(n - t) for t in there) < 0.1, n
    names = {f"{p.id}/{e.name}" for p in docket.pieces for e in p.edges}
    for piece in panels(docket):
        assert all(e.sews_to in names | {""} for e in piece.edges), piece.id


@pytest.mark.parametrize("style", STYLES)
@pytest.mark.parametrize("kind", KINDS)
def test_there_is_a_lining_under_any_skirt(style: str, kind: str):
    """Every style takes a back and a front of lining, caught at its waist and cut of lining cloth alone."""
    docket = made(style, kind)
    assert ["Lining back", "Lining front"] == [p.name for p in panels(docket)]
    assert {"lining"} == {p.cloth for p in panels(docket)}
    assert not any(p.piece.cloth == "lining" for p in docket.lay.placed)
    check_caught(docket)


@pytest.mark.parametrize("band", BANDS)
def test_it_is_caught_however_the_skirt_is_held(band: str):
    """Over bodies, bands, openings and places, the lining walks along the waist and its own seams walk."""
    for opening, place, person, style in itertools.product(CLOSED, PLACES, bodies()[::64], ("gathered", "straight")):
        docket = made(
            style, waistband__kind=band, opening__kind=opening, opening__place=place,
            **{k.replace(".", "__"): v for k, v in person.items()},
        )  # fmt: skip
        check_caught(docket)
        pieces = {p.id: p for p in docket.pieces}
        for seam in docket.draft.seams:
            if seam.one[0].piece.startswith("lining"):
                assert walked(seam.one, pieces) == pytest.approx(walked(seam.other, pieces), abs=0.1), seam


@settings(max_examples=40)
@given(st.sampled_from(STYLES).flatmap(any_brief), st.sampled_from(KINDS))
def test_anything_the_form_allows_can_be_lined(one: Any, kind: str):
    """Over the whole declared range a lining walks, closes and is never longer than its skirt."""
    docket = make_up(rack.edit(one, {"lining.kind": kind}))
    if docket.brief.opening.kind == "wrap" or any(f.rule == "can-be-sewn" for f in docket.findings):
        return
    check_caught(docket)
    for piece in panels(docket):
        assert piece.cut_line.closed
        assert piece.seam_line.closed
        length = piece.edge("hem").path.start.y
        assert length == max(10.0, docket.brief.finished_length - docket.brief.lining.shorter)
        assert length <= docket.brief.finished_length


def test_it_ends_above_the_skirts_hem():
    """A lining is 2 to 2.5 cm shorter than its skirt, finished (common practice, no source)."""
    docket = made()
    assert 20.0 <= docket.brief.lining.shorter <= 25.0
    for piece in panels(docket):
        assert docket.brief.finished_length - 25.0 == piece.edge("hem").path.start.y
        assert 25.0 == piece.edge("hem").allowance
        assert piece.edge("hem").hem


def test_its_hem_is_its_own():
    """Whatever the skirt's hem is, the lining's is turned twice, and its first turn stays within it."""
    docket = made(seams__hem_kind="faced", seams__first_turn=30.0)
    for piece in panels(docket):
        assert 25.0 == piece.edge("hem").allowance
        assert ["hem", "first turn"] == [m.role for m in piece.lines if m.role in ("hem", "first turn")]
    assert not any(p.id.startswith("hem-facing-lining") for p in docket.pieces)


def test_its_darts_are_tucks():
    """Where the skirt has darts the lining has tucks, laid the other way (common practice, no source): their roof
    repeats the waist towards the side, not the centre.
    """
    docket = made("straight", waistband__ease=0.0)
    for name in ("back", "front"):
        lining, skirt = docket.draft.piece(f"lining-{name}"), docket.draft.piece(name)
        said = [spell(m.words, "cm") for m in lining.lines if m.role == "dart" and m.words]
        assert said
        assert all(s.startswith("tuck, ") and " wide" in s for s in said)
        assert len(said) == len(lining.edge("waist").closes) == len(skirt.edge("waist").closes)
        assert lining.edge("waist").sewn == pytest.approx(skirt.edge("waist").sewn, abs=1e-6)
        assert [True] * len(said) == [folds(lining, k, "side") for k in range(len(said))]
        assert [True] * len(said) == [folds(skirt, k, "centre") for k in range(len(said))]
        assert [False] * len(said) == [folds(lining, k, "centre") for k in range(len(said))]


def folds(piece: Piece, k: int, towards: str) -> bool:
    """Whether the k-th dart or tuck, closed, can lie flat towards side or centre: the half of its roof that lies under
    the waist there repeats it, turned about the point by the dart's angle.
    """
    waist = piece.edge("waist")
    legs = [m.path for m in piece.lines if m.role == "dart"][k]
    outer, apex, inner = legs.start, legs.curves[0].end, legs.end
    start, end = next(c for c in waist.closes if waist.path.at(c[0]).distance(outer) < 1e-6)
    angle = apex.to(inner).degrees - apex.to(outer).degrees
    share, turn = (0.75, -angle) if towards == "side" else (0.25, angle)
    p = waist.path.at(start + (end - start) * share).turned(turn, apex)
    along, off = waist.path.nearest(p)
    return off < 1e-3 and (along < start if towards == "side" else along > end)


def test_elastic_needs_no_tucks():
    """Under elastic a lining goes over the hips and is taken in by nothing."""
    for person in bodies()[::16]:
        docket = made(
            waistband__kind="elastic", opening__kind="none", **{k.replace(".", "__"): v for k, v in person.items()}
        )
        assert [(), ()] == [p.edge("waist").closes for p in panels(docket)]
        assert lining_block(docket.brief).girth(docket.brief.hip_depth) >= docket.brief.hips + 40.0


def test_there_is_room_at_the_hips():
    """At the hips a lining measures the body and 5 cm, within the 4 to 6 cm that let one sit (common practice, no
    source)."""
    for person in bodies()[::16]:
        one = brief(lining__kind="straight", **{k.replace(".", "__"): v for k, v in person.items()})
        if one.waist_seam <= one.hips + 50.0:
            assert lining_block(one).girth(one.hip_depth) == pytest.approx(one.hips + 50.0, abs=0.1)


@pytest.mark.parametrize(
    ("place", "kind", "cut"),
    [
        ("centre back", "invisible", (2, 1)), ("front", "invisible", (1, 2)), ("side", "invisible", (1, 1)),
        ("centre back", "none", (1, 1)),
    ],
)  # fmt: skip
def test_it_opens_where_the_skirt_does(place: str, kind: str, cut: tuple[int, int]):
    """On the fold where the skirt is whole, two mirrored where it opens; as deep as the skirt, sewn there by hand."""
    band = {"waistband__kind": "elastic"} if kind == "none" else {}
    docket = made(opening__place=place, opening__kind=kind, **band)
    assert cut == tuple(p.cut for p in panels(docket))
    assert [n == 1 for n in cut] == [p.on_fold for p in panels(docket)]
    assert [n == 2 for n in cut] == [p.mirrored for p in panels(docket)]
    opened = [e for p in panels(docket) for e in p.edges if e.name.endswith(" opening")]
    assert {"centre back": 1, "front": 1, "side": 2}[place] * (kind != "none") == len(opened)
    for e in opened:
        assert e.path.length == pytest.approx(docket.brief.stop, abs=0.5)
        assert e.words is not None
        by_hand = "opening, sewn by hand to the zip tape"
        if place == "side":
            by_hand = "seam; on the wearer’s left the opening, sewn by hand to what closes it"
        assert by_hand == spell(e.words, "cm")


def test_a_deep_opening_opens_the_lining_all_the_way():
    """Under an opening that runs deeper than the lining, such as a long placket, nothing of its seam is left sewn."""
    docket = made(opening__kind="placket", opening__place="front", skirt__length=500.0, opening__zip_stop=490.0)
    front = docket.draft.piece("lining-front")
    assert ["right opening"] == [e.name for e in front.edges if e.name.startswith("right")]
    assert 475.0 == pytest.approx(front.edge("right opening").path.length, abs=1e-6)
    words = front.edge("right opening").words
    assert words is not None
    assert "opening, sewn by hand to the placket" == spell(words, "cm")
    check_caught(docket)


def test_its_sides_are_notched():
    """The sides match by a notch at the hip line, and the waist by one at the band's own side mark."""
    docket = made()
    pieces = {p.id: p for p in docket.pieces}
    sides = [s for p in panels(docket) for s in p.spots if s.role == "notch" and s.on == "left"]
    assert 2 == len(sides)
    assert {NOTCH} == {s.size for s in sides}
    joined = next(s for s in docket.draft.seams if s.name == "join" and s.one[0].piece == "lining-back")
    one, other = notches(joined.one, pieces), notches(joined.other, pieces)
    assert one == pytest.approx(other, abs=0.1)
    assert 1 == len(one)
    seam = next(s for s in docket.draft.seams if s.name == "lining")
    quarter = docket.brief.waist_seam / 4
    assert [quarter, 3 * quarter] == pytest.approx(notches(seam.one, pieces), abs=0.05)


def test_a_wrap_is_not_lined():
    """Under a wrap a closed lining cannot hang; that is said, and leaving it out mends it."""
    docket = made(opening__kind="wrap")
    assert [] == panels(docket)
    found = [f for f in docket.findings if f.rule == "lining-can-hang"]
    assert 1 == len(found)
    assert found[0].remedy is not None
    assert "lining-can-hang" not in {f.rule for f in make_up(rack.edit(docket.brief, found[0].remedy)).findings}


def test_a_lining_that_hobbles_is_named():
    """Where a straight lining is too narrow for a step and an A-line one is not, that is the remedy, unless it would be
    wider than the skirt."""
    found = [f for f in made("tiered").findings if f.rule == "lining-lets-step"]
    assert [{"lining.kind": "A-line"}] == [f.remedy for f in found]
    assert "lining-lets-step" not in {f.rule for f in made("tiered", "A-line").findings}
    narrow = [f for f in made("straight").findings if f.rule == "lining-lets-step"]
    assert [None] == [f.remedy for f in narrow]
    assert "lining-lets-step" not in {f.rule for f in made(skirt__length=350.0).findings}


@pytest.mark.parametrize(
    ("rule", "changes"),
    [
        ("lining-leaves-length", {"skirt__length": 150.0, "lining__shorter": 140.0}),
        ("lining-leaves-length", {"skirt__length": 100.0, "skirt__length_includes_band": True}),
        ("lining-fits-cloth", {"lining__width": 400.0}),
    ],
)
def test_what_cannot_be_cut_is_named_and_mended(rule: str, changes: dict[str, Any]):
    """Too little length, or cloth too narrow: each is named with the number that mends it."""
    if "length_includes_band" in " ".join(changes):
        changes = {**changes, "waistband__width": 40.0}
    docket = made(**changes)
    found = [f for f in docket.findings if f.rule == rule]
    assert 1 == len(found)
    assert found[0].remedy is not None
    assert rule not in {f.rule for f in make_up(rack.edit(docket.brief, found[0].remedy)).findings}


def test_how_much_lining_to_buy():
    """Side by side where the cloth is wide enough, one after the other where not; by the tenth of a metre."""
    for width in (700.0, 1400.0):
        docket = made(lining__width=width)
        boxes = [p.as_cut.box for p in panels(docket) for _ in range(p.cut)]
        side_by_side = sum(b.width for b in boxes) <= width - 2 * docket.brief.cloth.selvedge
        rows = 1 if side_by_side else 2
        notion = next(n for n in docket.notions if n.what == "lining")
        assert math.ceil(rows * max(b.height for b in boxes) / 100) * 100.0 == pytest.approx(
            notion.sizes["length"], abs=100
        )
        assert 0 == float(notion.sizes["length"]) % 100
        assert spell(notion.words, "cm").startswith("lining ")


def test_a_lined_skirt_takes_more_thread():
    """The lining's seams and hem are counted in the thread."""
    thread = [next(n for n in make_up(b).notions if n.what == "thread").sizes["length"]
              for b in (brief(), brief(lining__kind="straight"))]  # fmt: skip
    assert float(thread[0]) < float(thread[1])


def test_without_a_lining_there_is_none():
    """A skirt that asks for no lining has no piece, seam, notion or finding of one."""
    docket = make_up(brief())
    assert [] == panels(docket)
    assert "lining" not in {s.name for s in docket.draft.seams} | {n.what for n in docket.notions}
    assert not any(f.rule.startswith("lining") for f in docket.findings)


@pytest.mark.parametrize("place", ["centre back", "side", "front"])
def test_a_lining_goes_round_as_its_skirt_does(place: str):
    """Wherever it opens, the lining's halves follow each other as those of a straight skirt do."""
    docket = make_up(brief("straight", opening__place=place, lining__kind="straight"))
    waist, caught = (next(s for s in docket.draft.seams if s.name == name) for name in ("waist", "lining"))
    assert [(f"lining-{p.piece}", p.back) for p in waist.one] == [(p.piece, p.back) for p in caught.one]
