"""How well a reading agrees with the truth."""

from typing import NamedTuple

from cloths import Truth

from studio.cloth.photo import Print


class Marks(NamedTuple):
    """Whether the repeat is within 1 %, all bands are found and no other, and one-way is right; how far each edge
    of a found band lies off (mm); and for each found band whether its way is right.
    """

    repeat: bool
    bands: bool
    one_way: bool
    edges: list[float]
    ways: list[bool]


def mark(truth: Truth, found: Print) -> Marks:
    """A band is found where more than half of the stretch that either covers is covered by both."""
    edges: list[float] = []
    ways: list[bool] = []
    left = list(found.bands)
    for start, end, way in truth.bands:
        shares = [
            (max(0.0, min(end, b.end) - max(start, b.start)) / (max(end, b.end) - min(start, b.start)), b) for b in left
        ]
        share, band = max(shares, key=lambda s: s[0], default=(0.0, None))
        if band is not None and share > 0.5:
            left.remove(band)
            edges += [band.start - start, band.end - end]
            ways.append(band.way == way)
    if found.repeat is None or truth.repeat is None:
        repeat = found.repeat is truth.repeat
    else:
        repeat = abs(found.repeat.length / truth.repeat - 1) < 0.01
    right = len(ways) == len(truth.bands) and not left
    return Marks(repeat, right, found.one_way == truth.one_way, edges, ways)
