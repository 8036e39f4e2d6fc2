"""True sizes to hold a ruler or a bank card against, and what a wrong reading means."""

from studio.drawing import Drawing, Mark, Words
from studio.drawing.furniture import frame, paragraph, stroke
from studio.geometry import Box, Point
from studio.units import Unit, spell, write_length
from studio.words import phrase, tr

from .sizes import SHEETS

CENTIMETRES = 50.0
INCHES = 50.8
"""Sides of the two squares, mm, from the middle of one line to the middle of the other."""

CARD = Box(0, 0, 85.60, 53.98)
CARD_RADIUS = 3.18
"""An ID-1 card, mm (ISO/IEC 7810): any bank card."""

LETTER_ON_A4 = SHEETS["A4"].width / SHEETS["US Letter"].width
A4_ON_LETTER = SHEETS["US Letter"].height / SHEETS["A4"].height
"""How much a page shrinks when a printer fits it to the other paper: 0.9727 and 0.9407."""

_LINE = 0.35


def squares(left: float, top: float) -> Drawing:
    """The 5 cm and the 2 in square side by side: 106.8 mm wide and 50.8 high."""
    return (
        *_square(left, top, CENTIMETRES, 10, 2, tr("5 cm")),
        *_square(left + CENTIMETRES + 6, top, INCHES, 8, 4, tr("2 in")),
    )


def _square(left: float, top: float, side: float, parts: int, long: int, words: str) -> Drawing:
    """A square with ticks inward on all four sides."""
    right, foot = left + side, top + side
    marks: list[Mark] = [frame("plain", Box(left, top, right, foot), width=0.25)]
    for i in range(1, parts):
        d, tick = side * i / parts, 3.2 if i % long == 0 else 1.6
        marks += [
            stroke("note", (left + d, top), (left + d, top + tick)),
            stroke("note", (left + d, foot), (left + d, foot - tick)),
            stroke("note", (left, top + d), (left + tick, top + d)),
            stroke("note", (right, top + d), (right - tick, top + d)),
        ]
    middle = Point((left + right) / 2, (top + foot) / 2 + 2)
    return (*marks, Words(words, middle, 6.2, "plain", align="centre", face="semibold"))


def card(left: float, top: float) -> Drawing:
    """The outline of a bank card; its inner edge is the card, whose top left corner is given."""
    line = CARD.moved(left, top).grown(_LINE / 2)
    says = tr(
        "Lay any bank card here. Its four edges must meet the inside of the line: no white left beside the card, and "
        "no line hidden under it."
    )
    body = paragraph(says, left + 8, top + 13, CARD.width - 16)
    standard = Words(tr("ISO/IEC 7810, size ID-1"), Point(left + 8, top + CARD.height - 8), 3.2)
    return (frame("plain", line, radius=CARD_RADIUS + _LINE / 2, width=_LINE), *body.marks, standard)


def what_readings_mean(unit: Unit) -> str:
    """How far out is good, and what the two usual wrong readings come from, in the maker's unit."""
    side = CENTIMETRES if unit == "cm" else INCHES
    says = phrase(
        "{good:word} out is good. {letter:word} instead of {side:word}: a Letter page was shrunk to A4. "
        "{a4:word}: an A4 page was shrunk to Letter. Print again.",
        good=tr("Half a millimetre") if unit == "cm" else tr("1/64 in"),
        letter=_reading(side * LETTER_ON_A4, unit),
        a4=_reading(side * A4_ON_LETTER, unit),
        side=tr("5 cm") if unit == "cm" else tr("2 in"),
    )
    return spell(says, unit)


def _reading(mm: float, unit: Unit) -> str:
    """What a ruler shows: to the tenth of a millimetre, or the sixteenth of an inch."""
    return f"{mm / 10:.2f}" if unit == "cm" else write_length(mm, unit, bare=True, fine=True)
