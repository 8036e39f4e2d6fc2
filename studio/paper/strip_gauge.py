"""Gauges that slide along a raw edge: what lies how far from it, at true size."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from msgspec import Struct

from studio.draft import Piece
from studio.drawing import Drawing, Ink, Mark, Words, moved
from studio.drawing.furniture import frame, paragraph, stroke
from studio.drawing.lettering import width
from studio.geometry import TOUCH, Box, Point
from studio.units import Unit, spell
from studio.words import Phrase, phrase, tr

from .cut_out import CutOut
from .spread import labelled

_NAMES = 44.0
"""The right end, where each line has its name, mm."""

_NAME, _TEXT, _SMALL = 5.0, 3.4, 3.2
_ROOM, _LEAST = 11.0, 6.0
_BESIDE = 5.6
"""Words beside the raw edge need this much before the first line, mm."""


class _Line(Struct, frozen=True):
    """A line along the gauge: how far from the raw edge it lies and where it begins (mm), and what it is."""

    away: float
    ink: Ink
    words: Phrase
    start: float = 0.0


def waist_gauge(panel: Piece, unit: Unit, wide: float) -> CutOut:
    """Gather rows, waist seam, seam at the opening and the bar the rows start on, `wide` mm long; its top is the raw
    edge.
    """
    lines, uprights = list(_waist_lines(panel)), list(_uprights(panel))
    deep = max([ln.away for ln in lines] + [u.foot for u in uprights])
    steps = _steps(uprights, unit)
    high = deep + 4.4 * max((s for s, _ in steps), default=0) + _ROOM + 2
    gauge = Box(0, 0, wide, high)
    beside = tr("this edge on the raw waist edge")
    edge = _edge_words(beside, lines, max([0.0, *(u.at for u in uprights)]) + 4, wide, 4.2)
    marks = [
        frame("cut", gauge),
        *(stroke("seam", (u.at, 0), (u.at, high)) for u in uprights if u.foot == 0),
        *(stroke("notch", (u.at, u.top), (u.at, u.foot)) for u in uprights if u.foot),
        *_lines(lines, gauge, unit, up=False),
        *(
            Words(text, Point(u.at + 1.4, deep + 4.4 * step - 0.6), _SMALL, "plain")
            for u, (step, text) in zip(uprights, steps, strict=True)
        ),
        *edge,
    ]
    says = tr("Left end on the cut end at the opening. For the other end, turn it over and prick through.")
    says = says if edge else f"{tr('Top edge on the raw waist edge.')} {says}"
    marks += _called(tr("Waist gauge"), says, min((u.at for u in uprights), default=0.0) + 3, high - _ROOM, wide)
    return CutOut("waist gauge", tuple(marks), wide, high)


def hem_gauge(panel: Piece, unit: Unit, wide: float) -> CutOut:
    """Hem fold and first turn, `wide` mm long; its foot is the raw edge."""
    foot = panel.cut_line.box.bottom
    lines = [
        _Line(foot - m.path.start.y, "fold", m.words or Phrase(""))
        for m in panel.lines
        if m.role in ("hem", "first turn")
    ]
    lines.sort(key=lambda ln: ln.away)
    edge = _edge_words(tr("this edge on the raw hem edge"), lines, 4, wide, -1.8)
    places = [_BESIDE if edge else 0.0, *(ln.away for ln in lines)]
    below, above = max(pairwise(places), key=lambda gap: gap[1] - gap[0])
    roomy = above - below >= _ROOM + 3
    high = lines[-1].away + (_LEAST if roomy else _ROOM + 2)
    middle = high - (above + below) / 2 - _ROOM / 2 if roomy else 1.5
    marks: list[Mark] = [frame("cut", Box(0, 0, wide, high)), *_lines(lines, Box(0, 0, wide, high), unit, up=True)]
    says = _turns(lines, unit) if edge else f"{tr('Lower edge on the raw hem edge.')} {_turns(lines, unit)}"
    marks += (*moved(edge, 0, high), *_called(tr("Hem gauge"), says, 6, middle, wide))
    return CutOut("hem gauge", tuple(marks), wide, high)


def _turns(lines: Sequence[_Line], unit: Unit) -> str:
    if len(lines) == 1:
        return spell(phrase("Neaten the raw edge, then turn {h:bare} to the hem fold.", h=lines[0].away), unit)
    turn, hem = lines[0].away, lines[-1].away
    return spell(phrase("Turn {t:bare}, then turn {r:bare} to the hem fold.", t=turn, r=hem - turn), unit)


def _waist_lines(panel: Piece) -> Iterator[_Line]:
    box, seam = panel.cut_line.box, panel.edge("waist").path.start.y
    yield _Line(seam - box.top, "seam", phrase("seam"))
    rows = sorted({m.path.start.y for m in panel.lines if m.role == "gather"})
    for y in rows:
        first = min(m.path.start.x for m in panel.lines if m.role == "gather" and m.path.start.y == y)
        yield _Line(y - box.top, "gather", phrase("gather row"), first - box.left)


class _Upright(Struct, frozen=True):
    """The opening (no foot: it runs the whole height), or the bar the rows start on; mm from the cut end."""

    at: float
    top: float
    foot: float
    words: Phrase


def _uprights(panel: Piece) -> Iterator[_Upright]:
    box = panel.cut_line.box
    seam = next((e.path.start.x for e in panel.edges if e.name == "left opening"), None)
    if seam is None:
        return
    yield _Upright(seam - box.left, 0, 0, phrase("opening"))
    bars = [m.path for m in panel.lines if m.role == "row stop" and m.path.start.x < box.right]
    if bars:
        first = min(bars, key=lambda p: p.start.x)
        words = phrase("rows start {gap:bare} from the opening", gap=first.start.x - seam)
        top = max(0.0, first.start.y - box.top)
        yield _Upright(first.start.x - box.left, top, first.end.y - box.top, words)


def _steps(uprights: Sequence[_Upright], unit: Unit) -> list[tuple[int, str]]:
    """On which row under the lines the words of each upright stand, and the words."""
    steps: list[tuple[int, str]] = []
    end = 0.0
    for u in uprights:
        text = spell(u.words, unit)
        steps.append((steps[-1][0] + 1 if steps and u.at < end else 1, text))
        end = u.at + 1.4 + width(text, _SMALL) + 3
    return steps


def _lines(lines: Sequence[_Line], gauge: Box, unit: Unit, *, up: bool) -> Iterator[Mark]:
    """The lines, and their names at the right end, led to where they have to make room for each other."""
    end = gauge.right - _NAMES
    ordered = sorted(lines, key=lambda ln: -ln.away if up else ln.away)
    heights = [gauge.bottom - ln.away if up else ln.away for ln in ordered]
    for ln, y in zip(ordered, heights, strict=True):
        yield stroke(ln.ink, (ln.start, y), (end, y))
    texts = [f"{tr(ln.words.text)} {spell(phrase('{d:bare}', d=ln.away), unit)}" for ln in ordered]
    labels = labelled(texts, heights, lambda text: _SMALL + 0.3, gauge.top + 1, gauge.bottom - 1)
    for a in labels:
        yield stroke("note", (end + 0.8, a.place), (end + 6, a.at))
        yield Words(a.text, Point(end + 7, a.at + _SMALL * 0.3), _SMALL, "plain")


def _edge_words(text: str, lines: Sequence[_Line], start: float, wide: float, base: float) -> Drawing:
    """Which edge this is, beside it; nothing where the lines leave no room."""
    end = wide - _NAMES - 3
    if min(ln.away for ln in lines) < _BESIDE - TOUCH or width(text, _SMALL, "semibold") > end - start:
        return ()
    return (Words(text, Point((start + end) / 2, base), _SMALL, "plain", align="centre", face="semibold"),)


def _called(name: str, says: str, left: float, top: float, wide: float) -> Iterator[Mark]:
    """The gauge's name, and beside it what to do with it in two lines at most."""
    yield Words(name, Point(left, top + _NAME * 0.95), _NAME, "plain", face="semibold")
    aside = left + width(name, _NAME, "semibold") + 6
    yield from paragraph(says, aside, top + 0.6, wide - _NAMES - 3 - aside, _TEXT, lead=1.25).marks
