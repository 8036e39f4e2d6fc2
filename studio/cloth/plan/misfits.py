"""What cannot be laid at all, named before anything is searched."""

from typing import Literal

from msgspec import Struct

from studio.cloth.plan import convex
from studio.cloth.plan.problem import NEAR, Part, Problem, Spot, copies, laid


class Misfit(Struct, frozen=True):
    """A part that cannot be laid, why, and the width of cloth that would hold it (mm; 0 where width is no help).

    `flat`: its outline holds no cloth. `wide`: in no way of its own is it narrower than the cloth. `place`: its place
    across lies off the cloth. `held off`: held by hand where there is no cloth. `held on`: held where `other` is held.
    """

    part: str
    why: Literal["flat", "wide", "place", "held off", "held on"]
    needed: float = 0.0
    other: str = ""


def misfits(problem: Problem) -> tuple[Misfit, ...]:
    """Every part that cannot be laid; a plan can be had only where there are none."""
    flat = {p.id for p in problem.parts if _flat(p)}
    held = [] if flat else list(_held(problem))
    bound = {(s.part, s.copy) for s in problem.held}
    free = {c.part.id: c.part for c in copies(problem) if c.part.id not in flat and (c.part.id, c.number) not in bound}
    return (
        *(Misfit(id, "flat") for id in sorted(flat)),
        *(m for p in free.values() if (m := _too_wide(p, problem.width)) is not None),
        *held,
    )


def _flat(part: Part) -> bool:
    if len(set(part.outline)) < 3 or not part.ways:
        return True
    return abs(convex.area(convex.hull(part.outline))) <= NEAR


def _too_wide(part: Part, width: float) -> Misfit | None:
    """The least width that would hold the part, where the cloth is narrower."""
    wide, place = [], []
    for way in part.ways:
        outline, _ = laid(part.outline, 0 if part.fold else way.turn, False)
        across, top = max(y for _, y in outline), 0.0 if part.fold else (way.across or 0.0)
        wide.append(across)
        if top >= -NEAR:
            place.append(top + across)
        if top >= -NEAR and top + across <= width + NEAR:
            return None
    if min(wide) > width + NEAR:
        return Misfit(part.id, "wide", min(place or wide))
    return Misfit(part.id, "place", min(place, default=0.0))


def _held(problem: Problem) -> list[Misfit]:
    from studio.cloth.plan.sound import apart
    from studio.cloth.plan.table import Table

    table = Table(problem)
    found = []
    for k, (spot, lies) in enumerate(zip(table.held_spots, table.held, strict=True)):
        shape = table.shape(lies)
        if _off(spot, shape.across, problem.width):
            found.append(Misfit(spot.part, "held off", max(0.0, spot.y) + shape.across))
        for other, beside in zip(table.held_spots[:k], table.held[:k], strict=True):
            if not apart(table, lies, beside):
                found.append(Misfit(spot.part, "held on", other=other.part))
    return found


def _off(spot: Spot, across: float, width: float) -> bool:
    return spot.x < -NEAR or spot.y < -NEAR or spot.y + across > width + NEAR
