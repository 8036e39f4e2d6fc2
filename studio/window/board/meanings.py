"""What the lines and marks on the board mean, each with its word, in the order of the legend."""

from collections.abc import Iterable, Sequence
from typing import Final, Literal, TypeAlias

from studio.draft import Piece
from studio.draft.piece import Role, Spotted

from .pens import Ink
from .shape import Shape

Meaning: TypeAlias = Literal[
    "cut", "seam", "fold", "placement", "direction", "centre", "hip", "grain", "gather", "row stop", "zip stop",
    "slit top", "notch", "button", "buttonhole", "hook",
]  # fmt: skip

WORDS: Final[dict[Meaning, str]] = {
    "cut": "cut",
    "seam": "seam",
    "fold": "fold, hem",
    "placement": "placement",
    "direction": "laid to",
    "centre": "centre, quarter",
    "hip": "hip line",
    "grain": "grain",
    "gather": "gather row",
    "row stop": "rows end",
    "zip stop": "zip stop",
    "slit top": "slit top",
    "notch": "notch",
    "button": "button",
    "buttonhole": "buttonhole",
    "hook": "hook, bar",
}
_MARKED: Final[dict[Role | Spotted, Meaning]] = {
    "fold": "fold",
    "hem": "fold",
    "first turn": "fold",
    "centre": "centre",
    "quarter": "centre",
    "hip": "hip",
    "pleat fold": "fold",
    "placement": "placement",
    "direction": "direction",
    "stitching": "seam",
    "dart": "seam",
    "pocket": "seam",
    "slit": "seam",
    "gather": "gather",
    "row stop": "row stop",
    "zip stop": "zip stop",
    "slit top": "slit top",
    "buttonhole": "buttonhole",
    "notch": "notch",
    "button": "button",
    "hook": "hook",
    "bar": "hook",
    "snap": "hook",
    "drill": "hook",
}
_DRAWN: Final[tuple[Ink, ...]] = ("cut", "seam", "grain")  # by the piece itself, without a mark


def meanings(shapes: Iterable[Shape]) -> tuple[Meaning, ...]:
    """The meanings of all that these pieces show, in the order of the legend."""
    drawn = list(shapes)
    found = {_MARKED[role] for shape in drawn for role in _roles(shape.piece)}
    inks = {one.ink for shape in drawn for one in shape.drawn}
    return tuple(m for m in WORDS if m in found or (m in _DRAWN and m in inks))


def _roles(piece: Piece) -> Sequence[Role | Spotted]:
    return [*(line.role for line in piece.lines), *(spot.role for spot in piece.spots)]
