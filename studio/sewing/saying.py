"""Words that many steps use: lengths in a row, and what seams and places are called."""

import math
from collections.abc import Sequence
from typing import Final

from studio.brief import Brief
from studio.draft import Draft, Edge, Piece
from studio.draft.piece import PARTS
from studio.geometry import Line
from studio.words import Phrase, Value, tr

MOST_IN_A_ROW = 4
"""More lengths than this in one sentence cannot be followed at the table."""

SEAMS: Final = {"centre back": "centre back seam", "side": "left side seam", "front": "centre front seam"}
"""What the seam below an opening is called."""
EXTENSION_LIES: Final = {
    "centre back": "on the wearer’s left",
    "side": "at the front of the opening",
    "front": "on the wearer’s right",
}
"""Where the extension lies: the band is walked from the opening to the right as it is seen from outside, and the
extension is at its end.
"""


def several(text: str, lengths: Sequence[float], **values: Value) -> Phrase:
    """A phrase in which `{lengths}` stands for lengths in a row: "12.0, 24.0 and 36.0 cm"."""
    names = [f"at{k}" for k in range(len(lengths))]
    *before, last = [f"{{{name}{'' if name == names[-1] else ':bare'}}}" for name in names]
    row = f"{', '.join(before)} {tr('and')} {last}" if before else last
    return Phrase(text.replace("{lengths}", row), {**dict(zip(names, lengths, strict=True)), **values})


def in_rows(text: str, lengths: Sequence[float], **values: Value) -> tuple[Phrase, ...]:
    """The same, in as many sentences as are needed to be followed."""
    rows = math.ceil(len(lengths) / MOST_IN_A_ROW)
    n = math.ceil(len(lengths) / max(rows, 1))  # evenly, so that none is left alone
    return tuple(several(text, lengths[k : k + n], **values) for k in range(0, len(lengths), max(n, 1)))


def seam_at(brief: Brief) -> str:
    """The seam that the opening lies in."""
    return tr(SEAMS[brief.opening.place])


def panels(pieces: Sequence[Piece]) -> tuple[Piece, ...]:
    """The pieces that hang from the band, or are set into one that does: all of the main cloth but bands and small
    parts.
    """
    return tuple(p for p in pieces if p.cloth == "main" and 0 < p.row < PARTS)


def top_panel(draft: Draft) -> Piece:
    """The first panel that is sewn to the band."""
    found = panels(draft.pieces)
    return next((p for p in found if any(e.name == "waist" for e in p.edges)), found[0])


def level(edge: Edge) -> bool:
    """Whether an edge lies in one straight level line."""
    return all(isinstance(c, Line) and abs(c.direction(0).y) < 1e-6 for c in edge.path.curves)
