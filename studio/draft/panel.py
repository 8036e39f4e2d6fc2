"""Straight skirt panels, equal in width: the edges and marks each carries."""

import math

from msgspec import Struct

from studio.brief import Brief
from studio.geometry import TOUCH, Point, line
from studio.words import Phrase, phrase

from .cut_line import cut_line
from .gathers import gather_rows, sections
from .marks import STATION_WORDS, notch, stations, upright
from .piece import Dimension, Edge, Handle, LineMark, Piece, Side, Spot
from .ring import alone, meets, pairs, piece_id, piece_name

RIGHT: Side = "right"
INSIDE: Side = "inside"
SEAM, OPEN = phrase("seam"), phrase("opening, zip")
FULL, STOP = ("skirt.fullness",), ("opening.zip_stop",)


class Panels(Struct, frozen=True):
    """Equal straight panels: how many, the whole flat width T between seam lines (mm), and how they are cut.

    `ratio` is T / B; `drags` says whether the side of a panel may be dragged to change it.
    """

    count: int
    flat_width: float
    cut: str
    ratio: float
    drags: bool = True

    @property
    def width(self) -> float:
        """One panel between its seam lines, mm."""
        return self.flat_width / self.count


def panel_count(flat_width: float, room: float, allowance: float) -> int:
    """As few panels as fit `room` mm with an allowance on both sides: ceil(T / (U − 2a))."""
    return max(1, math.ceil(flat_width / max(1.0, room - 2 * allowance) - 1e-9))


def zip_stop(brief: Brief) -> float:
    """Where the opening really ends, mm below the waist seam: 5 above the hem line at the lowest."""
    return min(brief.opening.zip_stop, brief.finished_length - 5)


def draft_panels(brief: Brief, panels: Panels) -> tuple[Piece, ...]:
    """One piece for each pair of panels, from the opening to the centre front."""
    return tuple(_panel(brief, panels, k) for k in range(pairs(panels.count)))


def _panel(brief: Brief, panels: Panels, k: int) -> Piece:
    n = panels.count
    edges = _edges(brief, panels, k)
    lines, spots = _station_marks(brief, panels, k)
    handles, dimensions = _handles(brief, panels, k), _dimensions(brief, panels, k)
    lines += gather_rows(brief, k * panels.width, (k + 1) * panels.width, panels.flat_width)
    lines += _hem_lines(brief, panels.width)
    lines += _stops(brief, panels) if k == 0 else ()
    once = alone(k, n)
    return Piece(
        id=piece_id(k, n),
        name=piece_name(k, n),
        edges=edges,
        cut_line=cut_line(edges),
        grain=_grain(panels.cut, panels.width, brief.finished_length),
        lines=tuple(lines),
        spots=tuple(spots),
        handles=tuple(handles),
        dimensions=tuple(dimensions),
        cut=1 if once else 2,
        mirrored=not once,
    )


def _edges(brief: Brief, panels: Panels, k: int) -> tuple[Edge, ...]:
    n, wide, a, deep = panels.count, panels.width, brief.seams.allowance, brief.finished_length
    stop = zip_stop(brief) if k == 0 else 0.0
    right_stop = stop if n == 1 else 0.0
    edges = (
        Edge("waist", line(0, 0, wide, 0), a, "waistband/waist", panels.ratio, words=phrase("seam, to the band")),
        Edge("right opening", line(wide, 0, wide, right_stop), a, "zip", words=OPEN, governs=STOP),
        Edge("right", line(wide, right_stop, wide, deep), a, meets(k, n, True), words=SEAM, governs=FULL),
        Edge("hem", line(wide, deep, 0, deep), brief.seams.hem, hem=True, governs=("seams.hem",)),
        Edge("left", line(0, deep, 0, stop), a, meets(k, n, False), words=SEAM),
        Edge("left opening", line(0, stop, 0, 0), a, "zip", words=OPEN, governs=STOP),
    )
    return tuple(e for e in edges if e.path.length > TOUCH)


def _station_marks(brief: Brief, panels: Panels, k: int) -> tuple[list[LineMark], list[Spot]]:
    """Notches at the quarters and sections that fall on this panel; the quarters go down to the hem."""
    lines, spots = [], []
    for share in stations(sections(brief, panels.flat_width)):
        x = share * panels.flat_width - k * panels.width
        if not TOUCH < x < panels.width - TOUCH:
            continue
        spots.append(notch(x, -brief.seams.allowance, 90, brief.seams.allowance, "waist", FULL))
        if share in STATION_WORDS:
            lines.append(upright(share, x, 0, brief.finished_length + brief.seams.hem, FULL))
    return lines, spots


def _hem_lines(brief: Brief, wide: float) -> list[LineMark]:
    a, deep, hem, turn = brief.seams.allowance, brief.finished_length, brief.seams.hem, brief.seams.first_turn
    lines = [LineMark("hem", line(-a, deep, wide + a, deep), phrase("hem fold"), ("skirt.length",))]
    if 0 < turn < hem:
        at = deep + hem - turn
        lines.append(LineMark("first turn", line(-a, at, wide + a, at), phrase("first turn"), ("seams.first_turn",)))
    return lines


def _stops(brief: Brief, panels: Panels) -> list[LineMark]:
    stop, a = zip_stop(brief), brief.seams.allowance
    words = phrase("zip stop: {s} below the seam, {r} from the raw edge", s=stop, r=stop + a)
    sides = (0.0, panels.width) if panels.count == 1 else (0.0,)
    return [LineMark("zip stop", line(x - 5, stop, x + 5, stop), words, STOP) for x in sides]


def _handles(brief: Brief, panels: Panels, k: int) -> list[Handle]:
    wide, deep = panels.width, brief.finished_length
    handles = [Handle("skirt.length", Point(wide * 0.36, deep), "y", 1.0)]
    if panels.drags:
        handles.append(Handle("skirt.fullness", Point(wide, deep * 0.5), "x", panels.count / brief.closed))
    if k == 0:
        handles.append(Handle("opening.zip_stop", Point(0, zip_stop(brief)), "y", 1.0))
    gap = brief.gathers.end_gap - k * wide
    if 0 <= gap < wide:  # on a narrow panel the rows may start on the next one
        handles.append(Handle("gathers.end_gap", Point(gap, 0), "x", 1.0))
    return handles


def _dimensions(brief: Brief, panels: Panels, k: int) -> list[Dimension]:
    wide, deep, hem, stop = panels.width, brief.finished_length, brief.seams.hem, zip_stop(brief)
    foot = deep + hem
    found = [
        Dimension("skirt.fullness", Point(0, foot), Point(wide, foot), "below", _width_words(panels)),
        Dimension("seams.hem", Point(wide, deep), Point(wide, foot), "right", phrase("{h:bare}", h=hem)),
    ]
    if k == 0:
        top = -brief.waistband.width if brief.skirt.length_includes_band else 0.0
        words = phrase("{l:bare}", l=deep - top)
        found.append(Dimension("skirt.length", Point(0, top), Point(0, deep), "left", words))
        single = panels.count == 1
        x, side = wide if single else 0.0, RIGHT if single else INSIDE
        found.append(Dimension("opening.zip_stop", Point(x, 0), Point(x, stop), side, phrase("{s:bare}", s=stop)))
    return found


def _grain(cut: str, wide: float, deep: float) -> tuple[Point, Point]:
    if cut == "along":
        return Point(wide * 0.60, deep * 0.30), Point(wide * 0.76, deep * 0.30)
    return Point(wide * 0.68, deep * 0.30), Point(wide * 0.68, deep * 0.60)


def _width_words(panels: Panels) -> Phrase:
    if panels.count == 1:
        return phrase("{t:bare} flat, {r:ratio} × the band", t=panels.flat_width, r=panels.ratio)
    return phrase("{t:bare}, one of {n:count}; {r:ratio} × the band", t=panels.width, n=panels.count, r=panels.ratio)
