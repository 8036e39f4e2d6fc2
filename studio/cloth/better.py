"""Better plans: by true shapes, as long as it is worth while."""

from collections.abc import Iterable, Iterator

from studio.brief import Cloth
from studio.draft import Piece

from .lay import lay_out
from .outlines import laid, task
from .placed import Lay


def plans(pieces: Iterable[Piece], cloth: Cloth, seconds: float) -> Iterator[Lay]:
    """A plan by true shapes, then only better ones, for so many seconds; none where not all can be laid."""
    from .plan.improve import plans as improved  # brings numpy with it

    pieces = tuple(pieces)
    whole, least = task(pieces, cloth), lay_out(pieces, cloth).bound
    if whole.whole:
        yield from (laid(plan, whole, least) for plan in improved(whole.problem, seconds))
