"""The words of a band's row: what is decided, how its choices are called, and what is read aloud."""

from collections.abc import Sequence
from typing import Final

from PySide6.QtWidgets import QWidget

from studio.brief import PrintBand, declared
from studio.brief.bands import line_words, lines_of
from studio.words import tr

PARTS: Final = {one.path: one for one in declared(PrintBand)}
"""What is decided about a band, by its name in the record."""
_STANDS: Final = {"either": "either way up", "first": "stands up", "second": "hangs down"}


def choices(name: str, band: PrintBand, shown: Sequence[str]) -> dict[str, str]:
    """What can be chosen, with its words: of what is `shown` on this skirt, what suits that. The band's own is there
    even where this skirt has no use for it; there is none where there is nothing to choose.
    """
    if name == "tops":
        return {one: tr(_STANDS[one]) for one in PARTS[name].options}
    options = lines_of(band.holds) if name == "by" else tuple(shown)
    if not options:
        return {}
    own: str = getattr(band, name)
    every = options if own in options else (*options, own)
    return {one: tr(line_words(band.holds, one) if name == "by" else one) for one in every}


def speak(control: QWidget, title: str, name: str, unit: str = "", fault: str = "") -> None:
    """Say which band, what of it and in what; then what is wrong, and what it means."""
    hint = tr(PARTS[name].hint)
    control.setToolTip(hint)
    control.setAccessibleName(", ".join(filter(None, (title, tr(PARTS[name].words), unit))))
    control.setAccessibleDescription(f"{fault} {hint}".strip())
