"""Writes the pages of docs that follow from the code: the rules, and the numbers of the brief.

Run `python docs/make/pages.py`; a test says when a page is behind.
"""

import inspect
import re
from pathlib import Path
from typing import get_args, get_type_hints

from studio.brief import Declared, PrintBand
from studio.brief.bands import write_bands
from studio.brief.typed import write_value
from studio.check import RULES, rule_name
from studio.styles import rack

DOCS = Path(__file__).parents[1]
WEIGHTS = """A **stop** holds back export until you say to go on; a **doubt** wants a look; a **note** is worth knowing.
"""
BUILT = """What is drafted so that it cannot be otherwise has no finding; a test holds it.

## square-at-seams

Waist and hem meet every seam square, to half a degree, so that across the seam the line runs on: the shapes are drawn
from that (`tests/styles/test_square.py`). A full circle in one piece is the exception: its slit takes an allowance from
the circle, and beside it the corner is off by asin(a / r), 7.5 degrees at a usual waist.

## notches-meet, between panels

What is notched on one side of a seam is notched on the other from the same number (`tests/test_house.py`,
`check_notches`). A pocket's notches meet its bag's.

## scale-will-be-checked

Every print begins with squares in both units to measure before anything is cut (`tests/paper/test_first_page.py`, read
back at true scale in `tests/paper/test_pdf.py`).
"""


def rules_page() -> str:
    """Every rule, in the words of its docstring."""
    parts = ["# Rules\n", "What Skirtwright looks at after every edit, and what it offers to do.\n", WEIGHTS]
    for rule in RULES:
        words = inspect.getdoc(rule) or ""
        parts.append(f"## {rule_name(rule)}\n\n{_joined(words)}\n")
    return "\n".join([*parts, "# Held by construction\n", _joined(BUILT.strip()) + "\n"])


def numbers_page() -> str:
    """Every number of the brief, by its path: those of every skirt, then those of each style."""
    parts = ["# Numbers of a skirt\n", "Every number you can decide, as the form, the files and `--set` know it.\n"]
    every = {name: rack.declarations(rack.usual("cm", name)) for name in rack.RACK}
    shared = set.intersection(*(set(known) for known in every.values()))
    parts += _table([one for path, one in every["gathered"].items() if path in shared])
    for name, known in every.items():
        parts.append(f"\n## {name.capitalize()}\n")
        parts += _table([one for path, one in known.items() if path not in shared])
    return "\n".join(parts) + "\n"


def _table(found: list[Declared]) -> list[str]:
    heads = ["| path | words | usual | from | to | how to measure or choose |", "|---|---|---|---|---|---|"]
    return [*heads, *(f"| `{o.path}` | {o.words} | {_usual(o)} | {_range(o)} | {_hint(o)} |" for o in found)]


def _usual(one: Declared) -> str:
    return write_value(one, one.default, "cm") if one.kind not in ("name", "picture") else one.default


def _range(one: Declared) -> str:
    if one.kind in ("choice", "switch", "name", "bands", "held", "picture"):
        return " | "
    return f"{write_value(one, one.least, 'cm')} | {write_value(one, one.most, 'cm')}"


def _hint(one: Declared) -> str:
    if one.kind == "bands":
        return f"{one.hint} {_bands_written()}"
    return f"{', '.join(one.options)}. {one.hint}" if one.options else one.hint


def _bands_written() -> str:
    """How bands are typed: an example as the writer has it, and the words that may stand in it."""
    shown = (PrintBand(60.0, 200.0), PrintBand(1300.0, 1330.0, "waistband", "fold", "first"))
    words = get_type_hints(PrintBand)
    holds, by, tops = (", ".join(get_args(words[name])) for name in ("holds", "by", "tops"))
    return (
        f"Written from the first selvedge, with a semicolon between two: `{write_bands(shown, 'cm')}`. "
        f"Then what shows it ({holds}); *by* the line laid on it ({by}); *tops* the edge its motif points to ({tops})."
    )


def _joined(words: str) -> str:
    return "\n\n".join(re.sub(r"\s*\n\s*", " ", part) for part in words.split("\n\n"))


PAGES = {"rules.md": rules_page, "numbers.md": numbers_page}

if __name__ == "__main__":
    for name, page in PAGES.items():
        (DOCS / name).write_text(page(), encoding="utf-8")
