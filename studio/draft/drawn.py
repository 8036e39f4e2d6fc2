"""A number that a draft could not take as it was asked, and what it made of it."""

from collections.abc import Mapping
from typing import Any

from msgspec import Struct

from studio.words import Phrase, phrase

SAME = 0.01
"""What differs by no more than this (mm, or plain) is as it was asked."""


class Drawn(Struct, frozen=True):
    """What was made of the number at `path`: mm, or plain where the number is. `says` says it in a sentence.

    `instead` is the edit that asks for what can be had, and `does` its words, where it is another than the number made.
    """

    path: str
    asked: float
    made: float
    says: Phrase
    instead: Mapping[str, Any] | None = None
    does: Phrase | None = None


def drawn(
    path: str, asked: float | None, made: float, text: str, *,
    instead: Mapping[str, Any] | None = None, does: Phrase | None = None, **values: float | str,
) -> tuple[Drawn, ...]:  # fmt: skip
    """Nothing where the number was taken as it was asked, or left empty; `text` has places for {asked} and {made}."""
    if asked is None or abs(made - asked) <= SAME:
        return ()
    return (Drawn(path, asked, made, phrase(text, asked=asked, made=made, **values), instead, does),)
