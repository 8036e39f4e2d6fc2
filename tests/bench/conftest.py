"""Figures are ratios to a floor measured in the same run, since machines and their moods differ."""

import os
import statistics
import time
from collections.abc import Callable

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")


def times(work: Callable[[], object], rounds: int) -> list[float]:
    """Milliseconds of each round, after a few to warm up: of this process alone, whatever else the machine does."""
    for _ in range(3):
        work()
    taken = []
    for _ in range(rounds):
        start = time.process_time()
        work()
        taken.append((time.process_time() - start) * 1000)
    return taken


def median(work: Callable[[], object], rounds: int = 50) -> float:
    """Median milliseconds of a round."""
    return statistics.median(times(work, rounds))


def tell(name: str, figure: float, floor: float, bound: float, unit: str = "ms") -> None:
    """One line of the table: the figure, its floor, their ratio and the bound on the ratio."""
    print(f"\n{name}: {figure:.2f} {unit}, floor {floor:.2f} {unit}, ratio {figure / floor:.2f} (bound {bound:.2f})")


def plain_work() -> int:
    """The floor for model code: 50 000 additions, about 2 ms on a two-core machine of 2023."""
    total = 0
    for k in range(50_000):
        total += k
    return total
