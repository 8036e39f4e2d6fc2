"""The pleats of a panel in its chalk list: every fold and every placement, in order from A1, with a box to tick."""

from collections.abc import Iterator

from msgspec import Struct

from studio.draft import LineMark, Piece
from studio.drawing import Mark, Words, moved
from studio.drawing.furniture import stroke, tick_box
from studio.geometry import TOUCH, Point
from studio.units import Unit, spell, write_length
from studio.words import Phrase, phrase, tr

from .single import Block

_TEXT, _ROW, _HEADS, _BETWEEN = 3.6, 6.4, 5.0, 8.0
_LINE, _AT_WAIST, _BELOW = 11.0, 0.58, 0.88
"""Where the words of a row begin (mm), and where its distances end, as shares of a column."""


class PleatLine(Struct, frozen=True):
    """One line to chalk: the pleat it belongs to, what it is, and how far it lies from A1 (mm) at the waist seam, and
    from the depth on from which it runs upright.
    """

    pleat: str
    what: str
    waist: float
    below: float


def is_pleated(piece: Piece) -> bool:
    """Whether a piece is a rectangle laid in pleats, which can be chalked."""
    return piece.rectangular and any(m.role == "pleat fold" for m in piece.lines)


def pleat_lines(piece: Piece) -> tuple[PleatLine, ...]:
    """Every fold and placement of a panel, in order from A1."""
    left = piece.cut_line.box.left
    found = [
        PleatLine(_pleat(piece, m), _WHAT[m.role], m.path.start.x - left, m.path.end.x - left)
        for m in piece.lines
        if m.role in _WHAT
    ]
    return tuple(sorted(found, key=lambda one: one.below))


_WHAT = {"pleat fold": "fold", "placement": "placement"}


def _pleat(piece: Piece, mark: LineMark) -> str:
    """The number on the face that a line bounds; both, where it lies between two."""
    near = min(abs(n.at.x - mark.path.end.x) for n in piece.notes)
    beside = [n for n in piece.notes if abs(n.at.x - mark.path.end.x) < near + TOUCH]
    return "/".join(spell(n.words, "cm") for n in beside)


def how_to_pleat(piece: Piece) -> Phrase:
    """How the lines run, and how they are laid."""
    bent = next((m.path for m in piece.lines if m.role in _WHAT and len(m.path.curves) > 1), None)
    if bent is None:
        return phrase(
            "Chalk each line from waist to hem. Lay each fold, away from its own face, on the next placement."
        )
    return phrase(
        "Chalk each line slanting from the waist seam down to {d:bare} below it, and upright from there to the hem. "
        "Lay each fold, away from its own face, on the next placement.",
        d=bent.curves[-1].start.y,
    )


def pleat_rows(piece: Piece, unit: Unit, wide: float) -> Iterator[Block]:
    """The lines in two columns, read across; the heads come again on a new page."""
    column = (wide - _BETWEEN) / 2
    lines = pleat_lines(piece)
    slanted = any(abs(one.waist - one.below) > TOUCH for one in lines)
    head = Block(tuple(m for x in (0.0, column + _BETWEEN) for m in _heads(x, column, slanted)), _HEADS)
    for k in range(0, len(lines), 2):
        pair = zip((0.0, column + _BETWEEN), lines[k : k + 2], strict=False)
        marks = tuple(m for x, one in pair for m in _row(one, x, column, unit, slanted))
        if k:
            yield Block(marks, _ROW, head=head)
        else:
            yield Block((*head.marks, *moved(marks, 0, _HEADS)), _HEADS + _ROW, 7)


def _heads(x: float, column: float, slanted: bool) -> Iterator[Mark]:
    yield Words(tr("pleat"), Point(x, 3.4), 3.0, "rule")
    if slanted:
        yield Words(tr("at the waist"), Point(x + column * _AT_WAIST, 3.4), 3.0, "rule", align="right")
    below = tr("below") if slanted else tr("from A1")
    yield Words(below, Point(x + column * _BELOW, 3.4), 3.0, "rule", align="right")
    yield stroke("plain", (x, _HEADS), (x + column, _HEADS))


def _row(one: PleatLine, x: float, column: float, unit: Unit, slanted: bool) -> Iterator[Mark]:
    base = _ROW * 0.7
    yield Words(one.pleat, Point(x, base), _TEXT, "plain", face="semibold")
    yield Words(tr(one.what), Point(x + _LINE, base), _TEXT, "plain")
    for share, distance in ((_AT_WAIST, one.waist), (_BELOW, one.below))[0 if slanted else 1 :]:
        at = Point(x + column * share, base)
        yield Words(write_length(distance, unit, bare=True), at, _TEXT, "plain", align="right", face="semibold")
    yield tick_box(x + column - 4.6, base)
    yield stroke("rule", (x, _ROW), (x + column, _ROW))
