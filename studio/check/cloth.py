"""Rules about the cloth."""

from collections.abc import Iterator
from typing import Any

from studio.cloth.lay import across
from studio.draft import Piece
from studio.draft.straight_panel import MOST, panel_count
from studio.styles import rack
from studio.words import Phrase, phrase

from .finding import Finding, Worked
from .rebanded import narrower


def pieces_fit_cloth(w: Worked) -> Iterator[Finding]:
    """Every piece fits between the selvedges with its grain along the cloth.

    The remedy cuts the skirt across the cloth in as many panels as it needs, or makes the band narrower.
    """
    room = w.brief.usable_width
    panels = [p for p in w.lay.misfits if p.id != "waistband"]
    for piece in [p for p in w.lay.misfits if p.id == "waistband"] + panels[:1]:
        says = phrase(
            "{p:word} lies {a} across cloth that has {u} between its selvedges.", p=piece.name, a=across(piece), u=room
        )
        remedy, does = _fit(w, piece, room)
        yield Finding("pieces-fit-cloth", "stop", says, "cloth.width", piece.id, remedy, does)


def _fit(w: Worked, piece: Piece, room: float) -> tuple[dict[str, Any] | None, Phrase | None]:
    if piece.id == "waistband":
        return narrower(w.brief)
    if "skirt.cut" in rack.declarations(w.brief) and _fits_across(w, room):
        return {"skirt.cut": "across", "skirt.panels": 0}, phrase("Cut across, as few panels as fit")
    return None, None


def _fits_across(w: Worked, room: float) -> bool:
    return panel_count(w.draft.fact("flat_width"), room, w.brief.seams.allowance) <= MOST


def cloth_on_hand_suffices(w: Worked) -> Iterator[Finding]:
    """The length on hand, after shrinking, is as long as the lay plan. The remedy is to buy what is missing."""
    have, s = w.brief.cloth.on_hand, w.brief.cloth.shrinkage
    if have is None or w.lay.misfits:
        return
    need = w.lay.length / (1 - s)
    if have < need - 1e-9:
        says = phrase("This skirt takes {n} of cloth; {h} is on hand.", n=need, h=have)
        remedy = {"cloth.on_hand": None}
        does = phrase("Buy what it takes")
        yield Finding("cloth-on-hand-suffices", "doubt", says, "cloth.on_hand", "", remedy, does)
