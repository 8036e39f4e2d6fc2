"""The lengths that are written round a lay plan: what it takes, and where the cloth on hand ends."""

from typing import Final

from studio.brief import Cloth
from studio.words import Phrase, phrase

NEAR: Final = 0.1
"""A plan longer than the cloth by less than this (mm) comes out of it."""


def washed(cloth: Cloth) -> float | None:
    """The length on hand as the wash leaves it, mm."""
    return None if cloth.on_hand is None else cloth.on_hand * (1 - cloth.shrinkage)


def ends_before(cloth: Cloth, takes: float) -> bool:
    """Whether the cloth on hand ends before a plan does that takes so much (mm)."""
    have = washed(cloth)
    return have is not None and takes > have + NEAR


def on_hand_words(cloth: Cloth, takes: float) -> Phrase:
    """The length on hand, also as the wash leaves it; and that it ends, where the plan takes more."""
    short = ends_before(cloth, takes)
    if cloth.shrinkage:
        text = "on hand {l}, washed {w}: ends here" if short else "on hand {l}, washed {w}"
    else:
        text = "on hand {l}: ends here" if short else "on hand {l}"
    return phrase(text, l=cloth.on_hand or 0.0, w=washed(cloth) or 0.0)


def clear_middle(start: float, end: float, free: float, wide: float) -> float:
    """Where words so wide stand in the middle of a span; after it where they would begin before what is free (px)."""
    middle = (start + end) / 2
    return middle if middle - wide / 2 >= free else max(free, end + 4) + wide / 2
