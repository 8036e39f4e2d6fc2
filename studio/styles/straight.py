"""The straight skirt, fitted with darts, and the A-line that comes of closing them."""

# fmt: off
import math
from bisect import bisect_left
from collections.abc import Iterator
from typing import Annotated, Literal

from msgspec.structs import replace

from studio.brief import Brief, Flare, Skirt
from studio.brief.declare import When, mm, one_of, per_cent, whole
from studio.draft import Draft, Drawn, Fact, Piece, drawn
from studio.draft.darted import Block, Sizes, block
from studio.draft.half import half
from studio.draft.hang import Hung, hang
from studio.draft.intake import MOST
from studio.draft.marks import Station, quarter_name
from studio.draft.panel import panel
from studio.draft.ring import Ring, halves, opening_sides
from studio.draft.slit import slit, vent
from studio.draft.stride import hang_of, stride_girth
from studio.draft.wrap import lap, lapped
from studio.words import tr

from .style import Edit, Style

FLARED: When = (("skirt.shape", ("A-line",)),)
SLIT: When = (("skirt.slit", ("slit", "vent")),)


class Straight(Skirt, frozen=True, tag="straight"):
    """A back and a front, taken in to the waist by darts and shaped side seams."""

    shape: Annotated[Literal["straight", "A-line"], one_of(
        "Shape", "Straight: upright from the hips. A-line: part of each dart is closed, which opens the hem."
    )] = "straight"
    hip_ease: Annotated[float, mm("Hip ease", 0, 200, "Room at the hips; 4 to 6 cm let you sit.", step=5)] = 50.0
    front_darts: Annotated[int, whole(
        "Front darts", 0, MOST, "On each side; by intake: another where one would be too wide.", blank="by intake")] = 0
    back_darts: Annotated[int, whole(
        "Back darts", 0, MOST, "On each side; by intake: another where one would be too wide.", blank="by intake")] = 0
    closing: Annotated[float, per_cent(
        "Darts closed", 0, 1, "So much of each dart goes into the hem.", when=FLARED)] = 0.5
    side_flare: Annotated[float, mm("Side flare", 0, 200, "Added to each side at the hem.", step=5, when=FLARED)] = 30.0
    slit: Annotated[Literal["none", "slit", "vent"], one_of(
        "Slit", "At the foot of the back seam, so that you can step; a vent lies over itself.")] = "none"
    slit_length: Annotated[float, mm("Slit length", 50, 900, "Up from the hem line.", step=5, when=SLIT)] = 200.0

    @property
    def flare(self) -> Flare:
        """As its hem runs."""
        return "A-line" if self.shape == "A-line" else "straight"
# fmt: on


def draft(brief: Brief, skirt: Straight) -> Draft:
    """Back and front on their band."""
    cut = drafted(brief, skirt)
    ring = halves(brief.opening.place)
    pieces = _pieces(brief, skirt, cut, ring)
    darts = (("back", cut.back), ("front", cut.front))
    facts = (
        Fact("hip_girth", "Hips with ease", _round(brief, cut, brief.hip_depth)),
        Fact("hem_sweep", "Hem sweep", cut.hem_sweep + 2 * lap(brief)),
        Fact("closed_to", "Closed down to", brief.finished_length - slit_length(brief, skirt)),
        Fact("panels", "Panels", sum(p.cut for p in pieces), "count"),
        Fact("side_intake", "Taken in by each side seam", cut.front.side_intake + cut.back.side_intake),
        *(Fact(f"{name}_darts", DARTS[name], len(q.darts), "count") for name, q in darts),
        *(Fact(f"{name}_dart", DART[name], q.darts[0].intake) for name, q in darts if q.darts),
    )
    return hang(brief, Hung(ring, _stations(brief, cut), pieces, facts, drawn=tuple(kept(brief, skirt, cut))))


DARTS = {"back": "Darts in each half of the back", "front": "Darts in each half of the front"}
DART = {"back": "Width of a back dart", "front": "Width of a front dart"}


def kept(brief: Brief, skirt: Straight, cut: Block) -> Iterator[Drawn]:
    """The numbers that the block could not take as they were asked."""
    bare = brief.hips + brief.over - 2 * lap(brief)
    text = "The waist seam gives the hips {made} of ease, more than the {asked} asked."
    yield from drawn("skirt.hip_ease", skirt.hip_ease, max(skirt.hip_ease, _waist(brief) - bare), text)
    text = "The {p:word} asked has {asked:count} darts on each side; there is enough to take in for {made:count}."
    for part, asked, quarter in (("front", skirt.front_darts, cut.front), ("back", skirt.back_darts, cut.back)):
        yield from drawn(f"skirt.{part}_darts", asked or None, len(quarter.drawn.hinges), text, p=tr(part))
    if skirt.shape == "A-line":
        text = "The side flare asked is {asked}; the hips and so short a side leave {made}."
        flare = min(quarter.flare for quarter in (cut.front, cut.back))
        yield from drawn("skirt.side_flare", skirt.side_flare, flare, text)
    if skirt.slit != "none":
        deep = slit_length(brief, skirt)
        text = "The slit asked is {asked}; the seam below the opening has room for {made}."
        if not deep:
            text = "The slit asked is {asked}; there is no seam to leave open."
        yield from drawn("skirt.slit_length", skirt.slit_length, deep, text,
                         instead=None if deep >= 50 else {"skirt.slit": "none"})  # fmt: skip


def drafted(brief: Brief, skirt: Straight) -> Block:
    """The block of this body, this ease and this length."""
    wider = brief.over - 2 * lap(brief)
    waist = _waist(brief)
    hip = max(brief.hips + skirt.hip_ease + wider, waist if brief.waistband.kind == "elastic" else 0.0)
    flared = skirt.shape == "A-line"
    return block(Sizes(
        waist, hip, brief.hip_depth, brief.finished_length, skirt.front_darts, skirt.back_darts,
        closing=skirt.closing if flared else 0.0, side_flare=skirt.side_flare if flared else 0.0,
    ))  # fmt: skip


def _waist(brief: Brief) -> float:
    """The waist of the block, mm: what a wrap's edges go on past the centre is added to it."""
    return brief.waist_seam - 2 * lap(brief)


def slit_length(brief: Brief, skirt: Straight) -> float:
    """How far up the back seam is open, mm: none where there is no seam below the opening to carry it."""
    if skirt.slit == "none" or (brief.opening.kind == "wrap" and brief.opening.place == "centre back"):
        return 0.0
    above = brief.stop if brief.opening.place == "centre back" else 0.0
    room = brief.finished_length - max(above, brief.finished_length / 5) - 30
    return min(skirt.slit_length, room) if room > 30 else 0.0


def _stations(brief: Brief, cut: Block) -> tuple[Station, ...]:
    """Where side seams and centres lie on the waist seam: a back is a little wider than a front."""
    waists = {"back": cut.back.waist, "front": cut.front.waist}
    quarters = [waists[p.piece] for p in halves(brief.opening.place)]
    at = lap(brief)
    found = [Station(at, quarter_name(brief, 0))] if at else []
    for k, wide in enumerate(quarters):
        at += wide
        if k < 3 or lap(brief):
            found.append(Station(at, quarter_name(brief, k + 1)))
    return tuple(found)


def _pieces(brief: Brief, skirt: Straight, cut: Block, ring: Ring) -> tuple[Piece, ...]:
    opens = opening_sides(ring)
    widens = "skirt.side_flare" if skirt.shape == "A-line" else "skirt.hip_ease"
    deep = slit_length(brief, skirt)
    pieces = []
    for id, name, quarter, place in (
        ("back", tr("Back"), cut.back, "centre back"),
        ("front", tr("Front"), cut.front, "front"),
    ):
        parted = brief.opening.place == place and brief.opening.kind != "none"
        whole = not parted and not (id == "back" and deep)
        shape = half(brief, quarter, whole, id == ring[0].piece, (id, "left") in opens, widens)
        if parted and lap(brief):
            shape = lapped(brief, shape)
        piece = panel(brief, id, name, shape, ring, cut=1 if whole else 2, mirrored=not whole)
        if id == "back" and deep:
            piece = (vent if skirt.slit == "vent" else slit)(brief, piece, deep)
        pieces.append(piece)
    return tuple(pieces)


def girth(brief: Brief, skirt: Straight, depth: float) -> float:
    """All round at a depth, the darts closed."""
    return _round(brief, drafted(brief, skirt), depth)


def _round(brief: Brief, cut: Block, depth: float) -> float:
    return cut.girth(depth) + 2 * lap(brief)


def stepped(brief: Brief, skirt: Straight, _girth: float) -> Edit | None:
    """The shortest slit that lets a step through, to the centimetre up; none where no slit can be so long."""
    kind = "slit" if skirt.slit == "none" else skirt.slit
    height, lengths, cut = brief.body.height, range(50, 901, 10), drafted(brief, skirt)

    def steps(long: int) -> bool:
        """Whether a step passes a slit so long; the higher it goes, the less girth a stride needs."""
        shut = brief.finished_length - long
        hang = hang_of(brief.body, shut)
        return hang is not None and height is not None and (
            _round(brief, cut, shut) >= stride_girth(height, hang) - 1e-9
        )  # fmt: skip

    k = bisect_left(lengths, True, key=steps)
    if k == len(lengths):
        return None
    long = float(lengths[k])
    sewn = slit_length(brief, replace(skirt, slit=kind, slit_length=long))
    return {"skirt.slit": kind, "skirt.slit_length": long} if sewn >= long - 1e-9 else None


def cleared(brief: Brief, skirt: Straight, wanted: float) -> Edit | None:
    """The ease that gives the hips a girth, to 5 mm up."""
    ease = max(0.0, math.ceil((wanted - brief.hips) / 5 - 1e-9) * 5.0)
    return {"skirt.hip_ease": ease} if girth(brief, replace(skirt, hip_ease=ease), brief.hip_depth) >= wanted else None


ICON = "M6.5 3h7v2h-7z M6.5 5c-1.3 2.5-1.5 4-1.5 6v6h10v-6c0-2-.2-3.5-1.5-6 M8.5 5l.3 3 M11.5 5l-.3 3"

STYLE = Style(Straight, draft, girth, icon=ICON, widen=stepped, clear=cleared)
