"""Pockets: they lie where they can be sewn, and are as large as what they are sewn to."""

from typing import Any

import pytest
from briefs import brief
from shapely.geometry import Polygon

from studio.draft import Piece
from studio.draft.side_pocket import down
from studio.geometry import Path, Point
from studio.workroom import Docket, make_up

HOLDS = {"gathered": {"skirt__panels": 4, "skirt__cut": "across"}, "pleated": {"skirt__panels": 4}, "circle": {"skirt__panels": 4},
         "gored": {"skirt__gores": 8}, "godet": {"skirt__gores": 8}, "straight": {}}  # fmt: skip


def pocketed(style: str, **changes: Any) -> Docket:
    """A skirt with pockets in its side seams."""
    return make_up(brief(style, pockets__kind="in seam", **(HOLDS[style] | changes)))


def side_marks(piece: Piece) -> list[float]:
    """How far down the seam the bars of a pocket lie, per side."""
    found = []
    for side in ("left", "right"):
        seam = down(piece, side) if any(e.name.startswith(side) for e in piece.edges) else None
        for mark in piece.lines:
            if mark.role == "pocket" and seam is not None:
                along, off = seam.nearest(mark.path.at(mark.path.length / 2))
                found += [along] if off < 0.01 else []
    return sorted(found)


@pytest.mark.parametrize("style", HOLDS)
def test_pocket_lies_in_the_side_seam(style: str):
    """The hand goes in from 6 to 22 cm below the waist (opening 15 to 17, top 5 to 8: common practice, no source), on
    both pieces that meet at the side.
    """
    made = pocketed(style)
    marked = [p for p in made.pieces if side_marks(p)]
    assert marked
    for piece in marked:
        assert [60.0, 220.0] == pytest.approx(sorted(set(round(m, 3) for m in side_marks(piece))))
    bag = made.draft.piece("pocket-bag")
    assert 4 == bag.cut
    assert bag.cut_line.box.height > 280 - 40


@pytest.mark.parametrize("style", HOLDS)
def test_bag_is_as_long_as_the_seam_it_is_sewn_to(style: str):
    """The notches on the bag are as far apart along its edge as the pocket's bars along the seam."""
    bag = pocketed(style).draft.piece("pocket-bag")
    edge = bag.edge("seam").path
    places = sorted(edge.nearest(s.at)[0] for s in bag.spots)
    assert 160.0 == pytest.approx(places[1] - places[0], abs=0.05)
    assert all(off == pytest.approx(15.0, abs=0.01) for off in (edge.nearest(s.at)[1] for s in bag.spots))


@pytest.mark.parametrize("style", HOLDS)
def test_bag_has_the_curve_of_its_seam(style: str):
    """Chord by chord, the bag's edge is as long as the stretch of side seam from 4 to 24 cm below the waist."""
    made = pocketed(style)
    edge = made.draft.piece("pocket-bag").edge("seam").path.reversed()
    assert 200.0 == pytest.approx(edge.length, abs=1e-3)
    panels = [(p, s) for p in made.pieces if side_marks(p) for s in ("left", "right") if down(p, s).length > 240]
    shapes = [chords(down(p, side), 40.0) for p, side in panels]
    assert any(chords(edge, 0.0) == pytest.approx(shape, abs=1e-3) for shape in shapes)


def chords(path: Path, start: float) -> list[float]:
    """How far places along a path, 2, 4, ... 20 cm from a start, lie from it, mm."""
    return [path.at(start).distance(path.at(start + 20.0 * k)) for k in range(1, 11)]


@pytest.mark.parametrize("style", HOLDS)
def test_bag_hangs_straight_down(style: str):
    """However the side seam slants on the cloth, the bag's grain runs along it and its foot lies at least 28 to 30 cm
    below the waist (common practice, no source), and a hand's depth below the opening.
    """
    bag = pocketed(style).draft.piece("pocket-bag")
    edge = bag.edge("seam").path
    assert 0.0 == pytest.approx(edge.start.x - edge.end.x, abs=1e-9)
    assert 0.0 == pytest.approx(bag.grain[0].x - bag.grain[1].x, abs=1e-9)
    foot = 40.0 + bag.seam_line.box.bottom
    assert foot >= 300.0
    assert foot - 220.0 >= 90.0


@pytest.mark.parametrize("fraction", [0.25, 0.5, 0.75, 1.0])
def test_bag_of_a_circle_is_whole(fraction: float):
    """Whatever share of a circle, its bag's outlines close and do not cross themselves."""
    made = pocketed("circle", skirt__fraction=fraction, pockets__opening=250.0)
    bag = made.draft.piece("pocket-bag")
    assert Polygon(bag.seam_line.flat(0.1)).is_valid
    assert Polygon(bag.cut_line.flat(0.1)).is_valid


def test_notches_are_on_the_seams_that_meet():
    """The notches of front and back lie at the same places down the side, square to the seam at the cut edge."""
    made = pocketed("straight")
    for piece in (made.draft.piece("front"), made.draft.piece("back")):
        seam = down(piece, "left")
        spots = [s for s in piece.spots if s.governs == ("pockets.top", "pockets.opening")]
        found = [seam.nearest(s.at) for s in spots]
        assert [60.0, 220.0] == pytest.approx(sorted(along for along, _ in found), abs=0.01)
        assert [15.0, 15.0] == pytest.approx([off for _, off in found], abs=0.01)
        assert all(piece.cut_line.nearest(s.at)[1] < 0.01 for s in spots)


def test_one_side_seam_has_one_pocket():
    """Where only one seam lies at the side, two bags are cut and not four."""
    made = make_up(brief("gathered", skirt__panels=1, opening__place="side", pockets__kind="in seam",
                         opening__zip_stop=40.0, pockets__top=80.0))  # fmt: skip
    assert 2 == made.draft.piece("pocket-bag").cut
    assert not [f.rule for f in made.findings if f.rule.startswith("pocket")]


def test_copies_elsewhere_are_told_apart():
    """A gore cut six times bears the marks of two seams only, and says so."""
    made = pocketed("gored")
    gore = made.draft.piece("gore")
    assert 6 == gore.cut
    assert ["pocket: only where this lies at the side"] == [n.words.text for n in gore.notes]
    assert not side_marks(made.draft.piece("skirt"))
    assert not pocketed("straight").draft.piece("front").notes


def test_fold_is_no_side_seam():
    """A circle's half on the fold has no seam there: the panels that meet at the side alone are marked."""
    front = pocketed("straight").draft.piece("front")
    fold = next(e for e in front.edges if e.fold)
    assert 0 == len(down(front, fold.name).curves)
    assert all(abs(m.path.start.x - fold.path.start.x) > 100 for m in front.lines if m.role == "pocket")


def test_no_pockets_unless_asked():
    """The usual skirt has none, and no mark of any."""
    for style in HOLDS:
        made = make_up(brief(style))
        assert not [p.id for p in made.pieces if p.id.startswith("pocket")]
        assert not [m for p in made.pieces for m in p.lines if m.role == "pocket"]


def test_patch_on_both_sides_of_the_front():
    """One panel all round bears two patches, half way from the centre front to each side."""
    skirt = make_up(brief(pockets__kind="patch")).draft.piece("skirt")
    middles = sorted(m.path.box.centre.x for m in skirt.lines if m.role == "pocket")
    assert [1420 * 3 / 8, 1420 * 5 / 8] == pytest.approx(middles)


def test_patches_of_gores_lie_on_one_gore_each():
    """Beside a seam the patch moves to the middle of its gore, alike on both sides of the front."""
    made = make_up(brief("gored", skirt__gores=8, pockets__kind="patch", pockets__width=80.0))
    gore = made.draft.piece("gore")
    outline = Polygon(gore.seam_line.flat(0.1))
    marks = [m.path for m in gore.lines if m.role == "pocket"]
    assert 1 == len(marks)
    assert gore.edge("waist").path.box.centre.x == pytest.approx(marks[0].box.centre.x, abs=0.01)
    assert outline.covers(Polygon(marks[0].flat(0.1)))
    assert ["pocket: only where this lies in front"] == [n.words.text for n in gore.notes]


def test_patch_is_cut_with_its_hem_and_allowances():
    """Two patches: 15 by 17 cm finished, 3 cm turned in above, an allowance at sides and foot."""
    patch = make_up(brief(pockets__kind="patch")).draft.piece("pocket")
    assert 2 == patch.cut
    assert (150.0, 170.0) == pytest.approx((patch.seam_line.box.width, patch.seam_line.box.height))
    assert {"top": 30.0, "right": 15.0, "foot": 15.0, "left": 15.0} == {e.name: e.allowance for e in patch.edges}
    assert -30.0 == pytest.approx(patch.cut_line.box.top)


@pytest.mark.parametrize("panels", [1, 2, 4])
def test_patch_hangs_square_to_the_waist_of_a_circle(panels: int):
    """On a circle the top of a patch is square to the line from the middle of the waist to the hem."""
    made = make_up(brief("circle", skirt__panels=panels, pockets__kind="patch"))
    for piece in made.pieces:
        for mark in (m.path for m in piece.lines if m.role == "pocket"):
            top, middle = mark.curves[0], mark.curves[0].at(0.5)
            along, off = piece.edge("waist").path.nearest(middle)
            assert 60.0 == pytest.approx(off, abs=1e-3)
            down_here: Point = piece.edge("waist").path.at(along).to(middle).unit()
            assert 0.0 == pytest.approx(down_here.dot(top.direction(0)), abs=1e-6)


def test_patches_lie_alike_on_both_sides_of_the_front():
    """Where a seam of eight panels runs half way to the side, both patches lie beyond it, on the two copies of one piece."""
    made = make_up(brief("circle", skirt__panels=8, pockets__kind="patch", pockets__width=80.0))
    carriers = {p.id: [m for m in p.lines if m.role == "pocket"] for p in made.pieces}
    assert {"skirt-side-2": 1} == {i: len(marks) for i, marks in carriers.items() if marks}
