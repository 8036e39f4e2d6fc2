"""A part seen from its other side: what lies inside, drawn as it is cut, is the mirror image of what lies outside."""

from collections.abc import Iterable

from msgspec.structs import replace

from .piece import Edge, Spot


def edges_over(edges: Iterable[Edge], x: float) -> tuple[Edge, ...]:
    """Edges mirrored in the upright line at `x`, in clockwise order again."""
    return tuple(
        replace(
            e,
            path=e.path.flipped(x).reversed(),
            closes=tuple((e.path.length - end, e.path.length - start) for start, end in reversed(e.closes)),
        )
        for e in reversed(tuple(edges))
    )


def spots_over(spots: Iterable[Spot], x: float) -> tuple[Spot, ...]:
    """Spots mirrored in the upright line at `x`, each pointing the other way."""
    return tuple(replace(s, at=s.at.flipped(x), turn=_within(180 - s.turn)) for s in spots)


def _within(degrees: float) -> float:
    return degrees - 360 if degrees > 180 else degrees
