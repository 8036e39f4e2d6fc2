"""Tiers: straight panels hung in rings, each gathered to the ring above it.

How a length is shared among them, how wide each is, and the pieces and seams that follow.
"""

import itertools
import math
from collections.abc import Sequence
from operator import mul

from msgspec import Struct

from studio.brief import Brief
from studio.geometry import TOUCH
from studio.units import spell
from studio.words import phrase

from .draft import Fact
from .gathers import open_gap, sections, tightest_ratio
from .marks import Station, stations
from .panel import Level
from .piece import Piece
from .ring import Ring, joins, tops
from .seam import Part, Seam
from .straight_panel import Panels, straight_panels

LEAST = 20.0
"""No tier is drafted less deep than this (mm), where the length allows it."""


class Tiers(Struct, frozen=True):
    """Every tier drafted: the ring at the waist and where it meets the band, all pieces from the waist down, and
    the seams below the first ring's own.
    """

    ring: Ring
    stations: tuple[Station, ...]
    pieces: tuple[Piece, ...]
    seams: tuple[Seam, ...]


def growing_depths(length: float, count: int, growth: float = 1.0) -> tuple[float, ...]:
    """`length` mm in `count` tiers, each `growth` times as deep as the one above."""
    shares = [growth**k for k in range(count)]
    return tuple(length * s / sum(shares) for s in shares)


def typed_depths(length: float, typed: Sequence[float | None]) -> tuple[float, ...]:
    """Tiers as deep as they were typed, mm; those that are None share what is left of `length` equally.

    Where the typed ones leave too little, they are kept from the waist down, and each tier below has its least.
    """
    least = min(LEAST, length / len(typed))
    spare = length - least * len(typed)
    kept: list[float | None] = []
    for depth in typed:
        kept.append(None if depth is None else min(max(least, depth), least + spare))
        spare -= 0.0 if kept[-1] is None else kept[-1] - least
    rest = least + spare / max(1, kept.count(None))
    return tuple(rest if depth is None else depth for depth in kept)


def tier_widths(seam: float, ratios: Sequence[float]) -> tuple[float, ...]:
    """Flat width of each tier, mm: the waist seam times every ratio down to it."""
    return tuple(itertools.accumulate(ratios, mul, initial=seam))[1:]


def spin_ratios(seam: float, depths: Sequence[float]) -> tuple[float, ...]:
    """Ratios that let the skirt fly out flat in a spin.

    There the foot of each tier lies on a circle, and measures 2π(r + d): r the radius of the waist seam, d the depth
    so far (the rule of a square dancers' sewing guide; derived from the circle).
    """
    girths = [seam, *(seam + 2 * math.pi * d for d in itertools.accumulate(depths))]
    return tuple(wide / above for above, wide in itertools.pairwise(girths))


def tier_at(depths: Sequence[float], depth: float) -> int:
    """Which tier, counted from 0, lies `depth` mm below the waist seam; at a join it is the one above."""
    feet = itertools.accumulate(depths)
    return next((k for k, foot in enumerate(feet) if depth < foot + TOUCH), len(depths) - 1)


def tiers(brief: Brief, panels: Sequence[Panels]) -> Tiers:
    """The tiers from the waist down, each sewn by its top to the feet of the one above."""
    met = [_stations(brief, one) for one in panels]
    feet = list(itertools.accumulate((one.deep for one in panels), initial=0.0))
    rings: list[Ring] = []
    pieces: list[tuple[Piece, ...]] = []
    for k, one in enumerate(panels):
        level = _level(k, feet[k], last=k == len(panels) - 1)
        below = met[k + 1] if k + 1 < len(panels) else ()
        ring, drafted = straight_panels(brief, one, met[k], stem=_stem(k), name=_name(k), level=level, below=below)
        rings.append(ring)
        pieces.append(drafted)
    closed = brief.opening.kind != "wrap"
    seams: list[Seam] = []
    for above, ring, drafted in zip(rings, rings[1:], pieces[1:], strict=False):
        hung = tuple(Part(place.piece, "foot", not place.mirrored) for place in above)
        seams += (Seam("tier", hung, tops(ring, "top")), *joins(ring, {p.id: p for p in drafted}, closed))
    return Tiers(rings[0], met[0], tuple(itertools.chain(*pieces)), tuple(seams))


def tier_facts(brief: Brief, panels: Sequence[Panels]) -> tuple[Fact, ...]:
    """How deep and how wide each tier is, and how far the joins between them are gathered at the most."""
    feet = list(itertools.accumulate((one.deep for one in panels), initial=0.0))
    tightest = max(
        tightest_ratio(one.flat_width, one.sewn, open_gap(brief, foot))
        for one, foot in zip(panels[1:], feet[1:], strict=False)
    )
    sizes = []
    for k, one in enumerate(panels, 1):
        sizes.append(Fact(f"tier_{k}_width", spell(phrase("Tier {k:count}, flat width", k=k), "cm"), one.flat_width))
        sizes.append(Fact(f"tier_{k}_depth", spell(phrase("Tier {k:count}, depth", k=k), "cm"), one.deep))
    return (*sizes, Fact("tightest_join", "Gather ratio where tiers join, at the most", tightest, "ratio"))


def _stem(k: int) -> str:
    return "skirt" if k == 0 else f"tier-{k + 1}"


def _name(k: int) -> str:
    return spell(phrase("Tier {k:count}", k=k + 1), "cm")


def _level(k: int, depth: float, *, last: bool) -> Level:
    """Where the k-th tier hangs, its top `depth` mm below the waist seam."""
    return Level(
        top="top" if k else "waist",
        sews_to=f"{_stem(k - 1)}/foot" if k else "waistband/waist",
        foot="hem" if last else "foot",
        foot_sews_to="" if last else f"{_stem(k + 1)}/top",
        depth=depth,
        tier=k + 1,
    )


def _stations(brief: Brief, panels: Panels) -> tuple[Station, ...]:
    """Where a tier meets what it is gathered to, mm along that seam: the same quarters as round the waist."""
    wider = panels.sewn / brief.waist_seam
    found = stations(brief, sections(brief, panels.flat_width))
    return tuple(Station(s.at * wider, s.words) for s in found)
