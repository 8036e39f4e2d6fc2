"""Pleats against the handbooks and plain arithmetic: number, depth, cloth, and where they lie on it."""

import pytest
from briefs import INCH
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from studio.draft.pleats import (
    Pleats,
    count_from,
    depth_from,
    fewest_panels,
    from_repeat,
    full_depth,
    opens,
    whole_pleats,
)

KINDS = ("knife to the left", "knife to the right", "box", "inverted")
BOTH = ("box", "inverted")


def released(kind: str, girth: float, count: int, depth: float) -> Pleats:
    """Pleats laid to one girth all the way down."""
    return Pleats(kind, count, depth, girth, girth, 0.0)


def test_eighteen_full_knife_pleats():
    """72 finished in 18 pleats of 4 and 4 take 216, three times as much (a blog's waist of 68 and 4; derived: F + 2nd)."""
    pleats = released("knife to the left", 720.0, 18, 40.0)
    assert (2160.0, 40.0, 40.0) == (pleats.flat_width, pleats.face(0), pleats.full)


def test_twenty_shallower_pleats():
    """71 finished in 20 pleats 3 deep: faces of 3.55, cloth of 191 (derived: s = F/n, T = F + 2nd)."""
    pleats = released("knife to the right", 710.0, 20, 30.0)
    assert (35.5, 1910.0) == pytest.approx((pleats.face(0), pleats.flat_width))


def test_thirteen_pleats_of_a_curtain():
    """144 in of cloth for 53 leave 91, at 7 a pleat 13 pleats (a home-furnishing page, drapes of 49 and 3 and 1; example
    E47: the count from cloth and depth, whatever hangs from it). 7 is taken up by a fold 3 1/2 deep.
    """
    assert 13 == count_from(144 * INCH, 53 * INCH, 3.5 * INCH, "knife to the left")
    assert 3.5 * INCH == pytest.approx(depth_from(144 * INCH, 53 * INCH, 13, "knife to the left"))


def test_a_depth_is_one_fold():
    """Waist 30 in, faces of 1 1/2 in, "depth" 1 1/4 in: 20 pleats take 80 in.

    A blog counts the whole take-up as the depth and prints 55 in (30 + 20 × 1 1/4); with a true fold depth it is 80.
    """
    pleats = released("knife to the left", 30 * INCH, 20, 1.25 * INCH)
    assert (1.5, 80.0) == pytest.approx((pleats.face(0) / INCH, pleats.flat_width / INCH))
    assert 55.0 == pytest.approx(released("knife to the left", 30 * INCH, 20, 1.25 / 2 * INCH).flat_width / INCH)


@pytest.mark.parametrize("kind", KINDS)
def test_full_pleats_take_three_times(kind: str):
    """Side plaiting takes three times what it is laid to: a finished 20 takes 60 (The New Dressmaker, 1921, ch. 28).

    Box pleats there take a little less than three times; full ones, whose folds meet beneath, take three (derived).
    """
    pleats = released(kind, 200.0, 8, full_depth(200.0, 8, kind))
    assert 600.0 == pytest.approx(pleats.flat_width)
    assert 3 == pleats.layers
    assert pleats.depth == pleats.full == (12.5 if kind in BOTH else 25.0)


@pytest.mark.parametrize("kind", BOTH)
def test_two_folds_take_four_times_their_depth(kind: str):
    """A box pleat of face s and underfold u takes up 4u, and so does an inverted one (derived)."""
    pleats = released(kind, 800.0, 10, 30.0)
    assert 800.0 + 10 * 4 * 30.0 == pytest.approx(pleats.flat_width)


def test_half_a_skirt_of_conover():
    """Half width 44 in, half waist 14, half hips 20: 30 in are taken up at the waist and 24 at the hips.

    Conover, A Complete Course in Dressmaking, vol. 5, 1921, pp. 63 to 65. (The book tapers its pleats to the hem too,
    where they take up 16 1/2; ours hang straight from the hips.)
    """
    pleats = Pleats(
        "knife to the left", 8, depth_from(44 * INCH, 20 * INCH, 8, "knife to the left"), 14 * INCH, 20 * INCH, 200.0
    )
    assert (44.0, 30.0, 24.0) == pytest.approx(
        tuple(
            v / INCH
            for v in (pleats.flat_width, pleats.flat_width - pleats.laid(0), pleats.flat_width - pleats.laid(200))
        )
    )
    assert (3.75, 3.0) == pytest.approx(tuple(2 * pleats.fold(y) / INCH for y in (0, 200)))


def test_seven_pleats_of_conover():
    """Of eight pleats one keeps its 2 1/8 in; the other seven take 3.982 in each at the waist and 3 1/8 at the hips.

    Conover, p. 69: 27 7/8 / 7, "a little over 3 7/8", and 21 7/8 / 7. The 2 1/8 is the book's rounding of its own
    16 1/2 / 8 = 2 1/16 at the hem; the shares follow from the rounded figure.
    """
    straight = 2.125
    kind = "knife to the left"
    pleats = Pleats(kind, 7, depth_from((44 - straight) * INCH, 20 * INCH, 7, kind), 14 * INCH, 20 * INCH, 200.0)
    assert (3.982, 3.125) == pytest.approx(tuple(2 * pleats.fold(y) / INCH for y in (0, 200)), abs=5e-4)


def test_eight_inches_out_of_sixteen_pleats():
    """Hips of 35 in over a waist of 27: half an inch comes out of each of 16 pleats.

    Erwin, Practical Dress Design, p. 148 (partly blurred): 8 in in all, 1/2 in from each of 14 and 1 in from the two
    at centre front and centre back together.
    """
    pleats = Pleats("knife to the right", 16, 40.0, 27 * INCH, 35 * INCH, 7 * INCH)
    assert 0.5 == pytest.approx((pleats.face(7 * INCH) - pleats.face(0)) / INCH)
    assert 14 * 0.5 + 1 == pytest.approx(16 * 2 * (pleats.fold(0) - pleats.fold(7 * INCH)) / INCH)


@pytest.mark.parametrize(("depth", "layers"), [(20.0, 3), (40.0, 3), (41.0, 5), (80.0, 5), (81.0, 7)])
def test_layers_of_knife_pleats(depth: float, layers: int):
    """Folds deeper than their face lie over each other: 1 + 2 ⌈d / s⌉ layers (derived)."""
    assert layers == released("knife to the left", 800.0, 20, depth).layers


@pytest.mark.parametrize("kind", BOTH)
@given(share=st.floats(0.02, 3.0))
def test_layers_of_folds_from_both_sides(kind: str, share: float):
    """The layers of box pleats are those counted under every place of a face (an independent count)."""
    assume(0.01 < 2 * share % 1 < 0.99)  # where folds just meet, the places between them would have to be found
    face = 80.0
    depth = face * share
    places = [face * k / 997 for k in range(1, 997)]
    under = [sum((x + j * face < depth) + (face - x + j * face < depth) for j in range(9)) for x in places]
    assert 1 + 2 * max(under) == released(kind, 10 * face, 10, depth).layers


def test_cloth_and_number_give_depth():
    """191 of cloth round 71 in 20 pleats: 3 deep; and 3 deep, 20 pleats."""
    assert 30.0 == pytest.approx(depth_from(1910.0, 710.0, 20, "knife to the left"))
    assert 20 == count_from(1910.0, 710.0, 30.0, "knife to the left")


@given(
    unit=st.floats(1.0, 2000.0),
    girth=st.floats(400.0, 3000.0),
    kind=st.sampled_from(KINDS),
    multiple=st.integers(1, 12),
)
def test_a_print_comes_out(unit: float, girth: float, kind: str, multiple: int):
    """Pleat and face together are whole units of the print, and the number lets it go on across the opening."""
    count, depth = from_repeat(unit, girth, kind, multiple)
    pleats = released(kind, girth, count, depth)
    assert 0 == count % multiple
    assert 1 <= count <= 120
    assert depth > 0
    assert pleats.unit / unit == pytest.approx(round(pleats.unit / unit), rel=1e-9)


def test_a_print_is_as_near_to_full_as_comes_out():
    """A repeat of 13 round 100: 300 / 13 is 23.08, so 23 faces of 4.35, each fold 4.33 deep."""
    count, depth = from_repeat(130.0, 1000.0, "knife to the left")
    assert (23, 43.26) == pytest.approx((count, depth), abs=0.005)


@given(count=st.integers(1, 120), panels=st.integers(1, 24))
def test_panels_hold_whole_pleats(count: int, panels: int):
    """No panel parts a pleat, none is larger than another by more than one, and none is lost."""
    panels = min(count, panels)
    held = whole_pleats(count, panels)
    assert (count, panels) == (sum(held), len(held))
    assert 0 <= max(held) - min(held) <= 1
    assert min(held) >= 1


def test_as_few_panels_as_fit():
    """Units of 15 in cloth of 137 less 3: eight to a width, so 20 take three widths."""
    pleats = Pleats("knife to the left", 20, 50.0, 710.0, 1000.0, 200.0)
    assert 3 == fewest_panels(pleats, 1370.0, 15.0, 24)
    assert 1 == fewest_panels(pleats, 3030.0, 15.0, 24)
    assert 20 == fewest_panels(pleats, 60.0, 15.0, 24)


@settings(max_examples=60)
@given(
    kind=st.sampled_from(KINDS),
    count=st.integers(1, 120),
    depth=st.floats(2, 300),
    waist=st.floats(400, 2000),
    more=st.floats(0, 900),
    below=st.floats(0, 400),
)
def test_cloth_is_faces_and_folds(kind: str, count: int, depth: float, waist: float, more: float, below: float):
    """At any height all faces and folds are all the cloth, and folds deepen towards the waist."""
    pleats = Pleats(kind, count, depth, waist, waist + more, 200.0)
    taken = count * (pleats.face(below) + 2 * pleats.folds * pleats.fold(below))
    assert pleats.flat_width == pytest.approx(taken)
    assert pleats.fold(0) >= pleats.fold(below) - 1e-9 >= pleats.fold(200) - 2e-9
    assert depth == pytest.approx(pleats.fold(400))


def test_released_pleats_open_by_their_share():
    """Hips of 100 over pleats laid to 71: 20 folds open by 1.45 each, 20 box pleats by half of that at each side."""
    assert 14.5 == pytest.approx(opens(released("knife to the left", 710.0, 20, 30.0), 1000.0))
    assert 7.25 == pytest.approx(opens(released("box", 710.0, 20, 15.0), 1000.0))
    assert 0 == opens(released("box", 710.0, 20, 15.0), 700.0)
