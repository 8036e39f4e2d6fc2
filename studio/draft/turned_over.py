"""A part seen from its other side: what lies inside, drawn as it is cut, is the mirror image of what lies outside."""

from collections.abc import Iterable, Sequence

from msgspec.structs import replace

from studio.geometry import Line, Path

from .piece import Edge, Spot


def edges_over(edges: Iterable[Edge], x: float) -> tuple[Edge, ...]:
    """Edges mirrored in the upright line at `x`, in clockwise order again."""
    return meeting([
        replace(
            e,
            path=e.path.flipped(x).reversed(),
            closes=tuple((e.path.length - end, e.path.length - start) for start, end in reversed(e.closes)),
        )
        for e in reversed(tuple(edges))
    ])  # fmt: skip


def meeting(edges: Sequence[Edge]) -> tuple[Edge, ...]:
    """Edges whose straight ones begin and end exactly where their neighbours do: an arc's ends are rounded otherwise
    than those of a line.
    """
    around = [edges[-1], *edges, edges[0]]
    return tuple(
        replace(e, path=Path((Line(before.path.end, after.path.start),))) if _straight(e) else e
        for before, e, after in zip(around, edges, around[2:], strict=False)
    )


def _straight(edge: Edge) -> bool:
    return len(edge.path.curves) == 1 and isinstance(edge.path.curves[0], Line)


def spots_over(spots: Iterable[Spot], x: float) -> tuple[Spot, ...]:
    """Spots mirrored in the upright line at `x`, each pointing the other way."""
    return tuple(replace(s, at=s.at.flipped(x), turn=_within(180 - s.turn)) for s in spots)


def _within(degrees: float) -> float:
    return degrees - 360 if degrees > 180 else degrees
