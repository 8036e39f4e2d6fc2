"""Words that carry lengths: a sentence with its numbers beside it, so that every reader reads their own unit."""

import gettext
from typing import TypeAlias

from msgspec import Struct

Value: TypeAlias = float | int | str | tuple[float, float]

_catalogue: gettext.NullTranslations = gettext.NullTranslations()


class Phrase(Struct, frozen=True):
    """A sentence with places for values: `{stop}` a length in mm, `{n:count}`, `{r:ratio}`, `{s:share}`, `{w:word}`.

    The text is what a translator sees; `units.spell` puts the values in.
    """

    text: str
    values: dict[str, Value] = {}


def phrase(text: str, **values: Value) -> Phrase:
    """A phrase with its values."""
    return Phrase(text, values)


def tr(text: str) -> str:
    """The words in the maker's language; in English until there is a catalogue."""
    return _catalogue.gettext(text) if text else text
