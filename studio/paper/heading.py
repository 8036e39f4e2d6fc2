"""What every single page carries: its title over a rule, and what it belongs to; at the foot, what its numbers mean."""

from studio.drawing import Drawing, Mark, Words
from studio.drawing.furniture import stroke
from studio.drawing.lettering import fitted, width
from studio.geometry import Box, Point

from .page import Size

MARGIN = 15.0
"""White round a single page, mm."""

HEAD = 12.0
"""From the top of the page's use to the rule under its title, mm."""

_FOOT = 11.0


def heading(title: str, of: str, room: Box) -> Drawing:
    """The title of a page at the left and what it belongs to at the right, over a rule 12 mm below the room's top."""
    base = room.top + 8
    text, height = fitted(title, 10, room.width * 0.7, "serif", least=6)
    marks: list[Mark] = [Words(text, Point(room.left, base), height, "plain", face="serif")]
    left = room.width - width(text, height, "serif") - 8
    text, height = fitted(of, 4.4, left, "semibold")
    marks.append(Words(text, Point(room.right, base), height, "plain", align="right", face="semibold"))
    marks.append(stroke("rule", (room.left, room.top + HEAD), (room.right, room.top + HEAD)))
    return tuple(marks)


def section(text: str, left: float, baseline: float) -> Words:
    """The heading of a part of a page."""
    return Words(text, Point(left, baseline), 4.4, "plain", face="semibold")


def footing(left: str, right: str, page: Size) -> Drawing:
    """Two small lines at the foot of a page: what its numbers mean, and where it comes from."""
    base = page.height - _FOOT
    return (
        Words(left, Point(MARGIN, base), 2.8, "rule"),
        Words(right, Point(page.width - MARGIN, base), 2.8, "rule", align="right"),
    )


def page_room(page: Size, margin: float) -> Box:
    """The part of a single page that is used, mm."""
    edge = max(MARGIN, margin)
    return Box(edge, edge, page.width - edge, page.height - edge)
