"""All pieces of a skirt together, to be cut; and the end of the cloth, made square."""

from collections.abc import Sequence
from typing import Final

from studio.draft import Draft, Piece
from studio.drawing import Drawing, Group, Mark, Stroke, Words
from studio.drawing.furniture import frame, placed_path, stroke
from studio.geometry import Box, Point, line, polyline
from studio.words import tr

from .room import CLOTH, SEWN, THIN, caption, note, now
from .torn import torn

_BETWEEN: Final = 1.6
_FIGURE: Final = 3.2


def to_cut(draft: Draft) -> Drawing:
    """Every piece with its number, all to one scale, as they lie when the cloth is open."""
    shapes = [(str(k), p, p.as_cut.box) for k, p in enumerate(draft.pieces, 1)]
    low, high = 0.0, 1.0
    for _ in range(24):
        middle = (low + high) / 2
        low, high = (middle, high) if _rows(shapes, middle) is not None else (low, middle)
    found = _rows(shapes, low)
    assert found is not None
    marks: list[Mark] = []
    for (number, piece, box), corner in zip(shapes, found, strict=True):
        at = Point(corner.x - box.left * low, corner.y - box.top * low)
        outline = placed_path(piece.as_cut, at, low)
        fill = "white" if piece.cloth == "main" else "tone"
        middle_of = Point(corner.x + box.width * low / 2, corner.y + box.height * low / 2 + _FIGURE * 0.34)
        marks.append(Stroke(outline, "cut", 0.4, "accent", fill=fill))  # type: ignore[arg-type]
        marks.append(Words(number, middle_of, _FIGURE, "plain", align="centre", face="semibold", patch=True))
    return (Group("pieces", tuple(marks)), caption(tr("all pieces, to one scale")))


def _rows(shapes: Sequence[tuple[str, Piece, Box]], scale: float) -> list[Point] | None:
    """The top left corners of pieces set in rows, the tallest first in each; None where they do not fit."""
    order = sorted(range(len(shapes)), key=lambda k: -shapes[k][2].height)
    places: dict[int, Point] = {}
    x, y, tall = CLOTH.left, CLOTH.top, 0.0
    for k in order:
        wide, high = shapes[k][2].width * scale, max(shapes[k][2].height * scale, _FIGURE + 0.6)
        if x > CLOTH.left and x + wide > CLOTH.right:
            x, y, tall = CLOTH.left, y + tall + _BETWEEN, 0.0
        if x + wide > CLOTH.right + 1e-6 or y + high > CLOTH.bottom:
            return None
        places[k] = Point(x, y + (high - shapes[k][2].height * scale) / 2)
        x, tall = x + wide + _BETWEEN, max(tall, high)
    return [places[k] for k in range(len(shapes))]


def squared(_draft: Draft) -> Drawing:
    """The end of the cloth: a thread drawn across it, square to the selvedge."""
    left, thread, top, foot = 5.0, 52.0, 4.0, 37.0
    cloth = (Point(left, top), Point(thread + 3.5, top), Point(thread + 8, foot), Point(left, foot))
    outline = polyline((*cloth, cloth[0]))
    corner = ((thread - 3.5, foot - 2.2), (thread - 3.5, foot - 5.7), (thread, foot - 5.7))
    return (
        Stroke(outline, "plain", 0.3, fill="white"),
        frame("plain", Box(left, foot - 2.2, thread + 7.7, foot), width=THIN, fill="tone"),
        now(line(thread, top, thread, foot), dashed=False, width=SEWN),
        stroke("plain", *corner, width=0.35, colour="accent"),
        *torn(outline.flat(), Box(left + 0.01, top - 1, 70, foot + 1)),
        note(tr("cut along the thread"), thread - 2, 16, "right", now=True),
        note(tr("selvedge"), 28, foot - 4, "centre"),
        caption(tr("the end of the cloth")),
    )
