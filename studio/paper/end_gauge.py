"""The finished ends of a folded band at true size, with what fastens it at its true place."""

from collections.abc import Iterator, Sequence

from msgspec import Struct

from studio.draft import LineMark, Piece, Spot
from studio.drawing import Group, Mark, Stroke, Words, moved
from studio.drawing.dimension import dimension
from studio.drawing.furniture import frame, paragraph, stroke
from studio.drawing.lettering import width
from studio.drawing.piece import CROSS, marked_line, spot
from studio.geometry import TOUCH, Box, Point
from studio.units import Unit, spell
from studio.words import Phrase, phrase, tr

from .cut_out import CutOut

_SMALL, _STEP, _PAST = 3.2, 4.6, 3.0
_NAME = 5.0


class _Measured(Struct, frozen=True):
    """A distance to show under the gauge: from and to, mm in from the finished end, and its words."""

    start: float
    end: float
    words: Phrase


def extension_end(band: Piece, unit: Unit) -> CutOut | str:
    """The lapping end with its holes or hook; or one sentence that says why there is no gauge."""
    end = band.edge("extension end").path.start.x if _has(band, "extension end") else band.cut_line.box.right
    centre = band.edge("waist").path.start.x
    measured: list[_Measured] = []
    for hole in (m for m in band.lines if m.role == "buttonhole"):
        inner, outer = end - hole.path.start.x, end - hole.path.end.x
        measured = [
            _Measured(0, outer, phrase("from the end {d:bare}", d=outer)),
            _Measured(outer, inner, phrase("buttonhole {d:bare}", d=inner - outer)),
        ]
    for hook in (s for s in band.spots if s.role == "hook"):
        measured.append(_Measured(0, end - hook.at.x, phrase("hook {d:bare} from the end", d=end - hook.at.x)))
    marks: list[LineMark | Spot] = [m for m in band.lines if m.role == "buttonhole"]
    marks += [s for s in band.spots if s.role == "hook"]
    if end - centre > TOUCH:
        marks += [m for m in band.lines if m.role == "centre" and abs(m.path.start.x - centre) < TOUCH]
        measured.append(_Measured(0, end - centre, phrase("extension {d:bare}", d=end - centre)))
    says = tr("Top edge on the fold, right end on the finished end.")
    return _end(band, unit, tr("Band end"), says, end, -1, marks, measured)
