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
from .notions import closing_notions
from .piece import Piece
from .placket import placket
from .pocket import pocketed
from .ring import Ring, joins, tops
from .seam import Seam


class Hung(Struct, frozen=True):
    """Everything below the waist seam: the ring at the waist with the stations where it meets the band, every piece,
    the seams that are not the ring's own, the style's own facts, and the numbers of the style that were drawn in.
    """

    ring: Ring
    stations: tuple[Station, ...]
    pieces: tuple[Piece, ...]
    facts: tuple[Fact, ...]
    seams: tuple[Seam, ...] = ()
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
            *hung.notions,
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
