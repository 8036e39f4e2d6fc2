"""Pages as SVG: millimetres throughout, true arcs and cubics, groups and inks named for other programs."""

import pathlib
import re
from collections.abc import Iterable, Iterator
from typing import Any

import svgwrite

from studio.drawing import COLOURS, PENS, Face, Group, Mark, Stroke, Words
from studio.drawing.lettering import printable
from studio.files import put_file
from studio.geometry import Arc, Curve, Line, Path, Point

from .page import Page
from .reach import boxed, seen

_SANS = "'Source Sans Pro', 'Source Sans 3', sans-serif"
_SERIF = "'Source Serif Pro', 'Source Serif 4', serif"
_FACES: dict[Face, dict[str, str]] = {
    "regular": {"font_family": _SANS},
    "semibold": {"font_family": _SANS, "font_weight": "600"},
    "bold": {"font_family": _SANS, "font_weight": "700"},
    "italic": {"font_family": _SANS, "font_style": "italic"},
    "serif": {"font_family": _SERIF, "font_weight": "600"},
}
_ANCHORS = {"left": "start", "centre": "middle", "right": "end"}
_PATCH = 2.4


def write_svg(path: pathlib.Path, page: Page, title: str) -> None:
    """Write a page as SVG; raises `OSError`."""
    put_file(path, svg_text(page, title).encode(), like=path)


def svg_text(page: Page, title: str) -> str:
    """A page as the text of an SVG file, `viewBox` and size in mm; the same page gives the same text."""
    wide, high = (_number(v) for v in page.size)
    paper = svgwrite.Drawing(size=(f"{wide}mm", f"{high}mm"), viewBox=f"0 0 {wide} {high}", debug=False)
    paper.set_desc(title=printable(title))
    _Sheet(paper).add(paper, seen(boxed(page.drawing), page.box))
    return f'<?xml version="1.0" encoding="utf-8"?>\n{paper.tostring()}\n'


class _Sheet:
    """One file in the making: what its groups are called so far, and its clips."""

    def __init__(self, paper: Any) -> None:
        self.paper = paper
        self.names: set[str] = set()

    def add(self, parent: Any, marks: Iterable[Mark]) -> None:
        for mark in marks:
            if isinstance(mark, Stroke):
                parent.add(self._stroke(mark))
            elif isinstance(mark, Words):
                parent.add(self._words(mark))
            else:
                self.add(parent.add(self._group(mark)), mark.marks)

    def _group(self, group: Group) -> Any:
        extra: dict[str, str] = {}
        if group.clip is not None:
            name = self._name("clip")
            left, top, wide, high = (_number(v) for v in (*group.clip[:2], group.clip.width, group.clip.height))
            clip = self.paper.defs.add(self.paper.clipPath(id=name))
            clip.add(self.paper.rect((left, top), (wide, high)))
            extra = {"clip_path": f"url(#{name})"}
        return self.paper.g(id=self._name(group.name), data_name=printable(group.name), **extra)

    def _name(self, wanted: str) -> str:
        """An identifier that the file has not used yet."""
        stem = re.sub(r"[^a-z0-9]+", "-", wanted.lower()).strip("-")
        stem = stem if stem[:1].isalpha() else f"g-{stem}".rstrip("-")
        name, count = stem, 1
        while name in self.names:
            count += 1
            name = f"{stem}-{count}"
        self.names.add(name)
        return name

    def _stroke(self, stroke: Stroke) -> Any:
        pen: dict[str, str] = {"stroke": "none"}
        if not stroke.bare:
            pen = {"stroke": COLOURS[stroke.line_colour], "stroke_width": _number(stroke.line_width)}
            if dashes := PENS[stroke.ink].pattern:
                pen["stroke_dasharray"] = " ".join(_number(d * stroke.line_width) for d in dashes)
        fill = COLOURS[stroke.fill] if stroke.fill else "none"
        return self.paper.path(d=_run(stroke.path), class_=stroke.ink, data_ink=stroke.ink, fill=fill, **pen)

    def _words(self, words: Words) -> Any:
        extra: dict[str, str] = dict(_FACES[words.face])
        if words.turn:
            extra["transform"] = f"rotate({_number(words.turn)} {_number(words.at.x)} {_number(words.at.y)})"
        if words.align != "left":
            extra["text_anchor"] = _ANCHORS[words.align]
        if words.patch:
            extra |= {"paint_order": "stroke", "stroke": COLOURS["white"], "stroke_linejoin": "round"}
            extra["stroke_width"] = _number(_PATCH)
        text = self.paper.text(
            printable(words.text), insert=(_number(words.at.x), _number(words.at.y)), class_=words.ink,
            data_ink=words.ink, font_size=_number(words.height), fill=COLOURS[words.letter_colour], **extra,
        )  # fmt: skip
        text.attribs["xml:space"] = "preserve"
        return text


def _run(path: Path) -> str:
    steps = [f"M{_point(path.start)}", *(step for c in path.curves for step in _steps(c))]
    return " ".join((*steps, "Z") if path.closed else steps)


def _steps(curve: Curve) -> Iterator[str]:
    if isinstance(curve, Line):
        yield f"L{_point(curve.end)}"
    elif isinstance(curve, Arc):
        parts = 2 if abs(curve.sweep) > 180 else 1
        for k in range(parts):
            part = curve.part(k / parts, (k + 1) / parts)
            yield f"A{_number(part.radius)} {_number(part.radius)} 0 0 {int(part.sweep > 0)} {_point(part.end)}"
    else:
        yield f"C{_point(curve.leave)} {_point(curve.arrive)} {_point(curve.end)}"


def _point(p: Point) -> str:
    return f"{_number(p.x)} {_number(p.y)}"


def _number(value: float) -> str:
    """To a ten-thousandth of a millimetre, without idle noughts."""
    text = f"{value:.4f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text
