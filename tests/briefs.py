"""Briefs that tests draw from: real bodies, and anything the form would let a maker type."""

import csv
import math
from pathlib import Path
from typing import Any, get_args, get_type_hints

from hypothesis import strategies as st

from studio.brief import Brief, Declared, Held, PrintBand
from studio.styles import rack

INCH = 25.4
BODIES = Path(__file__).with_name("bodies.csv")


def bodies() -> list[dict[str, float]]:
    """Waist, hip and height in mm of 254 people.

    Heinz, Peterson, Johnson and Kerr, "Exploring Relationships in Body Dimensions", Journal of Statistics
    Education 11(2), 2003 (every second row of the data set).
    """
    rows = [line for line in BODIES.read_text().splitlines() if not line.startswith("#")]
    return [
        {
            "body.waist": float(r["waist_cm"]) * 10,
            "body.hip": float(r["hip_cm"]) * 10,
            "body.height": float(r["height_cm"]) * 10,
        }
        for r in csv.DictReader(rows)
    ]


def brief(style: str = "gathered", **changes: Any) -> Brief:
    """The usual brief of a style with other values; `body__waist=700.0` stands for the path body.waist."""
    return rack.edit(rack.usual("cm", style), {path.replace("__", "."): value for path, value in changes.items()})


@st.composite
def a_band(draw: st.DrawFn) -> PrintBand:
    """A band of a print, anywhere across a cloth."""
    start, end = sorted(draw(st.lists(st.integers(0, 3200), min_size=2, max_size=2, unique=True)))
    holds, by, tops = (get_type_hints(PrintBand)[name] for name in ("holds", "by", "tops"))
    words = (draw(st.sampled_from(get_args(one))) for one in (holds, by, tops))
    return PrintBand(float(start), float(end), *words)


@st.composite
def a_place(draw: st.DrawFn) -> Held:
    """Some piece held somewhere on the cloth, well or ill."""
    piece = draw(st.sampled_from(("skirt", "waistband", "skirt 1", "tier 2", "back", "godet")))
    x, y = draw(st.floats(0, 3000)), draw(st.floats(0, 1600))
    return Held(piece, draw(st.integers(0, 3)), x, y, draw(st.sampled_from((0, 90, 180, 270))), draw(st.booleans()))


def value_of(one: Declared) -> st.SearchStrategy[Any]:
    """Any value that a declaration allows."""
    if one.kind == "choice":
        return st.sampled_from(one.options)
    if one.kind == "switch":
        return st.booleans()
    if one.kind == "name":
        return st.text(st.characters(exclude_categories=("Cc", "Cf", "Cs")), max_size=80)
    if one.kind == "count":
        return st.integers(math.ceil(one.least), math.floor(one.most))
    if one.kind == "bands":
        return st.lists(a_band(), max_size=4).map(tuple)
    if one.kind == "held":
        return st.lists(a_place(), max_size=3, unique_by=lambda h: (h.piece, h.copy)).map(tuple)
    if one.kind == "picture":
        return st.text("0123456789abcdef", max_size=24)
    number = st.floats(one.least, one.most)
    return st.none() | number if one.unknown else number


@st.composite
def any_brief(draw: st.DrawFn, style: str = "gathered") -> Brief:
    """A brief of a style with any number of its values set to anything their declarations allow."""
    start = rack.usual("cm", style)
    known = {path: d for path, d in rack.declarations(start).items() if path != "skirt.style"}
    paths = draw(st.lists(st.sampled_from(sorted(known)), unique=True, max_size=len(known)))
    return rack.edit(start, {path: draw(value_of(known[path])) for path in paths})
