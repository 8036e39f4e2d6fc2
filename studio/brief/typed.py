"""What a field, or `--set` on the command line, can hold: text to value and back, for every kind of declaration."""

import re
from fractions import Fraction
from typing import Any, Final, TypeAlias
from unicodedata import category

from ..trouble import shown
from ..units import (
    Unit,
    Unreadable,
    read_length,
    read_number,
    spell,
    usual_in,
    write_count,
    write_length,
    write_price,
    write_ratio,
    write_share,
    write_weight,
)
from ..words import Phrase, phrase, tr
from .bands import read_bands, write_bands
from .declare import Declared
from .held import read_held, write_held
from .records import Held, PrintBand

Typed: TypeAlias = float | int | str | bool | tuple[PrintBand, ...] | tuple[Held, ...] | None

YARD: Final = Fraction(9144, 10_000)  # in metres
OUNCE: Final = Fraction(28_349_523_125, 10**9) / YARD**2  # an ounce a square yard, in g/m²

_SWITCH: Final = {"yes": True, "on": True, "true": True, "no": False, "off": False, "false": False}
_TIMES: Final = ("×", "x", "times")
_PER_CENT: Final = ("%", "per cent", "percent")
_GRAMS: Final = ("g/m²", "g/m2", "g", "gsm", "grams")
_OUNCES: Final = ("oz/yd²", "oz/yd2", "oz", "ounces")
_A_METRE: Final = ("/m", "a metre", "per metre")
_A_YARD: Final = ("/yd", "a yard", "per yard")
_LONGEST: Final = 400  # characters looked at; more is not an answer to any question here
_ROOM: Final = 80  # characters in a name
# They would reorder a title block.
_TURNS: Final = frozenset("\u200e\u200f\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")


def read_value(declared: Declared, text: str, unit: Unit) -> Typed:
    """The value that somebody typed for what is declared, as the brief keeps it: mm, 0 to 1, g/m², words.

    Nothing, "unknown" or the field's own `blank` is None where a field may be empty, and 0 for a count that lets
    the draft choose. Raises `Unreadable` with a sentence that says what would do.
    """
    if declared.kind == "name":
        return _read_name(declared, text)
    if declared.kind == "picture":
        return _read_picture(declared, text)
    if declared.kind == "bands":
        return read_bands(text, unit)
    if declared.kind == "held":
        return read_held(text, unit)
    said, field = _said(text), tr(declared.words)
    if said in ("", "unknown", tr("unknown"), _said(declared.blank), _said(tr(declared.blank))):
        if declared.unknown:
            return None
        if declared.kind == "count" and declared.blank:
            return 0
        if not said:
            usual = write_value(declared, declared.usual, unit)
            says = phrase("{field:word} cannot be empty; {usual:word} is usual.", field=field, usual=usual)
            raise _refused(says)
    match declared.kind:
        case "choice":
            return _read_choice(declared, said)
        case "switch":
            return _read_switch(declared, said)
        case "length":
            return _read_length(declared, text, unit)
        case "ratio":
            return _within(declared, float(read_number(text, *_TIMES)[0]), unit)
        case "share":
            return _within(declared, float(read_number(text, *_PER_CENT)[0] / 100), unit)
        case "weight":
            amount, word = read_number(text, *_GRAMS, *_OUNCES)
            return _within(declared, float(amount * OUNCE if word in _OUNCES else amount), unit)
        case "price":
            amount, word = read_number(text, *_A_METRE, *_A_YARD)
            by_yard = word in _A_YARD or (unit == "in" and not word)
            return _within(declared, float(amount / YARD if by_yard else amount), unit)
        case "count":
            count = read_number(text)[0]
            if count.denominator == 1 and _holds(declared, float(count)):
                return int(count)
            says = phrase(
                "{field:word}: a whole number from {least:count} to {most:count}.",
                field=field, least=declared.least, most=declared.most,
            )  # fmt: skip
            raise _refused(says)


def write_value(declared: Declared, value: Typed, unit: Unit, *, bare: bool = False) -> str:
    """A value of what is declared, as the maker reads it and may type it; `bare` leaves the unit out."""
    if value is None or (value == 0 and declared.kind == "count" and declared.blank):
        return tr(declared.blank)
    amount: Any = value
    match declared.kind:
        case "length":
            return write_length(amount, unit, bare=bare)
        case "ratio":
            return write_ratio(amount) if bare else f"{write_ratio(amount)} ×"
        case "share":
            return write_share(amount).removesuffix(" %") if bare else write_share(amount)
        case "weight":
            return write_count(amount) if bare else write_weight(amount)
        case "count":
            return write_count(amount)
        case "price":
            price = write_price(amount if unit == "cm" else amount * float(YARD))
            return price if bare else f"{price} {tr('a metre') if unit == 'cm' else tr('a yard')}"
        case "bands":
            return write_bands(amount, unit, bare=bare)
        case "held":
            return write_held(amount)
        case "switch":
            return tr("yes") if amount else tr("no")
        case "choice":
            return tr(amount)
        case "name" | "picture":
            return str(amount)


def is_usual(declared: Declared, value: Typed) -> bool:
    """Whether a value is what a new skirt starts with, in round numbers of centimetres or of inches."""
    start = declared.default
    return value == start or (declared.kind == "length" and start is not None and value == usual_in(start, "in"))


def _read_name(declared: Declared, text: str) -> str:
    kept = " ".join(text[: _LONGEST + 1].split())
    kept = "".join(c for c in kept if category(c) not in ("Cc", "Cs") and c not in _TURNS)
    if len(kept) <= _ROOM and len(text) <= _LONGEST:
        return kept
    says = "{field:word} has room for {room:count} characters."
    raise _refused(phrase(says, field=tr(declared.words), room=_ROOM))


def _read_picture(declared: Declared, text: str) -> str:
    kept = text[:_LONGEST].strip().lower()
    if re.fullmatch(r"[0-9a-z]{0,64}", kept) and len(text) <= _LONGEST:
        return kept
    raise _refused(
        phrase("{field:word}: “{typed:word}” names no picture.", field=tr(declared.words), typed=shown(text))
    )


def _read_choice(declared: Declared, said: str) -> str:
    for option in declared.options:
        if said in (_said(option), _said(tr(option))):
            return option
    near = [option for option in declared.options if said and said in _said(option).split()]
    if len(near) == 1:  # "letter" for "US Letter"
        return near[0]
    options = ", ".join(tr(option) for option in declared.options)
    says = "{field:word} is one of: {options:word}; not “{typed:word}”."
    raise _refused(phrase(says, field=tr(declared.words), options=options, typed=shown(said)))


def _read_switch(declared: Declared, said: str) -> bool:
    known = _SWITCH | {_said(tr("yes")): True, _said(tr("no")): False}
    if said in known:
        return known[said]
    says = "{field:word} is yes or no, not “{typed:word}”."
    raise _refused(phrase(says, field=tr(declared.words), typed=shown(said)))


def _read_length(declared: Declared, text: str, unit: Unit) -> float:
    try:
        return _within(declared, read_length(text, unit), unit)
    except _Outside as fault:
        other: Unit = "in" if unit == "cm" else "cm"
        if _holds(declared, read_length(text, other)):
            asks = tr("Is it in inches?") if other == "in" else tr("Is it in centimetres?")
            raise Unreadable(f"{fault} {asks}") from None
        raise


class _Outside(Unreadable):
    """Read, but out of range."""


def _within(declared: Declared, value: float, unit: Unit) -> float:
    """The value when it is in range; what reads the same as a bound is that bound."""
    if _holds(declared, value):
        return value
    bound = declared.least if value < declared.least else declared.most
    if write_value(declared, value, unit) == write_value(declared, bound, unit):
        return bound
    least, most = write_value(declared, declared.least, unit, bare=True), write_value(declared, declared.most, unit)
    says = phrase(
        "{field:word} goes from {least:word} to {most:word}.", field=tr(declared.words), least=least, most=most
    )
    raise _Outside(spell(says, unit))


def _holds(declared: Declared, value: float) -> bool:
    return declared.least <= value <= declared.most


def _said(text: str) -> str:
    """Words as they are compared: small letters, with spaces, hyphens and underscores alike."""
    return re.sub(r"[\s_-]+", " ", text).strip().casefold() if len(text) <= _LONGEST else shown(text)


def _refused(text: Phrase) -> Unreadable:
    return Unreadable(spell(text, "cm"))
