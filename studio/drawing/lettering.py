"""How much room words take on paper, from the faces themselves, without a screen to ask.

The faces are Source Sans Pro and Source Serif Pro (SIL Open Font License; each licence lies beside its files),
so that every machine sets the same page. Widths are the sum of the letters' advances; kerning is left to the
backends and changes a line by less than a hundredth or so.
"""

import re
import unicodedata
from functools import lru_cache
from importlib.util import find_spec
from pathlib import Path

from studio.geometry import Box, Point

from .mark import Face, Words

_FILES: dict[Face, tuple[str, str]] = {
    "regular": ("font_source_sans_pro", "SourceSansPro-Regular.ttf"),
    "semibold": ("font_source_sans_pro", "SourceSansPro-Semibold.ttf"),
    "bold": ("font_source_sans_pro", "SourceSansPro-Bold.ttf"),
    "italic": ("font_source_sans_pro", "SourceSansPro-It.ttf"),
    "serif": ("font_source_serif_pro", "SourceSerifPro-Semibold.ttf"),
}

ABOVE, BELOW = 0.74, 0.24
"""How far letters reach above and below the baseline, as a share of the em."""

CAPITAL = 0.66
"""Height of a capital or a figure, as a share of the em."""

_JOINED = "\u00a0"
_NUMBER = re.compile(r"(?<=\d) (?=%|\d+/\d|(?:cm|mm|in|m|yd)\b)")

LEAST = 3.0
"""The smallest em on a page, mm: smaller words are lost on a poor printer."""


@lru_cache(maxsize=8)
def font_file(face: Face) -> Path:
    """The TrueType file of a face; its licence is LICENSE.txt in the same folder."""
    package, name = _FILES[face]
    spec = find_spec(package)
    if spec is None or spec.origin is None:
        raise FileNotFoundError(f"The lettering is missing: install the package {package.replace('_', '-')}.")
    return Path(spec.origin).parent / "files" / name


@lru_cache(maxsize=8)
def _advances(face: Face) -> dict[int, float]:
    """Advance of each letter, in ems."""
    from fontTools.ttLib import TTFont

    with TTFont(font_file(face), lazy=True) as font:
        units, metrics = font["head"].unitsPerEm, font["hmtx"].metrics
        return {code: metrics[glyph][0] / units for code, glyph in font.getBestCmap().items()}


def _missing(letter: str) -> float:
    """A guess at a letter that the face lacks: it comes from another face."""
    if unicodedata.category(letter) in ("Mn", "Me", "Cf"):
        return 0.0
    return 1.0 if unicodedata.east_asian_width(letter) in ("W", "F") or ord(letter) > 0xFFFF else 0.6


@lru_cache(maxsize=4096)
def _ems(text: str, face: Face) -> float:
    known = _advances(face)
    return sum(known[ord(c)] if ord(c) in known else _missing(c) for c in text)


def width(text: str, height: float, face: Face = "regular") -> float:
    """Width in mm of one line set with an em of `height` mm."""
    return _ems(printable(text), face) * height


def wrap(text: str, height: float, room: float, face: Face = "regular") -> list[str]:
    """Lines no wider than `room` mm, broken between words, and inside a word only where it is too long by itself.

    A number stays with its fraction and its unit.
    """
    lines: list[str] = []
    for paragraph in _NUMBER.sub(_JOINED, text).split("\n"):
        line = ""
        for word in paragraph.split(" "):
            longer = f"{line} {word}" if line else word
            if width(longer, height, face) <= room:
                line = longer
                continue
            if line:
                lines.append(line)
            *full, line = _chopped(word, height, room, face)
            lines += full
        lines.append(line)
    return [line.replace(_JOINED, " ") for line in lines]


def _chopped(word: str, height: float, room: float, face: Face) -> list[str]:
    parts = [""]
    for letter in word:
        if parts[-1] and width(parts[-1] + letter, height, face) > room:
            parts.append("")
        parts[-1] += letter
    return parts


def fitted(
    text: str, height: float, room: float, face: Face = "regular", least: float = LEAST
) -> tuple[str, float]:  # fmt: skip
    """Words and em height that stay within `room` mm: set smaller, down to `least`; then cut short with an ellipsis."""
    wide = width(text, height, face)
    if wide <= room:
        return text, height
    height = max(least, height * room / wide)
    if width(text, height, face) <= room + 1e-9:
        return text, height
    keep = len(text)
    while keep and width(text[:keep].rstrip() + "…", height, face) > room:
        keep -= 1
    return text[:keep].rstrip() + "…", height


def printable(text: str) -> str:
    """The text as one line that every file can hold: control characters become spaces, broken letters a mark."""
    if text.isprintable():
        return text
    return "".join(_kept(c) for c in text)


def _kept(letter: str) -> str:
    kind = unicodedata.category(letter)
    if kind in ("Cc", "Zl", "Zp"):
        return " "
    return "�" if kind == "Cs" or (ord(letter) & 0xFFFE) == 0xFFFE else letter


def words_corners(words: Words) -> tuple[Point, Point, Point, Point]:
    """Corners of the room that words take, turned as they are: top left, top right, bottom right, bottom left."""
    wide = width(words.text, words.height, words.face)
    left = words.at.x - {"left": 0.0, "centre": wide / 2, "right": wide}[words.align]
    top, foot = words.at.y - ABOVE * words.height, words.at.y + BELOW * words.height
    corners = (Point(left, top), Point(left + wide, top), Point(left + wide, foot), Point(left, foot))
    if not words.turn:
        return corners
    a, b, c, d = (p.turned(words.turn, words.at) for p in corners)
    return a, b, c, d


def words_box(words: Words) -> Box:
    """The upright rectangle that holds words."""
    xs, ys = zip(*words_corners(words), strict=True)
    return Box(min(xs), min(ys), max(xs), max(ys))
