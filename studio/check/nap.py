"""The rule about cloth that has a top: nap, sheen, or a print that stands one way."""

from collections.abc import Iterator

from msgspec.structs import replace

from studio.words import phrase

from .finding import Finding, Worked
from .held import InHand, in_hand, righted

TURN = phrase("Turn it"), phrase("Turn them")


def one_way_respected(w: Worked) -> Iterator[Finding]:
    """On cloth that has a top, no piece is held the other way up than the rest. The remedy turns it, or lets it go
    where turned it would lie on another.
    """
    ill = _against(w)
    if ill:
        says = phrase("{p:word} is held the other way up on cloth that has a top.", p=ill[0].placed.piece.name)
        turned = [replace(i.held, turn=(i.held.turn + 180) % 360) for i in ill]
        edit, does = righted(w, ill, turned, _against, TURN)
        yield Finding("one-way-respected", "doubt", says, "cloth.held", ill[0].held.piece, edit, does)


def _against(w: Worked) -> list[InHand]:
    """What is held the other way up; nothing where all pieces with that grain are, for then they agree."""
    if not w.brief.cloth.one_way:
        return []
    ill = [i for i in in_hand(w) if i.lies.ways[0].across is None and _upside_down(i)]
    free = [p.turn for p in w.lay.placed]
    return [i for i in ill if any(t == i.lies.ways[0].turn for t in free)]


def _upside_down(i: InHand) -> bool:
    return not i.placed.half and (i.placed.turn - i.lies.ways[0].turn) % 360 == 180
