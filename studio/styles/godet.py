"""The godet skirt: gores with a fan of cloth set into the foot of every seam."""

# fmt: off
import math
from collections.abc import Iterator
from typing import Annotated

from msgspec import Struct
from msgspec.structs import replace

from studio.brief import Brief, Flare
from studio.brief.declare import mm
from studio.draft import Dimension, Draft, Drawn, Edge, Fact, Handle, LineMark, Part, Piece, Seam, Spot, drawn
from studio.draft.cut_line import cut_line
from studio.draft.gores import Gores, cleared, gores, hung
from studio.draft.gores import girth as around
from studio.draft.hang import hang
from studio.draft.making import Making, Shown
from studio.draft.marks import notch_on
from studio.geometry import TOUCH, Arc, Path, Point, line
from studio.words import phrase, tr

from .style import Edit, Style


class Godet(Gores, frozen=True, tag="godet"):
    """A skirt of gores whose seams open at the foot, each over a godet: a part of a circle about its own point."""

    sweep: Annotated[float, mm(
        "Sweep of the gores", 800, 8000, "Once round the hem, godets left out.", step=20)] = 1400.0
    godet_height: Annotated[float, mm("Godet height", 60, 900, "From its point to the hem line.", step=5)] = 300.0
    godet_width: Annotated[float, mm("Godet width", 60, 900, "Along the hem line, finished.", step=5)] = 250.0

    @property
    def flare(self) -> Flare:
        """Its hem bends as sharply as a circle's."""
        return "circle"
# fmt: on

LEFT = 20.0
"""Above a godet at least this much of the seam is sewn (mm), so that the opening ends before it."""


def draft(brief: Brief, skirt: Godet) -> Draft:
    """The gores, their seams parted at the godets' points, and the godet."""
    cut, found = hung(brief, skirt), godets(brief, skirt)
    panels = tuple(_parted(p, found.high) for p in cut.pieces)
    parted = {(p.id, e.name) for p in panels for e in p.edges}
    sides = [(p.piece, f"{p.side(leaving)} godet") for p in cut.ring for leaving in (False, True)]
    seams = tuple(Seam("godet", (Part(*s, s[1] == "left godet"),), (_beside(s[1]),)) for s in sides if s in parted)
    sweep = Fact("hem_sweep", "Hem sweep", found.sweep)
    facts = tuple(sweep if f.name == sweep.name else f for f in cut.facts)
    pieces = (*panels, _godet(brief, skirt, found, parted))
    held = (*cut.drawn, *_kept(brief, skirt, found))
    return hang(brief, replace(cut, pieces=pieces, seams=seams, facts=facts, drawn=held))


class Godets(Struct, frozen=True):
    """The godets of one skirt: how high they reach up a side and how wide they are along the hem, mm; how many; and
    the hem of the gores alone, mm.
    """

    high: float
    wide: float
    count: int
    gores_hem: float

    @property
    def sweep(self) -> float:
        """The gores' hems and those of the godets, mm."""
        return self.gores_hem + self.count * self.wide


def godets(brief: Brief, skirt: Godet) -> Godets:
    """As high as asked, as far as the opening, or on a wrap the waist, leaves a seam above them; as wide as asked, but
    never more than a third of a circle, which still can be set into a seam; one for each seam that is there at their
    height: a wrap and a very short skirt have none at the opening.
    """
    cut = gores(brief, skirt)
    side = cut.gores[0].side  # all are alike
    stop = 0.0 if brief.opening.kind == "wrap" else brief.stop  # its free edges take no godet
    high = min(skirt.godet_height, max(side - min(stop, side / 2) - LEFT, side / 5))
    opened = brief.opening.kind == "wrap" or brief.stop > side - high - TOUCH
    return Godets(high, min(skirt.godet_width, math.pi * high * 2 / 3), skirt.gores - opened, cut.hem)


def _kept(brief: Brief, skirt: Godet, found: Godets) -> Iterator[Drawn]:
    """A godet as high and as wide as it can be."""
    text = "A godet {asked} high would reach the waist; this one is {made} high."
    if brief.opening.kind not in ("wrap", "none"):
        text = "A godet {asked} high would reach the opening; this one is {made} high."
    yield from drawn("skirt.godet_height", skirt.godet_height, found.high, text)
    text = "The godet asked is {asked} wide; one {h} high can be {made}."
    yield from drawn("skirt.godet_width", skirt.godet_width, found.wide, text, h=found.high)


def _beside(gore: str) -> Part:
    """The side of the godet that is sewn to a gore's, walked from its point."""
    return Part("godet", "left", True) if gore == "right godet" else Part("godet", "right")


def _parted(piece: Piece, deep: float) -> Piece:
    """A gore whose sides end at the godet's point, and go on as sides that are sewn to the godet."""
    edges: list[Edge] = []
    points: dict[str, Spot] = {}
    for e in piece.edges:
        if e.name not in ("right", "left") or e.path.length < deep + TOUCH:
            edges.append(e)
            continue
        along = e.path.length - deep if e.name == "right" else deep
        points[e.name] = notch_on(e.path, along, e.allowance, e.name)
        one, other = e.path.split(along)
        if e.name == "right":
            edges += (replace(e, path=one), replace(e, name="right godet", path=other, sews_to="godet/left"))
        else:
            edges += (replace(e, name="left godet", path=one, sews_to="godet/right"), replace(e, path=other))
    kept = (s for s in piece.spots if s.on not in points or not _beneath(s, points[s.on]))
    return replace(piece, edges=tuple(edges), spots=(*kept, *points.values()))


def _beneath(notch: Spot, point: Spot) -> bool:
    """Whether a notch lies further down its side than the godet's point, where a godet comes between the gores that it
    matched.
    """
    down = point.turn + (90 if point.on == "left" else -90)
    return point.at.to(notch.at).dot(Point(math.cos(math.radians(down)), math.sin(math.radians(down)))) > 0


def _godet(brief: Brief, skirt: Godet, found: Godets, parted: set[tuple[str, str]]) -> Piece:
    """A sector whose point is the origin and whose arc is the hem, to be sewn to these sides."""
    left, right = (next((f"{p}/{e}" for p, e in sorted(parted) if e == f"{s} godet"), "") for s in ("left", "right"))
    a, deep, angle = brief.seams.allowance, found.high, math.degrees(found.wide / found.high)
    arc = Arc(Point(0, 0), deep, 90 - angle / 2, angle)
    edges = (
        Edge("right", line(0, 0, *arc.start), a, left, words=phrase("seam")),
        Edge("hem", Path((arc,)), brief.hem, hem=brief.seams.hem_kind != "faced", governs=("seams.hem",)),
        Edge("left", line(arc.end.x, arc.end.y, 0, 0), a, right, words=phrase("seam")),
    )
    wide, high = phrase("{w:bare}", w=arc.length), phrase("{h:bare}", h=deep)
    return Piece(
        id="godet", name=tr("Godet"), edges=edges, cut_line=cut_line(edges),
        grain=(Point(0, deep * 0.4), Point(0, deep * 0.8)), cut=found.count, row=2,
        lines=tuple(_hem_lines(brief, arc)), handles=_handles(skirt, deep),
        dimensions=(
            Dimension("skirt.godet_width", arc.end, arc.start, "below", wide),
            Dimension("skirt.godet_height", Point(arc.end.x, 0), Point(arc.end.x, deep), "left", high),
        ),
    )  # fmt: skip


def _hem_lines(brief: Brief, arc: Arc) -> Iterator[LineMark]:
    """The fold of the hem and where its raw edge is turned under; a faced hem has neither."""
    if brief.seams.hem_kind == "faced":
        return
    yield LineMark("hem", Path((arc,)), phrase("hem fold"), ("skirt.length",))
    if 0 < brief.first_turn < brief.hem:
        turn = Path((arc.offset(brief.hem - brief.first_turn),))
        yield LineMark("first turn", turn, phrase("first turn"), ("seams.first_turn",))


def _handles(skirt: Godet, deep: float) -> tuple[Handle, ...]:
    """The height is dragged at the hem, where it is as asked."""
    return (Handle("skirt.godet_height", Point(0, deep), "y", 1.0),) if deep == skirt.godet_height else ()


def girth(brief: Brief, skirt: Godet, depth: float) -> float:
    """The gores on their level line, and what the godets add there."""
    found = godets(brief, skirt)
    share = min(1.0, max(0.0, depth - (brief.finished_length - found.high)) / found.high)
    return around(brief, skirt, depth) + found.count * found.wide * share


def widened(brief: Brief, skirt: Godet, wanted: float) -> Edit | None:
    """Godets wide enough for a girth at the hem, to 5 mm up."""
    found = godets(brief, skirt)
    wide = math.ceil((wanted - found.gores_hem) / found.count / 5 - 1e-9) * 5.0
    after = godets(brief, replace(skirt, godet_width=wide))
    return {"skirt.godet_width": wide} if after.sweep >= wanted - 1e-9 else None


def making(brief: Brief, _skirt: Godet, draft: Draft) -> tuple[Making, ...]:
    """Godets are set in once the seams above them are sewn."""
    piece = draft.piece("godet")
    says = (
        phrase("Right sides together, pin a godet into each gap, its point at the seam’s end."),
        phrase("Sew from the point to the hem, {l} to the hem line, {a} from the edge.",
               l=piece.edge("right").path.length, a=brief.seams.allowance),
        phrase("Begin exactly at the point, with the needle down; then sew the other side."),
        phrase("There are {n:count} godets. Press the seams away from them.", n=piece.cut),
    )  # fmt: skip
    shown = Shown(piece.id, ("right", "left"))
    return (Making("godets", "insets", tr("Set the godets"), says, shown, ("needle", "pins")),)


ICON = (
    "M6.5 3h7v2h-7z M6.5 5c-1 3-1 6-2 9.5l-2 2.5h15l-2-2.5c-1-3.5-1-6.5-2-9.5 M8.2 11l-1.7 6 M8.2 11l1.6 "
    "6 M11.8 11l-1.6 6 M11.8 11l1.7 6"
)

STYLE = Style(
    Godet, draft, girth, icon=ICON, widen=widened, clear=cleared, making=making, parts="skirt.gores",
    takes=("skirt.sweep", "skirt.gores"),
)  # fmt: skip
