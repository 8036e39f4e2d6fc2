"""How sheets are put together, shown with the very parts that are on them."""

from studio.drawing import Drawing, Mark, Words
from studio.drawing.furniture import arrow, frame, hatch, placed, stroke
from studio.geometry import Box, Point

from .gauge import gauge

HEIGHT = 24.0
"""How high each of the three small drawings is, mm."""

_WIDE, _HIGH = 16.0, 20.8


def trimming() -> Drawing:
    """A sheet whose hatched strip is cut away along the join line."""
    sheet = Box(8, 2, 8 + _WIDE, 2 + _HIGH)
    strip = Box(sheet.left + 0.2, sheet.top + 0.2, sheet.left + 2.4, sheet.bottom - 0.2)
    return (
        frame("plain", sheet, width=0.3, fill="white"),
        hatch(strip, 1.1, width=0.2),
        stroke("join", (sheet.left + 2.4, 0), (sheet.left + 2.4, HEIGHT)),
        _name("1B", sheet.left + 9.5, 14, 5),
    )


def matching() -> Drawing:
    """Two sheets laid together, with their three gauges."""
    top, foot = 2.0, 2 + _HIGH
    marks: list[Mark] = [
        stroke("plain", (13, top), (0, top), (0, foot), (13, foot), width=0.3),
        frame("plain", Box(13, top, 13 + _WIDE, foot), width=0.3, fill="white"),
        _name("1A", 5, 14, 5),
        _name("1B", 22.5, 14, 5),
    ]
    for y in (top + 3.2, top + _HIGH / 2, foot - 3.2):
        marks.append(stroke("gauge", (10.2, y), (15.8, y), width=0.5))
        marks += [stroke("gauge", (x, y - 1), (x, y + 1), width=0.25) for x in (11, 15)]
    return tuple(marks)


def rows() -> Drawing:
    """Finished rows, the second on its way up to the first."""
    marks: list[Mark] = []
    for i, letter in enumerate("ABC"):
        for row, top in ((1, 2.0), (2, 15.0)):
            marks.append(frame("plain", Box(i * 9.6, top, (i + 1) * 9.6, top + 7.2), width=0.3, fill="white"))
            marks.append(_name(f"{row}{letter}", (i + 0.5) * 9.6, top + 4.8, 3.2))
    return (*marks, *arrow(Point(14.4, 14), Point(14.4, 10), "plain", 2))


def one_row() -> Drawing:
    """The finished row, taped from end to end."""
    marks: list[Mark] = []
    for i, letter in enumerate("ABC"):
        marks.append(frame("plain", Box(i * 9.6, 5.0, (i + 1) * 9.6, 14.0), width=0.3, fill="white"))
        marks.append(_name(f"1{letter}", (i + 0.5) * 9.6, 10.8, 3.2))
    return (*marks, *arrow(Point(0, 18.5), Point(28.8, 18.5), "plain", 2, both=True))


def _name(text: str, x: float, baseline: float, height: float) -> Words:
    return Words(text, Point(x, baseline), height, "sheet", align="centre", face="semibold")


def gauge_read(teeth: int) -> Drawing:
    """A join with its gauge, 1.6 times as large, the upper sheet `teeth` too low; the join at x = 0, bar at y = 0."""
    upper: Drawing = (
        frame("plain", Box(0.1, -5, 9, 5), fill="white", bare=True),
        stroke("plain", (0.1, -5), (0.1, 5), width=0.25),
        *placed(gauge("upper"), Point(0.1, teeth)),
    )
    return placed((*gauge("lower"), *upper), Point(0, 0), scale=1.6)
