"""Bands of a print drawn at the edge of the cloth: an end is moved, or a new band drawn where there is none."""

from typing import Final

from msgspec import Struct
from msgspec.structs import replace

from studio.brief import PrintBand
from studio.brief.across import LEAST
from studio.brief.bands import MOST

BESIDE: Final = 34.0
"""How far beside the cloth's cut end bands are drawn, px."""


class BandDrag(Struct, frozen=True):
    """A band whose one end is in hand: the other bands, the band, its end that stays and the one that moves (mm)."""

    others: tuple[PrintBand, ...]
    band: PrintBand
    stays: float
    goes: float
    moved: bool = False

    def to(self, across: float) -> "BandDrag":
        """With the end somewhere else, as far as the next band lets it go."""
        least = max((b.end for b in self.others if b.end <= self.stays), default=0.0)
        most = min((b.start for b in self.others if b.start >= self.stays), default=across)
        across = min(max(across, least), max(most, self.stays))
        return replace(self, goes=across, moved=self.moved or across != self.goes)

    @property
    def bands(self) -> tuple[PrintBand, ...]:
        """All bands as they are now, in order; one that has come to nothing is gone."""
        start, end = sorted((self.stays, self.goes))
        now = (replace(self.band, start=start, end=end),) if end - start >= LEAST else ()
        return tuple(sorted((*self.others, *now), key=lambda b: b.start))


def end_near(bands: tuple[PrintBand, ...], across: float, near: float) -> tuple[int, bool] | None:
    """Which band has an end within `near` mm, the nearest, and whether that is its first; None where none has."""
    ends = [(abs(b.start - across), k, True) for k, b in enumerate(bands)]
    ends += [(abs(b.end - across), k, False) for k, b in enumerate(bands)]
    far, k, first = min(ends, default=(near + 1, 0, True))
    return (k, first) if far <= near else None


def take_band(bands: tuple[PrintBand, ...], across: float, near: float) -> BandDrag | None:
    """The end of a band within `near` mm, or a new one that begins here, for the skirt; None on a band, or if there are
    too many.
    """
    if found := end_near(bands, across, near):
        k, first = found
        one = bands[k]
        stays, goes = (one.end, one.start) if first else (one.start, one.end)
        return BandDrag(bands[:k] + bands[k + 1 :], one, stays, goes)
    if len(bands) >= MOST or any(b.start < across < b.end for b in bands):
        return None
    return BandDrag(bands, PrintBand(across, across + 1, "skirt", "hem"), across, across)
