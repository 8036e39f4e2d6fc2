"""Marks that band and skirt share, so that they meet: notches, centres, quarters."""

from studio.geometry import Point, line
from studio.words import Phrase

from .piece import LineMark, Role, Spot

NOTCH = 6.0
"""Depth of a notch (mm), and never more than half the allowance (common practice, no source)."""


def notch_depth(allowance: float) -> float:
    """How far a notch reaches in from the cut edge, mm."""
    return min(NOTCH, allowance / 2)


def notch(x: float, y: float, turn: float, allowance: float, on: str, governs: tuple[str, ...] = ()) -> Spot:
    """A notch at the cut edge, pointing along `turn` degrees into the piece."""
    return Spot("notch", Point(x, y), notch_depth(allowance), turn, on, governs=governs)


STATION_WORDS = {0.25: "side", 0.5: "centre front", 0.75: "side", 1.0: "centre back"}
"""What the quarters are called where the skirt opens at the centre back."""


def stations(sections: int) -> list[float]:
    """Shares of the waist seam, from the opening round to it again, that carry a mark: quarters and sections."""
    return sorted({0.25, 0.5, 0.75} | {k / sections for k in range(1, sections)})


def upright(share: float, x: float, top: float, bottom: float, governs: tuple[str, ...]) -> LineMark:
    """The centre or quarter line at one of the stations."""
    role: Role = "centre" if share in (0.5, 1.0) else "quarter"
    return LineMark(role, line(x, top, x, bottom), Phrase(STATION_WORDS[share]), governs)
