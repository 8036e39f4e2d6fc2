"""The packing engine: free shapes on a strip, by the library spyrrow. The only module that knows it.

It is fast and it is not ours: it reckons in single precision, takes whole seconds, and can end its process. So it
runs where that does no harm (see `planning`), and what it says is made exact by `press`.
"""

import threading
from collections.abc import Iterator
from typing import Any, NamedTuple

from studio.cloth.plan.problem import laid
from studio.cloth.plan.table import Laid, Table

LEEWAY = 1e-4
"""Share of the width given to the strip on either side: the engine misses exact fits."""


class EngineFailed(Exception):
    """The engine gave up; the message is its own."""


class _Kind(NamedTuple):
    """Copies of one outline: the free ones, or one that is held (its number is None); and its stances by turn."""

    copies: list[int] | None
    stances: tuple[int, ...]


def packed(table: Table, seconds: int, seed: int) -> Iterator[list[Laid]]:
    """Lay the free copies, as better and better packings are found; whoever reads may stop reading.

    Places across and repeats and what is held are not known to the engine, so copies lie only nearly where they must,
    and may overlap a little.
    """
    import spyrrow

    margin = table.gap + LEEWAY * table.width
    kinds = _kinds(table)
    items = []
    for k, kind in enumerate(kinds):
        first = table.stances[kind.stances[0]]
        turns = sorted({float((table.stances[s].turn - first.turn) % 360) for s in kind.stances})
        items.append(spyrrow.Item(str(k), table.shapes[first.shape].points, len(kind.copies or "1"), turns))
    strip = spyrrow.StripPackingInstance("cloth", table.width + 2 * margin, items)
    config = spyrrow.StripPackingConfig(
        early_termination=True,
        total_computation_time=max(1, seconds),
        num_workers=1,
        seed=seed,
        min_items_separation=table.gap or None,
    )
    progress = spyrrow.ProgressQueue()
    ended: list[Any] = []

    def work() -> None:
        try:
            ended.append(strip.solve(config, progress))
        except BaseException as trouble:  # the engine's own kind of trouble is no Exception
            ended.append(trouble)

    thread = threading.Thread(target=work, daemon=True)
    thread.start()
    while thread.is_alive():
        thread.join(0.05)
        sound = [packing for kind, packing in progress.drain() if int(kind) in _SOUND]
        if sound:
            yield _laid(table, kinds, sound[-1], margin)
    if isinstance(ended[0], BaseException):
        raise EngineFailed(str(ended[0])) from None
    yield _laid(table, kinds, ended[0], margin)


_SOUND = (0, 3)
"""Reports of packings without overlap: while exploring and while compressing."""


def _kinds(table: Table) -> list[_Kind]:
    groups: dict[tuple[int, ...], list[int]] = {}
    for copy, stances in enumerate(table.choices):
        groups.setdefault(stances, []).append(copy)
    free = [_Kind(copies, stances) for stances, copies in groups.items()]
    return free + [_Kind(None, (held.stance,)) for held in table.held]


def _laid(table: Table, kinds: list[_Kind], packing: Any, margin: float) -> list[Laid]:
    """The engine turns about the origin of the outline it was given, then shifts it."""
    left = {k: list(kind.copies) for k, kind in enumerate(kinds) if kind.copies}
    spots = []
    for item in packing.placed_items:
        k = int(item.id)
        if k not in left:
            continue
        first = table.stances[kinds[k].stances[0]]
        turn = round(item.rotation) % 360
        _, (dx, dy) = laid(tuple(table.shapes[first.shape].points), turn, False)
        stance = next(s for s in kinds[k].stances if (table.stances[s].turn - first.turn - turn) % 360 == 0)
        x, y = item.translation
        spots.append(Laid(left[k].pop(), stance, max(0.0, x - dx - table.gap), y - dy - margin))
    return sorted(spots)
