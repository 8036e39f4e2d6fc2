"""The panels of a round skirt: sectors of a ring, marked, in pairs from the opening round."""

import math

from msgspec.structs import replace

from studio.brief import Brief
from studio.geometry import TOUCH, Path, Point
from studio.words import Phrase, phrase

from .circle_cut import Cut, corner
from .gathers import gather_rows, open_gap
from .marks import Station, notch_on, on_both
from .panel import panel
from .piece import Dimension, Handle, LineMark, Note, Piece, Side, Spot
from .piecing import pieced, piecing_seams
from .ring import Place, Ring, alone, paired, pairs, piece_id, piece_name
from .seam import Seam
from .sector import Held, Sector
from .shape import Shape

PATH = "skirt.fraction"
BIAS = phrase("on the bias: it drops here")


def circle_panels(
    brief: Brief, circle: Cut, stations: tuple[Station, ...]
) -> tuple[Ring, tuple[Piece, ...], tuple[Seam, ...]]:  # fmt: skip
    """The ring, its pieces, corners among them, and the seams that the corners bring."""
    n = circle.count
    ring: Ring = (Place("skirt"), Place("skirt", True)) if circle.taken else paired(n)
    pieces: list[Piece] = []
    corners: dict[str, str] = {}
    for k in range(pairs(n)):
        once = alone(k, n)
        shape = _shape(brief, circle, stations, k)
        piece = panel(
            brief, piece_id(k, n), piece_name(k, n, place=brief.opening.place), shape, ring,
            cut=1 if once else 2, mirrored=not once,
        )  # fmt: skip
        if not circle.pieced:
            pieces.append(piece)
            continue
        corners[piece.id] = side = corner(k, n, brief.opening.place)
        pieces += pieced(piece, circle.pieced if side == "right" else -circle.pieced)
    return ring, tuple(pieces), piecing_seams(ring, corners) if corners else ()


def _shape(brief: Brief, circle: Cut, stations: tuple[Station, ...], k: int) -> Shape:
    by = circle.held(k, brief.opening.place)
    sector = circle.sector(by)
    top, right, hem, left = sector.sides
    lines, spots = _station_marks(brief, circle, sector, stations, k)
    if circle.fraction > 1:
        lines += _rows(brief, circle, sector, k)
    return Shape(
        top=top, right=right, hem=hem, left=left, grain=_grain(brief, circle, sector, k), ratio=circle.ratio,
        fold="right" if circle.taken else "", widens=(PATH,), lines=tuple(lines), spots=tuple(spots),
        notes=_bias_notes(circle, sector), handles=(_length_handle(circle),),
        dimensions=tuple(_dimensions(brief, circle, by)) if k == 0 else (),
    )  # fmt: skip


def _station_marks(
    brief: Brief, circle: Cut, sector: Sector, stations: tuple[Station, ...], k: int
) -> tuple[list[LineMark], list[Spot]]:  # fmt: skip
    """Notches at the stations that fall on this panel; the quarters go down to the hem."""
    lines, spots, top = [], [], sector.sides[0]
    wide, foot = top.length, sector.hem + brief.hem
    for station in stations:
        along = station.at * circle.ratio - k * wide
        if not TOUCH < along < wide - TOUCH:
            continue
        spots.append(notch_on(top, along, brief.seams.allowance, "waist", (PATH,)))
        if station.words:
            shown = station if alone(k, circle.count) else on_both(brief, station)
            radial = sector.radial(along, sector.waist, foot)
            lines.append(LineMark(station.role, radial, Phrase(shown.words), (PATH,)))
    return lines, spots


def _rows(brief: Brief, circle: Cut, sector: Sector, k: int) -> list[LineMark]:
    """Gather rows and their bars, as on a straight panel, bent round the waist."""
    wide = circle.flat_width / circle.count
    marks = gather_rows(brief, k * wide, (k + 1) * wide, circle.flat_width, open_gap(brief))
    return [replace(mark, path=_bent(mark.path, sector)) for mark in marks]


def _bent(path: Path, sector: Sector) -> Path:
    """A level or upright line of a straight panel as it lies round a waist."""
    start, end = path.start, path.end
    if start.y == end.y:
        return sector.round(start.x, end.x, sector.waist + start.y)
    return sector.radial(start.x, sector.waist + start.y, sector.waist + end.y)


def _length_handle(circle: Cut) -> Handle:
    """On the hem, where the panel hangs straight; a half on the fold has its fold pointing up."""
    if circle.taken:
        return Handle("skirt.length", Point(0, -circle.radius - circle.hem), "y", -1.0)
    return Handle("skirt.length", Point(0, circle.length), "y", 1.0)


def _dimensions(brief: Brief, circle: Cut, by: Held) -> list[Dimension]:
    """Radius, length and hem, one below the other on the line the panel hangs by."""
    way = -1.0 if circle.taken else 1.0
    side: Side = "inside" if by == "middle" else by

    def measured(path: str, start: float, end: float, words: Phrase) -> Dimension:
        one, other = (Point(0, way * radius - circle.radius) for radius in (start, end))
        return Dimension(path, one, other, side, words)

    length, band = circle.length, 0.0
    if brief.skirt.length_includes_band:
        band = min(brief.waistband.depth, circle.radius)
        length += brief.waistband.depth
    found = [
        measured(PATH, 0.0, circle.radius, phrase("radius {r:bare}", r=circle.radius)),
        measured("skirt.length", circle.radius - band, circle.hem, phrase("{l:bare}", l=length)),
    ]
    if brief.seams.hem_kind != "faced":
        found.append(measured("seams.hem", circle.hem, circle.hem + brief.hem, phrase("{h:bare}", h=brief.hem)))
    return found


def _grain(brief: Brief, circle: Cut, sector: Sector, k: int) -> tuple[Point, Point]:
    """Down the page, or across it where only so the panel fits the cloth; a little aside of its middle."""
    radius = sector.waist + circle.length * 0.4
    at = sector.place(sector.first - sector.angle * 0.4, radius)
    half = min(circle.length * 0.12, radius * math.radians(sector.angle) * 0.2)
    wide, high = circle.cut_size(brief, k)
    if high <= brief.cloth.usable + TOUCH < wide:
        return at.moved(-half, 0), at.moved(half, 0)
    return at.moved(0, -half), at.moved(0, half)


def _bias_notes(circle: Cut, sector: Sector) -> tuple[Note, ...]:
    """Where the cloth hangs on the bias: halfway between its lengthwise and its crosswise grain."""
    first = math.ceil((sector.last + NEAR - 45) / 90)
    last = math.floor((sector.first - NEAR - 45) / 90)
    radius = sector.waist + circle.length * 0.75
    return tuple(Note(BIAS, sector.place(45.0 + 90 * k, radius).moved(-ASIDE, 0)) for k in range(first, last + 1))


NEAR, ASIDE = 5.0, 70.0
"""Nearer to a side than this (degrees) there is no room for words, and so far (mm) aside they clear a quarter line."""
