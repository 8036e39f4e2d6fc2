"""Marks that band and skirt share, so that they meet: notches, centres, quarters."""

from msgspec import Struct

from studio.brief import Brief
from studio.geometry import Path, Point, line
from studio.words import Phrase

from .piece import LineMark, Role, Spot

NOTCH = 6.0
"""Depth of a notch (mm), and never more than half the allowance (common practice, no source)."""
ROUND = ("centre back", "side", "centre front", "side")
"""The quarters of a waist, walked to the right as it is seen from outside."""
FIRST = {"centre back": 0, "front": 2, "side": 3}
"""The quarter that each opening place begins at; at the side it is the wearer's left."""


class Station(Struct, frozen=True):
    """A place on the waist seam where band and skirt meet: mm along it from the opening, once it is sewn.

    A quarter has its words; a station without words is a notch only.
    """

    at: float
    words: str = ""

    @property
    def role(self) -> Role:
        """Centres and quarters are drawn alike, and told apart by their words."""
        return "centre" if self.words.startswith("centre") else "quarter"


def quarter_name(brief: Brief, quarter: int) -> str:
    """What lies so many quarters on from the opening: "centre front" is two on from a centre back."""
    return ROUND[(FIRST[brief.opening.place] + quarter) % 4]


def stations(brief: Brief, sections: int = 4) -> tuple[Station, ...]:
    """The quarters of a waist that runs evenly round the body, and where its sections break.

    A wrap's edges lie half the overlap to either side of the opening's place, which is then marked too.
    """
    over = brief.over
    ring = brief.waist_seam - over
    quarters = {over / 2 + ring * k / 4: quarter_name(brief, k) for k in range(5)}
    breaks = {brief.waist_seam * k / sections: "" for k in range(1, sections)}
    # A break that falls on a quarter is one mark.
    found = quarters | {at: w for at, w in breaks.items() if all(abs(at - q) > 0.01 for q in quarters)}
    return tuple(Station(at, found[at]) for at in sorted(found) if 0.01 < at < brief.waist_seam - 0.01)


TURNED = {
    "centre back": "centre back; front on the mirrored one",
    "centre front": "centre front; back on the mirrored one",
}


def on_both(brief: Brief, station: Station) -> Station:
    """A station of a panel that is cut in mirrored pairs: from a side opening round, its other copy lies across."""
    if brief.opening.place != "side":
        return station
    return Station(station.at, TURNED.get(station.words, station.words))


def notch_depth(allowance: float) -> float:
    """How far a notch reaches in from the cut edge, mm."""
    return min(NOTCH, allowance / 2)


def notch(x: float, y: float, turn: float, allowance: float, on: str, governs: tuple[str, ...] = ()) -> Spot:
    """A notch at the cut edge, pointing along `turn` degrees into the piece."""
    return Spot("notch", Point(x, y), notch_depth(allowance), turn, on, governs=governs)


def notch_on(path: Path, along: float, allowance: float, on: str, governs: tuple[str, ...] = ()) -> Spot:
    """A notch `along` mm of an edge's seam line, standing on its cut edge and pointing square into the piece."""
    out = path.direction(along).outward()
    at = path.at(along).along(out, allowance)
    return Spot("notch", at, notch_depth(allowance), Point(-out.x, -out.y).degrees, on, governs=governs)


def upright(station: Station, x: float, top: float, bottom: float, governs: tuple[str, ...]) -> LineMark:
    """The centre or quarter line of a station."""
    return LineMark(station.role, line(x, top, x, bottom), Phrase(station.words), governs)
