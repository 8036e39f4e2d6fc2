"""Bands of a print as they are typed and shown: "0 to 14 skirt by hem; 120 to 132 waistband by face centre"."""

import re
from typing import Final

from ..trouble import shown
from ..units import Unit, Unreadable, read_length, spell, write_length
from ..words import phrase, tr
from .records import PrintBand

PATH: Final = "cloth.bands"
MOST: Final = 12
"""Bands of one cloth."""
WIDEST: Final = 3200.0
"""Across the widest cloth, mm."""
LONGEST: Final = 1200
"""Characters looked at."""
_BAND: Final = re.compile(
    r"(?P<start>.+?)\s*(?:\bto\b|–|-)\s*(?P<end>[^a-z]+?(?:\s*(?:cm|mm|m|in|inches|ft|yd)\b)?[^a-z]*?)"
    r"(?:\s+(?P<holds>skirt|waistband|tier [1-6]|nothing))?"
    r"(?:\s+by\s+(?P<by>hem|top|fold|face centre))?(?:\s+tops\s+(?P<tops>either|first|second))?"
)


NO_BAND: Final = (
    "“{typed:word}” is not a band; type one such as 0 to 14 skirt by hem, and ; between two: 0 to 14 skirt; 120 to 132 "
    "waistband."
)


def read_bands(text: str, unit: Unit) -> tuple[PrintBand, ...]:
    """The bands that somebody typed, in order across the cloth; none for an empty text. Raises `Unreadable`."""
    if len(text) > LONGEST:
        raise _refused(tr("“{typed:word}” is too long."), text)
    said = [part.strip() for part in re.split(r"[;\n]", text) if part.strip()]
    if len(said) > MOST:
        raise _refused(tr("A cloth has at most 12 bands."), text)
    if len(said) == 1 and said[0].casefold() in ("none", tr("none")):
        return ()
    return tuple(sorted((_band(part, unit) for part in said), key=lambda band: band.start))


def write_bands(bands: tuple[PrintBand, ...], unit: Unit, *, bare: bool = False) -> str:
    """Bands as they may be typed again; "none" for none, or nothing when `bare`."""
    if not bands:
        return "" if bare else tr("none")
    return "; ".join(_words(band, unit) for band in bands)


def usual_hold(holds: str) -> str:
    """What of a piece is laid on a band where nothing is said: a skirt's hem, the middle of a waistband's face."""
    return "face centre" if holds == "waistband" else "hem"


LINES: Final = {"hem": "hem line", "top": "seam line at the top", "fold": "fold", "face centre": "middle of its face"}
"""What of a piece is laid on a band, as it is said."""


def lines_of(holds: str) -> tuple[str, ...]:
    """What of a piece may be laid on a band that is for it, the usual first; nothing of nothing."""
    match holds:
        case "nothing":
            return ()
        case "waistband":
            return ("face centre", "fold", "hem", "top")
    return ("hem", "top", "face centre")


def line_words(holds: str, by: str) -> str:
    """What of a piece is laid on a band, in words: the lower line of a waistband is no hem, that of a tier may be."""
    lower = "lower seam line" if holds == "waistband" else "hem or lower seam line"
    return lower if by == "hem" and holds != "skirt" else LINES[by]


def bands_at(path: str, bands: tuple[PrintBand, ...]) -> tuple[PrintBand, ...]:
    """The bands that a path speaks of: all of them at cloth.bands, one at cloth.bands.0."""
    return tuple(b for k, b in enumerate(bands) if path in (PATH, f"{PATH}.{k}"))


def _band(said: str, unit: Unit) -> PrintBand:
    found = _BAND.fullmatch(" ".join(said.casefold().split())) if len(said) <= 120 else None
    if not found:
        raise _refused(tr(NO_BAND), said)
    try:
        start, end = (read_length(found[name], unit) for name in ("start", "end"))
    except Unreadable as fault:
        raise _refused(tr(NO_BAND), said) from fault
    start, end = (_across(mm, found[name]) for name, mm in (("start", start), ("end", end)))
    if end <= start:
        raise _refused(tr("A band goes from less to more, as 0 to 14; not “{typed:word}”."), said)
    holds = found["holds"] or "skirt"
    return PrintBand(start, end, holds, found["by"] or usual_hold(holds), found["tops"] or "either")  # type: ignore[arg-type]


def _across(across: float, text: str) -> float:
    if across > WIDEST + 25.4 / 16:  # half of what is shown of an inch
        raise _refused(tr("No cloth is so wide as “{typed:word}”."), text)
    return min(across, WIDEST)


def _words(band: PrintBand, unit: Unit) -> str:
    start, end = (write_length(mm, unit, bare=True) for mm in (band.start, band.end))
    words = f"{start} to {end} {band.holds}"
    if band.by != usual_hold(band.holds):
        words += f" by {band.by}"
    return words if band.tops == "either" else f"{words} tops {band.tops}"


def _refused(text: str, typed: str) -> Unreadable:
    return Unreadable(spell(phrase(text, typed=shown(typed)), "cm"))
