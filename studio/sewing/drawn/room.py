"""The room a picture takes, and how large things are drawn in it."""

from collections.abc import Sequence
from functools import reduce
from typing import Final

from msgspec.structs import replace

from studio.drawing import Align, Colour, Drawing, Group, Stroke, Words
from studio.drawing.lettering import fitted
from studio.geometry import Box, Path, Point
from studio.words import tr

ROOM: Final = Box(0, 0, 66, 45)
"""The room a picture takes, mm."""
CLOTH: Final = Box(2.5, 2, 63.5, 38.5)
"""Where what is drawn lies in it; what it is stands below."""
WORDS: Final = 3.0
"""Height of words in a picture, mm: the least on a page."""
SEWN: Final = 0.6
"""Width of what is sewn now, mm."""
EDGE: Final = 0.45
THIN: Final = 0.22


def fit(wide: float, high: float, within: Box = CLOTH, most: float = 1.0) -> float:
    """Picture mm for each mm of cloth: true size where it fits, half size where that does, else what fits; small things
    as many times their size as `most` allows.
    """
    room = min(within.width / wide, within.height / high)
    return next((scale for scale in (4.0, 2.0, 1.0, 0.5) if scale <= min(room, most)), room)


SIZES: Final = {4.0: "four times its size", 2.0: "twice its size", 1.0: "true size", 0.5: "half size"}


AT_SCALE: Final = "caption with its scale"


def caption(*parts: str, scale: float = 0.0) -> Group:
    """What is shown, below the picture; and its scale, where a ruler can be laid on it."""
    size = tr(SIZES.get(scale, ""))
    text, height = fitted(", ".join(p for p in (*parts, size) if p), 3.2, ROOM.width - 2)
    words = Words(text, Point(ROOM.centre.x, 43.6), height, align="centre", colour="grey")
    return Group(AT_SCALE if size else "caption", (words,))


def on_screen(drawing: Drawing) -> Drawing:
    """A picture for a screen, which shows nothing at its size: the scale is left unsaid."""
    return tuple(_unscaled(m) if isinstance(m, Group) and m.name == AT_SCALE else m for m in drawing)


def _unscaled(group: Group) -> Group:
    bare = (replace(m, text=m.text.rpartition(", ")[0]) for m in group.marks if isinstance(m, Words))
    return Group("caption", tuple(bare))


def note(text: str, x: float, y: float, align: Align = "left", *, now: bool = False) -> Words:
    """Words in a picture; in the accent where they say what to do."""
    colour: Colour = "accent" if now else "black"
    return Words(text, Point(x, y), WORDS, align=align, colour=colour, patch=True)


def now(path: Path, *, dashed: bool = True, width: float = SEWN) -> Stroke:
    """A line that is sewn, folded or cut now."""
    return Stroke(path, "seam" if dashed else "plain", width, "accent")


def around(boxes: Sequence[Box]) -> Box:
    """The smallest box that holds all."""
    return reduce(Box.joined, boxes)
