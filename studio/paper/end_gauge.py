"""The finished ends of a straight band at true size, with what fastens it at its true place."""

from collections.abc import Iterator

from msgspec import Struct

from studio.draft import LineMark, Piece, Spot
from studio.drawing import Group, Mark, Words, moved
from studio.drawing.dimension import dimension
from studio.drawing.furniture import frame, paragraph
from studio.drawing.lettering import width
from studio.drawing.piece import CROSS, marked_line, spot
from studio.geometry import TOUCH, Box, Line, Point
from studio.units import Unit, spell
from studio.words import Phrase, phrase, tr

from .cut_out import CutOut

_NAME, _SMALL, _STEP = 5.0, 3.2, 4.6
_ROUND = 3.0
_LOW = 12.0
"""A band lower than this (mm) has no room for words beside its marks."""
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


def extension_end(band: Piece | None, unit: Unit, _: float) -> CutOut | str:
    """The end that laps over, with its holes, its hook or its snap; or one sentence that says why there is no gauge."""
    name = tr("Band end")
    if band is None or (lacks := _lacks(band)):
        return _left_out(name, _FACED if band is None else lacks, unit)
    end = max(e.path.box.right for e in band.edges)
    centre = band.edge("waist").path.start.x
    holes = tuple(m for m in band.lines if m.role == "buttonhole")
    spots = tuple(s for s in band.spots if s.role == "hook" or (s.role == "snap" and end - s.at.x < _NEAR))
    measured = []
    for path in [h.path for h in holes[:1]]:
        inner, outer = end - path.start.x, end - path.end.x
        measured.append(_Measured(0, outer, phrase("end to hole {d:bare}", d=outer)))
        measured.append(_Measured(outer, inner, phrase("buttonhole {d:bare}", d=inner - outer)))
    for s in spots[:1]:
        back = end - s.at.x - (s.size / 2 if s.role == "hook" else 0.0)
        measured.append(_Measured(0, back, phrase("end to {what:word} {d:bare}", what=tr(s.role), d=back)))
    lines = holes
    if end - centre > TOUCH:
        lines += tuple(m for m in band.lines if m.role == "centre" and abs(m.path.start.x - centre) < TOUCH)
        measured.append(_Measured(0, end - centre, phrase("extension {d:bare}", d=end - centre)))
    says = tr("{top}, right end on the finished end of the band.").replace("{top}", _top_words(band))
    return _gauge(band, _End(name, says, end, True, lines, spots, tuple(measured)), unit)


def plain_end(band: Piece | None, unit: Unit, _: float) -> CutOut | str:
    """The end that is lapped, with its buttons, bar or snap; or one sentence that says why there is no gauge."""
    name = tr("Plain end")
    if band is None or (lacks := _lacks(band)):
        return _left_out(name, _FACED if band is None else lacks, unit)
    end = min(e.path.box.left for e in band.edges)
    spots = tuple(s for s in band.spots if s.role in ("button", "bar") or (s.role == "snap" and s.at.x - end < _NEAR))
    measured = tuple(
        _Measured(0, s.at.x - end, phrase("end to {what:word} {d:bare}", what=tr(s.role), d=s.at.x - end))
        for s in spots[:1]
    )
    says = tr("{top}, left end on the finished plain end.").replace("{top}", _top_words(band))
    return _gauge(band, _End(name, says, end, False, (), spots, measured), unit)


_FACED = phrase("the waist is faced and has no band.")
_NEAR = 120.0
"""Snaps further (mm) from an end belong to the other one."""


def _lacks(band: Piece) -> Phrase | None:
    """Why a band has no end gauges, if it has none."""
    ends = band.edge("plain end")
    if ends.sews_to == f"{band.id}/extension end":
        return phrase("the band is a ring.")
    if not all(isinstance(c, Line) for c in band.edge("waist").path.curves):
        return phrase("the band is curved; take its end from the pattern.")
    if any(s.role == "bar" and s.at.x < ends.path.start.x - TOUCH for s in band.spots):
        return phrase("the ends only meet, with a hook and an eye.")
    if _high(band) < _LOW:
        return phrase("the band is too narrow.")
    return None


def _left_out(name: str, why: Phrase | None, unit: Unit) -> str:
    return spell(phrase("{name:word} left out: {why:word}", name=name, why=spell(why, unit) if why else ""), unit)


def _top(band: Piece) -> float:
    """Where the finished band's top edge lies: on its fold, or on the seam to its facing."""
    return next((m.path.start.y for m in band.lines if m.role == "fold"), min(e.path.box.top for e in band.edges))


def _high(band: Piece) -> float:
    return band.edge("waist").path.start.y - _top(band)


def _top_words(band: Piece) -> str:
    return tr("Top edge on the fold") if any(m.role == "fold" for m in band.lines) else tr("Top edge on the top seam")


def _gauge(band: Piece, end: _End, unit: Unit) -> CutOut | str:
    fold, high = _top(band), _high(band)
    heights = [s.at.y for s in end.spots] + [m.path.start.y for m in end.lines if m.role == "buttonhole"]
    if any(not fold - TOUCH <= y <= fold + high + TOUCH for y in heights):
        return _left_out(end.name, phrase("the fastening does not lie on the band."), unit)
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
