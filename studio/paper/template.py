"""A straight panel as a template: the panel's height and a handy width, moved along the chalked waist line.

The template lies on its side: X runs from the waist's raw edge to the hem's, Y from the edge where a move begins
to the one where the next begins. Two metres of rectangle need not be printed to be cut true.
"""

import math
from collections.abc import Iterator
from typing import Literal, TypeAlias

from msgspec import Struct

from studio.cloth.ways import grain_down
from studio.draft import LineMark, Piece
from studio.draft.cutting import cut_words
from studio.drawing import Face, Group, Ink, Mark, Stroke, Words, moved
from studio.drawing.dimension import dimension
from studio.drawing.furniture import arrow, paragraph, stroke
from studio.drawing.piece import INK_OF
from studio.geometry import TOUCH, Point, line, rectangle
from studio.units import spell, write_length
from studio.words import phrase, tr

from .chalk_pleats import is_pleated
from .pattern import EVERY, SMALL, Said, cells, cut_size, grain_words
from .plan import PatternPiece
from .title_block import HEIGHT, title_block

WIDEST, STEP = 170.0, 10.0
"""A template is at most this wide (mm), and a round number of centimetres."""
ORDER, TEXT, EDGE_WORDS = 10.0, 4.4, 3.6


Panels: TypeAlias = Literal["template", "whole", "chalk list"]
"""How panels come on paper."""


class Moves(Struct, frozen=True):
    """How a template is moved: its width, how often it is laid down, and how much the last move takes (mm)."""

    width: float
    count: int
    last: float


def is_panel(piece: Piece) -> bool:
    """Whether a piece is a straight gathered panel, which can be moved along or chalked."""
    return piece.rectangular and any(m.role == "gather" for m in piece.lines)


def comes_as(piece: Piece, asked: Panels) -> Panels:
    """How a piece comes on paper, where the maker asked so for her panels. Pleats have no template, since no two moves
    of it would carry the same folds: they come as distances.
    """
    if is_panel(piece):
        return asked
    return "chalk list" if is_pleated(piece) and asked != "whole" else "whole"


def moves(piece: Piece, room: float) -> Moves:
    """The template of a panel for sheets that show `room` mm; a narrow panel is one move of its own width."""
    whole = piece.cut_line.box.width
    handy = min(WIDEST, max(60.0, math.floor((room - 12) / STEP) * STEP))
    if whole <= handy * 1.5:
        return Moves(whole, 1, whole)
    count = math.ceil(whole / handy - TOUCH)
    return Moves(handy, count, whole - (count - 1) * handy)


def template(piece: Piece, said: Said, step: Moves) -> PatternPiece:
    """The template of a straight panel, with everything on it that a move carries to the cloth."""
    box = piece.cut_line.box
    tall, wide, side = box.height, step.width, -box.left
    across = list(_across(piece))
    outline = rectangle(0, 0, tall, wide)
    marks: list[Mark] = [stroke(ink, (x, 0), (x, wide)) for x, ink, _ in across]
    marks += _start_marks(piece, step, said)
    if step.last < wide - TOUCH:
        marks.append(stroke("join", (0, step.last), (tall, step.last), width=0.5, colour="black"))
    marks.append(Stroke(outline, "cut"))
    marks += (*_across_words(across, wide), *_edge_words(piece, step, tall), *_grain(piece, tall, wide))
    marks += dimension(Point(0, wide - 14), Point(tall, wide - 14), spell(phrase("cut {h:bare}", h=tall), said.unit))
    return PatternPiece(
        number=said.number,
        name=f"{piece.name}, {tr('template')}",
        outline=outline,
        drawing=(Group("template", tuple(marks)),),
        blocks=_blocks(piece, said, step, tall),
        upright=(0.0, *(x for x, _, _ in across), tall),
        lying=tuple({0.0, side, step.last, wide}),
        signs=tuple({m.role for m in piece.lines if _at_start(m, piece, wide)}),
    )


def _across(piece: Piece) -> Iterator[tuple[float, Ink, str]]:
    """Lines that run the whole length of the panel: how far from the waist's raw edge, and what they are."""
    top = piece.cut_line.box.top
    yield -top, "seam", tr("seam, to the band")
    for mark in piece.lines:
        if mark.role in ("hem", "first turn"):
            yield mark.path.start.y - top, "fold", mark.words.text if mark.words else ""


def _start_marks(piece: Piece, step: Moves, said: Said) -> Iterator[Mark]:
    """What lies near the edge the first move begins at: its seam, the gather rows from their start, the stops."""
    box, wide = piece.cut_line.box, step.width
    yield stroke("seam", (0, -box.left), (box.height, -box.left))
    seen: set[float] = set()
    for mark in piece.lines:
        a, b = mark.path.start, mark.path.end
        x0, x1 = a.y - box.top, b.y - box.top
        y0, y1 = a.x - box.left, b.x - box.left
        if mark.role == "gather" and x0 not in seen:
            seen.add(x0)
            yield Stroke(line(x0, y0, x0, wide), "gather")
        elif _at_start(mark, piece, wide):
            yield Stroke(line(x0, y0, x1, y1), INK_OF[mark.role])
            if mark.words is not None:
                text, right = spell(mark.words, said.unit), mark.role == "row stop"
                at = Point(x1 + 3, y1 + 1.1) if right else Point(x1 - 2.5, _off_last_move(max(y0, y1) + 1, step))
                yield Words(text, at, SMALL, align="left" if right else "right", patch=True)


def _off_last_move(y: float, step: Moves) -> float:
    """Where words whose baseline is at y stand clear of the last move's line and its words."""
    return step.last + 6 if step.last - 3 < y < step.last + 6 and step.last < step.width - TOUCH else y


def _at_start(mark: LineMark, piece: Piece, wide: float) -> bool:
    """Whether a mark is a stop that the first move carries to the cloth."""
    return mark.role in ("row stop", "zip stop") and mark.path.box.right - piece.cut_line.box.left < wide


def _across_words(across: list[tuple[float, Ink, str]], wide: float) -> Iterator[Words]:
    """The name of each line that runs along, above it, read from the right."""
    for x, ink, text in across:
        at = Point(x + (12 if ink == "seam" else -1.6), wide - 20)
        yield Words(text, at, SMALL, turn=-90, align="left", patch=True)


def _edge_words(piece: Piece, step: Moves, tall: float) -> Iterator[Words]:
    """Which edge goes where, about once a sheet."""
    if step.count > 1:
        first = tr("first move: this edge on the cut end of the cloth")
        if grain_down(piece):
            first = tr("first move: this edge along the selvedge, clear of it")
        yield from _along(first, 5.4, tall, "semibold")
        yield from _along(tr("next move begins at this edge"), step.width - 2.6, tall, "semibold")
        if step.last < step.width - TOUCH:
            text = spell(phrase("move {n:count}: cut the cloth here", n=step.count), "cm")
            yield from _along(text, step.last + EDGE_WORDS * 0.34, tall, "semibold", patch=True)


def _along(text: str, y: float, tall: float, face: Face, *, patch: bool = False) -> Iterator[Words]:
    n = max(1, round(tall / EVERY))
    for k in range(n):
        at = Point(tall * (k + 0.5) / n, y)
        yield Words(text, at, EDGE_WORDS, align="centre", face=face, patch=patch)


def _grain(piece: Piece, tall: float, wide: float) -> Iterator[Mark]:
    """The grain, with what it runs along."""
    start, end = piece.grain
    if abs(end.x - start.x) > abs(end.y - start.y):
        a, b = Point(tall * 0.88, wide * 0.32), Point(tall * 0.88, wide * 0.82)
    else:
        a, b = Point(tall * 0.72, wide * 0.78), Point(tall * 0.9, wide * 0.78)
    yield from (*arrow(a, b, "grain", both=True), grain_words(a, b))


def _blocks(piece: Piece, said: Said, step: Moves, tall: float) -> tuple[Group, ...]:
    facts = cells(piece, said, cut_size(piece, said.unit))
    block = title_block(said.number, f"{piece.name}, {tr('template')}", cut_words(piece), facts)
    top = _clear(step, HEIGHT)
    blocks = [Group(block.name, moved(block.marks, tall * 0.46, top))]
    if step.count > 1:
        words = spell(phrase("Lay it {n:count} times", n=step.count), "cm")
        text = paragraph(_how(piece, step, said), 0, 12, 126, TEXT)
        order = (Words(words, Point(0, 8), ORDER, face="semibold"), *text.marks)
        blocks.append(Group("order", moved(order, tall * 0.11, _clear(step, text.below))))
    return tuple(blocks)


def _clear(step: Moves, height: float) -> float:
    """How far down a block of that height stands clear of the seam, the last move's line and the edge's words, mm."""
    top, most = 45.0, step.width - 24 - height
    if top - 5 < step.last < top + height + 5 and step.last < step.width - TOUCH:
        top = step.last + 8 if step.last + 8 <= most else step.last - 8 - height
    return max(30.0, min(top, most))


def _how(piece: Piece, step: Moves, said: Said) -> str:
    """How to move the template, with every distance read from the cut end and none added up."""
    box = piece.cut_line.box
    sentences = [
        phrase("Chalk the waist edge with a long rule. Lay the waist on it, chalk both sides, slide on."),
    ]
    if step.last < step.width - TOUCH:
        sentences.append(phrase("Move {n:count} is only {l:bare} wide.", n=step.count, l=step.last))
    if piece.mirrored:
        sentences.append(phrase("Turn the template over for the mirrored panel."))
    if sum(m.role == "zip stop" for m in piece.lines) > 1:
        sentences.append(phrase("Mark the zip stop at the last edge too."))
    marks = sorted(s.at.x - box.left for s in piece.spots if s.role == "notch")
    if marks:
        places = ", ".join(write_length(m, said.unit, bare=True) for m in marks)
        sentences.append(phrase("Notches, from the first edge: {p:word}.", p=places))
    sentences.append(phrase("Tape the whole: {w:bare}.", w=box.width))
    return " ".join(spell(sentence, said.unit) for sentence in sentences)
