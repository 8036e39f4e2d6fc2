"""The key to lines and marks: the lines from the one table of them, the marks drawn as they are on a piece."""

import math
from collections.abc import Collection

from msgspec.structs import replace

from studio.draft import LineMark, Spot
from studio.drawing import PENS, Drawing, Ink, Mark, Stroke, Words
from studio.drawing.furniture import arrow, placed_path, stroke
from studio.drawing.lettering import fitted
from studio.drawing.piece import CROSS, marked_line, spot
from studio.geometry import Point, line
from studio.words import tr

LINES: tuple[Ink, ...] = ("cut", "seam", "fold", "centre", "gather", "grain", "join")

_HERE = Point(0, 0)
_SIGNS: dict[str, tuple[str, tuple[Stroke, ...]]] = {
    "notch": ("notch", spot(Spot("notch", Point(0, -3), 6, 90))),
    "row stop": ("rows end", marked_line(LineMark("row stop", line(0, -4, 0, 4)))),
    "zip stop": ("zip stop", marked_line(LineMark("zip stop", line(-4, 0, 4, 0)))),
    "slit top": ("top of a slit", marked_line(LineMark("slit top", line(-4, 0, 4, 0)))),
    "buttonhole": ("buttonhole", marked_line(LineMark("buttonhole", line(-4, 0, 4, 0)))),
    "button": ("button", spot(Spot("button", _HERE, 12))),
    "hook": ("hook", spot(Spot("hook", _HERE, 8))),
    "bar": ("bar", spot(Spot("bar", _HERE, 8))),
    "snap": ("snap", spot(Spot("snap", _HERE, 12))),
    "drill": ("dart’s point", spot(Spot("drill", _HERE, 4))),
    "placement": ("laid here", marked_line(LineMark("placement", line(-4, 0, 4, 0)))),
    "direction": ("pleat", marked_line(LineMark("direction", line(-4, 0, 4, 0)))),
}
"""Each mark's name, and the mark itself about the origin, mm."""

_MOST, _LEAST = 46.0, 24.0
_ROW, _SIGN_ROW = 9.5, 10.0
_SMALL, _REACH = 3.2, 4.0


def lines_of(shown: Collection[str]) -> tuple[Ink, ...]:
    """The lines that the key explains where these marks are on the sheets: gather rows only where there are any."""
    return tuple(ink for ink in LINES if ink != "gather" or "gather" in shown)


def signs_of(shown: Collection[str]) -> tuple[str, ...]:
    """The marks among these that are drawn as signs, in the key's order."""
    return tuple(name for name in _SIGNS if name in shown)


def _in_a_row(lines: int, room: float) -> int:
    return lines if (room + 6) / lines >= _LEAST else math.ceil(lines / 2)


def key_height(shown: Collection[str], room: float) -> float:
    """How high the key is in a room so wide, mm."""
    lines = len(lines_of(shown))
    return 6.5 + (math.ceil(lines / _in_a_row(lines, room)) - 1) * _ROW


def key(shown: Collection[str], left: float, top: float, room: float) -> Drawing:
    """Each line with its name under it, in one row, or in two where the room is narrow."""
    lines = lines_of(shown)
    row = _in_a_row(len(lines), room)
    step = min(_MOST, (room + 6) / row)
    marks: list[Mark] = []
    for i, ink in enumerate(lines):
        x, y = left + i % row * step, top + i // row * _ROW
        end = x + step - 6
        if ink == "grain":
            marks += arrow(Point(x, y), Point(end, y), ink, 4, both=True)
        else:
            marks.append(stroke(ink, (x, y), (end, y)))
        text, height = fitted(tr(PENS[ink].words), _SMALL, step - 4)
        marks.append(Words(text, Point(x, y + 5), height))
    return tuple(marks)


def signs_height(shown: Collection[str]) -> float:
    """How high a row of marks is, mm."""
    return _SIGN_ROW if signs_of(shown) else 0.0


def signs(shown: Collection[str], at: Point, step: Point, room: float) -> Drawing:
    """The marks that are on the sheets, each with its name beside it within `room` mm; the next lies a `step` on."""
    marks: list[Mark] = []
    for k, name in enumerate(signs_of(shown)):
        middle = Point(at.x + step.x * k + _REACH, at.y + step.y * k)
        words, drawn = _SIGNS[name]
        scale = _REACH / CROSS if name in ("button", "snap") else 1.0
        marks += [replace(s, path=placed_path(s.path, middle, scale)) for s in drawn]
        text, height = fitted(tr(words), _SMALL, room - 2 * _REACH - 2)
        marks.append(Words(text, middle.moved(_REACH + 2, _SMALL * 0.34), height))
    return tuple(marks)
