"""The buttoned placket: a strip on each edge of the opening, folded and faced with itself.

The over strip goes on past the opening as far as the band's extension does, and ends flush with it; the under strip
is turned inside, behind the buttons. Two strips of one opening are as long together as the old continuous lap, "twice
the opening", and as wide: 3 3/4 in for 1 1/2 in finished and turnings of 3/8 in (The New Dressmaker, 1921, ch. 21).
"""

import math
from collections.abc import Iterator

from msgspec import Struct

from studio.brief import Brief
from studio.geometry import Path, Point, line, rectangle
from studio.words import phrase, tr

from .cut_line import cut_line
from .drawn import Drawn, drawn
from .fastening import BUTTON_ROOM, SNAP, button_place, held_by, hole_length, inset
from .interfacing import interfacing
from .piece import PARTS, Dimension, Edge, LineMark, Note, Piece, Spot, Spotted
from .ring import Ring
from .seam import Part, Seam

APART = 50.8
"""Fastenings down a placket lie about 2 in apart (The New Dressmaker, 1921, ch. 21, of snaps)."""
LEAST = 15.0
"""No strip is narrower, mm (common practice, no source)."""
ABOVE = 3.0
"""An upright hole begins this far (mm) above its button, where the button pulls to (common practice, no source)."""
OVER, UNDER = "placket", "placket-under"
LAPS = ("waistband.extension",)


TOO_NARROW = "The strips of a placket are as wide as the extension, and no less than {made}; {asked} was asked."


class Placket(Struct, frozen=True):
    """Its pieces, the seams to both edges of the opening, and what to have ready."""

    pieces: tuple[Piece, ...] = ()
    seams: tuple[Seam, ...] = ()
    drawn: tuple[Drawn, ...] = ()


def placket(brief: Brief, ring: Ring, pieces: tuple[Piece, ...]) -> Placket:
    """The strips of a placket, or nothing where the skirt opens otherwise."""
    if brief.opening.kind != "placket":
        return Placket()
    last, first = (tuple(_opening(ring, pieces, last=last)) for last in (True, False))
    over, under = _strip(brief, OVER, tr("Placket, over"), last), _strip(brief, UNDER, tr("Placket, under"), first)
    stiffened = [s for p in (over, under) if (s := interfacing(brief, p))]
    return Placket(
        (over, under, *stiffened),
        (Seam("placket", (Part(OVER, "seam", True),), last), Seam("placket", (Part(UNDER, "seam", True),), first)),
        drawn=drawn("waistband.extension", brief.lap or None, strip_width(brief), TOO_NARROW),
    )


def strip_width(brief: Brief) -> float:
    """Finished width of both strips, mm: the band's extension, so that their ends are flush."""
    return max(brief.lap, LEAST)


def placket_count(brief: Brief) -> int:
    """How many buttons or snaps stand down the placket, below the band's own."""
    if brief.opening.buttons:
        return brief.opening.buttons
    by_room = math.floor(brief.stop / (fastening_length(brief) + 2 * BUTTON_ROOM) - 0.5)
    return max(1, min(math.ceil(brief.stop / APART - 0.5), by_room))


def placket_step(brief: Brief) -> float:
    """From one to the next, mm, beginning at the waist seam; the last keeps half as much from the opening's end."""
    return brief.stop / (placket_count(brief) + 0.5)


def fastening_length(brief: Brief) -> float:
    """How much of the placket's length one fastening takes, mm."""
    f = brief.fastening
    return hole_length(f.button, f.button_diameter, f.button_height) if _buttoned(brief) else SNAP


def _buttoned(brief: Brief) -> bool:
    """Buttons go on down the placket where the band has them; otherwise it is held by snaps."""
    return held_by(brief) == "buttons"


def _opening(ring: Ring, pieces: tuple[Piece, ...], *, last: bool) -> Iterator[Part]:
    """One edge of the opening from the waist down: through every level it runs on into."""
    place = ring[-1] if last else ring[0]
    top = next(p for p in pieces if p.id == place.piece)
    opened = [(p, e.name) for p in pieces for e in p.edges if e.sews_to == OVER]
    for row in sorted({p.row for p, _ in opened}):
        names = {name: p for p, name in opened if p.row == row}
        # Where both edges are cut from one piece, the last panel is its mirrored copy and opens at the same side.
        wanted = ("right opening", "left opening") if last else ("left opening", "right opening")
        name = next((n for n in wanted if n in names), None)
        if row == top.row:
            name = f"{place.side(last)} opening"
        if name in names:
            yield Part(names[name].id, name, name == "left opening")


def _strip(brief: Brief, id: str, name: str, meets: tuple[Part, ...]) -> Piece:
    """One strip, its seam at the left, the fold down its middle; the waist at the top."""
    wide, deep, a = strip_width(brief), brief.stop, brief.seams.allowance
    sides = rectangle(0, 0, 2 * wide, deep).curves
    caught = phrase("top, caught in the band")
    names = (("top", caught), ("facing", phrase("seam, turned in")), ("end", phrase("end of the opening")),
             ("seam", phrase("seam, to the opening")))  # fmt: skip
    sewn = {"facing": f"{id}/seam", "seam": f"{meets[0].piece}/{meets[0].edge}"}
    edges = tuple(
        Edge(n, Path((c,)), a, sewn.get(n, ""), words=w, governs=("opening.zip_stop",) if n == "end" else LAPS)
        for (n, w), c in zip(names, sides, strict=True)
    )
    fold = LineMark("fold", line(wide, -a, wide, deep + a), phrase("fold"), LAPS)
    holes, spots = _held(brief, id, wide)
    ends = Point(2 * wide, 0), Point(2 * wide, deep)
    says = phrase("outside") if id == OVER else phrase("inside")
    return Piece(
        id=id, name=name, edges=edges, cut_line=cut_line(edges),
        grain=(Point(wide * 1.5, deep * 0.2), Point(wide * 1.5, deep * 0.8)),
        lines=(fold, *holes), spots=spots, notes=(Note(says, Point(wide / 2, placket_step(brief) * 0.4)),),
        dimensions=(
            Dimension("opening.zip_stop", *ends, "right", phrase("{s:bare}", s=deep)),
            Dimension("waistband.extension", Point(0, deep), Point(wide, deep), "below", phrase("{w:bare}", w=wide)),
        ),
        row=PARTS,
    )  # fmt: skip


def _held(brief: Brief, id: str, wide: float) -> tuple[tuple[LineMark, ...], tuple[Spot, ...]]:
    """Holes or snaps on the over strip, buttons or snaps on the under one, in line with the band's own."""
    step, f = placket_step(brief), brief.fastening
    downs = [step * (k + 1) for k in range(placket_count(brief))]
    governs = ("opening.buttons", "opening.zip_stop")
    x = wide - inset(brief) if id == OVER else button_place(brief)
    named = [True, *[False] * (len(downs) - 1)]  # one name stands for all in line
    if _buttoned(brief) and id == OVER:
        words, long = phrase("buttonhole {l}", l=fastening_length(brief)), fastening_length(brief)
        return tuple(
            LineMark("buttonhole", line(x, y - ABOVE, x, y - ABOVE + long), words if first else None, governs)
            for y, first in zip(downs, named, strict=True)
        ), ()  # fmt: skip
    role: Spotted = "button" if _buttoned(brief) else "snap"
    size, words = f.button_diameter, phrase("button {d}", d=f.button_diameter)
    if role == "snap":
        x, size = wide / 2, SNAP
        words = phrase("snap, underneath") if id == OVER else phrase("snap")
    return (), tuple(
        Spot(role, Point(x, y), size, words=words if first else None, governs=governs)
        for y, first in zip(downs, named, strict=True)
    )
