"""What is marked on a panel of pleats: folds and placements, arrows, levels, and the waist's stations on its faces."""

from itertools import pairwise

from msgspec import Struct

from studio.brief import Brief
from studio.geometry import Line, Path, Point, line
from studio.words import Phrase, phrase

from .marks import Station
from .piece import LineMark, Note
from .pleats import SIDES, Pleats

PLEATS = (
    "skirt.pleats", "skirt.pleat_depth", "skirt.flat", "cloth.repeat", "skirt.hip_ease", "skirt.pleat_kind",
    "skirt.pleats_by", "skirt.repeats", "skirt.repeat_pleats", "skirt.stitched_down",
)  # fmt: skip
"""The numbers that move every fold."""
NUMBERED, ARROWED = 0.035, 0.09
"""Numbers stand, and arrows lie, at these shares of the length below the waist seam."""


class PleatPanel(Struct, frozen=True):
    """One panel: its pleats, the first of them, how many it holds, and heights below the waist seam (mm): where its
    lines bend, the hem line, and the end of the stitching, 0 where pleats are released.
    """

    pleats: Pleats
    first: int
    held: int
    bend: float
    deep: float
    stitched: float

    @property
    def wide(self) -> float:
        """From seam line to seam line."""
        return self.held * self.pleats.unit

    def middle(self, j: int) -> float:
        """Middle of the j-th face, which is straight and on the grain."""
        return j * self.pleats.unit + self.pleats.depth + self.pleats.face(self.pleats.bend) / 2

    def face(self, j: int, below: float) -> tuple[float, float]:
        """From where to where the j-th face is seen, so far below the waist seam."""
        half, middle = self.pleats.face(below) / 2, self.middle(j)
        return middle - half, middle + half

    def closes(self) -> tuple[tuple[float, float], ...]:
        """What the pleats take up of the waist seam: all that is not face."""
        faces = [self.face(j, 0) for j in range(self.held)]
        ends = [0.0, *(x for face in faces for x in face), self.wide]
        return tuple(zip(ends[::2], ends[1::2], strict=True))


class Met(Struct, frozen=True):
    """Where a station falls on a panel: in which face, and at which share of it from its left."""

    station: Station
    face: int
    share: float
    x: float

    @property
    def on_fold(self) -> bool:
        """Whether it falls on the edge of a face."""
        return self.share in (0.0, 1.0)


def met(one: PleatPanel, station: Station) -> Met | None:
    """The place of a station, if it falls on this panel; one between two faces is marked on the fold that is seen."""
    along = station.at / one.pleats.face(0)
    whole = round(along)
    if abs(along - whole) < 1e-6:
        left = SIDES[one.pleats.kind] == ("pleat fold", "placement")
        face, share = (whole, 0.0) if left else (whole - 1, 1.0)
    else:
        face, share = int(along), along % 1
    if not one.first <= face < one.first + one.held:
        return None
    start, end = one.face(face - one.first, 0)
    return Met(station, face - one.first, share, start + (end - start) * share)


def pleat_marks(brief: Brief, one: PleatPanel, at: list[Met]) -> tuple[LineMark, ...]:
    """Every line to be marked on a panel with these stations."""
    return (*_folds(brief, one, at), *_levels(brief, one), *_arrows(one), *_uprights(brief, one, at))


def numbers(one: PleatPanel) -> tuple[Note, ...]:
    """The number of each pleat on its face, counted from the opening."""
    y = one.deep * NUMBERED
    return tuple(Note(phrase("{n:count}", n=one.first + j + 1), Point(one.middle(j), y)) for j in range(one.held))


def _bent(brief: Brief, one: PleatPanel, x: float, below: float) -> Path:
    """A line from the waist's cut edge to the hem's, at `x` down to the waist seam and at `below` from the bend on."""
    a, foot = brief.seams.allowance, one.deep + brief.hem
    if abs(x - below) < 1e-9:
        return line(x, -a, x, foot)
    corners = (Point(x, -a), Point(x, 0), Point(below, one.bend), Point(below, foot))
    return Path(tuple(Line(p, q) for p, q in pairwise(corners)))


def _folds(brief: Brief, one: PleatPanel, at: list[Met]) -> list[LineMark]:
    """The folds to be seen and the lines they are laid to; a fold that a station falls on says so."""
    said = {(m.face, m.share): Phrase(m.station.words) for m in at if m.on_fold and m.station.words}
    roles, lines = SIDES[one.pleats.kind], []
    for j in range(one.held):
        above, below = one.face(j, 0), one.face(j, one.bend)
        for side in (0, 1):
            path, role = _bent(brief, one, above[side], below[side]), roles[side]
            lines.append(LineMark(role, path, said.get((j, float(side))), PLEATS))
        if one.pleats.folds == 2:
            x = _between(one, j)
            lines.append(LineMark("placement", _bent(brief, one, x, x), None, PLEATS))
    return lines


def _between(one: PleatPanel, j: int) -> float:
    """Half way from the j-th face to the next: where two folds meet."""
    return one.middle(j) + one.pleats.unit / 2


def _levels(brief: Brief, one: PleatPanel) -> list[LineMark]:
    """The hip line, and where the stitching ends."""
    lines = []
    hip, stitched = brief.hip_depth, one.stitched
    if hip < one.deep:
        words = phrase("hip line, {d} below the seam", d=hip)
        lines.append(LineMark("hip", line(0, hip, one.wide, hip), words, ("body.waist_to_hip",)))
    if stitched:
        words = phrase("pleats stitched down to here, {d} below the seam", d=stitched)
        path = line(0, stitched, one.wide, stitched)
        lines.append(LineMark("stitching", path, words, ("skirt.stitch_depth",)))
    return lines


def _arrows(one: PleatPanel) -> list[LineMark]:
    """From each fold to where it is placed; one that goes over a join is drawn on both sides of it."""
    y = one.deep * ARROWED
    faces = [one.face(j, y) for j in range(one.held)]
    taken = 2 * one.pleats.fold(y)  # from a fold to its placement
    left, right = SIDES[one.pleats.kind]
    ways: list[tuple[float, float]] = []
    if left == "pleat fold":
        ways += [(start, start - taken) for start, _ in faces]
        ways.append((one.wide + faces[0][0], one.wide + faces[0][0] - taken))  # the next panel's first
    if right == "pleat fold":
        ways += [(end, end + taken) for _, end in faces]
        ways.append((faces[-1][1] - one.wide, faces[-1][1] - one.wide + taken))  # the last of the panel before
    cut = [tuple(min(max(x, 0.0), one.wide) for x in way) for way in ways]
    return [LineMark("direction", line(p, y, q, y), None, PLEATS) for p, q in cut if abs(p - q) > 1e-6]


def _uprights(brief: Brief, one: PleatPanel, at: list[Met]) -> list[LineMark]:
    """Centre and quarter lines, in their place on a face; one on a fold is the fold's own line."""
    lines = []
    foot = one.deep + brief.hem
    for m in at:
        if m.station.words and not m.on_fold:
            start, end = one.face(m.face, one.bend)
            x = start + (end - start) * m.share
            path = line(x, 0, x, foot)
            if abs(x - m.x) > 1e-9:
                corners = (Point(m.x, 0), Point(x, one.bend), Point(x, foot))
                path = Path(tuple(Line(p, q) for p, q in pairwise(corners)))
            lines.append(LineMark(m.station.role, path, Phrase(m.station.words), PLEATS))
    return lines
