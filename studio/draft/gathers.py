"""Gather rows: where they lie, where they start, break and stop."""

import itertools
import math

from studio.brief import Brief
from studio.geometry import TOUCH, line
from studio.words import phrase

from .draft import Fact
from .piece import LineMark

APART = 5.0
"""Rows lie this far (mm) either side of the seam line (common practice, no source); closer where the allowance
is small."""
BREAK = 3.0
"""Rows stop this far (mm) short of a break or a cross seam, so that the thread ends can be found."""
ROWS = ("gathers.rows", "gathers.sections")
LONG = 3000.0
"""Above this width of cloth (mm) a row is drawn up in quarters instead of halves (common practice, no source)."""


def sections(brief: Brief, flat_width: float) -> int:
    """Into how many sections the rows break round the waist."""
    return brief.gathers.sections or (4 if flat_width > LONG else 2)


def row_heights(rows: int, allowance: float) -> list[float]:
    """Heights of the rows (mm, the seam line at 0, the cloth's raw edge at −allowance)."""
    step = min(APART, allowance / 3)
    return sorted((-step, step, -2 * step, 2 * step)[:rows])


def gather_rows(brief: Brief, start: float, end: float, flat_width: float, gap: float) -> list[LineMark]:
    """Rows and their stop bars on the panel that lies from `start` to `end` (mm) of the whole flat width.

    Rows keep `gap` mm from the opening at both ends of the whole width, and break at each section and each seam
    across them.
    """
    n = sections(brief, flat_width)
    breaks = (flat_width * k / n for k in range(1, n))
    stops = [start, *(b for b in breaks if start + BREAK < b < end - BREAK), end]
    runs = [
        (max(p + BREAK, gap) - start, min(q - BREAK, flat_width - gap) - start) for p, q in itertools.pairwise(stops)
    ]
    heights = row_heights(brief.gathers.rows, brief.seams.allowance)
    rows = [LineMark("gather", line(p, y, q, y), phrase("gather row"), ROWS) for y in heights for p, q in runs if q > p]
    ends = [x - start for x in (gap, flat_width - gap) if start < x < end and gap]
    words = phrase("rows start and stop {gap} from the opening", gap=gap)
    bars = [
        LineMark("row stop", line(x, heights[0] - 4, x, heights[-1] + 4), words, ("gathers.end_gap",)) for x in ends
    ]
    return rows + bars


def open_gap(brief: Brief, depth: float = 0.0) -> float:
    """What stays flat beside the opening, mm; nothing where the ring is closed `depth` mm below the waist."""
    return brief.gathers.end_gap if brief.stop > depth + TOUCH else 0.0


def gather_facts(brief: Brief, flat_width: float, sewn: float) -> tuple[Fact, ...]:
    """What matters about a gathered waist: how far it is drawn up, how thick it gets, how it is stitched."""
    gap, weight = open_gap(brief), brief.cloth.weight
    ratio = gather_ratio(flat_width, sewn, gap)
    return (
        Fact("gather_ratio", "Gather ratio", ratio, "ratio"),
        Fact("tightest_ratio", "Gather ratio beside the opening", tightest_ratio(flat_width, sewn, gap), "ratio"),
        Fact("seam_thickness", "Gathered seam", layers_thickness(ratio, weight)),
        Fact("gather_stitch", "Gathering stitch", stitch_length(weight)),
    )


def gather_ratio(flat_width: float, closed: float, end_gap: float) -> float:
    """Cloth to band where it is really gathered: the flat ends are taken out of both."""
    return (flat_width - 2 * end_gap) / (closed - 2 * end_gap)


def tightest_ratio(flat_width: float, closed: float, end_gap: float) -> float:
    """Cloth to band in the quarter beside the opening, which has the flat end in it, so the rest is drawn up more."""
    return (flat_width / 4 - end_gap) / (closed / 4 - end_gap)


def loosest(most: float, sewn: float, end_gap: float) -> float:
    """The flat width, so many times the seam of `sewn` mm, that is drawn up `most` to 1 beside the opening."""
    return (most * (sewn - 4 * end_gap) + 4 * end_gap) / sewn


TWENTIETHS = 20
"""Remedies set fullness, ratios and parts of a circle in steps of so many to 1."""


def raised(times: float) -> float:
    """A fullness, a ratio or a part of a circle, up to the next twentieth."""
    return math.ceil(times * TWENTIETHS - 1e-9) / TWENTIETHS


def lowered(times: float) -> float:
    """The same, down to the last twentieth."""
    return math.floor(times * TWENTIETHS + 1e-9) / TWENTIETHS


def stitch_length(weight: float | None) -> float:
    """Length of the gathering stitch, mm: short for light cloth, long for heavy (common practice, no source)."""
    grams = weight or 140.0
    return 3.0 if grams < 100 else 4.0 if grams < 250 else 4.5


def thickness(weight: float | None) -> float:
    """Thickness of one layer, mm, from its weight: about 0.25 mm at 120 g/m² (common practice, no source)."""
    return (weight or 140.0) / 480


def layers_thickness(ratio: float, weight: float | None) -> float:
    """Thickness of the gathered seam, mm: the gathered cloth and the two layers of the band."""
    return (ratio + 2) * thickness(weight)
