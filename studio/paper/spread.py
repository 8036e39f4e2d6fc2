"""Labels beside a row of places: each where it belongs if it can be, moved aside only as far as it must."""

from collections.abc import Callable, Sequence
from itertools import pairwise

from msgspec import Struct


class Label(Struct, frozen=True):
    """Words, the place they name, and where their middle stands, both mm along the row."""

    text: str
    place: float
    at: float

    @property
    def moved(self) -> bool:
        """Whether a line must lead from the place to the words."""
        return abs(self.at - self.place) > 0.05


def labelled(
    texts: Sequence[str], places: Sequence[float], long: Callable[[str], float], low: float, high: float
) -> tuple[Label, ...]:  # fmt: skip
    """A label for each place between `low` and `high` (mm), none on another; `long` says how much room words take.

    Where there is no room for all, the nearest neighbours share one label, such as "2–4".
    """
    groups = [[k] for k in range(len(places))]
    while len(groups) > 1 and sum(long(_joined(texts, g)) for g in groups) > high - low:
        k = min(range(len(groups) - 1), key=lambda k: _middle(places, groups[k + 1]) - _middle(places, groups[k]))
        groups[k : k + 2] = [groups[k] + groups[k + 1]]
    words = [_joined(texts, g) for g in groups]
    at = [_middle(places, g) for g in groups]
    stand = spread(at, [long(w) for w in words], low, high)
    return tuple(Label(w, p, a) for w, p, a in zip(words, at, stand, strict=True))


def _joined(texts: Sequence[str], group: Sequence[int]) -> str:
    return texts[group[0]] if len(group) == 1 else f"{texts[group[0]]}–{texts[group[-1]]}"


def _middle(places: Sequence[float], group: Sequence[int]) -> float:
    return (places[group[0]] + places[group[-1]]) / 2


def spread(places: Sequence[float], sizes: Sequence[float], low: float, high: float) -> list[float]:
    """Middles of things of those sizes between `low` and `high`, in order and clear of each other, least moved.

    Least squares in the order given: neighbours that would overlap are pooled and stand about their mean (Ayer
    and others, Annals of Mathematical Statistics 26, 1955, from memory: pooling of adjacent violators). Places
    are in order, and the sizes together fit.
    """
    starts = [0.0]
    for a, b in pairwise(sizes):
        starts.append(starts[-1] + (a + b) / 2)
    pools: list[tuple[float, int]] = []
    for place, start in zip(places, starts, strict=False):
        pool = (place - start, 1)
        while pools and pools[-1][0] > pool[0]:
            (mean, n), (before, m) = pool, pools.pop()
            pool = ((mean * n + before * m) / (n + m), n + m)
        pools.append(pool)
    if not places:
        return []
    first, last = low + sizes[0] / 2, high - sizes[-1] / 2 - starts[-1]
    held = [max(first, min(last, mean)) for mean, n in pools for _ in range(n)]
    return [h + s for h, s in zip(held, starts, strict=False)]
