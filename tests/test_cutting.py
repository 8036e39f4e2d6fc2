"""The order of cutting: every piece once, at the distances where it lies."""

import itertools

import pytest
from briefs import brief

from studio.brief import Held, PrintBand
from studio.cutting import cutting_order, cutting_steps
from studio.geometry import Point
from studio.styles import rack
from studio.units import spell
from studio.workroom import make_up

WAYS = [
    {}, {"cloth__lies": "folded"}, {"cloth__one_way": True, "cloth__gap": 8.0},
    {"skirt__cut": "along", "cloth__bands": (PrintBand(60.0, 200.0), PrintBand(1300.0, 1330.0, "waistband", "face centre"))},
]  # fmt: skip


@pytest.mark.parametrize("style", tuple(rack.RACK))
@pytest.mark.parametrize("more", WAYS)
def test_every_piece_comes_once_where_it_lies(style: str, more: dict):
    """Each copy on the cloth has its step, with the distances that its outline has on the cloth, nearest the cut end
    first.
    """
    known = rack.declarations(rack.usual("cm", style))
    made = make_up(brief(style, **{k: v for k, v in more.items() if k.replace("__", ".") in known}))
    steps = [s for s in cutting_order(made) if " along; " in s.text]
    assert len(made.lay.placed) == len(steps)
    found = [tuple(s.values[k] for k in "abcd") for s in steps]
    for p in made.lay.placed:
        points = [p.on_cloth(q) for q in p.outline.flat(0.02)]
        xs, ys = [q.x for q in points], [q.y for q in points]
        box = (min(xs), max(xs), min(ys), max(ys))
        assert any(box == pytest.approx(one, abs=0.03) for one in found), p.piece.id
    starts = [round(one[0]) for one in found]
    assert starts == sorted(starts)


def test_the_moves_of_a_template_end_where_the_piece_ends():
    """Moves begin one template's width apart; the last begins where what is left of the panel begins."""
    made = make_up(brief(skirt__cut="along"))
    panel = next(p for p in made.lay.placed if p.piece.id == "skirt")
    moves = [s.values for s in cutting_order(made) if s.text.startswith("Move ")]
    places = [m["x"] for m in moves]
    steps = {round(abs(b - a), 6) for a, b in itertools.pairwise(places)}
    assert 1 == len(steps)
    assert panel.along == pytest.approx(sum([*itertools.repeat(steps.pop(), len(moves) - 1), moves[-1]["w"]]))


def test_what_runs_along_a_band_is_said():
    """The hem line and the middle of the waistband's face are given with the place where they run."""
    made = make_up(brief(**WAYS[3], seams__hem=30.0, cloth__selvedge=10.0))
    said = [spell(s, "cm") for s in cutting_order(made)]
    assert "The hem line, at 6.0 cm, runs along the print’s band." in said
    assert "The middle of its face, at 131.5 cm, runs along the print’s band." in said


def test_a_band_that_is_not_used_is_said():
    """A band that nothing should show is named as such."""
    made = make_up(brief(cloth__bands=(PrintBand(600.0, 700.0, "nothing"),)))
    assert "The print’s band at 60.0 to 70.0 cm is not used." in [spell(s, "cm") for s in cutting_order(made)]


def test_shears_are_minded():
    """The cautions stand in the list, and in inches no step speaks of centimetres."""
    said = [spell(s, "in") for s in cutting_order(make_up(brief()))]
    assert any("shears" in s for s in said)
    assert any("rotary blade" in s for s in said)
    assert not any(" cm" in s for s in said)


@pytest.mark.parametrize("turn", [0, 180])
def test_moves_begin_at_the_left_edge_of_the_panel(turn: int):
    """A template is walked from the panel's own left edge to its right one, whichever way the panel lies; each move ends
    where the next begins.
    """
    held = Held("skirt", 0, 200.0, 40.0, turn)  # type: ignore[arg-type]
    made = make_up(brief(skirt__cut="along", cloth__held=(held,)))
    step = next(s for s in cutting_steps(made) if s.placed and s.placed.piece.id == "skirt" and s.placed.copy == 0)
    box = step.placed.piece.cut_line.box
    left, right = (step.placed.on_cloth(Point(x, box.top)).x for x in (box.left, box.right))
    assert (left < right) == (turn == 0)
    places = [step.moves[0].begins, *(m.ends for m in step.moves)]
    assert (left, right) == pytest.approx((places[0], places[-1]))
    assert [m.begins for m in step.moves] == pytest.approx(places[:-1])
    assert len(step.moves) > 2


@pytest.mark.parametrize("tops", ["first", "second"])
@pytest.mark.parametrize(("holds", "by"), [("skirt", "hem"), ("skirt", "top"), ("waistband", "top"), ("waistband", "fold"),
                                           ("waistband", "hem"), ("waistband", "face centre")])  # fmt: skip
def test_the_line_on_a_band_is_where_it_is_said(holds: str, by: str, tops: str):
    """Hem, top, fold or the middle of the face: the place that is read out is where that line of the piece lies."""
    band = PrintBand(760.0, 800.0, holds, by, tops)  # type: ignore[arg-type]
    wide = {"cloth__width": 1600.0, "skirt__length": 500.0, "waistband__width": 40.0}
    made = make_up(brief(skirt__cut="along", cloth__bands=(band,), **wide))
    steps = [s for s in cutting_steps(made) if s.on_band is not None]
    assert steps
    for s in steps:
        seam = s.placed.piece.seam_line.box
        lower = seam.bottom
        folds = [m.path.start.y for m in s.placed.piece.lines if m.role == "fold"]
        fold = folds[0] if folds else seam.top
        line = {"hem": lower, "top": seam.top, "fold": fold, "face centre": (fold + lower) / 2}[by]
        assert s.on_band.at == pytest.approx(s.placed.on_cloth(Point(seam.left, line)).y)


@pytest.mark.parametrize("style", tuple(rack.RACK))
def test_folded_cloth_says_through_which_layers_a_piece_is_cut(style: str):
    """On the fold, through both layers, or through the upper one alone; which half of the cloth that is comes with the
    folding.
    """
    made = make_up(brief(style, cloth__lies="folded"))
    for step in cutting_steps(made):
        if (p := step.placed) is not None:
            says = "on the fold" if p.half else "both layers" if p.layers == 2 else "upper layer only"
            assert spell(step.says[0], "cm").endswith(f"{says}.")
            name = f"{p.piece.name}: " if p.piece.cut == 1 else f"{p.piece.name}, "
            assert spell(step.says[0], "cm").startswith(name)
    assert any("the half with the first selvedge lies on top" in spell(s, "cm") for s in cutting_order(made))


def test_a_piece_that_is_not_its_own_mirror_image_is_cut_right_side_up():
    """Folded right side in, the upper layer lies wrong side up: a contour band with its extension at one end would come
    out the wrong way round, so it is cut through the lower one.
    """
    made = make_up(brief(cloth__lies="folded", waistband__kind="contour"))
    (says,) = [spell(s.says[0], "cm") for s in cutting_steps(made) if s.placed and s.placed.piece.id == "waistband"]
    assert says.endswith("lower layer only.")


@pytest.mark.parametrize("style", ["tiered", "circle", "straight"])
def test_a_band_that_nothing_lies_on_is_said(style: str):
    """A border for a skirt that is cut across it is said to be bare, and nobody is asked to look along it."""
    made = make_up(brief(style, cloth__bands=(PrintBand(50.0, 250.0),)))
    said = [spell(s, "cm") for s in cutting_order(made)]
    assert "The print’s band at 5.0 to 25.0 cm is meant for the skirt, but no piece lies on it." in said
    assert not any(s.startswith("Look along the bands") for s in said)


def test_what_is_amiss_at_the_table_comes_before_anything_is_cut():
    """Too little cloth, and a piece held off its band, stand as cautions over the steps."""
    one = brief(**WAYS[3], cloth__on_hand=1000.0, cloth__selvedge=10.0, cloth__held=(Held("skirt", 0, 0.0, 400.0),))
    steps = cutting_steps(make_up(one))
    before = [spell(s.says[0], "cm") for s in itertools.takewhile(lambda s: s.caution, steps)]
    assert any("is on hand" in s for s in before)
    assert any("its band of the print" in s for s in before)
