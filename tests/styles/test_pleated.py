"""The pleated skirt: what the maker fixes, where pleats lie on the pieces, and what is said of them."""

from itertools import pairwise
from typing import Any

import pytest
from briefs import INCH, any_brief, brief
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from studio.brief import Brief
from studio.draft import LineMark, Piece
from studio.draft.pleats import MOST_PLEATS
from studio.styles import rack
from studio.units import spell
from studio.workroom import Docket, make_up

KINDS = ("knife to the left", "knife to the right", "box", "inverted")
each_kind = pytest.mark.parametrize("kind", KINDS)
some = settings(max_examples=50, suppress_health_check=[HealthCheck.function_scoped_fixture])


def pleated(**changes: Any) -> Docket:
    """The usual pleated skirt with other numbers of its own, "pleats=18", or of the brief, "body__hip=900.0"."""
    return make_up(brief("pleated", **{k if "__" in k else f"skirt__{k}": v for k, v in changes.items()}))


def panels(docket: Docket) -> list[Piece]:
    """The panels in order from the opening."""
    return [p for p in docket.pieces if p.id.startswith("skirt")]


def lines(piece: Piece, role: str) -> list[LineMark]:
    """The marked lines of a role."""
    return [m for m in piece.lines if m.role == role]


def test_the_usual_skirt():
    """Hips of 96 and 4 of ease in 20 full pleats: three times 100 of cloth, faces of 5 at the hips and 3.55 at the
    waist, where each fold is deeper by half the difference at both its sides.
    """
    made = pleated()
    names = ("flat_width", "face", "waist_face", "pleat_depth", "waist_depth", "hem_sweep", "pleats")
    assert (3000.0, 50.0, 35.5, 50.0, 50.0 + (50.0 - 35.5) / 2, 3000.0, 20) == tuple(made.fact(n) for n in names)
    assert () == made.findings


def test_twenty_pleats_three_deep():
    """F 71, n 20, d 3, released: s 3.55 and 191 of cloth (example E18, derived)."""
    made = pleated(stitched_down=False, pleat_depth=30.0)
    assert (1910.0, 35.5, 1200.0) == pytest.approx(tuple(made.fact(n) for n in ("flat_width", "face", "take_up")))


def test_conover_in_the_round():
    """A waist of 28 in, hips of 40 and 88 in of cloth: 60 in are taken up at the waist and 48 at the hips.

    Conover, A Complete Course in Dressmaking, vol. 5, 1921, pp. 63 to 65: 30 and 24 for half a skirt.
    """
    made = pleated(
        body__waist=28 * INCH, waistband__ease=0.0, body__hip=40 * INCH, hip_ease=0.0, pleats=16,
        pleats_by="number and cloth", flat=88 * INCH,
    )  # fmt: skip
    assert (60.0, 48.0) == pytest.approx(tuple(made.fact(n) / INCH for n in ("waist_take_up", "take_up")))
    edge = panels(made)[0].edge("waist")
    assert 60.0 == pytest.approx(sum(b - a for a, b in edge.closes) / INCH)


def test_widths_less_their_joins():
    """2 1/2 widths of 36 in goods are 90 in, and 88 once they are joined (Conover, p. 63).

    The book counts the two joins with their half-inch turnings. So do the panels; the seam with the opening takes
    another inch, which makes 91 in cut.
    """
    made = pleated(
        cut="across", cloth__width=36 * INCH, cloth__selvedge=0.0, seams__allowance=0.5 * INCH, pleats=88,
        pleats_by="number and cloth", flat=88 * INCH,
    )  # fmt: skip
    cut = [p.cut_line.box.width / INCH for p in panels(made)]
    assert 3 == len(cut)
    assert max(cut) <= 36
    assert 90 - 2 == pytest.approx(sum(cut) - len(cut))
    assert 88.0 == pytest.approx(made.fact("flat_width") / INCH)


@each_kind
def test_two_of_three_are_fixed(kind: str):
    """Any two of number, depth and cloth give the same skirt by the third."""
    by = pleated(pleat_kind=kind, pleats=16, pleat_depth=30.0)
    cloth = by.fact("flat_width")
    for fixed in (
        {"pleats_by": "number and cloth", "pleats": 16, "flat": cloth},
        {"pleats_by": "depth and cloth", "pleat_depth": 30.0, "flat": cloth},
    ):
        made = pleated(pleat_kind=kind, **fixed)
        for name in ("flat_width", "pleats", "pleat_depth", "face"):
            assert by.fact(name) == pytest.approx(made.fact(name))


def test_a_number_that_does_not_come_out_is_told():
    """200 of cloth and folds of 3 round 100 would be 16.7 pleats: 17 are made, each fold 0.6 mm shallower."""
    made = pleated(pleats_by="depth and cloth", pleat_depth=30.0, flat=2000.0)
    assert (17, 2000.0) == (made.fact("pleats"), pytest.approx(made.fact("flat_width")))
    assert -0.588 == pytest.approx(made.fact("depth_change"), abs=0.001)


@pytest.mark.parametrize(("p", "q"), [(1, 1), (2, 1), (1, 2), (3, 2), (2, 3)])
def test_the_print_puts_its_motif_on_the_faces(p: int, q: int):
    """Every q-th face lies p repeats further on, and at the opening the print comes out (s + 2d = repeat × p/q)."""
    made = pleated(pleats_by="repeat", cloth__repeat=110.0, repeats=p, repeat_pleats=q)
    assert 110.0 * p / q == pytest.approx(made.fact("pleat_unit"))
    assert made.fact("flat_width") / 110 == pytest.approx(round(made.fact("flat_width") / 110))


@pytest.mark.parametrize("kind", KINDS)
def test_folds_are_laid_where_the_kind_says(kind: str):
    """Seen from outside, arrows run left or right with a knife pleat, and towards each other with the others."""
    piece = panels(pleated(pleat_kind=kind))[0]
    ways = [m.path.end.x - m.path.start.x for m in lines(piece, "direction")]
    assert {"knife to the left": {False}, "knife to the right": {True}}.get(kind, {True, False}) == {
        w > 0 for w in ways
    }
    y = lines(piece, "direction")[0].path.start.y
    folds = sorted(at(m, y) for m in lines(piece, "pleat fold"))
    placed = sorted(at(m, y) for m in lines(piece, "placement"))
    wide = piece.edge("hem").path.length
    for mark in lines(piece, "direction"):
        start, end = mark.path.start.x, mark.path.end.x
        assert start in (pytest.approx(0), pytest.approx(wide)) or min(abs(start - f) for f in folds) < 1e-6
        assert end in (pytest.approx(0), pytest.approx(wide)) or min(abs(end - p) for p in placed) < 1e-6


def at(mark: LineMark, y: float) -> float:
    """Where a line that runs down stands at a height."""
    for c in mark.path.curves:
        if c.start.y - 1e-9 <= y <= c.end.y + 1e-9:
            return c.start.x + (c.end.x - c.start.x) * (y - c.start.y) / (c.end.y - c.start.y)
    raise AssertionError(y)


@each_kind
@pytest.mark.parametrize("cut", ["along", "across"])
def test_pleats_close_to_the_waist_and_the_hips(kind: str, cut: str):
    """Laid as the arrows say, the faces between folds and placements measure the band, and from the hips down the hips."""
    made = pleated(pleat_kind=kind, cut=cut, pleats=18, pleat_depth=30.0)
    at_waist = at_hips = 0.0
    for piece in panels(made):
        bounds = [*lines(piece, "pleat fold")]
        if kind.startswith("knife"):
            bounds += lines(piece, "placement")
        for y in (0.0, 400.0):
            ends = sorted(at(m, y) for m in bounds)
            seen = sum(b - a for a, b in zip(ends[::2], ends[1::2], strict=True))
            at_waist, at_hips = (at_waist + seen, at_hips) if y == 0 else (at_waist, at_hips + seen)
    assert (710.0, 1000.0) == pytest.approx((at_waist, at_hips))


@each_kind
def test_joins_and_opening_are_hidden(kind: str):
    """Every seam lies a fold's depth from the next fold or placement line: under a face, never on one."""
    made = pleated(pleat_kind=kind, cut="across", pleats=18, pleat_depth=25.0)
    assert made.fact("panels") > 1
    for piece in panels(made):
        wide = piece.edge("hem").path.length
        marks = sorted(at(m, 400.0) for m in (*lines(piece, "pleat fold"), *lines(piece, "placement")))
        assert (25.0, 25.0) == pytest.approx((marks[0], wide - marks[-1]))
        starts = [c for c, _ in piece.edge("waist").closes]
        assert 0.0 == starts[0]
        assert wide == pytest.approx(piece.edge("waist").closes[-1][1])


@each_kind
@pytest.mark.parametrize("pleats", [12, 13, 18])
def test_quarters_are_marked_on_a_face(kind: str, pleats: int):
    """The waist's quarters are notched where the cloth is seen, at a fold's edge at most, and meet the band's."""
    made = pleated(pleat_kind=kind, pleats=pleats, cut="across")
    sewn, run = [], 0.0
    for piece in panels(made):
        edge = piece.edge("waist")
        for spot in (s for s in piece.spots if s.role == "notch" and s.on == "waist"):
            assert not any(a + 1e-6 < spot.at.x < b - 1e-6 for a, b in edge.closes)
            sewn.append(run + edge.sewn_at(spot.at.x))
        run += edge.sewn
    assert [177.5, 355.0, 532.5] == pytest.approx(sorted(sewn))


@each_kind
def test_quarters_are_named(kind: str):
    """Centre front and both sides are written on a line of their own, or on the fold they fall on."""
    made = pleated(pleat_kind=kind, pleats=18)
    said = [
        spell(m.words, "cm")
        for p in panels(made)
        for m in p.lines
        if m.words and m.role in ("centre", "quarter", "pleat fold")
    ]
    assert ["centre front", "side", "side"] == sorted(said)


def test_an_odd_box_lies_on_centre_front():
    """Nine box pleats have a face at centre front, ten the line where two folds meet."""
    for count, on_fold in ((9, False), (10, True)):
        piece = panels(pleated(pleat_kind="box", pleats=count))[0]
        front = next(m for m in piece.lines if m.words and m.words.text == "centre front")
        assert on_fold == (front.role == "pleat fold")
        if not on_fold:
            faces = sorted(at(m, 0) for m in lines(piece, "pleat fold"))
            assert (faces[8] + faces[9]) / 2 == pytest.approx(front.path.start.x)


def test_each_pleat_has_its_number():
    """Numbers run from the opening right round, over all panels."""
    notes = [spell(n.words, "cm") for p in panels(pleated(cut="across")) for n in p.notes]
    assert [str(k) for k in range(1, 21)] == notes


def test_lines_bend_at_the_hips():
    """Stitched down, folds slant from the waist to the hip line and run straight and on the grain below; released,
    they are straight from the waist.
    """
    for mark in lines(panels(pleated())[0], "pleat fold"):
        heights = [p.y for p in mark.path.flat()]
        assert [-15.0, 0.0, 200.0, 660.0] == heights
        assert at(mark, 200) == at(mark, 600) != at(mark, 0) == at(mark, -15)
    assert all(1 == len(m.path.curves) for m in lines(panels(pleated(stitched_down=False))[0], "pleat fold"))


def test_stitching_ends_above_the_hips():
    """The end of the stitching is marked just above the hip line, or where it was set."""
    stitched, hip = (lines(panels(pleated())[0], r)[0] for r in ("stitching", "hip"))
    assert (180.0, 200.0) == (stitched.path.start.y, hip.path.start.y)
    assert 120.0 == lines(panels(pleated(stitch_depth=120.0))[0], "stitching")[0].path.start.y
    assert [] == lines(panels(pleated(stitched_down=False))[0], "stitching")


def test_thread_for_stitching_down():
    """Twenty pleats stitched 18 down take 20 × 18 of seam more, at 2.5 times and 15 % waste."""

    def thread(**changes: Any) -> float:
        return float(
            next(n for n in pleated(pleat_depth=30.0, **changes).notions if n.what == "thread").sizes["length"]
        )

    more = thread(stitch_depth=180.0) - thread(stitch_depth=20.0)
    assert 20 * 160 * 2.5 * 1.15 == pytest.approx(more)


def test_panels_hold_what_the_cloth_does():
    """Across cloth of 137 less 3, faces of 5 with folds of 5 go eight to a width: panels of 7, 6 and 7 pleats."""
    made = pleated(cut="across")
    wide = [p.edge("hem").path.length for p in panels(made)]
    assert [1050.0, 900.0, 1050.0] == pytest.approx(wide)
    assert not made.lay.misfits


def test_along_the_cloth_it_is_one_piece():
    """Cut along, the skirt is one piece; with 160 on hand it is joined from two."""
    assert 1 == pleated().fact("panels")
    assert 2 == pleated(cloth__on_hand=1600.0).fact("panels")
    assert 24 == pleated(pleats=MOST_PLEATS, panels=24).fact("panels")


def test_the_girth_pleats_let_out():
    """At the waist the band, above the end of the stitching what it is laid to, below it all the cloth."""
    one = brief("pleated", skirt__stitch_depth=300.0)
    assert (710.0, 855.0, 1000.0) == pytest.approx(tuple(rack.girth(one, y) for y in (0.0, 100.0, 250.0)))
    assert 3000.0 == rack.girth(one, 310.0)
    free = brief("pleated", skirt__stitched_down=False)
    assert rack.girth(free, 0.0) == rack.girth(free, 500.0) == pytest.approx(2130.0)


@some
@given(one=any_brief("pleated"), more=st.floats(0, 3000))
def test_wider_is_wide_enough(one: Brief, more: float):
    """The edits that widen hem or hips do so, within what the form takes."""
    for edit, depth in ((rack.widened, 1e9), (rack.cleared, one.hip_depth)):
        want = rack.girth(one, depth) + more
        if (change := edit(one, want)) is not None:
            assert rack.girth(rack.edit(one, change), depth) >= want - 1e-6


@some
@given(any_brief("pleated"))
def test_cloth_is_what_the_panels_measure(one: Brief):
    """Whatever is typed, the panels are exactly the flat width, close exactly to the waist seam, and hold all pleats."""
    made = make_up(one)
    pieces = panels(made)
    assert made.fact("flat_width") == pytest.approx(sum(p.edge("waist").path.length for p in pieces))
    assert one.waist_seam == pytest.approx(sum(p.edge("waist").sewn for p in pieces))
    assert made.fact("pleats") == sum(len(p.notes) for p in pieces)
    assert len(pieces) == made.fact("panels") <= 24
    assert made.fact("pleat_depth") > 0
    for piece in pieces:
        closes = piece.edge("waist").closes
        assert all(a <= b for a, b in closes)
        assert all(a[1] < b[0] for a, b in pairwise(closes))


def test_panels_are_not_turned_over():
    """All panels are cut the same way up, so that knife pleats run on round the skirt."""
    made = pleated(cut="across")
    assert all(not p.mirrored and p.cut == 1 for p in panels(made))
    waist = next(s for s in made.draft.seams if s.name == "waist")
    assert ["skirt", "skirt-2", "skirt-3"] == [part.piece for part in waist.one]


@pytest.mark.parametrize("kind", KINDS)
def test_a_fold_follows_the_hand(kind: str):
    """Dragged by 2 mm, a fold is 2 mm deeper and lies 2 mm further; so does the end of the stitching."""
    first = brief("pleated", skirt__pleat_kind=kind, skirt__pleat_depth=30.0, skirt__stitch_depth=150.0)
    for path, axis in (("skirt.pleat_depth", "x"), ("skirt.stitch_depth", "y"), ("skirt.length", "y")):
        one, other = (
            next(h for h in panels(make_up(b))[0].handles if h.path == path)
            for b in (first, rack.edit(first, {path: rack.value(first, path) + 2.0}))
        )
        assert 2.0 == pytest.approx(getattr(other.at, axis) - getattr(one.at, axis))
        assert 1.0 == one.gain


def test_handles_start_from_what_is_drawn():
    """Where depth and stitching are left to the draft, their handles lie at what it chose, counted from the edges."""
    found = {h.path: h for h in panels(pleated())[0].handles}
    assert 50.0 == found["skirt.pleat_depth"].at.x
    assert 180.0 == found["skirt.stitch_depth"].at.y


def test_measured_lines_measure_what_they_say():
    """Length, one fold, one face and the panel are measured where they are."""
    for kind in KINDS:
        piece = panels(pleated(pleat_kind=kind, pleat_depth=30.0, pleats=12))[0]
        for d in piece.dimensions:
            size = d.start.distance(d.end)
            assert size == pytest.approx(next(v for v in d.words.values.values() if isinstance(v, float)))
        assert {"skirt.length", "skirt.pleat_depth", "skirt.pleats"} <= {d.path for d in piece.dimensions}


def test_hips_less_than_the_waist_hang_straight():
    """Where the hips are smaller, pleats hang straight from the waist."""
    made = pleated(body__hip=650.0)
    assert (710.0, made.fact("waist_depth")) == pytest.approx((made.fact("hip_girth"), made.fact("pleat_depth")))


@pytest.mark.parametrize(("down", "keys"), [(True, ["pleats", "pleats down"]), (False, ["pleats"])])
def test_how_pleats_are_sewn(down: bool, keys: list[str]):
    """The steps say this skirt's own faces and folds, and stitch down only what is stitched down."""
    made = pleated(stitched_down=down, pleat_depth=30.0)
    steps = rack.making(made.brief, made.draft)
    assert keys == [step.key for step in steps]
    said = " ".join(spell(words, "cm") for step in steps for words in step.says)
    assert f"Each fold is 3.0 cm deep and each face {'5.0' if down else '3.6'} cm." in said
    assert ("18.0 cm down from the waist seam" in said) == down
    for step in steps:
        assert step.shows is not None
        roles = {m.role for m in made.draft.piece(step.shows.piece).lines}
        assert set(step.shows.roles) <= roles
