"""What a style gives back: pieces, seams, facts and notions."""

from collections.abc import Mapping
from typing import Literal, TypeAlias

from msgspec import Struct

from studio.words import Phrase

from .drawn import Drawn
from .piece import Piece
from .seam import Seam

FactKind: TypeAlias = Literal["length", "ratio", "count", "metres"]


class Fact(Struct, frozen=True):
    """A number that matters: mm, or plain where its kind says so."""

    name: str
    words: str
    value: float
    kind: FactKind = "length"


class Notion(Struct, frozen=True):
    """Something to buy or to have ready: what it is, its sizes by name (mm, counts), and the words for it."""

    what: str
    words: Phrase
    sizes: Mapping[str, float | int | str] = {}


class Draft(Struct, frozen=True):
    """A drafted skirt. `drawn` are the numbers that could not be taken as they were asked."""

    pieces: tuple[Piece, ...]
    seams: tuple[Seam, ...]
    facts: tuple[Fact, ...]
    notions: tuple[Notion, ...]
    drawn: tuple[Drawn, ...] = ()

    def piece(self, name: str) -> Piece:
        """The piece of that id; KeyError when there is none."""
        return {p.id: p for p in self.pieces}[name]

    def fact(self, name: str) -> float:
        """The value of a fact; KeyError when the draft has none of that name."""
        return {f.name: f.value for f in self.facts}[name]

    def has(self, fact: str) -> bool:
        """Whether the style states this fact."""
        return any(f.name == fact for f in self.facts)
