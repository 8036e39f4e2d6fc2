"""What to buy, as text to read, as a table for other programs (RFC 4180), and as plain values."""

import csv
import io
from collections.abc import Iterator
from typing import Any

from studio.check.makes import Makes
from studio.cloth.left_over import LeftOver, left_over, skirt_weight
from studio.draft import Notion
from studio.units import Unit, shop_length, spell
from studio.words import phrase, tr
from studio.workroom import Docket

HEADS = ("what", "description", "count", "length", "unit", "width", "cost")
"""The columns of the table."""
_BY_LENGTH = ("cloth", "lining", "interfacing", "thread")
"""Sold by the metre or yard; all else by its own length in cm or inches, or by the piece."""
_LONG = {"cm": (1000.0, "m"), "in": (914.4, "yd")}
_SHORT = {"cm": (10.0, "cm"), "in": (25.4, "in")}


def to_buy(docket: Docket, unit: Unit) -> list[str]:
    """Everything to buy, one thing a line."""
    words = [spell(n.words, unit) for n in docket.notions]
    return [w[:1].upper() + w[1:] for w in words]


def besides(docket: Docket, unit: Unit) -> list[str]:
    """What the cloth does not hold, what is left over, its largest pieces, and what the skirt weighs."""
    text = "Too wide for this cloth, and not counted: {p:word}."
    lines = [spell(phrase(text, p=tr(p.name)), unit) for p in docket.lay.misfits]
    if not docket.lay.proven and not docket.lay.misfits:
        lines.append(tr("The cloth is by the best plan found so far."))
    left = left_over(docket.brief, docket.lay, unit)
    if left.length >= 0.5:
        lines.append(spell(phrase("Left over: {l} of the length.", l=left.length), unit))
    if left.whole:
        sizes = [spell(one.size(), unit) for one in left.whole]
        lines.append(spell(phrase("Whole pieces left: {s:word}.", s=", ".join(sizes)), unit))
    grams = skirt_weight(docket.brief, docket.lay)
    if grams is not None:
        lines.append(spell(phrase("The cut cloth weighs {g:count} g.", g=grams), unit))
    return lines


def buy_text(docket: Docket, unit: Unit) -> Iterator[str]:
    """The list as one would carry it to the shop."""
    yield docket.brief.title
    yield ""
    yield from to_buy(docket, unit)
    if more := besides(docket, unit):
        yield from ("", *more)


def buy_csv(docket: Docket, unit: Unit) -> str:
    """The list as a table, one thing a row; lengths as a shop cuts them, in the maker's unit."""
    file = io.StringIO(newline="")
    rows = csv.writer(file)
    rows.writerow(tr(head) for head in HEADS)
    rows.writerows(_row(n, unit) for n in docket.notions)
    return file.getvalue()


def listed_buy(docket: Docket, unit: Unit, made: tuple[Makes, ...] = ()) -> dict[str, Any]:
    """The list as plain values: mm, mm², g, and money in the maker's own."""
    left: LeftOver = left_over(docket.brief, docket.lay, unit)
    return {
        "format": 1,
        "items": [_listed(n, unit) for n in docket.notions],
        "left_over": {
            "length": round(left.length, 2),
            "whole": [[round(one.along, 2), round(one.across, 2)] for one in left.whole for _ in range(one.pieces)],
            "area": round(left.area, 1),
        },
        "weight": skirt_weight(docket.brief, docket.lay),
        "makes": [
            {"edit": dict(m.edit), "says": spell(m.does, unit), "needed": round(m.needed, 2), "proven": m.proven}
            for m in made
        ],
    }


def makes_words(one: Makes, unit: Unit) -> str:
    """One choice of what the cloth makes, and the cloth it needs."""
    return spell(phrase("{d:word}: needs {n:buy}", d=spell(one.does, unit), n=one.needed), unit)


def quick_words(made: tuple[Makes, ...]) -> list[str]:
    """That lengths are by plans at a glance, where that leaves something to be gained."""
    return [] if all(m.proven for m in made) else [tr("By quick plans; the lay plan may get out more.")]


def cost(notion: Notion, unit: Unit) -> float | None:
    """What a line costs, where that is known."""
    price = notion.sizes.get("price")
    return None if price is None else _length(notion, unit) / 1000 * float(price)


def _length(notion: Notion, unit: Unit) -> float:
    """Length as it is sold, mm."""
    needed = notion.sizes.get("needed")
    return float(notion.sizes.get("length", 0)) if needed is None else shop_length(float(needed), unit)


def _row(notion: Notion, unit: Unit) -> tuple[str, ...]:
    what = (tr(notion.what), spell(notion.words, unit), str(notion.sizes.get("count", 1)))
    length, money = _length(notion, unit), cost(notion, unit)
    if not length:
        return (*what, "", "", "", "")
    whole, name = (_LONG if notion.what in _BY_LENGTH else _SHORT)[unit]
    wide = float(notion.sizes.get("width", 0)) / _SHORT[unit][0]
    return (
        *what,
        f"{length / whole:.4g}",
        name,
        f"{wide:.6g}" if wide else "",
        "" if money is None else f"{money:.2f}",
    )


def _listed(notion: Notion, unit: Unit) -> dict[str, Any]:
    sizes = {name: round(v, 4) if isinstance(v, float) else v for name, v in notion.sizes.items()}
    money = cost(notion, unit)
    price = None if money is None else round(money, 2)
    return {"what": notion.what, **sizes, "cost": price, "words": spell(notion.words, unit)}
