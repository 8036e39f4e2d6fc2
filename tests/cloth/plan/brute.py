"""Every way to lay a few boxes of whole millimetres, tried one after another: the least length there is.

Boxes are put down in the order of their starts. Pushed towards the cut end, a free one starts there or where another
one's gap ends; one tied to a repeat at any of its places. Across the cloth every millimetre is tried.
"""

import random

from studio.cloth.plan.problem import Grid, Part, Problem, Spot, Way

Box = tuple[int, int, int | None, int | None, int]
"""Along, across, its place across, the phase and the repeat of its start; None for none."""
Laid = tuple[int, int, int, int]
"""Start along and across, and size along and across."""


def few_boxes(seed: int) -> Problem:
    """Up to six boxes on a narrow cloth: turned, in their place, on a repeat, on a fold, held, with a gap."""
    chance = random.Random(seed)
    width, folded = chance.randint(4, 9), chance.random() < 0.2
    parts = tuple(_few(chance, f"part {k}", width, folded) for k in range(chance.randint(1, 3)))
    held: tuple[Spot, ...] = ()
    if chance.random() < 0.25 and not parts[0].fold:
        high = int(parts[0].outline[2][1])
        held = (Spot("part 0", 0, chance.randint(0, 6), chance.randint(0, width - high)),)
    return Problem(width, parts, chance.choice((0, 0, 1, 2)), folded, held)


def _few(chance: random.Random, name: str, width: int, folded: bool) -> Part:
    a, b = chance.randint(1, 8), chance.randint(1, width)
    turns = chance.choice(((0,), (0, 180), (0, 90, 180, 270) if a <= width else (0,)))
    placed = chance.random() < 0.3
    ways = tuple(Way(t, chance.randint(0, width - (a if t % 180 else b)) if placed else None) for t in turns)
    grid = None
    if chance.random() < 0.25:
        at = chance.choice((None, (chance.randint(0, a), chance.randint(0, b))))
        grid = Grid(chance.randint(2, 7), chance.randint(0, 6), at)
    fold = folded and chance.random() < 0.3
    ways = chance.choice(((Way(0),), (Way(0), Way(180)))) if fold else ways
    outline = ((0, 0), (a, 0), (a, b), (0, b))
    return Part(name, outline, ways, chance.randint(1, 2), chance.random() < 0.3, grid, fold)


def least_length(problem: Problem, known: int) -> int:
    """The least length of all plans, where one no longer than `known` is known."""
    free, placed = _boxes(problem)
    kinds = sorted(set(free), key=str)
    best = known + 1

    def lay(left: list[int], placed: list[Laid], last: tuple[int, int]) -> None:
        nonlocal best
        end = max((x + a for x, _, a, _ in placed), default=0)
        rest = sum(n * min(o[0] * o[1] for o in kind) for n, kind in zip(left, kinds, strict=True))
        if end >= best or sum(a * c for _, _, a, c in placed) + rest > (best - 1) * problem.width:
            return
        if not any(left):
            best = end
            return
        for k, kind in enumerate(kinds):
            if left[k]:
                fewer = [n - (j == k) for j, n in enumerate(left)]
                for one in kind:
                    for at in _places(problem, one, placed, last, best):
                        lay(fewer, [*placed, at], at[:2])

    lay([free.count(kind) for kind in kinds], placed, (0, -1))
    return best


def _places(problem: Problem, one: Box, placed: list[Laid], last: tuple[int, int], best: int) -> list[Laid]:
    along, across, place, phase, repeat = one
    gap, width = int(problem.gap), int(problem.width)
    starts = {0, *(x + a + gap for x, _, a, _ in placed)} if phase is None else set(range(phase, best, repeat))
    heights = range(width - across + 1) if place is None else [place]
    return [
        (x, y, along, across)
        for x in sorted(starts)
        for y in heights
        if (x, y) >= last and x + along < best
        and not any(x < u + a + gap and u < x + along + gap and y < v + c + gap and v < y + across + gap
                    for u, v, a, c in placed)
    ]  # fmt: skip


def _boxes(problem: Problem) -> tuple[list[tuple[Box, ...]], list[Laid]]:
    """The free copies, each as it may lie, and those that are held. Folded, any box but one on the fold gives two."""
    held = {(s.part, s.copy): s for s in problem.held}
    free: list[tuple[Box, ...]] = []
    fixed: list[Laid] = []
    for part in problem.parts:
        paired = problem.folded and not part.fold
        for k in range((part.count + 1) // 2 if paired else part.count):
            over = part.mirrored and not part.fold and not paired and k % 2 == 1
            if (spot := held.get((part.id, k))) is not None:
                fixed.append((int(spot.x), int(spot.y), *map(int, part.outline[2])))  # type: ignore[arg-type]
            else:
                free.append(tuple(sorted({_box(part, way, over) for way in part.ways}, key=str)))
    return free, fixed


def _box(part: Part, way: Way, over: bool) -> Box:
    a, b = map(int, part.outline[2])
    turn, place = way.turn, None if way.across is None else int(way.across)
    if part.fold:
        over, turn, place = over != (turn == 180), 0, 0
    along, across = (b, a) if turn % 180 else (a, b)
    if part.grid is None:
        return along, across, place, None, 1
    x, y = map(int, part.grid.at or (0, 0))
    x = a - x if over else x
    point = {0: x, 90: b - y, 180: a - x, 270: y}[turn] if part.grid.at else 0
    repeat = int(part.grid.repeat)
    return along, across, place, (int(part.grid.offset) - point) % repeat, repeat
