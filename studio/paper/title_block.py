"""The title block of a piece, in the manner of ISO 7200: one row read from standing height, one row of facts."""

from collections.abc import Sequence

from studio.drawing import Group, Mark, Words
from studio.drawing.furniture import frame, stroke
from studio.drawing.lettering import fitted, width
from studio.geometry import Box, Point

LEAST, MOST = 116.0, 168.0
"""How wide a title block is, mm."""

USUAL = 150.0
"""No wider than this (mm), a title block has room between the joins of an upright A4."""

_NAMES, _FACTS = 13.0, 12.5
_BIG, _CHIP, _HEAD, _FACT = 7.5, 9.0, 3.0, 4.2
_PAD = 2.0

HEIGHT = _NAMES + _FACTS
"""How high a title block is, mm."""


def title_block(
    number: str, name: str, cut: str, cells: Sequence[tuple[str, str]], *, room: float = USUAL
) -> Group:  # fmt: skip
    """A title block with its top left corner at the origin.

    `number` stands on a black square and names the piece on map and lay plan; `cut` is "cut 1"; `cells` are facts
    with their heads, such as ("allowance", "1.5, included"). No wider than `room`; long words are set smaller.
    """
    shares = [max(width(head, _HEAD), width(value, _FACT, "semibold")) + 2 * _PAD + 0.5 for head, value in cells]
    names = _NAMES + 3 + width(name, _BIG, "semibold") + 8 + width(cut, _BIG, "semibold") + 3
    wide = min(room, MOST, max(LEAST, sum(shares), names))
    marks: list[Mark] = [
        frame("plain", Box(0, 0, wide, HEIGHT), fill="white"),
        *chip(number, Point(0, 0), _NAMES, _CHIP),
        Words(cut, Point(wide - 3, 9.2), _BIG, "plain", align="right", face="semibold"),
    ]
    text, height = fitted(name, _BIG, wide - _NAMES - 11 - 3 - width(cut, _BIG, "semibold"), "semibold", least=4.2)
    marks.append(Words(text, Point(_NAMES + 3, 9.2), height, "plain", face="semibold"))
    marks.append(stroke("note", (0, _NAMES), (wide, _NAMES)))
    marks += _cells(cells, shares, wide)
    return Group("title block", tuple(marks))


def _cells(cells: Sequence[tuple[str, str]], shares: Sequence[float], wide: float) -> list[Mark]:
    marks: list[Mark] = []
    x, stretch = 0.0, wide / sum(shares) if shares else 1.0
    for (label, value), share in zip(cells, shares, strict=True):
        if x:
            marks.append(stroke("note", (x, _NAMES), (x, HEIGHT)))
        room = share * stretch - 2 * _PAD
        for text, size, down, face in ((label, _HEAD, 4.2, "regular"), (value, _FACT, 10.0, "semibold")):
            shown, height = fitted(text, size, room, face)  # type: ignore[arg-type]
            marks.append(Words(shown, Point(x + _PAD, _NAMES + down), height, "plain", face=face))  # type: ignore[arg-type]
        x += share * stretch
    return marks


def chip(number: str, at: Point, side: float, height: float) -> tuple[Mark, Mark]:
    """A piece's number in white on a black square whose top left corner is `at`."""
    square = frame("plain", Box(at.x, at.y, at.x + side, at.y + side), fill="black", bare=True)
    text, em = fitted(number, height, side - 2, "bold")
    middle = Point(at.x + side / 2, at.y + side / 2 + em * 0.33)
    return square, Words(text, middle, em, "plain", align="centre", face="bold", colour="white")
