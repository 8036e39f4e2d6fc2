"""The small picture beside a step, made from the draft: the piece that is worked on, a cut through a fold, the skirt.

A step that every skirt has may have a manner of its own; any other shows the piece that it names.
"""

from collections.abc import Callable
from typing import Final

from studio.brief import Brief
from studio.draft import Draft
from studio.draft.making import Making, Shown
from studio.drawing import Drawing
from studio.drawing.pleat_section import pleat_section
from studio.units import Unit

from .drawn.band import band_cut
from .drawn.ends import finished_ends, sewn_ends
from .drawn.flat import levelled, pressed, told
from .drawn.hem import hem_cut
from .drawn.meeting import meeting
from .drawn.part import part
from .drawn.pieces import squared, to_cut
from .drawn.placket import placket_cut
from .drawn.room import CLOTH, ROOM
from .prepare import stiffened

__all__ = ["CLOTH", "ROOM", "picture", "pictured"]


def picture(making: Making, draft: Draft, brief: Brief | None = None, unit: Unit = "cm") -> Drawing:
    """What a step works on, in a room of 66 by 45 mm; nothing for a step that shows no piece and has no manner of its
    own. Without a brief only pieces are shown.
    """
    own = OWN.get(making.key.partition("/")[0])
    if own is not None and brief is not None and (drawn := own(making, draft, brief, unit)):
        return drawn
    shown = making.shows
    if shown is None or not shown.piece:
        return ()
    return part(making, shown, draft.piece(shown.piece), brief, unit)


def pictured(making: Making) -> bool:
    """Whether a step has a picture at all."""
    return making.shows is not None or making.key.partition("/")[0] in OWN


def _pleats(_: Making, draft: Draft, brief: Brief, unit: Unit) -> Drawing:
    return pleat_section(brief, draft, unit)


def _squared(_making: Making, draft: Draft, _brief: Brief, _unit: Unit) -> Drawing:
    return squared(draft)


def _cut(_making: Making, draft: Draft, _brief: Brief, _unit: Unit) -> Drawing:
    return to_cut(draft)


def _joined(_: Making, draft: Draft, _brief: Brief, unit: Unit) -> Drawing:
    seam = next((s for s in draft.seams if s.name == "waist"), None)
    return meeting(draft, seam, unit) if seam else ()


def _tier(making: Making, draft: Draft, _: Brief, unit: Unit) -> Drawing:
    number = int(making.key.partition("/")[2]) - 2
    seams = [s for s in draft.seams if s.name == "tier"]
    return meeting(draft, seams[number], unit)


def _turned(_: Making, draft: Draft, brief: Brief, unit: Unit) -> Drawing:
    return band_cut(brief, draft, unit)


def _fused(making: Making, draft: Draft, brief: Brief, unit: Unit) -> Drawing:
    if making.shows is None:
        return ()
    piece = draft.piece(making.shows.piece)
    to = stiffened(piece, draft)
    return part(making, Shown(to.id, near="left"), to, brief, unit, over=piece.as_cut)


def _finished(making: Making, draft: Draft, brief: Brief, unit: Unit) -> Drawing:
    if _has_ends(draft):
        return finished_ends(draft, unit, holes=making.key == "holes")
    held = next((p for p in draft.pieces if any(s.role in HOLDS for s in p.spots)), None)
    return part(making, Shown(held.id), held, brief, unit) if held else ()


def _sewn(_making: Making, draft: Draft, _brief: Brief, unit: Unit) -> Drawing:
    return sewn_ends(draft, unit) if _has_ends(draft) else ()


def _has_ends(draft: Draft) -> bool:
    """Whether there is a band with two ends."""
    names = {e.name for p in draft.pieces if p.id == "waistband" for e in p.edges}
    return {"plain end", "extension end"} <= names


def _hem(_: Making, draft: Draft, brief: Brief, unit: Unit) -> Drawing:
    return hem_cut(brief, draft, unit)


def _placket(_making: Making, draft: Draft, _brief: Brief, unit: Unit) -> Drawing:
    return placket_cut(draft, unit)


def _level(_making: Making, draft: Draft, brief: Brief, _unit: Unit) -> Drawing:
    return levelled(brief, draft)


def _press(_making: Making, draft: Draft, brief: Brief, _unit: Unit) -> Drawing:
    return pressed(brief, draft)


def _wear(_making: Making, draft: Draft, brief: Brief, unit: Unit) -> Drawing:
    return told(brief, draft, unit)


HOLDS: Final = ("button", "hook", "bar", "snap")
OWN: Final[dict[str, Callable[[Making, Draft, Brief, Unit], Drawing]]] = {
    "prepare": _squared, "cut": _cut, "interface": _fused, "pleats": _pleats, "tier": _tier, "band": _joined,
    "band ends": _sewn, "band turned": _turned, "casing": _turned, "placket": _placket, "holes": _finished,
    "fastening": _finished, "level": _level, "hem": _hem, "press": _press, "wear": _wear,
}  # fmt: skip
"""Steps whose picture is not that of one piece, by key."""
