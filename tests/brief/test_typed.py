"""What fields and the command line can hold."""

from typing import Annotated, Any

import msgspec
import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio.brief import Brief, Skirt
from studio.brief.declare import Declared, declared, times, yes_no
from studio.brief.typed import OUNCE, read_value, write_value
from studio.units import Unit, Unreadable


class Tulip(Skirt, frozen=True, tag="tulip"):
    """A skirt of the tests, with a number of each kind that the base has not."""

    fullness: Annotated[float, times("Fullness", 1, 5, "Cloth to seam.")] = 2.0
    lined: Annotated[bool, yes_no("Lined", "With a lining.")] = False


class TulipBrief(Brief, frozen=True, kw_only=True):
    """A brief whose skirt is checked as well."""

    skirt: Tulip = Tulip()


ALL = {one.path: one for one in declared(Brief) + declared(Tulip, "skirt")}
UNITS: tuple[Unit, ...] = ("cm", "in")


def accepted(path: str, value: Any) -> Any:
    """What the record holds once the value is put in; raises `ValidationError` where the record refuses it."""
    content: dict[str, Any] = {"skirt": {"style": "tulip"}}
    *rooms, field = path.split(".")
    here = content
    for room in rooms:
        here = here.setdefault(room, {})
    here[field] = value
    found: Any = msgspec.convert(content, TulipBrief)
    for name in path.split("."):
        found = getattr(found, name)
    return found


@pytest.mark.parametrize(
    ("path", "typed", "unit", "value"),
    [
        ("skirt.length", "62", "cm", 620.0),
        ("skirt.length", "24 3/8", "in", 619.125),
        ("skirt.length", "24 3/8 in", "cm", 619.125),
        ("fastening.button_diameter", "24 L", "cm", 15.24),
        ("body.hip", "", "cm", None),
        ("body.hip", "  Unknown ", "cm", None),
        ("body.hip", "not known", "in", None),
        ("cloth.on_hand", "to buy", "cm", None),
        ("cloth.on_hand", "2 m", "cm", 2000.0),
        ("skirt.fullness", "2.2", "cm", 2.2),
        ("skirt.fullness", "2,2", "cm", 2.2),
        ("skirt.fullness", "2.2 x", "cm", 2.2),
        ("skirt.fullness", "2.2×", "in", 2.2),
        ("skirt.fullness", "2 1/2 times", "in", 2.5),
        ("gathers.rows", " 3 ", "cm", 3),
        ("gathers.sections", "", "cm", 0),
        ("gathers.sections", "by width", "cm", 0),
        ("gathers.sections", "0", "cm", 0),
        ("cloth.shrinkage", "5 %", "cm", 0.05),
        ("cloth.shrinkage", "5", "cm", 0.05),
        ("cloth.shrinkage", "2,5 per cent", "cm", 0.025),
        ("cloth.weight", "140", "cm", 140.0),
        ("cloth.weight", "140 g/m²", "in", 140.0),
        ("cloth.weight", "140 g/m2", "in", 140.0),
        ("opening.place", "Centre-Back", "cm", "centre back"),
        ("opening.place", "CENTRE_BACK", "cm", "centre back"),
        ("fastening.kind", " hook  and bar", "cm", "hook and bar"),
        ("paper.size", "us letter", "cm", "US Letter"),
        ("skirt.lined", "Yes", "cm", True),
        ("skirt.lined", "off", "cm", False),
        ("skirt.length_includes_band", "true", "cm", True),
        ("title", "  Anna’s\tblue\nskirt ", "cm", "Anna’s blue skirt"),
        ("who", "Zo\x00ë\u202e\x1b", "cm", "Zoë"),
        ("who", "", "cm", ""),
    ],
)
def test_typed_values(path: str, typed: str, unit: Unit, value: Any) -> None:
    """Each kind of field reads what a dressmaker would write in it, and the brief accepts it."""
    read = read_value(ALL[path], typed, unit)
    assert value == read
    assert type(value) is type(read)
    assert value == accepted(path, read)


def test_cloth_in_ounces() -> None:
    """A cloth sold by the ounce is weighed in grams."""
    # 1 oz/yd² = 33.90575 g/m²: from the exact avoirdupois ounce and the yard agreement of 1959.
    assert pytest.approx(33.90575, abs=5e-6) == float(OUNCE)
    assert pytest.approx(4 * 33.90575, abs=1e-4) == read_value(ALL["cloth.weight"], "4 oz", "cm")
    assert pytest.approx(4 * 33.90575, abs=1e-4) == read_value(ALL["cloth.weight"], "4 oz/yd²", "in")


@pytest.mark.parametrize(
    ("path", "typed", "unit", "says"),
    [
        ("skirt.length", "5", "cm", "Length goes from 10.0 to 150.0 cm. Is it in inches?"),
        ("skirt.length", "5 cm", "cm", "Length goes from 10.0 to 150.0 cm."),
        ("skirt.length", "400", "cm", "Length goes from 10.0 to 150.0 cm."),
        ("body.waist", "27", "cm", "Waist goes from 40.0 to 200.0 cm. Is it in inches?"),
        ("body.waist", "685", "cm", "Waist goes from 40.0 to 200.0 cm."),
        ("body.waist", "96", "in", "Waist goes from 15 3/4 to 78 3/4 in. Is it in centimetres?"),
        ("body.waist", "", "cm", "Waist cannot be empty; 70.0 cm is usual."),
        ("body.waist", "unknown", "cm", "“unknown” is not a length; type one such as 68.5 cm."),
        ("skirt.length", "-5", "cm", "Leave out the minus in “-5”; write a fraction after a space, as 27 1/2."),
        ("skirt.fullness", "0.9", "cm", "Fullness goes from 1.00 to 5.00 ×."),
        ("skirt.fullness", "2.2 cm", "cm", "“2.2 cm” is not a number; type one such as 2 or 2.5."),
        ("skirt.fullness", "", "cm", "Fullness cannot be empty; 2.00 × is usual."),
        ("gathers.rows", "2.5", "cm", "Rows: a whole number from 1 to 4."),
        ("gathers.rows", "9", "cm", "Rows: a whole number from 1 to 4."),
        ("gathers.rows", "", "cm", "Rows cannot be empty; 2 is usual."),
        ("gathers.rows", "two", "cm", "“two” is not a number; type one such as 2 or 2.5."),
        ("gathers.sections", "13", "cm", "Sections: a whole number from 0 to 12."),
        ("cloth.shrinkage", "25 %", "cm", "Shrinkage goes from 0 to 20 %."),
        ("cloth.weight", "5", "cm", "Weight goes from 20 to 1000 g/m²."),
        (
            "opening.kind",
            "hidden",
            "cm",
            "Kind is one of: invisible, lapped, centred, placket, wrap, none; not “hidden”.",
        ),
        ("opening.kind", "", "cm", "Kind cannot be empty; invisible is usual."),
        ("skirt.lined", "maybe", "cm", "Lined is yes or no, not “maybe”."),
        ("title", "x" * 81, "cm", "Skirt has room for 80 characters."),
    ],
)
def test_what_a_field_refuses(path: str, typed: str, unit: Unit, says: str) -> None:
    """What a field cannot hold is told in one sentence that says what it can hold."""
    with pytest.raises(Unreadable) as refused:
        read_value(ALL[path], typed, unit)
    assert says == str(refused.value)


@pytest.mark.parametrize(
    ("path", "value", "unit", "full", "bare"),
    [
        ("skirt.length", 620.0, "cm", "62.0 cm", "62.0"),
        ("skirt.length", 619.125, "in", "24 3/8 in", "24 3/8"),
        ("body.hip", None, "cm", "not known", "not known"),
        ("skirt.fullness", 2.2, "in", "2.20 ×", "2.20"),
        ("gathers.rows", 2, "cm", "2", "2"),
        ("gathers.sections", 0, "cm", "by width", "by width"),
        ("cloth.shrinkage", 0.05, "cm", "5 %", "5"),
        ("cloth.weight", 140.0, "cm", "140 g/m²", "140"),
        ("opening.place", "centre back", "cm", "centre back", "centre back"),
        ("skirt.lined", True, "cm", "yes", "yes"),
        ("skirt.lined", False, "cm", "no", "no"),
        ("who", "Zoë", "cm", "Zoë", "Zoë"),
    ],
)
def test_written_values(path: str, value: Any, unit: Unit, full: str, bare: str) -> None:
    """Each kind of value is shown as it is said, with its unit or without."""
    assert full == write_value(ALL[path], value, unit)
    assert bare == write_value(ALL[path], value, unit, bare=True)


NUMBERS = [one for one in ALL.values() if one.kind in ("length", "ratio", "count", "share", "weight", "price")]
HALF = {"ratio": 0.005, "count": 0.0, "share": 0.0005, "weight": 0.5, "price": 0.006}


@given(st.data(), st.sampled_from(NUMBERS), st.sampled_from(UNITS), st.booleans())
def test_shown_numbers_can_be_typed_again(data: st.DataObject, one: Declared, unit: Unit, bare: bool) -> None:
    """Whatever number a field may hold, what it shows can be typed again, bounds included, to half a step."""
    bounds = st.integers(int(one.least), int(one.most)) if one.kind == "count" else st.floats(one.least, one.most)
    value = data.draw(bounds | st.sampled_from([one.least, one.most]))
    half = (0.5 if unit == "cm" else 25.4 / 16) if one.kind == "length" else HALF[one.kind]
    read: Any = read_value(one, write_value(one, value, unit, bare=bare), unit)
    assert abs(read - value) <= half + 1e-9
    assert read == accepted(one.path, read)


@pytest.mark.parametrize("one", ALL.values(), ids=ALL)
@pytest.mark.parametrize("unit", UNITS)
def test_usual_values_can_be_typed_again(one: Declared, unit: Unit) -> None:
    """The usual value and each option, as shown, are read as themselves, and so is an empty field."""
    for value in (one.usual, one.default, *one.options):
        read = read_value(one, write_value(one, value, unit), unit)
        if one.kind == "length" and value is not None:
            assert pytest.approx(value, abs=25.4 / 16) == read
        elif one.kind == "price" and value is not None:  # to the hundredth, of a yard in inches
            assert pytest.approx(value, abs=0.006) == read
        else:
            assert value == read


@given(st.sampled_from(list(ALL.values())), st.text(max_size=100), st.sampled_from(UNITS))
def test_the_brief_accepts_whatever_a_field_accepts(one: Declared, typed: str, unit: Unit) -> None:
    """Any text in any field is refused in one line, or gives a value that the brief can keep."""
    try:
        value = read_value(one, typed, unit)
    except Unreadable as refused:
        assert str(refused).isprintable()
    else:
        assert value == accepted(one.path, value)
        msgspec.json.encode(value)


@pytest.mark.parametrize("one", ALL.values(), ids=ALL)
@pytest.mark.parametrize("typed", ["9" * 10_000, " " * 10_000, "- _" * 3_000, "\ud800" * 10_000])
def test_a_pasted_novel_is_refused_by_every_field(one: Declared, typed: str) -> None:
    """Ten thousand characters in any field are refused with a short sentence."""
    with pytest.raises(Unreadable) as refused:
        read_value(one, typed, "cm")
    assert len(str(refused.value)) < 160
    assert str(refused.value).isprintable()


def test_choices_are_read_in_the_makers_language(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where there is a catalogue, options are shown and read in its language, and kept in ours."""
    german = {"invisible": "nahtverdeckt", "yes": "ja", "no": "nein"}
    monkeypatch.setattr("studio.brief.typed.tr", lambda text: german.get(text, text))
    assert write_value(ALL["opening.kind"], "invisible", "cm") == "nahtverdeckt"
    assert read_value(ALL["opening.kind"], "Nahtverdeckt", "cm") == "invisible"
    assert read_value(ALL["opening.kind"], "invisible", "cm") == "invisible"
    assert read_value(ALL["skirt.lined"], "JA", "cm") is True
    assert write_value(ALL["skirt.lined"], False, "cm") == "nein"
