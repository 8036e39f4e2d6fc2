"""How deep a hem is turned: by how the skirt's edge runs, and by the weight of the cloth."""

from typing import Final, Literal, TypeAlias

Flare: TypeAlias = Literal["straight", "A-line", "flared", "circle"]

DEPTHS: Final[dict[Flare, float]] = {"straight": 40.0, "A-line": 35.0, "flared": 25.0, "circle": 12.0}
"""Straight 4 to 5 cm, A-line 3 to 4, flared 2 to 2.5, circle 0.6 to 1.5 (common practice, no source; the bounds of
Oregon State Univ. Extension 4-H L-87 agree: moderate flare 2 to 3 in at most, flared 1 1/2, circle 1/4 or rolled)."""
NARROW: Final = 12.0
"""A narrow hem, turned twice (mm; common practice, no source)."""
SHEER: Final = (60.0, 80.0)
"""Up to this weight (g/m²) a straight hem is this deep (mm): sheer cloth hangs by its hem (4-H L-87: up to 4 in)."""
HEAVY: Final = (350.0, 45.0)
"""From this weight (g/m²) no hem is deeper than this (mm) (4-H L-87: heavy cloth up to 2 in)."""


def usual_hem(flare: Flare, kind: str, weight: float | None) -> float:
    """The depth that suits, mm: allowance below the hem line, first turn included."""
    if kind == "narrow":
        return NARROW
    depth = DEPTHS[flare]
    if weight is None:
        return depth
    if weight <= SHEER[0] and flare == "straight":
        return SHEER[1]
    return min(depth, HEAVY[1]) if weight >= HEAVY[0] else depth
