"""What lies on the board at one scale: shapes, names, measured lines and handles, in px from the table's origin."""

from functools import reduce

from msgspec import Struct
from PySide6.QtCore import QPointF
from PySide6.QtGui import QPainter

from studio.drawing.arrange import Laid
from studio.geometry import Box
from studio.units import Unit

from ..cloth.under import Prints
from .dimensions import Measured, place_dimensions
from .drag import Grip
from .handles import grips
from .meanings import Meaning, meanings
from .measured import paint_dimensions
from .names import Name, paint_name
from .naming import place_names
from .pieces import paint_ghost, paint_piece
from .shape import Shape, shape


class Scene(Struct, eq=False):
    """Everything that is painted from a docket."""

    laid: tuple[Laid, ...]
    scale: float
    shapes: tuple[Shape, ...]
    names: tuple[Name, ...]
    dimensions: tuple[Measured, ...]
    grips: tuple[Grip, ...]

    @property
    def meanings(self) -> tuple[Meaning, ...]:
        """What the lines and marks in this view mean, in the order of the legend."""
        return meanings(self.shapes)

    def box(self, k: int) -> Box:
        """The cut line's box of the k-th piece, px from the table's origin."""
        return self.shapes[k].box.moved(self.laid[k].at.x * self.scale, self.laid[k].at.y * self.scale)

    @property
    def written(self) -> list[Box]:
        """The boxes of the names, and of the measured lines with their words, px from the table's origin."""
        return [*(n.box for n in self.names), *(d.span.joined(d.box) for d in self.dimensions)]


def set_scene(laid: tuple[Laid, ...], scale: float, unit: Unit, before: Scene | None) -> Scene:
    """Set a scene; a piece that has not changed keeps the shape it had in the scene before."""
    kept = {s.piece.id: s for s in before.shapes} if before and before.scale == scale else {}
    shapes = tuple(
        old if (old := kept.get(one.piece.id)) and old.piece == one.piece else shape(one.piece, scale) for one in laid
    )
    names = place_names(laid, shapes)
    return Scene(
        laid, scale, shapes, names, place_dimensions(laid, shapes, [n.box for n in names], unit), grips(laid)
    )  # fmt: skip


def changed(before: Scene, now: Scene) -> Box | None:
    """Where two scenes of one scale differ, px from the table's origin, with room for handles and halos."""
    found: list[Box] = []
    for scene, other in ((before, now), (now, before)):
        there = {id(s): one.at for one, s in zip(other.laid, other.shapes, strict=True)}
        found += [scene.box(k) for k, s in enumerate(scene.shapes) if there.get(id(s)) != scene.laid[k].at]
        found += [n.box for n in scene.names if n not in other.names]
        found += [d.reach.joined(d.box) for d in scene.dimensions if d not in other.dimensions]
    return reduce(Box.joined, found).grown(30) if found else None


def paint_scene(
    painter: QPainter, scene: Scene, lit: str, seen: Box, before: Scene | None, under: Prints | None = None
) -> None:  # fmt: skip
    """Pieces over their print, what they were before a drag, names and measured lines; the painter stands at the
    table's origin.

    Only what meets the box `seen` (px) is painted.
    """
    for k, (one, drawn) in enumerate(zip(scene.laid, scene.shapes, strict=True)):
        if scene.box(k).grown(12).meets(seen):
            at = QPointF(one.at.x * scene.scale, one.at.y * scene.scale)
            painter.translate(at)
            paint_piece(painter, drawn, lit, under)
            painter.translate(-at)
    if before is not None:
        _paint_before(painter, scene, before, lit)
    for name in scene.names:
        if name.box.grown(12).meets(seen):
            paint_name(painter, name)
    paint_dimensions(
        painter, [d for d in scene.dimensions if d.reach.joined(d.box).grown(28).meets(seen)], lit
    )  # fmt: skip


def _paint_before(painter: QPainter, scene: Scene, before: Scene, path: str) -> None:
    now = {one.piece.id: (one, s) for one, s in zip(scene.laid, scene.shapes, strict=True)}
    for one, was in zip(before.laid, before.shapes, strict=True):
        there = now.get(one.piece.id)
        painter.save()
        painter.translate(one.at.x * before.scale, one.at.y * before.scale)
        paint_ghost(painter, was, there[1] if there else None, there is not None and there[0].at != one.at, path)
        painter.restore()
