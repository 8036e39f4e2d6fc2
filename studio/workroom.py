"""The one function that window, command line and tests call: a brief in, everything made up from it out."""

from msgspec import Struct

from studio.brief import Brief
from studio.check import Finding, Worked, findings
from studio.cloth.better import plans
from studio.cloth.buying import cloth_needed, what_to_buy
from studio.cloth.found import Found, ground
from studio.cloth.lay import lay_out
from studio.cloth.placed import Lay
from studio.draft import Draft, Fact, Notion, Piece
from studio.styles import rack
from studio.units import shop_length

NONE = Found()
"""No plan but the one at a glance."""


class Docket(Struct, frozen=True):
    """The sheet that travels with the order: the brief and all that was computed from it."""

    brief: Brief
    draft: Draft
    lay: Lay
    findings: tuple[Finding, ...]
    facts: tuple[Fact, ...]

    @property
    def pieces(self) -> tuple[Piece, ...]:
        """The drafted pieces."""
        return self.draft.pieces

    @property
    def notions(self) -> tuple[Notion, ...]:
        """What to buy, worked out when it is asked for: no keystroke waits for it."""
        return what_to_buy(self.brief, self.draft, self.lay)

    @property
    def stopped(self) -> bool:
        """Whether a finding holds back export until the maker says to go on."""
        return any(f.weight == "stop" for f in self.findings)

    def fact(self, name: str) -> float:
        """The value of a fact; KeyError when there is none of that name."""
        return {f.name: f.value for f in self.facts}[name]


def make_up(brief: Brief, found: Found = NONE) -> Docket:
    """Draft, lay and check.  Pure: an equal brief gives an equal docket.

    The lay is that which was `found` for the same outlines on the same cloth, else the one at a glance.
    """
    draft = rack.draft(brief)
    kept = found.lay(ground(draft.pieces, brief.cloth), draft.pieces) if found.plans else None
    return _docket(brief, draft, kept or lay_out(draft.pieces, brief.cloth))


def relaid(docket: Docket, lay: Lay) -> Docket:
    """The same skirt on a better lay plan."""
    return _docket(docket.brief, docket.draft, lay)


def bettered(docket: Docket, seconds: float) -> Docket:
    """The same skirt on the shortest plan that is found by true shapes in so many seconds; its own where none is."""
    if docket.lay.proven or docket.lay.misfits or seconds <= 0:
        return docket
    found = docket.lay
    for lay in plans(docket.pieces, docket.brief.cloth, seconds):
        if lay.length < found.length - 1e-3 or (lay.length <= found.length + 1e-3 and lay.bound > found.bound):
            found = lay
    return docket if found is docket.lay else relaid(docket, found)


def _docket(brief: Brief, draft: Draft, lay: Lay) -> Docket:
    need = cloth_needed(brief, lay)
    facts = (
        *draft.facts,
        Fact("cloth_needed", "Cloth to buy", need, "metres"),
        Fact("cloth_estimate", "Cloth to buy, by the tenth of a metre", shop_length(need, "cm"), "metres"),
    )
    found = findings(Worked(brief, draft, lay))
    return Docket(brief, draft, lay, found, facts)
