"""Problems that nobody thought of, and those kept in tests/data/packing."""

import json
import math
import random
from pathlib import Path

from studio.cloth.plan.problem import Grid, Outline, Part, Problem, Spot, Way

KEPT = Path(__file__).parents[2] / "data" / "packing"
NAMES = tuple(sorted(p.stem for p in KEPT.glob("*.json")))
BORDERED = 540.0


def kept(name: str) -> Problem:
    """A problem from a file: lengths in mm, or in the file's own unit."""
    said = json.loads((KEPT / f"{name}.json").read_text(encoding="utf-8"))
    return Problem(said["strip_height"], tuple(_part(item) for item in said["items"]), said.get("gap", 0.0))


def _part(item: dict) -> Part:
    grid = item.get("x_grid")
    return Part(
        str(item["id"]),
        tuple((float(x), float(y)) for x, y in item["points"]),
        tuple(Way(int(turn), item.get("anchor_y")) for turn in item["allowed_rotations"]),
        item["demand"],
        grid=Grid(grid["repeat"], grid["offset"]) if grid else None,
    )


def rectangle(along: float, across: float) -> Outline:
    """A box with its corner at the origin."""
    return ((0, 0), (along, 0), (along, across), (0, across))


def any_problem(seed: int) -> Problem:
    """Some parts on some cloth: boxes alone, or any shapes; gaps, places across, repeats, folds, held spots."""
    chance = random.Random(seed)
    width = chance.choice((700.0, 1100.0, 1400.0, 1500.0, chance.uniform(300, 1600)))
    folded = chance.random() < 0.25
    boxes = chance.random() < 0.4
    parts = tuple(_any_part(chance, f"part {k}", width, folded, boxes) for k in range(chance.randint(1, 5)))
    problem = Problem(width, parts, chance.choice((0.0, 0.0, 2.0, 3.3, 10.0)), folded)
    if chance.random() < 0.2:
        part = parts[0]
        box = _size(part.outline)
        across = max(0.0, width - box[1])
        held = Spot(part.id, 0, chance.uniform(0, 500), chance.uniform(0, across), 0, False)
        problem = Problem(width, parts, problem.gap, folded, (held,))
    return problem


def _any_part(chance: random.Random, name: str, width: float, folded: bool, boxes: bool) -> Part:
    along, across = chance.uniform(20, 900), chance.uniform(10, width * chance.choice((0.3, 0.6, 1.0)))
    kind = "box" if boxes else chance.choice(("box", "gore", "hook", "star", "bow", "sliver"))
    outline = _outline(chance, kind, along, across)
    size = _size(outline)
    turns = chance.choice(((0,), (0, 180), (0, 90, 180, 270), (180,)))
    anchored = chance.random() < 0.2
    ways = tuple(
        Way(turn, chance.uniform(0, max(0.0, width - size[turn % 180 == 0])) if anchored else None) for turn in turns
    )
    if anchored and chance.random() < 0.3:  # a border along either selvedge
        ways = (Way(0, max(0.0, width - size[1])), Way(180, 0.0))
    grid = None
    if chance.random() < 0.2:
        at = chance.choice((None, (size[0] / 3, size[1] / 4)))
        grid = Grid(chance.choice((64.0, 320.0, chance.uniform(30, 500))), chance.uniform(0, 300), at)
    fold = folded and chance.random() < 0.3
    return Part(name, outline, ways, chance.randint(1, 4), chance.random() < 0.4, grid, fold)


def _size(outline: Outline) -> tuple[float, float]:
    xs, ys = zip(*outline, strict=True)
    return max(xs) - min(xs), max(ys) - min(ys)


def _outline(chance: random.Random, kind: str, a: float, b: float) -> Outline:
    match kind:
        case "gore":
            top = chance.uniform(0.1, 0.9) * b
            return ((0, (b - top) / 2), (a, 0), (a, b), (0, (b + top) / 2))
        case "hook":
            u, v = chance.uniform(0.1, 0.9) * a, chance.uniform(0.1, 0.9) * b
            return ((0, 0), (a, 0), (a, v), (u, v), (u, b), (0, b))
        case "star":
            n = chance.randint(3, 14)
            rays = [(chance.uniform(0.2, 1.0), 2 * math.pi * k / n) for k in range(n)]
            return tuple((a / 2 * r * math.cos(t) - 40, b / 2 * r * math.sin(t) + 7) for r, t in rays)
        case "bow":
            n, inner = chance.randint(6, 30), chance.uniform(0.3, 0.9)
            arc = [math.pi * k / n for k in range(n + 1)]
            outer = [(a / 2 * math.cos(t), b * math.sin(t)) for t in arc]
            return tuple(outer + [(a / 2 * inner * math.cos(t), b * inner * math.sin(t)) for t in reversed(arc)])
        case "sliver":
            return ((0, 0), (a, chance.uniform(0.001, 1)), (a / 2, chance.uniform(0.5, 3)))
    return rectangle(a, b)
