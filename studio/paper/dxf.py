"""A drawing as DXF for cutters and drawing programs: R2010, millimetres, true curves, one layer for each ink.

The page's y runs down, the file's runs up. Fills are left away, and so are clips: a file of whole pieces needs
neither. Patterns of dashes and widths of pens go with the layers.
"""

import pathlib
from collections.abc import Iterable
from functools import lru_cache
from typing import Any

from studio.drawing import COLOURS, PENS, Face, Mark, Pen, Stroke, Words, flat_marks
from studio.drawing.lettering import CAPITAL, font_file, printable
from studio.files import beside
from studio.geometry import Arc, Curve, Line, Point

_FACES: tuple[Face, ...] = ("regular", "semibold", "bold", "italic", "serif")
_MM, _METRIC = 4, 1


def write_dxf(path: pathlib.Path, drawing: Iterable[Mark], title: str) -> None:
    """Write a drawing as DXF; raises `OSError`."""
    document = dxf_document(drawing, title)
    with beside(path) as fresh:
        document.saveas(fresh)


def dxf_document(drawing: Iterable[Mark], title: str) -> Any:
    """The drawing as an ezdxf document, all of it in model space."""
    from ezdxf.filemanagement import new

    document = new("R2010", units=_MM)
    document.header["$MEASUREMENT"] = _METRIC
    document.header["$LTSCALE"] = 1.0
    document.header.custom_vars.append("Title", printable(title))
    for ink, pen in PENS.items():
        _layer(document, ink, pen)
    for face in _FACES:
        document.styles.add(face, font=font_file(face).name)
    space = document.modelspace()
    for mark in flat_marks(drawing):
        if isinstance(mark, Words):
            _words(space, mark)
        elif not (mark.bare and mark.fill == "white"):
            _stroke(space, mark)
    return document


def _layer(document: Any, ink: str, pen: Pen) -> None:
    layer = document.layers.add(ink, color=7, lineweight=round(pen.width * 100))
    layer.description = pen.words
    if pen.colour != "black":
        layer.rgb = _rgb(pen.colour)
    if pen.pattern:
        lengths = [d * pen.width * (1 if i % 2 == 0 else -1) for i, d in enumerate(pen.pattern)]
        document.linetypes.add(ink, [sum(map(abs, lengths)), *lengths], description=pen.words)
        layer.dxf.linetype = ink


@lru_cache(maxsize=8)
def _rgb(colour: str) -> tuple[int, int, int]:
    code = COLOURS[colour]  # type: ignore[index]
    return int(code[1:3], 16), int(code[3:5], 16), int(code[5:7], 16)


def _stroke(space: Any, stroke: Stroke) -> None:
    for curve in stroke.path.curves:
        entity = _curve(space, curve, {"layer": stroke.ink})
        if stroke.line_colour != PENS[stroke.ink].colour:
            entity.rgb = _rgb(stroke.line_colour)


def _curve(space: Any, curve: Curve, attributes: dict[str, str]) -> Any:
    if isinstance(curve, Line):
        return space.add_line(_up(curve.start), _up(curve.end), dxfattribs=attributes)
    if isinstance(curve, Arc):
        if abs(curve.sweep) >= 360:
            return space.add_circle(_up(curve.centre), curve.radius, dxfattribs=attributes)
        ends = -curve.first, -(curve.first + curve.sweep)
        first, last = ends if curve.sweep < 0 else ends[::-1]
        return space.add_arc(_up(curve.centre), curve.radius, first % 360, last % 360, dxfattribs=attributes)
    points = [_up(p) for p in (curve.start, curve.leave, curve.arrive, curve.end)]
    return space.add_open_spline(points, degree=3, dxfattribs=attributes)


def _words(space: Any, words: Words) -> None:
    from ezdxf.enums import TextEntityAlignment

    places = {"left": TextEntityAlignment.LEFT, "centre": TextEntityAlignment.CENTER}
    text = space.add_text(
        _escaped(printable(words.text)),
        height=words.height * CAPITAL,
        rotation=-words.turn % 360,
        dxfattribs={"layer": words.ink, "style": words.face},
    )
    text.set_placement(_up(words.at), align=places.get(words.align, TextEntityAlignment.RIGHT))


def _up(p: Point) -> tuple[float, float]:
    return p.x, -p.y


def _escaped(text: str) -> str:
    """Text in which %% and ^ mean themselves and not a sign of the file's own."""
    return text.replace("%%", "%%%%%%").replace("^", "^ ")
