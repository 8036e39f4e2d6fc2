"""Better plans: by true shapes, as long as it is worth while."""

import time
from collections.abc import Iterable, Iterator
from typing import Final

from studio.brief import Cloth
from studio.draft import Piece

from .lay import lay_out
from .outlines import laid, task
from .placed import Lay

LOOK: Final = 0.02
"""How often plans are fetched (s)."""


def plans(pieces: Iterable[Piece], cloth: Cloth, seconds: float) -> Iterator[Lay]:
    """A plan by true shapes, then only better ones, for so many seconds; none where not all can be laid.

    They are looked for in a process of their own, as beside a window: the engine may end the one it is in.
    """
    from .plan.planning import Planning  # brings numpy with it

    pieces = tuple(pieces)
    whole, least = task(pieces, cloth), lay_out(pieces, cloth).bound
    if not whole.whole:
        return
    search = Planning(whole.problem, seconds)
    try:
        yield laid(search.start(), whole, least)
        running = True
        while running:
            running = search.running
            if plan := search.poll():
                yield laid(plan, whole, least)
            elif running:
                time.sleep(LOOK)
    finally:
        search.stop()
