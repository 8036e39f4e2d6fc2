"""Circle skirts to be tested, and what is measured of them."""

from typing import Any

from shapely.geometry import Polygon

from studio.brief import Brief
from studio.check import Finding
from studio.draft import Piece
from studio.styles import rack
from studio.workroom import Docket, make_up


def circle(**changes: Any) -> Brief:
    """The usual circle skirt with other values; `skirt__fraction=0.5` stands for the path skirt.fraction."""
    return rack.edit(rack.usual("cm", "circle"), {path.replace("__", "."): value for path, value in changes.items()})


def plain(**changes: Any) -> Brief:
    """Waist 70 without ease, length 60, no relief: the body of the worked examples."""
    usual = {"body__waist": 700.0, "waistband__ease": 0.0, "skirt__length": 600.0, "skirt__bias_relief": 0.0}
    return circle(**(usual | changes))


def panels_of(docket: Docket) -> list[Piece]:
    """The pieces of the skirt itself."""
    return [p for p in docket.pieces if p.id.startswith("skirt")]


def copies(piece: Piece) -> int:
    """How many times what is drawn is there once it is cut."""
    return piece.cut * (2 if piece.on_fold else 1)


def round_at(docket: Docket, edge: str) -> float:
    """Length of an edge over all panels as they are drawn, mm."""
    return sum(e.path.length * copies(p) for p in panels_of(docket) for e in p.edges if e.name == edge)


def area(docket: Docket) -> float:
    """Area of the skirt between its seam lines, mm², as shapely measures it."""
    return sum(Polygon(p.seam_line.flat(0.001)).area * copies(p) for p in panels_of(docket))


def found(brief: Brief, rule: str) -> list[Finding]:
    """What one rule finds."""
    return [f for f in make_up(brief).findings if f.rule == rule]
