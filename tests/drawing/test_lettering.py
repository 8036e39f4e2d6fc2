"""How much room words take."""

import pytest
from fontTools.ttLib import TTFont
from hypothesis import given
from hypothesis import strategies as st
from PIL import ImageFont

from studio.drawing import Words
from studio.drawing.lettering import CAPITAL, fitted, font_file, printable, width, words_box, wrap
from studio.geometry import Point

FACES = ("regular", "semibold", "bold", "italic", "serif")
SENTENCE = "Lay the cut edge on its neighbour, 2½ or 77.0 cm × 13"


@pytest.mark.parametrize("face", FACES)
def test_widths_are_those_of_the_face(face):
    """Words take the room another reader of the font gives them (FreeType by Pillow, hinted, kerning left away)."""
    font = ImageFont.truetype(str(font_file(face)), 1000, layout_engine=ImageFont.Layout.BASIC)
    plain = SENTENCE.replace("½", "")  # FreeType's hinting loses the width of the serif face's fraction
    apart = sum(font.getlength(letter) for letter in plain)
    assert 4.0 * apart / 1000 == pytest.approx(width(plain, 4.0, face), rel=0.005)


@pytest.mark.paints
@pytest.mark.parametrize("face", FACES)
def test_widths_are_near_those_painted(face):
    """A line that fits here fits on paper: kerning changes it by less than two hundredths."""
    from studio.paper.pdf import _font

    _, metrics = _font(face)
    assert metrics.horizontalAdvance(SENTENCE) / 100 == pytest.approx(width(SENTENCE, 1.0, face), rel=0.02)


def test_capitals_are_as_high_as_said():
    """Numbers are centred by the height of a capital (the font's own table OS/2)."""
    with TTFont(font_file("regular")) as font:
        assert CAPITAL == pytest.approx(font["OS/2"].sCapHeight / font["head"].unitsPerEm, abs=0.005)


def test_the_licence_lies_beside_the_font():
    """The fonts may be passed on: the Open Font License is with them."""
    for face in FACES:
        licence = font_file(face).with_name("LICENSE.txt").read_text(encoding="utf-8")
        assert "SIL Open Font License" in licence


@given(st.text(max_size=80), st.floats(5, 80))
def test_no_line_is_wider_than_its_room(text, room):
    """Wrapped words stay in their column, and none is lost."""
    lines = wrap(text, 3.6, room)
    assert all(width(line, 3.6) <= room + 1e-6 or len(line) == 1 for line in lines)
    assert "".join(text.replace("\u00a0", " ").split()) == "".join("".join(lines).split())


def test_a_number_stays_with_its_unit():
    """No line begins with a lonely % or cm."""
    for room in range(12, 60):
        for line in wrap("Print at 100 % and tape 77.0 cm. Move 10 in all.", 3.6, room):
            assert not line.startswith(("%", "cm"))


@given(st.text(max_size=60), st.floats(10, 60))
def test_fitted_words_fit(text, room):
    """A long name is set smaller, then cut short: it never runs over its cell."""
    shown, height = fitted(text, 4.2, room)
    assert width(shown, height) <= max(room + 1e-6, width("…", 3.0))
    assert 3.0 <= height <= 4.2


def test_a_name_is_set_smaller_before_it_is_cut():
    """What is a little too long stays whole."""
    name = "main, meadow border"
    wide = width(name, 4.2)
    assert (name, pytest.approx(4.2 * 0.8)) == fitted(name, 4.2, wide * 0.8)
    shown, height = fitted(name, 4.2, wide * 0.5)
    assert shown.endswith("…") and name.startswith(shown[:-1].rstrip())
    assert 3.0 == height


@given(st.text())
def test_printable_words_can_be_written(text):
    """Whatever was typed becomes one line that every file can hold (XML 1.0, production 2)."""
    shown = printable(text)
    assert shown == shown.encode("utf-8").decode("utf-8")
    assert all(c == "\t" or c >= " " for c in shown)
    assert not {"\n", "\r", "\x7f", "\u2028", "\u2029", "\ufffe", "\uffff"} & set(shown)


def test_words_boxes_turn_with_the_words():
    """Words that are read from the right stand upright in their box."""
    lying = words_box(Words("hem fold", Point(50, 50), 4))
    upright = words_box(Words("hem fold", Point(50, 50), 4, turn=-90))
    assert (lying.width, lying.height) == pytest.approx((upright.height, upright.width))
    assert upright.bottom == pytest.approx(50)
    middle = words_box(Words("hem fold", Point(50, 50), 4, align="centre"))
    assert middle.centre.x == pytest.approx(50)
