"""Typed lengths, and lengths in words."""

import subprocess
import sys
from decimal import Decimal
from unicodedata import numeric

import pytest
from hypothesis import given
from hypothesis import strategies as st

from studio import units
from studio.trouble import Trouble, shown
from studio.units import (
    Unit,
    Unreadable,
    read_length,
    read_number,
    spell,
    write_count,
    write_length,
    write_metres,
    write_ratio,
    write_share,
    write_weight,
)
from studio.words import phrase

UNITS: tuple[Unit, ...] = ("cm", "in")
INCH = 25.4  # mm exactly: the yard agreement of 1959 (yard = 0.9144 m)


@pytest.mark.parametrize(
    ("typed", "mm"),
    [
        ("68", 680.0),
        ("68.5", 685.0),
        ("68,5 cm", 685.0),
        ("68,5cm", 685.0),
        ("  68,5\u00a0cm ", 685.0),
        ("68.", 680.0),
        (".5 cm", 5.0),
        (",5", 5.0),
        ("685 mm", 685.0),
        ("685 Millimetres", 685.0),
        ("1 m", 1000.0),
        ("1 m 20 cm", 1200.0),
        ("1.5 metres", 1500.0),
        ("0", 0.0),
        ("27 in", 27 * INCH),
        ("27 IN.", 27 * INCH),
        ("27 1/2 in", 698.5),
        ("27½ in", 698.5),
        ("27 ½ in", 698.5),
        ('27½"', 698.5),
        ("27½”", 698.5),
        ("27½″", 698.5),
        ("27½''", 698.5),
        ("27 1⁄2 inches", 698.5),
        ("⅞ in", 22.225),
        ("7/8 in", 22.225),
        ("5 cm 5 mm", 55.0),
        ("2 ft 3 1/4", 27.25 * INCH),
        ("2' 3 1/4\"", 27.25 * INCH),
        ("2′3¼″", 27.25 * INCH),
        ("2’ 3¼”", 27.25 * INCH),
        ("2 feet", 609.6),
        ("1.5 yd", 1371.6),
        ("1 7/8 yards", 1714.5),
        ("1 yd 2 ft 3 in", 1600.2),
        ("24 L", 15.24),
        ("24L", 15.24),
        ("24 lignes", 15.24),
    ],
)
def test_typed_lengths(typed: str, mm: float) -> None:
    """What dressmakers write for a length is read exactly, whatever its unit and its typography."""
    assert mm == read_length(typed)


@pytest.mark.parametrize(("typed", "mm"), [("27 1/2", 698.5), ("27.5", 698.5), ("68 cm", 680.0), ("2' 3", 27 * INCH)])
def test_bare_numbers_are_inches_for_an_inch_user(typed: str, mm: float) -> None:
    """Without a unit a number is in the unit on screen; after feet it is in inches."""
    assert mm == read_length(typed, "in")


@pytest.mark.parametrize(
    ("typed", "says"),
    [
        ("", "is not a length"),
        ("waist", "is not a length"),
        ("cm", "is not a length"),
        ("inf", "is not a length"),
        ("NaN", "is not a length"),
        ("1e5", "“e” is not a unit"),
        ("0x10", "“x” is not a unit"),
        ("-5 cm", "Leave out the minus"),
        ("−5 cm", "Leave out the minus"),
        ("+5 cm", "is not a length"),
        ("1,234.5", "is not a length"),
        ("1.234,5", "is not a length"),
        ("1 234 mm", "is not a length"),
        ("5,5,5", "is not a length"),
        ("27 1/0 in", "has 0 below the line"),
        ("271/2 in", "leave a space before it"),
        ("27 3/2 in", "leave a space before it"),
        ("1/2/3", "is not a length"),
        ("2.5 1/2", "is not a length"),
        ("3 in 2 ft", "is not a length"),
        ("2 ft 3 cm", "is not a length"),
        ("68 cm 5", "is not a length"),
        ("68 cm (about)", "is not a length"),
        ("10**10**10", "is not a length"),
        ("68 furlongs", "“furlongs” is not a unit"),
        ("6８ cm", "other digits"),
        ("٦٨", "other digits"),
        ("68\x00cm", "cannot be seen"),
        ("68\u200bcm", "cannot be seen"),
        ("68\ud800", "cannot be seen"),
        ("²", "is not a length"),
        ("Ⅳ in", "is not a length"),
        ("9" * 41, "is too long"),
    ],
)
def test_what_is_not_a_length_is_refused_in_one_sentence(typed: str, says: str) -> None:
    """A slip of the hand is told in one short sentence, never read as some other length."""
    with pytest.raises(Unreadable) as refused:
        read_length(typed)
    assert says in str(refused.value)
    assert isinstance(refused.value, Trouble)
    assert len(str(refused.value)) < 120
    assert str(refused.value).isprintable()


@pytest.mark.parametrize("typed", ["9" * 10_000, "1 " * 5_000, "1/" * 5_000, "½" * 10_000, " " * 10_000, "'" * 10_000])
def test_a_pasted_novel_is_refused_at_once(typed: str) -> None:
    """Ten thousand characters pasted into a field are refused by their number, and the answer stays short."""
    with pytest.raises(Unreadable, match="is too long") as refused:
        read_length(typed)
    assert len(str(refused.value)) < 100


@pytest.mark.parametrize(
    "typed", ["1 " * 20, "1/" * 20, "½" * 40, "'" * 40, "1'" * 20, "9," * 20, "1 1/" * 10, " " * 40]
)
def test_the_longest_nonsense_is_refused(typed: str) -> None:
    """Nonsense of every shape as long as a length may be is refused, not computed."""
    with pytest.raises(Unreadable):
        read_length(typed)


@given(st.text(max_size=60), st.sampled_from(UNITS))
def test_any_text_is_a_length_or_refused(typed: str, unit: Unit) -> None:
    """Whatever is typed, the answer is a length of at least nothing or one sentence."""
    try:
        assert 0 <= read_length(typed, unit) < 1e46
    except Unreadable as refused:
        assert "\n" not in str(refused)


@given(st.text(alphabet="0123456789 ,./'\"½¼incmftydlL", max_size=14), st.sampled_from(UNITS))
def test_near_lengths_are_lengths_or_refused(typed: str, unit: Unit) -> None:
    """Text made of what lengths are made of is a length of at least nothing, or one sentence."""
    try:
        assert 0 <= read_length(typed, unit) < 1e20
    except Unreadable as refused:
        assert "\n" not in str(refused)


def test_ligne_sizes_of_the_button_trade() -> None:
    """Button sizes in lignes come out as the trade's tables have them."""
    # A ligne is 1/40 in in the button trade: exact values, x 0.635 (several button-trade pages).
    exact = {14: 8.89, 16: 10.16, 18: 11.43, 20: 12.70, 22: 13.97, 24: 15.24, 28: 17.78, 30: 19.05, 32: 20.32}
    exact |= {36: 22.86, 40: 25.40, 45: 28.575, 54: 34.29, 60: 38.10}
    assert exact == {size: round(read_length(f"{size} L"), 6) for size in exact}
    # Printed trade tables round; half a millimetre is their grain.
    for size, printed in {18: 11.5, 24: 15, 28: 18, 40: 25}.items():
        assert abs(read_length(f"{size}L") - printed) <= 0.5


def test_yard_foot_and_inch_are_exact() -> None:
    """The units of the tape have the lengths fixed by the yard agreement of 1959, to the last digit."""
    assert (914.4, 304.8, 25.4) == (read_length("1 yd"), read_length("1 ft"), read_length("1 in"))


def test_everyday_units_do_not_wait_for_pint() -> None:
    """A length in cm, mm or inches is read without loading the slow library; a yard loads it."""
    asks = (
        "import sys; from studio.units import read_length as r; r('68 cm'); r('27 1/2 in'); r('685 mm');"
        "early = 'pint' in sys.modules; r('1 yd'); print(early, 'pint' in sys.modules)"
    )
    done = subprocess.run([sys.executable, "-c", asks], capture_output=True, text=True, check=True)
    assert "False True" == done.stdout.strip()


@pytest.mark.parametrize(
    ("mm", "unit", "words"),
    [
        (620.0, "cm", "62.0 cm"),
        (0.0, "cm", "0.0 cm"),
        (-0.3, "cm", "0.0 cm"),
        (-15.0, "cm", "−1.5 cm"),
        (12345.0, "cm", "1234.5 cm"),
        (619.125, "in", "24 3/8 in"),
        (0.0, "in", "0 in"),
        (9.525, "in", "3/8 in"),
        (-9.525, "in", "−3/8 in"),
        (609.6, "in", "24 in"),
        (12.7, "in", "1/2 in"),
    ],
)
def test_written_lengths(mm: float, unit: Unit, words: str) -> None:
    """Lengths are written to the millimetre, or to the eighth of an inch in lowest terms."""
    assert words == write_length(mm, unit)


def test_ways_of_writing_a_length() -> None:
    """The unit can be left out, a sign put before, and an inch cut into sixteenths."""
    assert "62.0" == write_length(620, "cm", bare=True)
    assert "+1.5 cm" == write_length(15, "cm", signed=True)
    assert "0.0 cm" == write_length(0, "cm", signed=True)
    assert "−1.5" == write_length(-15, "cm", signed=True, bare=True)
    assert "1/16 in" == write_length(INCH / 16, "in", fine=True)
    assert "1/8 in" == write_length(INCH / 16, "in")
    assert "0.2 cm" == write_length(INCH / 16, "cm", fine=True)


@given(st.floats(0, 200_000), st.sampled_from(UNITS), st.booleans(), st.booleans())
def test_written_lengths_read_back(mm: float, unit: Unit, bare: bool, fine: bool) -> None:
    """What is written on screen can be typed again, and is the same length to half a step."""
    half = 0.5 if unit == "cm" else INCH / 32 if fine else INCH / 16
    assert abs(read_length(write_length(mm, unit, bare=bare, fine=fine), unit) - mm) <= half + 1e-9


@given(st.decimals(0, 3000, places=2), st.sampled_from(["mm", "cm", "in", "ft", "yd", "m"]), st.sampled_from(".,"))
def test_decimals_are_read_as_decimal_arithmetic_has_them(amount: Decimal, name: str, point: str) -> None:
    """A decimal length is read to the last digit: Python's own decimal arithmetic agrees."""
    scale = {"mm": "1", "cm": "10", "in": "25.4", "ft": "304.8", "yd": "914.4", "m": "1000"}[name]
    assert float(amount * Decimal(scale)) == read_length(f"{amount} {name}".replace(".", point))


@given(st.integers(0, 99), st.integers(0, 15), st.sampled_from([2, 4, 8, 16]))
def test_fractions_are_sums(whole: int, over: int, under: int) -> None:
    """A whole and a fraction are their sum, however they are spaced."""
    over %= under
    mm = (whole + over / under) * INCH
    assert mm == pytest.approx(read_length(f"{whole} {over}/{under} in"), abs=1e-9)
    assert mm == pytest.approx(read_length(f" {whole}  {over} / {under}in."), abs=1e-9)


def test_every_vulgar_fraction_is_known() -> None:
    """Each fraction that a keyboard or a word processor offers is read by its value."""
    # The values are those of the Unicode standard, as Python's own table has them.
    for sign in "½⅓⅔¼¾⅕⅖⅗⅘⅙⅚⅐⅛⅜⅝⅞⅑⅒↉":
        assert (2 + numeric(sign)) * INCH == pytest.approx(read_length(f"2{sign} in"), abs=1e-9)


@pytest.mark.parametrize(
    ("mm", "unit", "near", "up"),
    [
        (1700, "cm", "1.7 m", "1.7 m"),
        (1701, "cm", "1.7 m", "1.8 m"),
        (1700.0000000001, "cm", "1.7 m", "1.7 m"),
        (1714.5, "in", "1 7/8 yd", "1 7/8 yd"),
        (1300, "in", "1 3/8 yd", "1 1/2 yd"),
        (914.4, "in", "1 yd", "1 yd"),
        (0, "in", "0 yd", "0 yd"),
        (-500, "cm", "−0.5 m", "−0.5 m"),
    ],
)
def test_cloth_lengths(mm: float, unit: Unit, near: str, up: str) -> None:
    """Cloth is told in tenths of a metre or eighths of a yard, and what to buy is never too short."""
    assert (near, up) == (write_metres(mm, unit), write_metres(mm, unit, up=True))


@given(st.floats(0, 100_000), st.sampled_from(UNITS))
def test_what_to_buy_suffices(mm: float, unit: Unit) -> None:
    """The cloth one is told to buy is enough, and at most one step more than enough."""
    step = 100 if unit == "cm" else 114.3
    assert -0.001 <= read_length(write_metres(mm, unit, up=True)) - mm <= step


def test_other_numbers_in_words() -> None:
    """Ratios, counts, parts and weights are written as they are said."""
    assert ("2.20", "12", "140 g/m²") == (write_ratio(2.2), write_count(12), write_weight(140.2))
    assert ("5 %", "2.5 %", "0 %") == (write_share(0.05), write_share(0.025), write_share(0))


def test_other_numbers_as_typed() -> None:
    """A number may stand alone or before one of its words, and before no other."""
    assert (2.2, "×") == (float(read_number("2,2 ×", "×", "x")[0]), read_number("2,2 ×", "×", "x")[1])
    assert (2.5, "") == (float(read_number("2½")[0]), "")
    with pytest.raises(Unreadable, match="is not a number"):
        read_number("2.2 cm", "×")
    with pytest.raises(Unreadable, match="is not a number"):
        read_number("two")


def test_a_sentence_in_both_units() -> None:
    """One sentence with its numbers beside it is read in centimetres or in inches."""
    told = phrase(
        "Stop {stop} down, {gap:bare} off, {n:count} rows at {r:ratio}, {s:share} lost, {m:metres} of {w:word}, "
        "buy {m:buy}, {g:weight}.",
        stop=200.0, gap=20.0, n=2, r=2.2, s=0.05, m=1650.0, w="{lawn}", g=70.0,
    )  # fmt: skip
    assert spell(told, "cm") == (
        "Stop 20.0 cm down, 2.0 off, 2 rows at 2.20, 5 % lost, 1.7 m of {lawn}, buy 1.7 m, 70 g/m²."
    )
    assert spell(told, "in") == (
        "Stop 7 7/8 in down, 3/4 off, 2 rows at 2.20, 5 % lost, 1 3/4 yd of {lawn}, buy 1 7/8 yd, 70 g/m²."
    )


def test_a_sentence_without_numbers_stays_as_it_is() -> None:
    """A fixed sentence passes through, doubled braces as single ones."""
    assert "Hang it {overnight}." == spell(phrase("Hang it {{overnight}}."), "cm")


def test_a_missing_number_is_not_passed_over() -> None:
    """A sentence never appears with a hole in it."""
    with pytest.raises(KeyError):
        spell(phrase("Stop {stop} down."), "cm")
    with pytest.raises(KeyError):
        spell(phrase("Stop {stop:furlongs} down.", stop=1.0), "cm")


def test_a_sentence_is_translated_before_its_numbers(monkeypatch: pytest.MonkeyPatch) -> None:
    """A translator may move the numbers about."""
    monkeypatch.setattr(units, "tr", {"{a} by {b}": "{b:bare} × {a}"}.__getitem__)
    assert "2.0 × 1.0 cm" == spell(phrase("{a} by {b}", a=10.0, b=20.0), "cm")


def test_somebodys_text_in_a_sentence() -> None:
    """Text in a message is short and holds nothing unseen."""
    assert "68 cm" == shown("68 cm")
    assert "a\ufffdb\ufffd" == shown("a\nb\x1b")
    assert "x" * 23 + "…" == shown("x" * 10_000)


def test_a_hyphen_before_a_fraction_is_no_minus() -> None:
    """27-1/2 in is read as inches are often written; a minus stays refused."""
    assert 27.5 * 25.4 == read_length("27-1/2 in")
    with pytest.raises(Unreadable):
        read_length("27-1")
