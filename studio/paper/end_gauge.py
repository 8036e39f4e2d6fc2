"""The finished ends of a folded band at true size, with what fastens it at its true place."""

from collections.abc import Iterator

from msgspec import Struct

from studio.draft import LineMark, Piece, Spot
from studio.drawing import Group, Mark, Words, moved
from studio.drawing.dimension import dimension
from studio.drawing.furniture import frame, paragraph
from studio.drawing.lettering import width
from studio.drawing.piece import CROSS, marked_line, spot
from studio.geometry import TOUCH, Box, Point
from studio.units import Unit, spell
from studio.words import Phrase, phrase, tr

from .cut_out import CutOut

_NAME, _SMALL, _STEP = 5.0, 3.2, 4.6
_ROUND = 3.0
_SHORT = 7.0
"""What is shorter (mm) is seen on the gauge itself and only told in words."""


class _Measured(Struct, frozen=True):
    """A distance to show under the gauge: from and to, mm in from the finished end, and its words."""

    start: float
    end: float
    words: Phrase


class _End(Struct, frozen=True):
    """One end of the band: where it lies (x in the band), whether it is the right one, and what is at it."""

    name: str
    says: str
    x: float
    right: bool
    lines: tuple[LineMark, ...]
    spots: tuple[Spot, ...]
    measured: tuple[_Measured, ...]

    def inward(self, x: float) -> float:
        """How far from the end a place in the band lies, mm."""
        return self.x - x if self.right else x - self.x


def extension_end(band: Piece, unit: Unit, _: float) -> CutOut | str:
    """The end that laps over, with its holes or its hook; or one sentence that says why there is no gauge."""
    end = max(e.path.box.right for e in band.edges)
    centre = band.edge("waist").path.start.x
    holes = tuple(m for m in band.lines if m.role == "buttonhole")
    hooks = tuple(s for s in band.spots if s.role == "hook")
    measured = []
    for path in [h.path for h in holes[:1]]:
        inner, outer = end - path.start.x, end - path.end.x
        measured.append(_Measured(0, outer, phrase("end to hole {d:bare}", d=outer)))
        measured.append(_Measured(outer, inner, phrase("buttonhole {d:bare}", d=inner - outer)))
    for hook in hooks[:1]:
        back = end - hook.at.x - hook.size / 2
        measured.append(_Measured(0, back, phrase("end to hook {d:bare}", d=back)))
    lines = holes
    if end - centre > TOUCH:
        lines += tuple(m for m in band.lines if m.role == "centre" and abs(m.path.start.x - centre) < TOUCH)
        measured.append(_Measured(0, end - centre, phrase("extension {d:bare}", d=end - centre)))
    says = tr("Top edge on the fold, right end on the finished end of the extension.")
    return _gauge(band, _End(tr("Band end"), says, end, True, lines, hooks, tuple(measured)), unit)


def plain_end(band: Piece, unit: Unit, _: float) -> CutOut | str:
    """The end that is lapped, with its buttons or its bar; or one sentence that says why there is no gauge."""
    end = min(e.path.box.left for e in band.edges)
    spots = tuple(s for s in band.spots if s.role in ("button", "bar"))
    measured = tuple(
        _Measured(0, s.at.x - end, phrase("end to {what:word} {d:bare}", what=tr(s.role), d=s.at.x - end))
        for s in spots[:1]
    )
    says = tr("Top edge on the fold, left end on the finished plain end.")
    return _gauge(band, _End(tr("Plain end"), says, end, False, (), spots, measured), unit)


def _gauge(band: Piece, end: _End, unit: Unit) -> CutOut | str:
    fold = next(m.path.start.y for m in band.lines if m.role == "fold")
    high = band.edge("waist").path.start.y - fold
    heights = [s.at.y for s in end.spots] + [m.path.start.y for m in end.lines if m.role == "buttonhole"]
    if any(not fold - TOUCH <= y <= fold + high + TOUCH for y in heights):
        words = phrase("{name:word} left out: the fastening does not lie on the band.", name=end.name)
        return spell(words, unit)
    reach = max([0.0, *_reaches(end)]) + _ROUND
    texts = [spell(m.words, unit) for m in end.measured]
    names = max(width(end.name, _NAME, "semibold"), *(width(t, _SMALL) for t in texts)) + 2 * _ROUND
    wide = reach + names
    at = wide if end.right else 0.0
    aside = 0.0 if end.right else reach + _ROUND
    marks: list[Mark] = [
        frame("cut", Box(0, 0, wide, high)),
        Group("marks", tuple(moved(tuple(_marks(end)), at - end.x, -fold)), Box(0, 0, wide, high)),
        Words(end.name, Point(max(aside, _ROUND), high / 2 + _NAME * 0.33), _NAME, "plain", face="semibold"),
    ]
    for k, (m, text) in enumerate(zip(end.measured, texts, strict=True)):
        y = high + _STEP * (k + 1)
        a, b = sorted((at - m.start, at - m.end) if end.right else (m.start, m.end))
        if b - a > _SHORT:
            marks += dimension(Point(a, y), Point(b, y), "")
        marks.append(Words(text, Point(aside, y + _SMALL * 0.33), _SMALL, "dimension"))
    says = paragraph(end.says, 0, high + _STEP * (len(texts) + 0.5), wide, _SMALL, lead=1.25)
    return CutOut(end.name, (*marks, *says.marks), wide, says.below)


def _reaches(end: _End) -> Iterator[float]:
    """How far in the marks and the measured places reach, mm."""
    yield from (m.end for m in end.measured)
    yield from (end.inward(s.at.x) + max(CROSS, 0.67 * s.size) for s in end.spots if s.role == "button")
    yield from (end.inward(s.at.x) + s.size / 2 for s in end.spots if s.role != "button")
    yield from (end.inward(p.x) for m in end.lines for p in (m.path.start, m.path.end))


def _marks(end: _End) -> Iterator[Mark]:
    for m in end.lines:
        yield from marked_line(m)
    for s in end.spots:
        yield from spot(s)
