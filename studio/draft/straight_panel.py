"""Straight panels, equal in width, whose top is gathered: the gathered skirt, and every tier."""

import math

from msgspec import Struct

from studio.brief import Brief
from studio.geometry import TOUCH, Point
from studio.words import Phrase, phrase

from .gathers import gather_rows, open_gap
from .marks import Station, notch, on_both, upright
from .match import match_marks
from .panel import WAIST, WRAP_HEM, Level, panel
from .piece import Dimension, Handle, LineMark, Piece, Spot
from .ring import Ring, alone, paired, pairs, piece_id, piece_name
from .shape import Shape, straight_sides

MOST = 24
"""More panels than this are never drafted: the cloth is too small for the skirt, and a finding says so."""


class Panels(Struct, frozen=True):
    """Equal straight panels: how many, the whole flat width T between seam lines (mm), the sewn length of their top
    (mm), and how they are cut.

    `path` is the brief path of their fullness and `gain` what a millimetre of the whole flat width adds to it;
    `depth_path` is the path of how deep they are, `depth_gain` what a millimetre more adds to it, and `depth_words`
    say it where it is not simply the length. A gain is 0 where the number may not be dragged.
    """

    count: int
    flat_width: float
    sewn: float
    deep: float
    cut: str
    path: str = "skirt.fullness"
    gain: float = 0.0
    depth_path: str = "skirt.length"
    depth_gain: float = 1.0
    depth_words: Phrase | None = None

    @property
    def ratio(self) -> float:
        """Cloth to seam."""
        return self.flat_width / self.sewn

    @property
    def width(self) -> float:
        """One panel between its seam lines, mm."""
        return self.flat_width / self.count


def cloth_room(brief: Brief, cut: str) -> float:
    """The room a panel has, mm: between the selvedges across the cloth, or the length on hand along it; less what the
    free edges of a wrap are turned under beyond an allowance.
    """
    along = (brief.cloth.on_hand or float("inf")) * (1 - brief.cloth.shrinkage)
    over = max(0.0, WRAP_HEM - brief.seams.allowance) if brief.opening.kind == "wrap" else 0.0
    return (brief.cloth.usable if cut == "across" else along) - 2 * over


def panel_count(flat_width: float, room: float, allowance: float) -> int:
    """As few panels as fit `room` mm with an allowance on both sides: ceil(T / (U − 2a))."""
    return max(1, math.ceil(flat_width / max(1.0, room - 2 * allowance) - 1e-9))


def straight_panels(
    brief: Brief, panels: Panels, stations: tuple[Station, ...], *, stem: str = "skirt", name: str = "Skirt",
    level: Level = WAIST, below: tuple[Station, ...] = (),
) -> tuple[Ring, tuple[Piece, ...]]:  # fmt: skip
    """The ring of panels and its pieces: one for each pair, from the opening to across from it.

    `stations` are where the top meets the seam it is gathered to, and `below` where the foot meets the next tier.
    """
    ring = paired(panels.count, stem)
    n = panels.count
    pieces = []
    for k in range(pairs(n)):
        once = alone(k, n)
        pieces.append(panel(
            brief, piece_id(k, n, stem), piece_name(k, n, name, brief.opening.place),
            _shape(brief, panels, stations, k, level, below), ring, cut=1 if once else 2, mirrored=not once,
            level=level,
        ))  # fmt: skip
    return ring, tuple(pieces)


def _shape(
    brief: Brief, panels: Panels, stations: tuple[Station, ...], k: int, level: Level, below: tuple[Station, ...]
) -> Shape:  # fmt: skip
    wide, deep = panels.width, panels.deep
    top, right, hem, left = straight_sides(wide, deep)
    lines, spots = _station_marks(brief, panels, stations, k, level)
    gap = open_gap(brief, level.depth)
    lines += gather_rows(brief, k * wide, (k + 1) * wide, panels.flat_width, gap)
    return Shape(
        top=top, right=right, hem=hem, left=left, grain=_grain(panels.cut, wide, deep), ratio=panels.ratio,
        widens=(panels.path,), lines=tuple(lines),
        spots=(*spots, *_foot_notches(brief, panels, below, k, level),
               *match_marks(brief, panels.cut, wide, deep, level.foot)),
        handles=tuple(_handles(brief, panels, k, level)), dimensions=tuple(_dimensions(brief, panels, k, level)),
    )  # fmt: skip


def _station_marks(
    brief: Brief, panels: Panels, stations: tuple[Station, ...], k: int, level: Level
) -> tuple[list[LineMark], list[Spot]]:  # fmt: skip
    """Notches at the stations that fall on this panel; the quarters go down to the hem."""
    lines, spots, a = [], [], brief.seams.allowance
    foot = panels.deep + (brief.hem if level.foot == "hem" else a)
    for station in stations:
        x = station.at * panels.ratio - k * panels.width
        if not TOUCH < x < panels.width - TOUCH:
            continue
        spots.append(notch(x, -a, 90, a, level.top, (panels.path,)))
        if station.words:
            shown = station if alone(k, panels.count) else on_both(brief, station)
            lines.append(upright(shown, x, 0, foot, (panels.path,)))
    return lines, spots


def _foot_notches(
    brief: Brief, panels: Panels, below: tuple[Station, ...], k: int, level: Level
) -> list[Spot]:  # fmt: skip
    """Notches at the foot, where the next tier's gathers are to meet this panel."""
    a, places = brief.seams.allowance, (station.at - k * panels.width for station in below)
    return [
        notch(x, panels.deep + a, -90, a, level.foot, (panels.path,))
        for x in places
        if TOUCH < x < panels.width - TOUCH
    ]


def _handles(brief: Brief, panels: Panels, k: int, level: Level) -> list[Handle]:
    wide, deep = panels.width, panels.deep
    handles = []
    if panels.depth_gain:
        handles.append(Handle(panels.depth_path, Point(wide * 0.36, deep), "y", panels.depth_gain))
    if level.top == "waist":
        gap = brief.gathers.end_gap - k * wide
        if open_gap(brief) and 0 <= gap < wide:  # on a narrow panel the rows may start on the next one
            handles.append(Handle("gathers.end_gap", Point(gap, 0), "x", 1.0))
    if panels.gain and k == 0:  # beside others it would move with them, and leave the hand behind
        handles.append(Handle(panels.path, Point(wide, deep * 0.5), "x", panels.count * panels.gain))
    return handles


def _dimensions(brief: Brief, panels: Panels, k: int, level: Level) -> list[Dimension]:
    wide, deep = panels.width, panels.deep
    hem = brief.hem if level.foot == "hem" else brief.seams.allowance
    foot = deep + hem
    found = [Dimension(panels.path, Point(0, foot), Point(wide, foot), "below", _width_words(panels))]
    if level.foot == "hem" and brief.seams.hem_kind != "faced":
        found.append(Dimension("seams.hem", Point(wide, deep), Point(wide, foot), "right", phrase("{h:bare}", h=hem)))
    if k == 0:
        top = -brief.waistband.depth if brief.skirt.length_includes_band and not panels.depth_words else 0.0
        words = panels.depth_words or phrase("{l:bare}", l=deep - top)
        found.append(Dimension(panels.depth_path, Point(0, top), Point(0, deep), "left", words))
    return found


def _grain(cut: str, wide: float, deep: float) -> tuple[Point, Point]:
    if cut == "along":
        return Point(wide * 0.60, deep * 0.30), Point(wide * 0.76, deep * 0.30)
    return Point(wide * 0.68, deep * 0.30), Point(wide * 0.68, deep * 0.60)


def _width_words(panels: Panels) -> Phrase:
    if panels.count == 1:
        return phrase("{t:bare} flat, {r:ratio} × the seam", t=panels.flat_width, r=panels.ratio)
    return phrase("{t:bare}, one of {n:count}; {r:ratio} × the seam", t=panels.width, n=panels.count, r=panels.ratio)
