"""The one reader of typed lengths, and the one writer: millimetres inside, the maker's words at the edge.

The grammar is our own and small: up to three quantities, each a whole or decimal number, a fraction or both, each
with its unit. Only the conversion of the rarer units is asked of pint, which is large and slow to load, once one is
typed.
"""

import math
import re
from collections.abc import Callable
from fractions import Fraction
from functools import lru_cache
from string import Formatter
from typing import Any, Final, Literal, TypeAlias
from unicodedata import decomposition, normalize

from .trouble import Trouble, shown
from .words import Phrase, phrase, tr

Unit: TypeAlias = Literal["cm", "in"]

LONGEST: Final = 40  # characters; nobody types a longer length
MINUS: Final = "−"

_EXACT: Final = {"mm": Fraction(1), "cm": Fraction(10), "in": Fraction(254, 10)}
_UNITS: Final = {
    word: name
    for name, words in {
        "mm": "mm millimetre millimetres millimeter millimeters",
        "cm": "cm cms centimetre centimetres centimeter centimeters",
        "in": 'in ins inch inches "',
        "m": "m metre metres meter meters",
        "ft": "ft foot feet '",
        "yd": "yd yds yard yards",
        "ligne": "l ligne lignes line lines",
    }.items()
    for word in words.split()
}
_THEN: Final = {"yd": ("ft", "in"), "ft": ("in",), "m": ("cm", "mm"), "cm": ("mm",)}  # units that may follow

_LOOKS: Final = str.maketrans(
    dict.fromkeys("\t\u00a0\u1680\u202f\u205f\u3000" + "".join(map(chr, range(0x2000, 0x200B))), " ")
    | dict.fromkeys("′’‘´ʹ", "'")
    | dict.fromkeys("″”“ʺ", '"')
    | dict.fromkeys("⁄∕", "/")
)
_DASHES: Final = frozenset("-−‐‑‒–—﹣－")
_NUMBER: Final = re.compile(r"(?:(?:([0-9]+) )?([0-9]+) ?/ ?([0-9]+)|([0-9]+[.,]?[0-9]*|[.,][0-9]+)) ?")
_WORD: Final = re.compile(r"([^\W\d_]+|['\"])\.? ?")


class Unreadable(Trouble, ValueError):
    """What was typed is not a value: `str` of it is one clear sentence."""


def read_length(text: str, unit: Unit = "cm") -> float:
    """The length (mm) that somebody typed; a bare number is in `unit`, after feet in inches.

    Reads 68,5 cm, 685 mm, 1 m, 27 1/2 in, 27½", 2 ft 3 1/4, 2' 3 1/4", 1.5 yd and buttons' 24 L (lignes).
    A comma is a decimal comma, never a thousands separator. Raises `Unreadable` for anything else.
    """
    plain = _plain(text)
    total, before, at = Fraction(), "", 0
    while number := _number(plain, at):
        amount, at = number
        word, at = _unit(plain, at)
        name = word or {"": unit, "ft": "in"}.get(before, "")
        if not name or (before and name not in _THEN.get(before, ())):
            break
        total += amount * _mm(name)
        if at == len(plain):
            return float(total)
        if not word:
            break
        before = word
    says = phrase("“{typed:word}” is not a length; type one such as {usual}.", typed=shown(text), usual=685.0)
    raise Unreadable(spell(says, unit))


def read_number(text: str, *words: str) -> tuple[Fraction, str]:
    """A number that is not a length, and the word after it: one of `words` (small letters), or "" for none."""
    plain = _plain(text)
    if number := _number(plain, 0):
        rest = plain[number[1] :]
        if rest in ("", *words):
            return number[0], rest
    raise _unreadable(tr("“{typed:word}” is not a number; type one such as 2 or 2.5."), text)


def write_length(mm: float, unit: Unit, *, bare: bool = False, signed: bool = False, fine: bool = False) -> str:
    """A length (mm) as 62.0 cm or 24 3/8 in: to the millimetre or the eighth of an inch, `fine` to the sixteenth.

    `bare` leaves the unit out; `signed` puts a plus before what is more than nothing. Reads back to half a step.
    """
    parts = 10 if unit == "cm" else 16 if fine else 8
    steps = math.floor(abs(mm) * parts / (10 if unit == "cm" else 25.4) + 0.5)
    sign = "" if steps == 0 else MINUS if mm < 0 else "+" if signed else ""
    amount = f"{steps // 10}.{steps % 10}" if unit == "cm" else _mixed(steps, parts)
    return f"{sign}{amount}" if bare else f"{sign}{amount} {unit}"


def usual_in(mm: float, unit: Unit) -> float:
    """A usual length as one who measures in this unit would have it: in inches, up to a whole number of eighths.

    So that what is shown is what is cut: seams of 5/8 in and a hem of 1 5/8 in add up on paper as they do in cloth.
    """
    return mm if unit == "cm" else math.ceil(mm / 25.4 * 8 - 0.01) / 8 * 25.4


def write_metres(mm: float, unit: Unit, *, up: bool = False) -> str:
    """A long length (mm) as 1.7 m or 1 7/8 yd, to the tenth or the eighth; `up` never says less than there is."""
    parts, whole = (10, 1000.0) if unit == "cm" else (8, 914.4)
    steps = abs(mm) * parts / whole
    near = math.ceil(steps - 1e-6) if up else math.floor(steps + 0.5)
    sign = MINUS if mm < 0 < near else ""
    return f"{sign}{near // 10}.{near % 10} m" if unit == "cm" else f"{sign}{_mixed(near, 8)} yd"


def shop_length(mm: float, unit: Unit) -> float:
    """A length (mm) as a shop cuts it: up to a tenth of a metre or an eighth of a yard; an exact one stays."""
    step = 100.0 if unit == "cm" else 114.3
    return math.ceil(mm / step - 1e-6) * step


def write_ratio(ratio: float) -> str:
    """Cloth to seam as 2.20."""
    return f"{ratio:.2f}".replace("-", MINUS)


def write_count(count: float) -> str:
    """A whole number."""
    return f"{count:.0f}".replace("-", MINUS)


def write_share(share: float) -> str:
    """A part of a whole (0 to 1) as 5 %, or 2.5 %."""
    return f"{100 * share:.1f}".removesuffix(".0").replace("-", MINUS) + " %"


def write_weight(grams: float) -> str:
    """Cloth weight (grams a square metre) as 140 g/m²."""
    return f"{write_count(grams)} g/m²"


def write_price(money: float) -> str:
    """Money as 12.50, whatever the money is."""
    return f"{money:.2f}".replace("-", MINUS)


def spell(text: Phrase, unit: Unit) -> str:
    """A phrase in the maker's language and unit.

    In the text, `{x}` is a length (mm) with its unit, `{x:bare}` without, `{x:metres}` metres or yards, `{x:buy}`
    the same rounded up, `{x:count}` a whole number, `{x:ratio}` two decimals, `{x:share}` per cent, `{x:weight}`
    grams a square metre, `{x:price}` money, `{x:cost}` what a length (mm) costs at so much a metre as a shop cuts it,
    and `{x:word}` a word. A place without its value raises `KeyError`.
    """
    return "".join(
        [before + (write(text.values[name], unit) if write else "") for before, name, write in _template(tr(text.text))]
    )


_WRITERS: Final[dict[str, Callable[[Any, Unit], str]]] = {
    "": write_length,
    "bare": lambda mm, unit: write_length(mm, unit, bare=True),
    "metres": write_metres,
    "buy": lambda mm, unit: write_metres(mm, unit, up=True),
    "count": lambda n, unit: write_count(n),
    "ratio": lambda n, unit: write_ratio(n),
    "share": lambda n, unit: write_share(n),
    "weight": lambda n, unit: write_weight(n),
    "price": lambda n, unit: write_price(n),
    "cost": lambda of, unit: write_price(shop_length(of[0], unit) / 1000 * of[1]),
    "word": lambda word, unit: str(word),
}


@lru_cache(maxsize=1024)
def _template(text: str) -> tuple[tuple[str, str, Callable[[Any, Unit], str] | None], ...]:
    return tuple(
        (before, name or "", None if name is None else _WRITERS[kind or ""])
        for before, name, kind, _ in Formatter().parse(text)
    )


def _plain(text: str) -> str:
    """What was typed with its looks taken off; refuses what no length holds."""
    if len(text) > LONGEST:
        raise _unreadable(tr("“{typed:word}” is too long; type a number such as 68.5."), text)
    plain = text.strip().translate(_LOOKS).replace("''", '"')
    if not plain.isprintable():
        raise _unreadable(tr("“{typed:word}” holds a character that cannot be seen; type it again."), text)
    if any(c.isdecimal() and not c.isascii() for c in plain):
        raise _unreadable(tr("“{typed:word}” holds other digits; type it with the digits 0 to 9."), text)
    plain = re.sub(r"(?<=\d)-(?=\d{1,3}/\d)", " ", plain)  # 27-1/2, as inches are often written
    if not _DASHES.isdisjoint(plain):
        raise _unreadable(tr("Leave out the minus in “{typed:word}”; write a fraction after a space, as 27 1/2."), text)
    plain = "".join(f" {normalize('NFKC', c)}" if decomposition(c).startswith("<fraction>") else c for c in plain)
    return " ".join(plain.replace("⁄", "/").split()).lower()


def _number(plain: str, at: int) -> tuple[Fraction, int] | None:
    """The quantity at `at`, and where it ends."""
    found = _NUMBER.match(plain, at)
    if not found:
        return None
    whole, over, under, decimal = found.groups()
    if decimal:
        return Fraction(decimal.replace(",", ".")), found.end()
    if int(under) == 0:
        raise _unreadable(tr("“{typed:word}” has 0 below the line; type a fraction such as 1/2."), plain)
    if int(over) >= int(under):
        raise _unreadable(tr("“{typed:word}” is not a fraction; leave a space before it, as in 27 1/2."), plain)
    return int(whole or 0) + Fraction(int(over), int(under)), found.end()


def _unit(plain: str, at: int) -> tuple[str, int]:
    """The unit at `at`, "" for none, and where it ends."""
    found = _WORD.match(plain, at)
    if not found:
        return "", at
    if found[1] not in _UNITS:
        raise _unreadable(tr("“{typed:word}” is not a unit known here; use cm, mm, m, in, ft, yd or L."), found[1])
    return _UNITS[found[1]], found.end()


def _unreadable(text: str, typed: str) -> Unreadable:
    return Unreadable(spell(phrase(text, typed=shown(typed)), "cm"))


def _mixed(steps: int, parts: int) -> str:
    whole, over = divmod(steps, parts)
    return str(whole) if not over else f"{whole} {Fraction(over, parts)}" if whole else str(Fraction(over, parts))


def _mm(name: str) -> Fraction:
    return _EXACT.get(name) or _asked(name)


@lru_cache(maxsize=16)
def _asked(name: str) -> Fraction:
    return Fraction(_registry().convert(Fraction(1), name, "mm"))


@lru_cache(maxsize=1)
def _registry() -> Any:
    from pint import UnitRegistry  # slow to load

    registry: Any = UnitRegistry(non_int_type=Fraction)
    registry.define("ligne = inch / 40")  # of the button trade; not the watchmaker's, which is 2.256 mm
    return registry
