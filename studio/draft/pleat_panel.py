"""Straight panels laid in pleats, which they hold whole: every join, and the opening, lies on a hidden fold.

A panel is drawn as it is seen from outside. Its left side is the hidden fold before its first face; from there come
the fold's depth, the face, the take-up, the next face and so on to the hidden fold that the next panel begins at.
"""

from msgspec import Struct

from studio.brief import Brief
from studio.geometry import Point
from studio.units import spell
from studio.words import Phrase, phrase, tr

from .marks import Station, notch
from .panel import panel
from .piece import Dimension, Handle, Piece
from .pleat_marks import PLEATS, PleatPanel, met, numbers, pleat_marks
from .pleats import Pleats, whole_pleats
from .ring import Place, Ring
from .shape import Shape, straight_sides

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


def pleated_panels(brief: Brief, laid: Laid, stations: tuple[Station, ...]) -> tuple[Ring, tuple[Piece, ...]]:
    """The ring of panels and its pieces, each its own: numbered pleats lie the same way all round."""
    ring = tuple(Place(f"skirt-{k + 1}" if k else "skirt") for k in range(laid.panels))
    deep = brief.finished_length
    pieces, first = [], 0
    for k, held in enumerate(whole_pleats(laid.pleats.count, laid.panels)):
        one = PleatPanel(laid.pleats, first, held, min(laid.pleats.bend or deep, deep), deep, laid.stitched)
        name = tr("Skirt") if laid.panels == 1 else spell(phrase("Skirt panel {k:count}", k=k + 1), "cm")
        shape = _shape(brief, laid, one, stations)
        pieces.append(panel(brief, ring[k].piece, name, shape, ring))
        first += held
    return ring, tuple(pieces)


def _shape(brief: Brief, laid: Laid, one: PleatPanel, stations: tuple[Station, ...]) -> Shape:
    top, right, hem, left = straight_sides(one.wide, one.deep)
    at = [m for m in (met(one, s) for s in stations) if m is not None]
    a = brief.seams.allowance
    return Shape(
        top=top, right=right, hem=hem, left=left, grain=_grain(laid, one), closes=one.closes(), widens=PLEATS,
        lines=pleat_marks(brief, one, at), spots=tuple(notch(m.x, -a, 90, a, "waist", PLEATS) for m in at),
        notes=numbers(one), handles=_handles(laid, one), dimensions=tuple(_dimensions(brief, laid, one)),
    )  # fmt: skip


def _handles(laid: Laid, one: PleatPanel) -> tuple[Handle, ...]:
    found = [Handle("skirt.length", Point(one.wide * 0.36, one.deep), "y", 1.0)]
    if one.first == 0 and laid.drags:
        y = (one.bend + one.deep) / 2 if one.bend < one.deep else one.deep * 0.6
        x = one.face(0, y)[0]
        if abs(x - one.pleats.depth) < 1e-6:  # not on a skirt so short that its lines are all slanted
            found.append(Handle("skirt.pleat_depth", Point(x, y), "x", 1.0))
    if one.first == 0 and laid.stitch_drags:
        found.append(Handle("skirt.stitch_depth", Point(one.wide * 0.2, laid.stitched), "y", 1.0))
    return tuple(found)


def _dimensions(brief: Brief, laid: Laid, one: PleatPanel) -> list[Dimension]:
    pleats = one.pleats
    foot, a = one.deep + brief.hem, brief.seams.allowance
    found = [Dimension(laid.cloth_path, Point(0, -a), Point(one.wide, -a), "above", _width_words(laid, one))]
    if one.first == 0:
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


def _width_words(laid: Laid, one: PleatPanel) -> Phrase:
    ratio = one.pleats.flat_width / one.pleats.waist
    if laid.panels == 1:
        text = "{t:bare} flat, {n:count} pleats; {r:ratio} × the seam"
    else:
        text = "{t:bare}, {n:count} pleats; {r:ratio} × the seam"
    return phrase(text, t=one.wide, n=one.held, r=ratio)


def _grain(laid: Laid, one: PleatPanel) -> tuple[Point, Point]:
    """Along the cloth across the folds; or down the middle of a face, about two thirds of the way."""
    wide, deep = one.wide, one.deep
    if laid.cut == "along":
        return Point(wide * 0.60, deep * 0.62), Point(wide * 0.76, deep * 0.62)
    x = one.middle(min(one.held - 1, int(one.held * 0.68)))
    return Point(x, deep * 0.45), Point(x, deep * 0.75)
