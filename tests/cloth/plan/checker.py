"""A second hand for lay plans: shapely lays every copy anew and looks whether it may be cut so."""

import itertools
import math
from collections import Counter

from shapely import affinity
from shapely.geometry import Point, Polygon, box

from studio.cloth.plan.problem import Part, Plan, Problem, Spot

TOLERANCE = 2e-4
"""How far a plan may be out, in mm: two tenths of a thousandth."""


def faults(problem: Problem, plan: Plan) -> list[str]:
    """Everything wrong with a plan, in words."""
    parts = {p.id: p for p in problem.parts}
    shapes = [_on_cloth(parts[s.part], s) for s in plan.spots]
    found = [f"{plan.bound=} > {plan.length=}"] if plan.bound > plan.length + 1e-9 else []
    ends = max((s.bounds[2] for s in shapes), default=0.0)
    if abs(ends - plan.length) > TOLERANCE:
        found.append(f"it takes {ends}, not {plan.length}")
    found += _wrong_copies(problem, plan)
    held = {(s.part, s.copy): s for s in problem.held}
    for spot, shape in zip(plan.spots, shapes, strict=True):
        if (spot.part, spot.copy) in held:
            if spot != held[spot.part, spot.copy]:
                found.append(f"{spot} was held elsewhere")
        else:
            found += _wrong_place(problem, parts[spot.part], spot, shape)
    for (a, one), (b, other) in itertools.combinations(zip(plan.spots, shapes, strict=True), 2):
        if (a.part, a.copy) in held and (b.part, b.copy) in held:
            continue
        shared, apart = one.intersection(other).area, one.distance(other)
        size = max(one.length, other.length)
        if shared > TOLERANCE * size or (problem.gap and apart < problem.gap - TOLERANCE):
            found.append(f"{a} and {b} lie {apart} apart and share {shared}")
    return found


def _on_cloth(part: Part, spot: Spot) -> Polygon:
    shape = Polygon(part.outline)
    if spot.mirrored:
        shape = affinity.scale(shape, -1, 1, origin=(0, 0))
    shape = affinity.rotate(shape, spot.turn, origin=(0, 0))
    left, top, _, _ = shape.bounds
    return affinity.translate(shape, spot.x - left, spot.y - top)


def _wrong_copies(problem: Problem, plan: Plan) -> list[str]:
    """Each part as often as it is wanted; on folded cloth a pair is cut from one spot."""
    laid, found = Counter(s.part for s in plan.spots), []
    if len({(s.part, s.copy) for s in plan.spots}) != len(plan.spots):
        found.append("a copy lies twice")
    for part in problem.parts:
        paired = problem.folded and not part.fold and (part.mirrored or _symmetrical(part))
        wanted = math.ceil(part.count / 2) if paired else part.count
        if laid[part.id] != wanted:
            found.append(f"{part.id} lies {laid[part.id]} times, not {wanted}")
        for spot in (s for s in plan.spots if s.part == part.id and not part.fold):
            over = part.mirrored and not part.fold and not paired and spot.copy % 2 == 1
            if spot.mirrored != over and spot not in problem.held:
                found.append(f"{spot} should{' ' if over else ' not '}be turned over")
    return found


def _symmetrical(part: Part) -> bool:
    shape = Polygon(part.outline)
    over = affinity.scale(shape, -1, 1, origin=(0, 0))
    return any(
        _home(over).symmetric_difference(_home(affinity.rotate(shape, way.turn, origin=(0, 0)))).area
        < 1e-6 * shape.area
        for way in part.ways
    )


def _home(shape: Polygon) -> Polygon:
    return affinity.translate(shape, -shape.bounds[0], -shape.bounds[1])


def _wrong_place(problem: Problem, part: Part, spot: Spot, shape: Polygon) -> list[str]:
    found = []
    cloth = box(0, 0, max(shape.bounds[2], 1.0), problem.width).buffer(TOLERANCE)
    if not cloth.covers(shape):
        found.append(f"{spot} lies off the cloth")
    if part.fold:
        if abs(spot.y) > TOLERANCE or spot.turn != 0 or (spot.mirrored and 180 not in {w.turn for w in part.ways}):
            found.append(f"{spot} leaves the fold")
    elif not any(
        way.turn % 360 == spot.turn and (way.across is None or abs(way.across - spot.y) <= TOLERANCE)
        for way in part.ways
    ):
        found.append(f"{spot} lies in no way of its own")
    if part.grid:
        phase = spot.x
        if part.grid.at is not None:
            at, whole = Point(part.grid.at), Polygon(part.outline)
            if spot.mirrored:
                at, whole = (affinity.scale(g, -1, 1, origin=(0, 0)) for g in (at, whole))
            at, whole = (affinity.rotate(g, spot.turn, origin=(0, 0)) for g in (at, whole))
            phase += at.x - whole.bounds[0]
        steps = (phase - part.grid.offset) / part.grid.repeat
        if abs(steps - round(steps)) * part.grid.repeat > TOLERANCE:
            found.append(f"{spot} is off the repeat by {steps}")
    return found
