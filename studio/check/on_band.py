"""Pieces that a hand has taken off their band of the print."""

from collections.abc import Iterator

from msgspec.structs import replace

from studio.brief import Held
from studio.cloth.ways import NEAR, Way
from studio.words import phrase

from .finding import Finding, Worked
from .held import InHand, in_hand, righted

BACK = phrase("Lay it on its band"), phrase("Lay them on their bands")


def taken_off(w: Worked) -> list[InHand]:
    """What is held, turned or not, where its band of the print is not."""
    return [i for i in in_hand(w) if _bound(i) and min(_far(w, i, way) for way in i.lies.ways)[1] > NEAR]


def off_its_band(w: Worked, rule: str, ill: list[InHand]) -> Iterator[Finding]:
    """The finding about what was taken off; the remedy lays it back on its band, or lets it go."""
    if ill:
        turned, far = min(_far(w, ill[0], way) for way in ill[0].lies.ways)
        text = "{p:word} is held turned, and off its band of the print." if turned else AWAY
        says = phrase(text, p=ill[0].placed.piece.name, d=far)
        edit, does = righted(w, ill, [_back(w, i) for i in ill], taken_off, BACK)
        yield Finding(rule, "doubt", says, "cloth.held", ill[0].held.piece, edit, does)


AWAY = "{p:word} is held {d} from its place on its band of the print."


def _bound(i: InHand) -> bool:
    return i.lies.ways[0].across is not None and not i.placed.half


def _far(w: Worked, i: InHand, way: Way) -> tuple[bool, float]:
    """Whether the piece is turned from a way of its own, and how far across the cloth it lies from it (mm)."""
    turned = way.turn != i.placed.turn
    far = abs((way.across or 0.0) + w.brief.cloth.selvedge - i.placed.at.y)
    return turned, max(far, 2 * NEAR) if turned else far


def _back(w: Worked, i: InHand) -> Held:
    way = min(i.lies.ways, key=lambda way: _far(w, i, way))
    return replace(i.held, turn=way.turn, y=(way.across or 0.0) + w.brief.cloth.selvedge)
