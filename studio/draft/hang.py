"""A skirt is hung on its band: what every style shares once its panels are drafted."""

from msgspec import Struct
from msgspec.structs import replace

from studio.brief import Brief

from .bands import Waist, band, under
from .draft import Draft, Fact, Notion
from .drawn import Drawn, drawn
from .fastening import closed_girth
from .hem_facing import hem_faced
from .lining import lining
from .marks import Station
from .notions import closing_notions, thread_notion
from .piece import Piece
from .placket import placket
from .pocket import pocketed
from .ring import Ring, joins, tops
from .seam import Seam


class Hung(Struct, frozen=True):
    """Everything below the waist seam: the ring at the waist with the stations where it meets the band, every piece,
    the seams that are not the ring's own, the style's own facts, stitching beyond its seams (mm), for the thread, and
    the numbers of the style that were drawn in.
    """

    ring: Ring
    stations: tuple[Station, ...]
    pieces: tuple[Piece, ...]
    facts: tuple[Fact, ...]
    seams: tuple[Seam, ...] = ()
    stitching: float = 0.0
    notions: tuple[Notion, ...] = ()
    drawn: tuple[Drawn, ...] = ()


def hang(brief: Brief, hung: Hung) -> Draft:
    """The whole skirt."""
    bagged = pocketed(brief, hung.ring, hung.stations, hung.pieces)
    faced = hem_faced(brief, bagged.pieces)
    hung = replace(hung, pieces=faced.panels)
    by_id = {p.id: p for p in hung.pieces}
    top = band(brief, Waist(hung.stations, tops(hung.ring), hung.pieces))
    lined = lining(brief, hung.stations, top.seams[0].other)
    lap = placket(brief, hung.ring, hung.pieces)
    ring = joins(hung.ring, by_id, closed=brief.opening.kind != "wrap")
    seams = (*top.seams[:1], *ring, *lap.seams, *hung.seams, *faced.seams, *lined.seams, *top.seams[1:])
    above, aside = ([p for p in top.pieces if (p.row == 0) is over] for over in (True, False))
    return Draft(
        pieces=(*above, *under(top, hung.pieces), *aside, *lap.pieces, *faced.facings, *bagged.pockets, *lined.pieces),
        seams=seams,
        facts=(*_facts(brief), *hung.facts),
        notions=(
            *closing_notions(brief),
            *top.notions,
            *lap.notions,
            *hung.notions,
            *lined.notions,
            _thread(brief, replace(hung, pieces=(*hung.pieces, *lined.pieces))),
        ),
        drawn=(*hung.drawn, *top.drawn, *lap.drawn, *faced.drawn, *_first_turn(brief)),
    )


def _first_turn(brief: Brief) -> tuple[Drawn, ...]:
    """What is turned under first, where it was typed and the hem was left to the skirt: at most half of that."""
    seams = brief.seams
    if seams.hem_kind != "turned twice" or seams.first_turn == type(seams)().first_turn:
        return ()
    text = "A hem of {h} cannot be turned under by {asked} first; half of it is {made}."
    return drawn("seams.first_turn", seams.first_turn, brief.first_turn, text, h=brief.hem)


def _facts(brief: Brief) -> tuple[Fact, ...]:
    return (
        Fact("waist_seam", "Waist seam", brief.waist_seam),
        Fact("closed_girth", "Closed band", closed_girth(brief)),
    )


def _thread(brief: Brief, hung: Hung) -> Notion:
    """Every side of a panel is sewn with its neighbour, from cut edge to cut edge, and neatened; every hem is sewn
    once and the waist twice.
    """
    sides = sum(_sides(brief, p) for p in hung.pieces)
    hems = sum(e.path.length * _copies(p) for p in hung.pieces for e in p.edges if e.name == "hem")
    return thread_notion(sides / 2 + hems + 2 * brief.waist_seam + hung.stitching, sides)


def _sides(brief: Brief, piece: Piece) -> float:
    """All sides of all copies of a panel, cut edge to cut edge, mm."""
    over = brief.seams.allowance + max(e.allowance for e in piece.edges if e.name in ("hem", "foot"))
    found = [e for e in piece.edges if not e.fold and e.name.split(" ")[0] in ("left", "right")]
    return (sum(e.path.length for e in found) + over * len({e.name.split(" ")[0] for e in found})) * _copies(piece)


def _copies(piece: Piece) -> int:
    """How many times what is drawn is there once it is cut."""
    return piece.cut * (2 if piece.on_fold else 1)
