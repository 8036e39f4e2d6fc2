"""Rules about pieces that the maker has put in their place on the cloth."""

from collections.abc import Callable, Iterator
from itertools import combinations

from msgspec import Struct

from studio.brief import Held
from studio.cloth.placed import Placed
from studio.cloth.ways import Ways, on_cloth, ways
from studio.geometry.polygon import meet
from studio.styles.style import Edit
from studio.words import Phrase, phrase

from .finding import Finding, Worked, tried

COARSE = 2.0
"""Outlines are compared as chords within this (mm): less is no overlap that shears would notice."""


def held_on_cloth(w: Worked) -> Iterator[Finding]:
    """A piece held by hand lies between the edges of the cloth, with its grain along it, and on no other that is held.
    The remedy lets it go.
    """
    if not w.brief.cloth.held:
        return
    ill = [*_off(w), *_on_top(w)]
    gone = [one for one, _ in ill]
    for one, says in ill:
        yield Finding("held-on-cloth", "stop", says, "cloth.held", one.piece, *let_go(w, gone))
    tilted = [i for i in in_hand(w) if i.placed.turn % 180 != i.lies.ways[0].turn % 180]
    for i in [i for i in tilted if i.held not in gone][:1]:
        says = phrase("{p:word} is held across the grain.", p=i.placed.piece.name)
        yield Finding("held-on-cloth", "doubt", says, "cloth.held", i.held.piece, *let_go(w, [i.held for i in tilted]))


class InHand(Struct, frozen=True):
    """A copy of a piece that lies where the maker holds it, and how it might lie of its own accord."""

    held: Held
    placed: Placed
    lies: Ways


def in_hand(w: Worked) -> list[InHand]:
    """Every copy that lies where it is held; of two held places for one, the first counts."""
    cloth = w.brief.cloth
    lies = {p.id: ways(p, cloth) for p in w.draft.pieces if p.cloth == "main"} if cloth.held else {}
    found = []
    for p in w.lay.placed if lies else ():
        one = lies[p.piece.id]
        pair = 2 if one.paired else 1
        copies = range(p.copy, p.copy + pair)
        held = (h for h in cloth.held if h.piece == p.piece.id and h.copy in copies and on_cloth(h, one, cloth))
        found += [InHand(h, p, one) for h in list(held)[:1]]
    return found


def let_go(w: Worked, gone: list[Held]) -> tuple[Edit, Phrase]:
    """The edit that lets these go, and what it says."""
    rest = tuple(h for h in w.brief.cloth.held if not any(h is one for one in gone))
    return {"cloth.held": rest}, phrase("Let it go") if len(gone) == 1 else phrase("Let them go")


def righted(
    w: Worked, ill: list[InHand], right: list[Held], still: Callable[[Worked], object], does: tuple[Phrase, Phrase]
) -> tuple[Edit, Phrase]:
    """The edit that holds these `right`, if that mends them and puts none off the cloth or on another; else it lets
    them go. `still` tells whether they lie ill; `does` says what is done to one, and to more.
    """
    now = {id(i.held): h for i, h in zip(ill, right, strict=True)}
    edit: Edit = {"cloth.held": tuple(now.get(id(h), h) for h in w.brief.cloth.held)}
    after = tried(w, edit)
    if still(after) or [*_off(after), *_on_top(after)]:
        return let_go(w, [i.held for i in ill])
    return edit, does[len(ill) > 1]


def _off(w: Worked) -> Iterator[tuple[Held, Phrase]]:
    """What is held where there is no cloth."""
    cloth = w.brief.cloth
    lies = {p.id: ways(p, cloth) for p in w.draft.pieces if p.cloth == "main"}
    for one in cloth.held:
        if one.piece in lies and one.copy < lies[one.piece].piece.cut and not on_cloth(one, lies[one.piece], cloth):
            yield one, phrase("{p:word} is held where it lies off the cloth.", p=lies[one.piece].piece.name)


def _on_top(w: Worked) -> Iterator[tuple[Held, Phrase]]:
    """What is held where another is held."""
    for first, second in combinations(in_hand(w), 2):
        if overlap(first.placed, second.placed):
            names = {"p": second.placed.piece.name, "o": first.placed.piece.name}
            yield second.held, phrase("{p:word} is held on top of {o:word}.", **names)


def overlap(one: Placed, other: Placed) -> bool:
    """Whether two pieces lie on each other, by more than shears would notice."""
    if not (
        one.at.x < other.at.x + other.along - COARSE and other.at.x < one.at.x + one.along - COARSE
        and one.at.y < other.at.y + other.across - COARSE and other.at.y < one.at.y + one.across - COARSE
    ):  # fmt: skip
        return False
    first, second = ([p.on_cloth(q) for q in p.outline.flat(COARSE)] for p in (one, other))
    return meet(first, second, COARSE)
