"""What the cloth in the brief becomes by a photograph of it, taken before the first wash."""

from collections.abc import Sequence
from typing import Final

from msgspec.structs import replace

from studio.brief import Cloth, PrintBand
from studio.brief.across import amiss
from studio.brief.bands import usual_hold
from studio.words import Phrase

_FACE: Final = 150.0
"""A band not broader than this (mm) may be meant for a waistband's face."""


def cloth_of(
    cloth: Cloth, width: float, bands: Sequence[tuple[float, float]], repeat: float | None, offset: float
) -> Cloth:
    """The cloth with what was measured on the photograph (mm): bands, repeat and first motif as the first wash will
    leave them, the width as it is bought.
    """
    across, along = 1 - cloth.shrinkage_across, 1 - cloth.shrinkage
    return replace(
        cloth,
        width=round(width, 1),
        bands=as_bands([(a * across, b * across) for a, b in bands]),
        repeat=repeat * along if repeat else None,
        offset=min(3000.0, max(0.0, offset * along)),
    )


def ill_laid(cloth: Cloth) -> Phrase | None:
    """What is wrong with the first band that cannot lie where it does, as its row would say it."""
    bands = cloth.bands
    said = (amiss(b.start, b.end, (*bands[:k], *bands[k + 1 :]), cloth) for k, b in enumerate(bands))
    return next((fault for fault in said if fault), None)


def as_bands(found: Sequence[tuple[float, float]]) -> tuple[PrintBand, ...]:
    """Bands as they are usually worn: the broadest on the skirt's hem, the narrowest other on the waistband's face."""
    wide = sorted(((min(b), max(b)) for b in found if b[0] != b[1]), key=lambda b: b[0] - b[1])
    made = []
    for k, (start, end) in enumerate(wide):
        last = k > 0 and k == len(wide) - 1 and end - start <= _FACE
        holds = "skirt" if k == 0 else "waistband" if last else "nothing"
        made.append(PrintBand(start, end, holds, usual_hold(holds)))  # type: ignore[arg-type]
    return tuple(sorted(made, key=lambda b: b.start))
