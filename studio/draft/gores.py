"""Gores: shaped panels that fit the hips and flare below them, all round a skirt."""

# fmt: off
import math
from collections import Counter
from collections.abc import Iterator
from functools import lru_cache
from typing import Annotated

from msgspec import Struct
from msgspec.structs import replace

from studio.brief import Brief, Flare, Skirt
from studio.brief.declare import mm, per_cent, whole
from studio.geometry import TOUCH, Point, line
from studio.words import phrase

from .draft import Fact
from .drawn import Drawn, drawn
from .gore import Gore, fall, gore, lowest_flare, lowest_hip
from .gore_ring import Kind, gore_ring, gore_stations
from .hang import Hung
from .marks import FIRST, Station, notch_on
from .panel import panel, side_notch
from .piece import Dimension, Handle, LineMark, Piece, Spot
from .ring import Ring, opening_sides
from .shape import Shape


class Gores(Skirt, frozen=True):
    """The numbers of every skirt of gores."""

    gores: Annotated[int, whole("Gores", 4, 12, "How many shaped panels go round.")] = 6
    sweep: Annotated[float, mm("Hem sweep", 800, 8000, "Once round the hem.", step=20)] = 2200.0
    hip_ease: Annotated[float, mm("Hip ease", 0, 200, "Room at the hips; 4 to 6 cm let you sit.", step=5)] = 50.0
    flare_from: Annotated[float, mm(
        "Flare from", 100, 1400, "Down from the waist seam, for a trumpet; empty to flare from the hips.", step=5,
        usual=450, blank="the hips")] | None = None
    balance: Annotated[float, per_cent(
        "Back fuller by", 0, 0.3, "What back gores take of the hips more than the mean, and front gores less.")] = 0.0

    @property
    def flare(self) -> Flare:
        """Flared: its hem is a curve."""
        return "flared"
# fmt: on

WIDENS, HIP = ("skirt.sweep", "skirt.hip_ease"), ("body.waist_to_hip",)
APART = 6.0
"""A handle may stand this far (mm) from what it moves."""


class Cut(Struct, frozen=True):
    """The gores of one skirt, from the opening round: each one's shape, and the finished hem, mm."""

    gores: tuple[Gore, ...]
    hem: float
    hip: float


def hung(brief: Brief, skirt: Gores) -> Hung:
    """Gores from the opening round; equal ones are one piece."""
    cut = gores(brief, skirt)
    met = gore_stations(brief, skirt.gores)
    ring, kinds = gore_ring(brief, cut.gores, met)
    facts = (
        Fact("hip_girth", "Hips with ease", cut.hip),
        Fact("hem_sweep", "Hem sweep", cut.hem),
        Fact("panels", "Gores", len(ring), "count"),
    )
    return Hung(
        ring,
        met,
        tuple(_piece(brief, skirt, cut, kind, ring) for kind in kinds),
        facts,
        drawn=tuple(kept(brief, skirt, cut)),
    )


def gores(brief: Brief, skirt: Gores) -> Cut:
    """Every gore: the waist shared equally, the hips by the balance, all sides equally long so that seams walk."""
    over = brief.over  # as much at hips and hem as at the waist
    hip = brief.hips + skirt.hip_ease + over
    if brief.waistband.kind == "elastic":
        hip = max(hip, brief.waist_seam)
    return _cut(
        brief.waist_seam, hip, skirt.sweep + over, brief.finished_length, brief.hip_depth, skirt.flare_from or 0.0,
        skirt.gores, skirt.balance, brief.opening.place, brief.seams.allowance, brief.hem,
    )  # fmt: skip


def kept(brief: Brief, skirt: Gores, cut: Cut) -> Iterator[Drawn]:
    """A sweep that so many gores cannot take, ease that the waist gives anyhow, a flare that cannot begin there."""
    over = brief.over
    text = "The sweep asked is {asked}; {n:count} gores so long can take {made}."
    if cut.hem - over > skirt.sweep:
        text = "The sweep asked is {asked}; {n:count} gores so long need {made}."
    yield from drawn("skirt.sweep", skirt.sweep, cut.hem - over, text, n=skirt.gores)
    least = brief.waist_seam - brief.hips - over if brief.waistband.kind == "elastic" else 0.0
    text = "Under elastic the hips have {made} of ease, not the {asked} asked."
    yield from drawn("skirt.hip_ease", skirt.hip_ease, max(skirt.hip_ease, least), text)
    if skirt.flare_from is not None:
        deep = min(brief.hip_depth, lowest_hip(brief.finished_length))
        made = max(deep, min(skirt.flare_from, lowest_flare(brief.finished_length, deep)))
        text = "The flare asked begins {asked} down; the gores can flare from {made}."
        above = made == deep
        yield from drawn("skirt.flare_from", skirt.flare_from, made, text,
                         instead={"skirt.flare_from": None} if above else None,
                         does=phrase("Flare from the hips") if above else None)  # fmt: skip


@lru_cache(maxsize=64)
def _cut(
    waist: float, hip: float, sweep: float, length: float, hip_depth: float, flare_from: float, n: int,
    balance: float, place: str, allowance: float, hem: float,
) -> Cut:  # fmt: skip
    if (deep := lowest_hip(length)) < hip_depth:  # it ends above the hips, and is drafted as wide as there
        hip = waist + (hip - waist) * deep / hip_depth
    mean = hip / n / 2
    falls = fall(waist / n / 2, mean, sweep / n / 2, length, hip_depth, flare_from=flare_from, allowance=allowance,
                 hem=hem)  # fmt: skip
    side = gore(waist / n / 2, mean, falls).side
    shares = _shares(n, balance, place)
    found = tuple(gore(waist / n / 2, mean * s, falls, None if s == 1 else side) for s in shares)
    return Cut(found, sum(2 * falls.half_hem(mean * s) for s in shares), hip)


def _shares(n: int, balance: float, place: str) -> tuple[float, ...]:
    """What each gore takes of the hips, times the mean: more where its middle lies behind the side, less before it."""
    start = FIRST[place] / 4
    way = (math.cos(2 * math.pi * (start + (k + 0.5) / n)) for k in range(n))
    shares = [1 + balance * ((c > 1e-9) - (c < -1e-9)) for c in way]
    return tuple(s * n / sum(shares) for s in shares)


def _piece(brief: Brief, skirt: Gores, cut: Cut, kind: Kind, ring: Ring) -> Piece:
    """The piece of one kind of gore."""
    opens = opening_sides(ring)
    opened = tuple(s for s in ("left", "right") if (kind.id, s) in opens and brief.stop > TOUCH)
    return panel(
        brief, kind.id, kind.name, _shape(brief, skirt, cut, kind, opened), ring, cut=kind.cut, mirrored=kind.mirrored,
    )  # fmt: skip


def _shape(brief: Brief, skirt: Gores, cut: Cut, kind: Kind, opened: tuple[str, ...]) -> Shape:
    g, length, a = kind.gore, brief.finished_length, brief.seams.allowance
    deep = g.hip.at(g.hip.length / 2).y
    hip = LineMark("hip", g.hip, phrase("hip line, {d} below the seam", d=deep), HIP)
    return Shape(
        top=g.waist, right=g.right, hem=g.hem, left=g.left, grain=_grain(g, length), widens=WIDENS,
        lines=(hip, *(_quarter(g, s) for s in kind.marks if s.words)),
        spots=(
            *(notch_on(g.waist, s.at, a, "waist") for s in kind.marks),
            *(_hip_notch(brief, g, side, side in opened) for side in ("right", "left")),
        ),
        handles=(Handle("skirt.length", Point(0, length), "y", 1.0), *_sweep_handle(brief, skirt, cut, g)),
        dimensions=tuple(_dimensions(brief, g, len(cut.gores), kind.id == "skirt")),
    )  # fmt: skip


def _grain(g: Gore, length: float) -> tuple[Point, Point]:
    """Upright beside the axis, clear of a middle that is marked."""
    x = g.waist.length / 6
    return Point(x, length * 0.45), Point(x, length * 0.8)


def _quarter(g: Gore, s: Station) -> LineMark:
    """The line of a quarter that lies on a gore: down its middle to the hem, or aside of it to the like place in the
    hip line.
    """
    share = s.at / g.waist.length
    foot = g.hem.at(g.hem.length / 2) if abs(share - 0.5) < TOUCH else g.hip.at(g.hip.length * share)
    return LineMark(s.role, line(*g.waist.at(s.at), *foot), phrase(s.words), WIDENS)


def _hip_notch(brief: Brief, g: Gore, side: str, opened: bool) -> Spot:
    """Where the hip line meets a side, so that gores are matched there; on the opening, where that reaches so far."""
    return side_notch(brief, side, g.right if side == "right" else g.left, g.hip_along, opened, HIP)


def _sweep_handle(brief: Brief, skirt: Gores, cut: Cut, g: Gore) -> tuple[Handle, ...]:
    """The sweep is dragged at the hem's corner, as far out as half the hem is long: that place, unlike the corner on
    its arc, moves evenly. None where the two lie apart, where the sweep is held back, or where gores differ.
    """
    corner, half = g.hem.start, g.hem.length / 2
    n = len(cut.gores)
    if half - corner.x > APART or skirt.balance or abs(cut.hem - skirt.sweep - brief.over) > TOUCH * n:
        return ()
    return (Handle("skirt.sweep", Point(half, corner.y), "x", 2.0 * n),)


def _dimensions(brief: Brief, g: Gore, n: int, first: bool) -> Iterator[Dimension]:
    length, hip = brief.finished_length, g.hip
    top = -brief.waistband.depth if brief.skirt.length_includes_band else 0.0
    left, right = g.hem.end.moved(0, brief.hem), g.hem.start.moved(0, brief.hem)
    words = phrase("{h:bare}, one of {n:count}", h=g.hem.length, n=n)
    yield Dimension("skirt.sweep", left, right, "below", words)
    yield Dimension("skirt.hip_ease", hip.start, hip.end, "above", phrase("{h:bare} at the hips", h=hip.length))
    yield Dimension("body.waist", g.waist.start, g.waist.end, "above", phrase("{w:bare}", w=g.waist.length))
    if first:
        words = phrase("{l:bare}", l=length - top)
        yield Dimension("skirt.length", Point(left.x, top), Point(left.x, length), "left", words)


def girth(brief: Brief, skirt: Gores, depth: float) -> float:
    """All gores on the level line that crosses their middles at this depth, mm."""
    counts = Counter(gores(brief, skirt).gores)
    return sum(2 * g.half(depth) * n for g, n in counts.items())


def cleared(brief: Brief, skirt: Gores, wanted: float) -> dict[str, float] | None:
    """The ease that gives the hips a girth, to 5 mm up; none where the skirt is too short to reach them."""
    edit = {"skirt.hip_ease": max(0.0, math.ceil((wanted - brief.hips) / 5 - 1e-9) * 5.0)}
    after = replace(skirt, hip_ease=edit["skirt.hip_ease"])
    return edit if girth(brief, after, brief.hip_depth) >= wanted - 1e-9 else None
