"""What is done where: edges neatened, both strips of a placket, pleats at the opening, the lining's hem, a wrap's end."""

import re

import pytest
from briefs import brief
from making import keys, order, said

from studio.cloth.thread import neatened, sewn
from studio.draft.fastening import button_place
from studio.draft.placket import OVER, UNDER, strip_width
from studio.drawing import Stroke, Words, flat_marks
from studio.sewing import ROOM, picture
from studio.styles import rack
from studio.units import write_length


def test_a_lining_is_hemmed_when_the_skirt_is():
    """A lining is hung before the band and hemmed after the skirt's own hem is levelled and turned."""
    found = keys(brief("gored", lining__kind="straight"))
    wanted = ["lining hung", "band", "level", "hem", "lining hem", "press"]
    assert wanted == [k for k in found if k in wanted]


@pytest.mark.parametrize("shorter", [25.0, 40.0])
def test_a_lining_ends_where_it_is_drawn(shorter: float):
    """The lining's hem line lies as far above the skirt's as the two are drawn apart at the side of a straight skirt."""
    one = brief("straight", lining__kind="straight", lining__shorter=shorter)
    draft = rack.draft(one)
    skirt, lining = (draft.piece(p).edge("right").path for p in ("front", "lining-front"))
    apart = skirt.end.y - lining.end.y
    assert apart == pytest.approx(shorter)
    assert f"Its hem line lies {write_length(apart, 'cm')} above the skirt’s." in said(one, "lining hem")
    deep = draft.piece("lining-front").edge("hem").allowance
    assert f"Turn {write_length(deep, 'cm')} up" in said(one, "lining hem")


def test_joins_of_tiers_are_neatened_and_counted():
    """Each join is neatened, both allowances in one: so much more is overedged as the joins are long."""
    one = brief("tiered")
    draft = rack.draft(one)
    assert "Neaten both allowances together" in said(one, "tier/2")
    sides = sum(
        p.cut * 2 * (draft.fact(f"tier_{k}_depth") + 15 + (40 if k == 3 else 15))
        for k, name in enumerate(("skirt", "tier-2", "tier-3"), 1) for p in [draft.piece(name)]
    )  # fmt: skip
    joins = draft.fact("tier_1_width") + draft.fact("tier_2_width")
    assert sides + joins == pytest.approx(neatened(one, draft))


def test_pocket_bags_are_sewn_and_neatened_round():
    """Two bags in each side seam: each is sewn to its edge, both are sewn to each other round it, and all is neatened."""
    bare, bagged = brief("straight"), brief("straight", pockets__kind="in seam")
    bag = rack.draft(bagged).piece("pocket-bag")
    straight, around = bag.edge("seam").path.length, bag.edge("top").path.length + bag.edge("side").path.length
    more = 4 * straight + 2 * around
    assert more == pytest.approx(sewn(bagged, rack.draft(bagged)) - sewn(bare, rack.draft(bare)))
    assert more == pytest.approx(neatened(bagged, rack.draft(bagged)) - neatened(bare, rack.draft(bare)))
    assert "Neaten round the bags" in said(bagged, "seams")
    assert "Neaten each bag’s straight edge" in said(bagged, "pockets")


def test_only_panels_are_counted_among_the_sides():
    """Facings and patches have sides too, but no panel's: a straight skirt has three panels and four raw side edges of
    its side seams, two of its back seam.
    """
    for more in ({}, {"seams__hem_kind": "faced"}, {"pockets__kind": "patch"}):
        assert "Side edges of the panels: 6," in said(brief("straight", **more), "neaten")


@pytest.mark.parametrize("kind", ["knife to the left", "knife to the right", "box", "inverted"])
@pytest.mark.parametrize("extension", [20.0, 90.0])
def test_what_lies_under_at_the_opening(kind: str, extension: float):
    """Laid fold by fold, from the first face of the panel to the last, one edge goes on past the faces: that at the
    plain end under the last fold, or that at the extension under the first. Only an extension as long takes it in.
    """
    one = brief("pleated", skirt__pleat_kind=kind, waistband__extension=extension)
    piece = rack.draft(one).piece("skirt")
    waist, fold = piece.edge("waist"), rack.draft(one).fact("waist_depth")
    at = [m.path.start.x for m in piece.lines if m.role == "pleat fold"]
    before, after = waist.closes[0][1], waist.path.length - waist.closes[-1][0]  # hidden, at the left and at the right

    def past(hidden: float, face: float) -> float:
        """How far an edge goes past the face: its fold takes what is beside it back under the face, and out again."""
        if not any(abs(x - face) < 0.01 for x in at):
            return hidden
        return hidden - 2 * fold if hidden > 2 * fold else -hidden

    left, right = past(before, before), past(after, waist.path.length - after)
    assert left < 0 < right or right < 0 < left
    text = said(one, "pleats")
    deep = max(left, right)
    assert f"the band’s {'plain end' if left > 0 else 'extension'} goes on {write_length(deep, 'cm')} under" in text
    assert ("Take it into the extension" in text) == (right > 0 and extension >= deep)


def test_both_strips_of_a_placket():
    """The over strip stands out past its edge by its finished width, the under strip lies as deep inside: half of what
    each is cut wide between its seam lines.
    """
    one = brief(opening__kind="placket", waistband__extension=35.0)
    draft = rack.draft(one)
    text = said(one, "placket")
    for strip, words in ((OVER, "it stands out {} past the seam line"), (UNDER, "it lies {} deep inside")):
        piece = draft.piece(strip)
        half = (piece.cut_line.box.width - 2 * one.seams.allowance) / 2
        assert half == pytest.approx(strip_width(one))
        assert words.format(write_length(half, "cm")) in text


@pytest.mark.parametrize(("extension", "size"), [(25.0, "true size"), (40.0, "half size"), (90.0, "")])
def test_both_strips_are_drawn(extension: float, size: str):
    """Both strips are in the picture of the placket, each as wide as it is finished at the picture's scale, that width
    written above them; and all of it lies in its room.
    """
    one = brief(opening__kind="placket", waistband__extension=extension)
    step = next(m for m in order(one) if m.key == "placket")
    marks = list(flat_marks(picture(step, rack.draft(one), one)))
    lines = [m for m in marks if isinstance(m, Stroke) and m.path.curves]
    strips = [m.path.box for m in lines if m.colour == "accent" and len(m.path.curves) > 3]
    (words,) = [m for m in marks if isinstance(m, Words) and m.text == write_length(extension, "cm", bare=True)]
    assert 2 == len(strips)
    assert words.at.y < min(s.top for s in strips)
    if size:
        assert any(size in m.text for m in marks if isinstance(m, Words))
        wide = extension * {"true size": 1.0, "half size": 0.5}[size]
        assert [wide, wide] == pytest.approx([s.width for s in strips], abs=2.0)  # a turn of the strip is round
    room = ROOM.grown(0.6)
    assert all(m.path.box.joined(room) == room for m in lines)


def test_a_ring_has_no_plain_end():
    """A casing that has been closed is pinned from its seam; one that has ends from its plain end."""
    ring = said(brief(waistband__kind="elastic", opening__kind="none"), "band")
    assert "Its seam meets the centre back seam." in ring
    assert not re.search("plain end|both ends", ring)
    assert "from its plain end" in said(brief(), "band")


def test_a_binding_on_a_curve_wants_the_bias():
    """Round a circle's waist the binding is to be cut on the bias; along a straight edge it need not be."""
    assert "cut the binding on the bias" in said(brief("circle", waistband__kind="bound"), "cut")
    assert "bias" not in said(brief(waistband__kind="bound"), "cut")


@pytest.mark.parametrize("style", ["tiered", "gored", "straight"])
def test_no_notch_is_forgotten(style: str):
    """Notches that are not read out are to be snipped as the pattern shows them."""
    assert "Snip every other notch the pattern shows too." in said(brief(style), "mark")
    matched = brief("gathered", cloth__match=True, cloth__repeat=50.0, cloth__width=300.0)
    assert "notch the pattern shows" in said(matched, "mark")


@pytest.mark.parametrize("band", ["folded", "two-piece", "contour"])
def test_a_wraps_button_is_shown_where_it_is_sewn(band: str):
    """The button of a wrap, a hand's breadth and more in from the plain end, is in the picture with that distance."""
    one = brief(opening__kind="wrap", waistband__kind=band)
    step = next(m for m in order(one) if m.key == "fastening")
    marks = list(flat_marks(picture(step, rack.draft(one), one)))
    distance = write_length(button_place(one), "cm", bare=True)
    assert f"the plain end, {distance} cm from that end" in said(one, "fastening")
    assert distance in [m.text for m in marks if isinstance(m, Words)]
    buttons = [m for m in marks if isinstance(m, Stroke) and m.ink == "button" and m.path.box.width > 4]
    assert one.fastening.button_diameter / 2 in [pytest.approx(b.path.box.width) for b in buttons]  # half size


def test_interfacing_of_a_facing_is_drawn():
    """A facing cut on the fold shows its interfacing laid on it, open as the facing is."""
    one = brief("straight", waistband__kind="faced")
    step = next(m for m in order(one) if m.key == "interface/interfacing-facing-front")
    marks = [m for m in flat_marks(picture(step, rack.draft(one), one)) if isinstance(m, Stroke)]
    laid = next(m.path.box for m in marks if m.colour == "accent" and m.fill == "white")
    facing = next(m.path.box for m in marks if m.bare)
    assert facing.left < laid.left < laid.right < facing.right
    assert facing.top < laid.top < laid.bottom <= facing.bottom  # its lower edge is neatened with it
