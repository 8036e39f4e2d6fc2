"""The rule about cloth that has a top: nap, sheen, or a print that stands one way."""

from collections.abc import Iterator

from msgspec.structs import replace

from studio.brief import PrintBand
from studio.cloth.ways import band_of, band_turn
from studio.words import phrase

from .finding import Finding, Worked
from .held import InHand, in_hand, righted

TURN = phrase("Turn it"), phrase("Turn them")


def one_way_respected(w: Worked) -> Iterator[Finding]:
    """On cloth that has a top, no piece lies the other way up than the rest. What a hand has turned so is turned back,
    or let go where it would lie on another. Where bands of the print along both selvedges ask for it, the remedy keeps
    those of the larger pieces.
    """
    ill, bands = _against(w), _both_ways(w)
    if ill:
        says = phrase("{p:word} is held the other way up on cloth that has a top.", p=ill[0].placed.piece.name)
        turned = [replace(i.held, turn=(i.held.turn + 180) % 360) for i in ill]
        edit, does = righted(w, ill, turned, _against, TURN)
        yield Finding("one-way-respected", "doubt", says, "cloth.held", ill[0].held.piece, edit, does)
    if bands:
        text = "The print’s band at {b} asks for pieces the other way up than the rest; this cloth has a top."
        kept = tuple(replace(b, holds="nothing") if b in bands else b for b in w.brief.cloth.bands)
        says, does = phrase(text, b=bands[0].start), phrase("Leave that band unused")
        yield Finding("one-way-respected", "doubt", says, "cloth.bands", "", {"cloth.bands": kept}, does)


def _both_ways(w: Worked) -> list[PrintBand]:
    """The bands on which the lesser part of the cloth lies the other way up; none where all lie one way."""
    cloth = w.brief.cloth
    if not cloth.one_way:
        return []
    lie = [(band, p) for p in w.lay.placed if (band := band_of(p, cloth)) is not None]
    areas = {turn: sum(p.outline.area for band, p in lie if band_turn(band, cloth) == turn) for turn in (0, 180)}
    lesser = min(areas, key=lambda turn: areas[turn])
    found = [b for b in cloth.bands if b.holds != "nothing" and band_turn(b, cloth) == lesser]
    return found if all(areas.values()) else []


def _against(w: Worked) -> list[InHand]:
    """What is held the other way up; nothing where all pieces with that grain are, for then they agree."""
    if not w.brief.cloth.one_way:
        return []
    ill = [i for i in in_hand(w) if i.lies.ways[0].across is None and _upside_down(i)]
    free = [p.turn for p in w.lay.placed]
    return [i for i in ill if any(t == i.lies.ways[0].turn for t in free)]


def _upside_down(i: InHand) -> bool:
    return not i.placed.half and (i.placed.turn - i.lies.ways[0].turn) % 360 == 180
