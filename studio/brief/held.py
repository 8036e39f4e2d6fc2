"""Pieces held on the cloth by hand, as they are typed and shown: "skirt 1 at 55.0, 3.0 turned 180"."""

import re
from typing import Final

from ..trouble import shown
from ..units import Unit, Unreadable, read_length, spell
from ..words import phrase, tr
from .records import Held

MOST: Final = 400
"""Pieces held on one cloth."""
LONGEST: Final = 40_000
"""Characters looked at."""
FAR: Final = 1_000_000.0
"""Nothing lies farther along any cloth, mm."""
_HELD: Final = re.compile(
    r"(?P<piece>[a-z][a-z0-9 -]*?) (?P<copy>[1-9]\d{0,2}) at (?P<x>[^,;]+), ?(?P<y>[^,;]+?)"
    r"(?: turned (?P<turn>0|90|180|270))?(?P<over> over)?"
)


def read_held(text: str, unit: Unit) -> tuple[Held, ...]:
    """The pieces that somebody typed; none for an empty text. Raises `Unreadable`."""
    said = [part.strip() for part in re.split(r"[;\n]", text[:LONGEST]) if part.strip()]
    if len(text) <= 400 and said in ([], ["none"], [tr("none")]):
        return ()
    if not said or len(said) > MOST or len(text) > LONGEST:
        raise _refused(tr("At most 400 pieces are held on a cloth."), "")
    held = tuple(_one(part, unit) for part in said)
    if len({(h.piece, h.copy) for h in held}) < len(held):
        raise _refused(tr("A piece is held in one place only: “{typed:word}” names one twice."), text)
    return held


def write_held(held: tuple[Held, ...]) -> str:
    """Held pieces as they may be typed again; "none" for none."""
    return "; ".join(_words(one) for one in held) or tr("none")


def _one(said: str, unit: Unit) -> Held:
    found = _HELD.fullmatch(" ".join(said.casefold().split())) if len(said) < 200 else None
    if not found:
        raise _refused(tr("“{typed:word}” is no place; type one such as skirt 1 at 55, 3 turned 180."), said)
    x, y = (read_length(found[name], unit) for name in ("x", "y"))
    if x > FAR or y > 3200:
        raise _refused(tr("“{typed:word}” lies off every cloth."), said)
    return Held(found["piece"], int(found["copy"]) - 1, x, y, int(found["turn"] or 0), bool(found["over"]))  # type: ignore[arg-type]


def _words(one: Held) -> str:
    x, y = (f"{round(mm, 2):g} mm" for mm in (one.x, one.y))  # exact: what is not touched stays where it is
    words = f"{one.piece} {one.copy + 1} at {x}, {y}"
    return words + (f" turned {one.turn}" if one.turn else "") + (" over" if one.over else "")


def _refused(text: str, typed: str) -> Unreadable:
    return Unreadable(spell(phrase(text, typed=shown(typed)), "cm"))
