"""How a skirt is made up: one thing to do after another, each with this skirt's own numbers."""

from typing import Literal, TypeAlias

from msgspec import Struct

from studio.words import Phrase

from .piece import Role

Phase: TypeAlias = Literal[
    "prepare", "cut", "mark", "shape", "pockets", "opening", "seams", "insets", "gather", "lining", "band", "close",
    "hem", "press",
]  # fmt: skip
"""When a thing is done, in the order of a workroom: what must lie flat first, what is set into a seam
once it is sewn, what hangs last.
"""
Close: TypeAlias = Literal["whole", "top", "foot", "left", "right"]


class Shown(Struct, frozen=True):
    """What a picture of a step shows: a piece, or a part of it near one of its sides, and what is worked on now:
    edges by name and marks by role. The cloth is seen from the wrong side unless said otherwise.
    """

    piece: str
    edges: tuple[str, ...] = ()
    roles: tuple[Role, ...] = ()
    near: Close = "whole"
    right_side: bool = False


class Making(Struct, frozen=True):
    """One step: what it is called, what to do in short sentences, what its picture shows, and which cautions belong
    beside it ("needle", "iron", "shears", "pins").

    A style's step with the key of a step that every skirt has stands in its place.
    """

    key: str
    phase: Phase
    title: str
    says: tuple[Phrase, ...]
    shows: Shown | None = None
    cautions: tuple[str, ...] = ()
