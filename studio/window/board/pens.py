"""What every line on the board is drawn with: line types of ISO 128-2 (numbers from memory), widths for a screen."""

from functools import lru_cache
from typing import Final, Literal, TypeAlias

from msgspec import Struct
from PySide6.QtCore import Qt
from PySide6.QtGui import QFont, QFontMetricsF, QPen

from .. import theme
from ..tokens import Voice

Ink: TypeAlias = Literal[
    "cut", "seam", "fold", "placement", "centre", "grain", "gather", "notch", "button", "hole", "dimension"
]  # fmt: skip


class Line(Struct, frozen=True):
    """Width and dashes in px, and the colour's token."""

    width: float
    dashes: tuple[float, ...] = ()
    token: str = "ink"


LINES: Final[dict[Ink, Line]] = {
    "cut": Line(1.8),  # 01 continuous, wide
    "seam": Line(1.1, (6, 3)),  # 02 dashed
    "fold": Line(1.1, (14, 3, 1, 3, 1, 3)),  # 05 long-dashed double-dotted
    "placement": Line(1.1, (12, 3, 5, 3)),  # 08 long-dashed short-dashed
    "centre": Line(0.9, (14, 3, 1, 3)),  # 04 long-dashed dotted
    "grain": Line(1.1),
    "gather": Line(1.3, (1.3, 2.6), "gather"),  # 07 dotted
    "notch": Line(1.8),
    "button": Line(1.3),
    "hole": Line(1.8),
    "dimension": Line(1.0, (), "quiet"),
}
_MORE: Final = 1.2  # px wider when lit
_HALO: Final = 9.0
_HALO_ALPHA: Final = 60
PALE: Final = 72
"""Alpha of the band that stands for gather rows too close to tell apart."""

SEE_THROUGH: Final = 200
"""Alpha of the tissue inside a button, so that the lines below it show."""


def pen(ink: Ink, lit: bool = False) -> QPen:
    """The pen of an ink in the theme worn now; lit when what it draws is in hand."""
    return _pen(ink, lit, theme.current().name)


@lru_cache(maxsize=64)
def _pen(ink: Ink, lit: bool, worn: str) -> QPen:
    line = LINES[ink]
    width = line.width + (_MORE if lit else 0)
    drawn = QPen(theme.colour("accent" if lit else line.token), width, c=Qt.PenCapStyle.FlatCap)
    drawn.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    if line.dashes:
        drawn.setDashPattern([d / width for d in line.dashes])  # Qt counts dashes in pen widths
    return drawn


def halo() -> QPen:
    """The glow round a lit line."""
    return QPen(theme.colour("accent", _HALO_ALPHA), _HALO, c=Qt.PenCapStyle.FlatCap)


def pale(width: float, lit: bool = False) -> QPen:
    """The band that stands for gather rows, `width` px broad."""
    return QPen(theme.colour("accent" if lit else "gather", PALE), width, c=Qt.PenCapStyle.FlatCap)


@lru_cache(maxsize=16)
def face(voice: Voice, bold: bool = False) -> QFont:
    """The theme's font, kept."""
    return theme.font(voice, bold=bold)


@lru_cache(maxsize=16)
def metrics(voice: Voice, bold: bool = False) -> QFontMetricsF:
    """The measures of a font."""
    return QFontMetricsF(face(voice, bold))


@lru_cache(maxsize=1024)
def advance(text: str, voice: Voice, bold: bool = False) -> float:
    """How wide a line of words is, px."""
    return metrics(voice, bold).horizontalAdvance(text)


def forget() -> None:
    """The system's font or the theme has changed: measure and mix anew."""
    for kept in (_pen, face, metrics, advance):
        kept.cache_clear()
