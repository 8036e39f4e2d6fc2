"""The one function that window, command line and tests call: a brief in, everything made up from it out."""

from msgspec import Struct

from studio.brief import Brief
from studio.check import Finding, Worked, findings
from studio.cloth.buying import cloth_needed, what_to_buy
from studio.cloth.lay import Lay, lay_out
from studio.draft import Draft, Fact, Notion, Piece
from studio.styles import rack
from studio.units import shop_length


class Docket(Struct, frozen=True):
    """The sheet that travels with the order: the brief and all that was computed from it."""

    brief: Brief
    draft: Draft
    lay: Lay
    findings: tuple[Finding, ...]
    facts: tuple[Fact, ...]
    notions: tuple[Notion, ...]

    @property
    def pieces(self) -> tuple[Piece, ...]:
        """The drafted pieces."""
        return self.draft.pieces

    @property
    def stopped(self) -> bool:
        """Whether a finding holds back export until the maker says to go on."""
        return any(f.weight == "stop" for f in self.findings)

    def fact(self, name: str) -> float:
        """The value of a fact; KeyError when there is none of that name."""
        return {f.name: f.value for f in self.facts}[name]


def make_up(brief: Brief) -> Docket:
    """Draft, lay and check.  Pure: an equal brief gives an equal docket."""
    draft = rack.draft(brief)
    lay = lay_out(draft.pieces, brief.cloth)
    need = cloth_needed(brief, lay)
    facts = (
        *draft.facts,
        Fact("cloth_needed", "Cloth to buy", need, "metres"),
        Fact("cloth_estimate", "Cloth to buy, by the tenth of a metre", shop_length(need, "cm"), "metres"),
    )
    found = findings(Worked(brief, draft, lay))
    return Docket(brief, draft, lay, found, facts, what_to_buy(brief, draft, lay))
