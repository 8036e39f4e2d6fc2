"""When a number matters: conditions that several declarations share."""

from typing import Final

from .declare import When

ZIPS: Final = ("invisible", "lapped", "centred")
"""Openings that take a zip."""
BANDS: Final = ("folded", "two-piece", "contour")
"""Bands that stand above the waist seam and lap over at the opening."""

BANDED: Final[When] = (("waistband.kind", BANDS),)
OPENS: Final[When] = (("opening.kind", (*ZIPS, "placket", "wrap")),)
SLIT: Final[When] = (("opening.kind", (*ZIPS, "placket")),)
ZIPPED: Final[When] = (("opening.kind", ZIPS),)
BUTTONED: Final[When] = (("fastening.kind", ("buttons",)),)
ELASTIC: Final[When] = (("waistband.kind", ("elastic",)),)
