"""The papers a pattern is printed on, and how much of each a sheet can show.

    |<margin>|<waste 5>|<------- live ------->|<- overlap ->|<margin>|

Left and top are trimmed, right and bottom are glued under the neighbour; so live is the paper less both margins,
the waste and the overlap: paper - 37 each way at a margin of 10 and an overlap of 12.
"""

from msgspec import Struct
from msgspec.structs import replace

from studio.brief.records import Paper

from .page import Size

WASTE = 5.0
"""The hatched strip that is cut away, mm."""

BLEED = 4.0
"""How far the drawing runs on past a join, so that a slip shows no gap, mm."""

LONGEST = 5080.0
"""No page may be longer, mm: 14 400 units of 1/72 in (ISO 32000-1, annex C, from memory); a roll is split below it."""

_ROLL_PAGE = 5000.0

SHEETS: dict[str, Size] = {
    "A4": Size(210.0, 297.0),  # ISO 216
    "A3": Size(297.0, 420.0),  # ISO 216
    "US Letter": Size(215.9, 279.4),  # 8.5 by 11 in
}


class PaperSize(Struct, frozen=True):
    """A paper as it lies: `width` across and `height` down, in mm; a roll is as long as it needs to be."""

    name: str
    width: float
    height: float
    margin: float = 10.0
    overlap: float = 12.0
    roll: bool = False

    @property
    def spent(self) -> float:
        """What margins, waste and overlap take of each direction, mm."""
        return 2 * self.margin + WASTE + self.overlap

    @property
    def live(self) -> Size:
        """The part of the drawing that one sheet shows, mm."""
        return Size(self.width - self.spent, self.height - self.spent)

    def turned(self) -> "PaperSize":
        """The same paper a quarter round; a roll only lies one way."""
        return self if self.roll else replace(self, width=self.height, height=self.width)


def paper_size(paper: Paper) -> PaperSize:
    """The paper that a brief names, upright; sizes of ISO 216 and of 8.5 by 11 in, or a roll."""
    if paper.size == "roll":
        return PaperSize("roll", paper.roll_width, _ROLL_PAGE, paper.margin, paper.overlap, roll=True)
    return PaperSize(paper.size, *SHEETS[paper.size], paper.margin, paper.overlap)
