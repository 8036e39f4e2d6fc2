"""The whole order of sewing one skirt, first thing first."""

from collections.abc import Callable, Iterable
from typing import Final, get_args

from msgspec.structs import replace

from studio.brief import Brief
from studio.draft import Draft
from studio.draft.making import Making, Phase
from studio.styles import rack

from .band import band
from .darts import darts, slits
from .fastening import fastening
from .gather import gather
from .hem import finish, hem
from .lining import lining, lining_hem
from .marking import mark, neaten
from .opening import opening
from .pockets import pockets
from .prepare import cut, interface, prepare
from .seams import seams
from .tiers import as_strips, tiers

PARTS: Final[tuple[Callable[[Brief, Draft], Iterable[Making]], ...]] = (
    prepare, cut, interface, mark, neaten, darts, pockets, opening, seams, slits, tiers, gather, lining, band,
    fastening, hem, lining_hem, finish,
)  # fmt: skip
"""What every skirt may need; each gives nothing where it is not needed."""
_PHASES: Final[tuple[Phase, ...]] = get_args(Phase)


def sewing_order(brief: Brief, draft: Draft) -> tuple[Making, ...]:
    """Every step in the order of its phase; a style's step stands in place of a common one with its key."""
    own = {m.key: m for m in rack.making(brief, draft)}
    common = [m for part in PARTS for m in part(brief, draft)]
    steps = [own.pop(m.key, m) for m in common]
    after = next(k for k, m in enumerate(steps) if m.key == "mark") + 1
    steps[after:after] = own.values()  # marked first, then what the style asks for, before the common steps of a phase
    if as_strips(brief, draft):
        steps = _joined_first(steps)
    return tuple(sorted(steps, key=lambda m: _PHASES.index(m.phase)))


def _joined_first(steps: list[Making]) -> list[Making]:
    """Seams and tiers come before an opening that runs through them."""
    joined = [m for m in steps if m.key == "seams" or m.key.startswith("tier/")]
    return [*(replace(m, phase="opening") for m in joined), *(m for m in steps if m not in joined)]
