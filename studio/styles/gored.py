"""The gored skirt: shaped panels that fit the hips and flare below them."""

# fmt: off
import math
from collections import Counter
from functools import lru_cache
from typing import Annotated

from msgspec import Struct
from msgspec.structs import replace

from studio.brief import Brief, Flare, Skirt
from studio.brief.declare import mm, per_cent, whole
from studio.draft import Dimension, Draft, Fact, Handle, LineMark, Piece
from studio.draft.gore import Gore, fall, gore
from studio.draft.hang import Hung, hang
from studio.draft.marks import FIRST, Station, notch_on, quarter_name
from studio.draft.panel import panel
from studio.draft.ring import Place, Ring, meeting, opening_sides
from studio.draft.shape import Shape
from studio.geometry import Point
from studio.units import spell
from studio.words import phrase, tr

from .style import Edit, Style


class Gored(Skirt, frozen=True, tag="gored"):
    """Gores that fit the hips and flare to the hem."""

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


class Cut(Struct, frozen=True):
    """The gores of one skirt, from the opening round: each one's shape, and the finished hem, mm."""

    gores: tuple[Gore, ...]
    hem: float
    hip: float


def draft(brief: Brief, skirt: Gored) -> Draft:
    """Gores from the opening round, on their band."""
    return hang(brief, hung(brief, skirt))


def hung(brief: Brief, skirt: Gored) -> Hung:
    """Gores from the opening round; equal ones are one piece."""
    cut = gores(brief, skirt)
    ring = _ring(cut.gores)
    stations = _stations(brief, len(ring))
    facts = (
        Fact("hip_girth", "Hips with ease", cut.hip),
        Fact("hem_sweep", "Hem sweep", cut.hem),
        Fact("panels", "Gores", len(ring), "count"),
    )
    return Hung(ring, stations, _pieces(brief, skirt, cut, ring), facts)


def gores(brief: Brief, skirt: Gored) -> Cut:
    """Every gore: the waist shared equally, the hips by the balance, all sides equally long so that seams walk."""
    over = brief.waist_seam - brief.closed if brief.opening.kind == "wrap" else 0.0
    hip = brief.hips + skirt.hip_ease + over
    if brief.waistband.kind == "elastic":
        hip = max(hip, brief.waist_seam)
    return _cut(
        brief.waist_seam, hip, skirt.sweep + over, brief.finished_length, brief.hip_depth, skirt.flare_from or 0.0,
        skirt.gores, skirt.balance, brief.opening.place, brief.seams.allowance, brief.hem,
    )  # fmt: skip


@lru_cache(maxsize=64)
def _cut(
    waist: float, hip: float, sweep: float, length: float, hip_depth: float, flare_from: float, n: int,
    balance: float, place: str, allowance: float, hem: float,
) -> Cut:  # fmt: skip
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


def _ring(found: tuple[Gore, ...]) -> Ring:
    """The gores at the opening are pieces of their own, mirror images where they are alike; equal others are one."""
    first, last = found[0], found[-1]
    kinds = {g: f"gore-{k + 1}" if k else "gore" for k, g in enumerate(dict.fromkeys(found[1:-1]))}
    end = Place("skirt", True) if first == last else Place("skirt-last")
    return (Place("skirt"), *(Place(kinds[g]) for g in found[1:-1]), end)


def _stations(brief: Brief, n: int) -> tuple[Station, ...]:
    """Band and skirt meet at every seam; those at a quarter of the body bear its name."""
    return tuple(
        Station(brief.waist_seam * k / n, quarter_name(brief, 4 * k // n) if 4 * k % n == 0 and _even(brief) else "")
        for k in range(1, n)
    )


def _even(brief: Brief) -> bool:
    return brief.opening.kind != "wrap"


def _pieces(brief: Brief, skirt: Gored, cut: Cut, ring: Ring) -> tuple[Piece, ...]:
    meets, opens, counts = meeting(ring), opening_sides(ring), Counter(p.piece for p in ring)
    shapes = {place.piece: g for place, g in zip(ring, cut.gores, strict=True) if not place.mirrored}
    return tuple(
        panel(
            brief, id, _name(id), _shape(brief, skirt, g, len(ring), id == "skirt"), meets=meets, opens=opens,
            cut=counts[id], mirrored=id == "skirt" and counts[id] == 2,
        )
        for id, g in shapes.items()
    )  # fmt: skip


def _name(id: str) -> str:
    """What a gore is called: those at the opening, and the others with a number where they differ."""
    if id.startswith("skirt"):
        return tr("Gore at the opening") if id == "skirt" else tr("Last gore, at the opening")
    number = id.partition("-")[2]
    return spell(phrase("Gore {n:word}", n=number), "cm") if number else tr("Gore")


def _shape(brief: Brief, skirt: Gored, g: Gore, n: int, first: bool) -> Shape:
    length, a = brief.finished_length, brief.seams.allowance
    sides = {"right": g.right, "left": g.left}
    along = {"right": g.hip_along, "left": g.side - g.hip_along}
    hip = LineMark("hip", g.hip, phrase("hip line, {d} below the seam", d=g.hip.at(g.hip.length / 2).y),
                   ("body.waist_to_hip",))  # fmt: skip
    left, right = g.hem.end, g.hem.start
    words = phrase("{h:bare}, one of {n:count}", h=g.hem.length, n=n)
    top = -brief.waistband.depth if brief.skirt.length_includes_band else 0.0
    foot = brief.hem
    return Shape(
        top=g.waist, right=g.right, hem=g.hem, left=g.left, grain=(Point(0, length * 0.45), Point(0, length * 0.8)),
        widens=("skirt.sweep", "skirt.hip_ease"), lines=(hip,),
        spots=tuple(notch_on(path, along[s], a, s, ("body.waist_to_hip",)) for s, path in sides.items()),
        handles=(Handle("skirt.length", Point(0, length), "y", 1.0),),
        dimensions=(
            Dimension("skirt.sweep", left.moved(0, foot), right.moved(0, foot), "below", words),
            *([Dimension("skirt.length", Point(left.x, top), Point(left.x, length), "left",
                         phrase("{l:bare}", l=length - top))] if first else []),
        ),
    )  # fmt: skip


def girth(brief: Brief, skirt: Gored, depth: float) -> float:
    """All gores on the level line that crosses their middles at this depth, mm."""
    counts = Counter(gores(brief, skirt).gores)
    return sum(2 * g.half(depth) * n for g, n in counts.items())


def widened(brief: Brief, skirt: Gored, girth: float) -> Edit | None:
    """The sweep that gives the hem a girth, to the centimetre up; none where the gores cannot flare so far."""
    edit = {"skirt.sweep": math.ceil(girth / 10 - 1e-9) * 10.0}
    return edit if gores(brief, replace(skirt, sweep=edit["skirt.sweep"])).hem >= girth - 1e-9 else None


def cleared(brief: Brief, skirt: Gored, wanted: float) -> Edit | None:
    """The ease that gives the hips a girth, to 5 mm up; none where the skirt is too short to reach them."""
    edit = {"skirt.hip_ease": max(0.0, math.ceil((wanted - brief.hips) / 5 - 1e-9) * 5.0)}
    after = replace(skirt, hip_ease=edit["skirt.hip_ease"])
    return edit if girth(brief, after, brief.hip_depth) >= wanted - 1e-9 else None


ICON = "M6.5 3h7v2h-7z M6.5 5c-1 3-1 4-3.5 12h14c-2.5-8-2.5-9-3.5-12 M8.6 5c-.4 4-.4 5-1.4 12 M11.4 5c.4 4 .4 5 1.4 12"

STYLE = Style(Gored, draft, girth, icon=ICON, widen=widened, clear=cleared)
