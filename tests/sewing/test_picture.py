"""The pictures of the steps: inside their room, of the draft's own geometry."""

import pytest
from briefs import any_brief, brief
from hypothesis import given, settings
from hypothesis import strategies as st

from studio.draft.making import Making, Shown
from studio.drawing import Group, Mark, Stroke, Words, flat_marks
from studio.drawing.lettering import words_box
from studio.geometry import Box
from studio.sewing import ROOM, picture, pictured, sewing_order
from studio.styles import rack
from studio.units import spell

LINE = 0.6  # mm, half the widest line and a hair


def seen(mark: Mark) -> Box | None:
    """The box that a mark can be seen in."""
    if isinstance(mark, Stroke):
        return mark.path.box if mark.path.curves else None
    if isinstance(mark, Words):
        return words_box(mark)
    if mark.clip:
        return mark.clip
    boxes = [b for m in mark.marks if (b := seen(m))]
    whole = boxes[0]
    for b in boxes[1:]:
        whole = whole.joined(b)
    return whole


@pytest.mark.parametrize("style", rack.RACK)
@pytest.mark.parametrize("band", ["folded", "contour", "elastic", "bound", "faced"])
def test_pictures_stay_in_their_room(style: str, band: str):
    """No line or word of any picture leaves its 66 by 45 mm."""
    one = brief(style, waistband__kind=band, pockets__kind="patch")
    draft = rack.draft(one)
    room = ROOM.grown(LINE)
    for step in sewing_order(one, draft):
        for mark in picture(step, draft, one):
            box = seen(mark)
            assert box is not None
            assert room.left <= box.left <= box.right <= room.right, step.key
            assert room.top <= box.top <= box.bottom <= room.bottom, step.key


@pytest.mark.parametrize("style", rack.RACK)
def test_every_step_has_a_picture(style: str):
    """From the end of the cloth to the finished skirt, everything is shown."""
    for one in (brief(style), brief(style, waistband__kind="faced"), brief(style, opening__kind="wrap")):
        draft = rack.draft(one)
        steps = sewing_order(one, draft)
        assert [] == [m.key for m in steps if not picture(m, draft, one)]
        assert all(pictured(m) for m in steps)


def test_what_is_sewn_now_is_in_the_accent():
    """The seam in hand is told from the others by its colour, and is as long as the draft has it at the picture's
    scale.
    """
    draft = rack.draft(brief())
    step = Making("any", "seams", "Any", (), Shown("skirt", ("left",)))
    marks = list(flat_marks(picture(step, draft)))
    (lit,) = [m for m in marks if isinstance(m, Stroke) and m.colour == "accent"]
    (cut,) = [m for m in marks if isinstance(m, Stroke) and m.ink == "cut"]
    piece = draft.piece("skirt")
    scale = cut.path.box.width / piece.cut_line.box.width
    assert piece.edge("left").path.length * scale == pytest.approx(lit.path.length)


def test_the_wrong_side_is_tinted_and_mirrored():
    """Seen from inside, the piece's left edge lies at the right, and the cloth is tinted."""
    draft = rack.draft(brief())
    for right_side, fill, at_left in ((True, "white", True), (False, "tone", False)):
        step = Making("any", "seams", "Any", (), Shown("skirt", ("left",), right_side=right_side))
        marks = [m for m in flat_marks(picture(step, draft)) if isinstance(m, Stroke)]
        lit = next(m for m in marks if m.colour == "accent")
        assert fill == next(m.fill for m in marks if m.bare)
        assert at_left == (lit.path.box.centre.x < ROOM.centre.x)


def test_laid_pleats_are_shown_in_section():
    """At the step that lays them, pleats are seen from their edge."""
    one = brief("pleated")
    draft = rack.draft(one)
    step = next(m for m in sewing_order(one, draft) if m.key == "pleats")
    assert ["pleats"] == [m.name for m in picture(step, draft, one) if isinstance(m, Group)]


@pytest.mark.parametrize("style", rack.RACK)
@settings(max_examples=30)
@given(data=st.data())
def test_anything_the_form_allows_can_be_sewn(style: str, data: st.DataObject):
    """However odd the numbers, there is an order, with short sentences, and every picture can be drawn in its room."""
    one = data.draw(any_brief(style))
    draft = rack.draft(one)
    for step in sewing_order(one, draft):
        for phrase in step.says:
            assert "nan" not in spell(phrase, "in")
        for mark in picture(step, draft, one):
            box = seen(mark)
            assert box is not None
            assert ROOM.left - LINE <= box.left <= box.right <= ROOM.right + LINE
            assert ROOM.top - LINE <= box.top <= box.bottom <= ROOM.bottom + LINE


def test_a_button_that_misses_its_band_is_cut_off():
    """Two buttons set 46 from the edges of a band 30 wide are drawn as far as the picture reaches, and no further."""
    one = brief(fastening__count=2, fastening__edge_inset=46.0, fastening__end_inset=3.0, body__waist=400.0)
    draft = rack.draft(one)
    shown = [picture(step, draft, one) for step in sewing_order(one, draft)]
    boxes = [box for drawing in shown for mark in drawing if (box := seen(mark))]
    assert min(box.top for box in boxes) >= ROOM.top - LINE
