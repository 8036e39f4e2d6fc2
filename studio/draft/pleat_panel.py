"""Straight panels laid in pleats, which they hold whole: every join, and the opening, lies on a hidden fold.

A panel is drawn as it is seen from outside. Its left side is the hidden fold before its first face; from there come
the fold's depth, the face, the take-up, the next face and so on to the hidden fold that the next panel begins at.
"""

from itertools import pairwise

from msgspec import Struct

from studio.brief import Brief
from studio.geometry import Line, Path, Point, line
from studio.units import spell
from studio.words import Phrase, phrase, tr

from .marks import Station, notch
from .panel import panel
from .piece import Dimension, Handle, LineMark, Note, Piece, Spot
from .pleats import SIDES, Pleats, whole_pleats
from .ring import Place, Ring, meeting, opening_sides
from .shape import Shape, straight_sides

PLEATS = (
    "skirt.pleats", "skirt.pleat_depth", "skirt.flat", "skirt.repeat", "skirt.hip_ease", "skirt.pleat_kind",
    "skirt.stitched_down",
)  # fmt: skip
"""The numbers that move every fold."""
NUMBERED, ARROWED = 0.035, 0.09
"""Numbers stand, and arrows lie, at these shares of the length below the waist seam."""
ASIDE = 2
"""A fold's depth is measured at the first pleat; a face so many further on, where its words have room."""


class Laid(Struct, frozen=True):
    """How the panels of a pleated skirt are cut: the pleats, how deep they are stitched down (mm, 0 where they are
    released), along or across the cloth, and in how many panels.

    The paths are those of the brief that a face, a fold's depth and the cloth are measured by; `drags` says whether a
    fold may be dragged by its depth, `stitch_drags` whether the end of the stitching may.
    """

    pleats: Pleats
    stitched: float
    cut: str
    panels: int
    face_path: str = "skirt.pleats"
    depth_path: str = "skirt.pleat_depth"
    cloth_path: str = "skirt.pleats"
    drags: bool = False
    stitch_drags: bool = False


class _Panel(Struct, frozen=True):
    """One panel on its way: its place in the ring, its first pleat, how many it holds, and the levels it is drawn at
    (mm below the waist seam): where lines bend, and the hem line.
    """

    laid: Laid
    k: int
    first: int
    held: int
    bend: float
    deep: float

    @property
    def pleats(self) -> Pleats:
        return self.laid.pleats

    @property
    def wide(self) -> float:
        return self.held * self.pleats.unit

    def middle(self, j: int) -> float:
        """Middle of the j-th face, which is straight and on the grain."""
        return j * self.pleats.unit + self.pleats.depth + self.pleats.hip / self.pleats.count / 2

    def face(self, j: int, below: float) -> tuple[float, float]:
        """From where to where the j-th face is seen, so far below the waist seam."""
        half, middle = self.pleats.face(below) / 2, self.middle(j)
        return middle - half, middle + half


def pleated_panels(brief: Brief, laid: Laid, stations: tuple[Station, ...]) -> tuple[Ring, tuple[Piece, ...]]:
    """The ring of panels and its pieces, each its own: numbered pleats lie the same way all round."""
    held = whole_pleats(laid.pleats.count, laid.panels)
    ring = tuple(Place(f"skirt-{k + 1}" if k else "skirt") for k in range(laid.panels))
    meets, opens = meeting(ring), opening_sides(ring)
    deep = brief.finished_length
    pieces, first = [], 0
    for k, n in enumerate(held):
        one = _Panel(laid, k, first, n, min(laid.pleats.bend or deep, deep), deep)
        name = tr("Skirt") if laid.panels == 1 else spell(phrase("Skirt panel {k:count}", k=k + 1), "cm")
        pieces.append(panel(brief, ring[k].piece, name, _shape(brief, one, stations), meets=meets, opens=opens))
        first += n
    return ring, tuple(pieces)


def _shape(brief: Brief, one: _Panel, stations: tuple[Station, ...]) -> Shape:
    top, right, hem, left = straight_sides(one.wide, one.deep)
    met = [m for m in (_met(one, s) for s in stations) if m is not None]
    a = brief.seams.allowance
    return Shape(
        top=top, right=right, hem=hem, left=left, grain=_grain(one), closes=_closes(one), widens=PLEATS,
        lines=(*_folds(brief, one, met), *_levels(brief, one), *_arrows(one), *_uprights(brief, one, met)),
        spots=tuple(_notch(m, a) for m in met),
        notes=tuple(
            Note(phrase("{n:count}", n=one.first + j + 1), Point(one.middle(j), one.deep * NUMBERED))
            for j in range(one.held)
        ),
        handles=_handles(one), dimensions=tuple(_dimensions(brief, one)),
    )  # fmt: skip


def _closes(one: _Panel) -> tuple[tuple[float, float], ...]:
    """What the pleats take up of the waist seam: all that is not face."""
    faces = [one.face(j, 0) for j in range(one.held)]
    ends = [0.0, *(x for face in faces for x in face), one.wide]
    return tuple(zip(ends[::2], ends[1::2], strict=True))


class _Met(Struct, frozen=True):
    """Where a station falls on a panel: in which face, and at which share of it from its left."""

    station: Station
    face: int
    share: float
    x: float

    @property
    def on_fold(self) -> bool:
        return self.share in (0.0, 1.0)


def _met(one: _Panel, station: Station) -> _Met | None:
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
    return _Met(station, face - one.first, share, start + (end - start) * share)


def _notch(met: _Met, allowance: float) -> Spot:
    return notch(met.x, -allowance, 90, allowance, "waist", PLEATS)


def _bent(brief: Brief, one: _Panel, x: float, below: float) -> Path:
    """A line from the waist's cut edge to the hem's, at `x` down to the waist seam and at `below` from the bend on."""
    a, foot = brief.seams.allowance, one.deep + brief.hem
    if abs(x - below) < 1e-9:
        return line(x, -a, x, foot)
    corners = (Point(x, -a), Point(x, 0), Point(below, one.bend), Point(below, foot))
    return Path(tuple(Line(p, q) for p, q in pairwise(corners)))


def _folds(brief: Brief, one: _Panel, met: list[_Met]) -> list[LineMark]:
    """The folds to be seen and the lines they are laid to; a fold that a station falls on says so."""
    said = {(m.face, m.share): Phrase(m.station.words) for m in met if m.on_fold and m.station.words}
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


def _between(one: _Panel, j: int) -> float:
    """Half way from the j-th face to the next: where two folds meet."""
    return one.middle(j) + one.pleats.unit / 2


def _levels(brief: Brief, one: _Panel) -> list[LineMark]:
    """The hip line, and where the stitching ends."""
    lines = []
    hip, stitched = brief.hip_depth, one.laid.stitched
    if hip < one.deep:
        words = phrase("hip line, {d} below the seam", d=hip)
        lines.append(LineMark("hip", line(0, hip, one.wide, hip), words, ("body.waist_to_hip",)))
    if stitched:
        words = phrase("pleats stitched down to here, {d} below the seam", d=stitched)
        path = line(0, stitched, one.wide, stitched)
        lines.append(LineMark("stitching", path, words, ("skirt.stitch_depth",)))
    return lines


def _arrows(one: _Panel) -> list[LineMark]:
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


def _uprights(brief: Brief, one: _Panel, met: list[_Met]) -> list[LineMark]:
    """Centre and quarter lines, in their place on a face; one on a fold is the fold's own line."""
    lines = []
    foot = one.deep + brief.hem
    for m in met:
        if m.station.words and not m.on_fold:
            start, end = one.face(m.face, one.bend)
            x = start + (end - start) * m.share
            path = line(x, 0, x, foot)
            if abs(x - m.x) > 1e-9:
                corners = (Point(m.x, 0), Point(x, one.bend), Point(x, foot))
                path = Path(tuple(Line(p, q) for p, q in pairwise(corners)))
            lines.append(LineMark(m.station.role, path, Phrase(m.station.words), PLEATS))
    return lines


def _handles(one: _Panel) -> tuple[Handle, ...]:
    found = [Handle("skirt.length", Point(one.wide * 0.36, one.deep), "y", 1.0)]
    if one.k == 0 and one.laid.drags:
        y = (one.bend + one.deep) / 2 if one.bend < one.deep else one.deep * 0.6
        x = one.face(0, y)[0]
        if abs(x - one.pleats.depth) < 1e-6:  # not on a skirt so short that its lines are all slanted
            found.append(Handle("skirt.pleat_depth", Point(x, y), "x", 1.0))
    if one.k == 0 and one.laid.stitch_drags:
        found.append(Handle("skirt.stitch_depth", Point(one.wide * 0.2, one.laid.stitched), "y", 1.0))
    return tuple(found)


def _dimensions(brief: Brief, one: _Panel) -> list[Dimension]:
    laid, pleats = one.laid, one.pleats
    foot, a = one.deep + brief.hem, brief.seams.allowance
    found = [Dimension(laid.cloth_path, Point(0, -a), Point(one.wide, -a), "above", _width_words(one))]
    if one.k == 0:
        depth, face = phrase("{d:bare} deep", d=pleats.depth), phrase("{s:bare} face", s=pleats.face(pleats.bend))
        top = -brief.waistband.depth if brief.skirt.length_includes_band else 0.0
        start, end = one.face(min(ASIDE, one.held - 1), pleats.bend)
        found += [
            Dimension(laid.depth_path, Point(0, foot), Point(pleats.depth, foot), "below", depth),
            Dimension(laid.face_path, Point(start, foot), Point(end, foot), "below", face),
            Dimension("skirt.length", Point(0, top), Point(0, one.deep), "left", phrase("{l:bare}", l=one.deep - top)),
        ]
    if brief.seams.hem_kind != "faced":
        hem = phrase("{h:bare}", h=brief.hem)
        found.append(Dimension("seams.hem", Point(one.wide, one.deep), Point(one.wide, foot), "right", hem))
    return found


def _width_words(one: _Panel) -> Phrase:
    ratio = one.pleats.flat_width / one.pleats.waist
    if one.laid.panels == 1:
        text = "{t:bare} flat, {n:count} pleats; {r:ratio} × the seam"
    else:
        text = "{t:bare}, {n:count} pleats; {r:ratio} × the seam"
    return phrase(text, t=one.wide, n=one.held, r=ratio)


def _grain(one: _Panel) -> tuple[Point, Point]:
    """Along the cloth across the folds; or down the middle of a face, about two thirds of the way."""
    wide, deep = one.wide, one.deep
    if one.laid.cut == "along":
        return Point(wide * 0.60, deep * 0.62), Point(wide * 0.76, deep * 0.62)
    x = one.middle(min(one.held - 1, int(one.held * 0.68)))
    return Point(x, deep * 0.45), Point(x, deep * 0.75)
