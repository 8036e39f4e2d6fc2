"""The steps of a brief, as the tests of the sewing order read them."""

from studio.brief import Brief
from studio.draft.making import Making
from studio.sewing import sewing_order
from studio.styles import rack
from studio.units import Unit, spell


def order(of: Brief) -> tuple[Making, ...]:
    """The steps of a brief."""
    return sewing_order(of, rack.draft(of))


def keys(of: Brief) -> list[str]:
    """What the steps of a brief are known by."""
    return [m.key for m in order(of)]


def said(of: Brief, key: str, unit: Unit = "cm") -> str:
    """All that a step says; nothing where there is no such step."""
    return " ".join(spell(s, unit) for m in order(of) if m.key == key for s in m.says)
