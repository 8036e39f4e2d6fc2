"""What a line means, and the one table of how each meaning is drawn on paper.

Widths are in millimetres; a pattern is counted in pen widths. Line types are those of ISO 128-2 (numbers from
memory); dots are drawn one width long, since shorter ones vanish on paper. Black is the cloth; the accent is
what belongs to the paper (joins, gauges, sheet names). Every meaning has its own width and pattern, so that
grey print still tells them apart.
"""

from typing import Literal, TypeAlias

from msgspec import Struct

Ink: TypeAlias = Literal[
    "cut", "seam", "fold", "placement", "centre", "grain", "gather", "notch", "button", "dimension", "note",
    "join", "gauge", "frame", "waste", "sheet", "rule", "plain", "band", "print",
]  # fmt: skip
Colour: TypeAlias = Literal["black", "accent", "grey", "faint", "white", "tone"]

COLOURS: dict[Colour, str] = {
    "black": "#161412",
    "accent": "#A5271F",
    "grey": "#6A6460",
    "faint": "#B9B2AA",
    "white": "#FFFFFF",
    "tone": "#E9E5DF",
}


class Pen(Struct, frozen=True):
    """Width in mm, pattern in pen widths (empty: continuous), colour, and the layer it is exported on."""

    width: float
    pattern: tuple[float, ...] = ()
    colour: Colour = "black"
    words: str = ""


_DASH, _LONG, _SHORT, _GAP = 12.0, 24.0, 6.0, 3.0

PENS: dict[Ink, Pen] = {
    "cut": Pen(0.70, (), "black", "cut"),  # 01.2 continuous, wide
    "seam": Pen(0.35, (_DASH, _GAP), "black", "seam, sew"),  # 02.1 dashed
    "fold": Pen(0.35, (_LONG, _GAP, 1, _GAP), "black", "fold"),  # 04.1 long-dashed dotted
    "placement": Pen(0.35, (_LONG, _GAP, _SHORT, _GAP, _SHORT, _GAP), "black", "placement"),  # 09.1
    "centre": Pen(0.25, (_LONG, _GAP, _SHORT, _GAP), "black", "centre, quarter"),  # 08.1
    "gather": Pen(0.50, (8, 6), "black", "gather row"),  # 03.1 dashed spaced: 4 mm stitch, 3 mm gap
    "grain": Pen(0.35, (), "black", "grain"),
    "notch": Pen(0.70, (), "black", "notch"),
    "button": Pen(0.50, (), "black", "button"),
    "dimension": Pen(0.18, (), "black", "dimension"),
    "note": Pen(0.18, (), "black", "words"),
    "join": Pen(0.35, (_LONG, _GAP, 1, _GAP, 1, _GAP), "accent", "join of sheets"),  # 05.1
    "gauge": Pen(0.70, (), "accent", "gauge"),
    "frame": Pen(0.50, (), "accent", "frame"),
    "waste": Pen(0.18, (), "accent", "waste"),
    "sheet": Pen(0.25, (), "accent", "sheet"),
    "rule": Pen(0.18, (), "grey", "rule"),
    "plain": Pen(0.35, (), "black", "plain"),
    "band": Pen(0.25, (4, 4), "faint", "band of a print"),
    "print": Pen(0.13, (), "faint", "print of the cloth"),
}
