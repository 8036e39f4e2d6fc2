"""Seams: which edges are sewn to which, in order, so that lengths and notches can be walked."""

from collections.abc import Mapping

from msgspec import Struct

from .piece import Edge, Piece

WALKS = 0.1
"""Sides that differ by no more than this (mm), after the ratio, are sewn together."""


class Part(Struct, frozen=True):
    """An edge of a piece in a seam; `back` when the seam runs against the way the edge is walked."""

    piece: str
    edge: str
    back: bool = False


class Seam(Struct, frozen=True):
    """Edges on one side and on the other, both in order from the same end."""

    name: str
    one: tuple[Part, ...]
    other: tuple[Part, ...]


def walked(side: tuple[Part, ...], pieces: Mapping[str, Piece]) -> float:
    """Sewn length of one side, mm: pleats and darts closed, gathers drawn up."""
    return sum(_edge(p, pieces).sewn for p in side)


def notches(side: tuple[Part, ...], pieces: Mapping[str, Piece], but: str = "") -> list[float]:
    """Sewn distance of each notch from the seam's first end, mm, in order; those that a brief path governs left out."""
    found: list[float] = []
    begun = 0.0
    for part in side:
        edge = _edge(part, pieces)
        size = edge.sewn
        for spot in pieces[part.piece].spots:
            if spot.role == "notch" and spot.on == part.edge and but not in spot.governs:
                along = edge.sewn_at(edge.path.nearest(spot.at)[0])
                found.append(begun + (size - along if part.back else along))
        begun += size
    return sorted(found)


def _edge(part: Part, pieces: Mapping[str, Piece]) -> Edge:
    return pieces[part.piece].edge(part.edge)
