"""Rules about pieces that the maker has put in their place on the cloth."""

from collections.abc import Iterator
from itertools import combinations

from studio.brief import Held
from studio.cloth.placed import Placed
from studio.cloth.ways import on_cloth, ways
from studio.geometry.polygon import meet
from studio.words import Phrase, phrase

from .finding import Finding, Worked

COARSE = 2.0
"""Outlines are compared as chords within this (mm): less is no overlap that shears would notice."""


def held_on_cloth(w: Worked) -> Iterator[Finding]:
    """A piece held by hand lies between the edges of the cloth, and on no other that is held. The remedy lets it go."""
    cloth = w.brief.cloth
    if not cloth.held:
        return
    ill = [*_off(w), *_on_top(w)]
    rest = tuple(h for h in cloth.held if not any(h is one for one, _ in ill))
    for one, says in ill:
        does = phrase("Let it go") if len(ill) == 1 else phrase("Let them go")
        yield Finding("held-on-cloth", "stop", says, "cloth.held", one.piece, {"cloth.held": rest}, does)


def _off(w: Worked) -> Iterator[tuple[Held, Phrase]]:
    """What is held where there is no cloth."""
    cloth = w.brief.cloth
    lies = {p.id: ways(p, cloth) for p in w.draft.pieces if p.cloth == "main"}
    for one in cloth.held:
        if one.piece in lies and one.copy < lies[one.piece].piece.cut and not on_cloth(one, lies[one.piece], cloth):
            yield one, phrase("{p:word} is held where it lies off the cloth.", p=lies[one.piece].piece.name)


def _on_top(w: Worked) -> Iterator[tuple[Held, Phrase]]:
    """What is held where another is held."""
    held = {(h.piece, h.copy): h for h in w.brief.cloth.held}
    placed = [(held[p.piece.id, p.copy], p) for p in w.lay.placed if (p.piece.id, p.copy) in held]
    for (_, first), (one, second) in combinations(placed, 2):
        if overlap(first, second):
            yield one, phrase("{p:word} is held on top of {o:word}.", p=second.piece.name, o=first.piece.name)


def overlap(one: Placed, other: Placed) -> bool:
    """Whether two pieces lie on each other, by more than shears would notice."""
    if not (
        one.at.x < other.at.x + other.along - COARSE and other.at.x < one.at.x + one.along - COARSE
        and one.at.y < other.at.y + other.across - COARSE and other.at.y < one.at.y + one.across - COARSE
    ):  # fmt: skip
        return False
    first, second = ([p.on_cloth(q) for q in p.outline.flat(COARSE)] for p in (one, other))
    return meet(first, second, COARSE)
