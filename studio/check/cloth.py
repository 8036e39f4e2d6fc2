"""Rules about the cloth."""

from collections.abc import Iterator

from studio.brief import Brief
from studio.cloth.buying import cloth_needed
from studio.cloth.ways import across
from studio.draft import Piece
from studio.styles import rack
from studio.styles.style import Edit
from studio.words import Phrase, phrase

from .finding import Finding, Worked, off_cloth
from .rebanded import narrower


def pieces_fit_cloth(w: Worked) -> Iterator[Finding]:
    """Every piece fits between the selvedges with its grain along the cloth.

    The remedy cuts the skirt in as many panels as the cloth asks, or across it, or makes the band narrower.
    """
    wide = w.brief.cloth.usable
    panels = [p for p in w.lay.misfits if p.id != "waistband"]
    for piece in [p for p in w.lay.misfits if p.id == "waistband"] + panels[:1]:
        says = phrase(
            FOLDED if w.brief.cloth.lies == "folded" else OPEN, p=piece.name, a=across(piece, w.brief.cloth), u=wide
        )
        remedy, does = _fit(w, piece)
        yield Finding("pieces-fit-cloth", "stop", says, "cloth.width", piece.id, remedy, does)


OPEN = "{p:word} lies {a} across cloth that has {u} between its selvedges."
FOLDED = "{p:word} lies {a} across folded cloth that has {u} from fold to selvedge."


def _fit(w: Worked, piece: Piece) -> tuple[Edit | None, Phrase | None]:
    if piece.id == "waistband":
        return narrower(w.brief)
    for edit, says in FEWER:
        if not edit.keys() <= rack.declarations(w.brief).keys() or edit == _now(w.brief, edit):
            continue
        if not off_cloth(w.brief, edit) - {"waistband"}:
            return edit, phrase(says)
    return None, None


FEWER: tuple[tuple[Edit, str], ...] = (
    ({"skirt.panels": 0}, "As many panels as the cloth asks"),
    ({"skirt.cut": "across", "skirt.panels": 0}, "Cut across, as few panels as fit"),
    ({"skirt.cut": "across"}, "Cut across, as few panels as fit"),
)
"""What makes panels fit, and how it is said; the first that does is offered."""


def _now(brief: Brief, edit: Edit) -> Edit:
    return {path: rack.value(brief, path) for path in edit}


def cloth_on_hand_suffices(w: Worked) -> Iterator[Finding]:
    """The length on hand, after shrinking, is as long as the lay plan. The remedy is to buy what is missing."""
    have = w.brief.cloth.on_hand
    if have is None or w.lay.misfits:
        return
    need = cloth_needed(w.brief, w.lay)
    if have < need - 1e-9:
        says = phrase("This skirt takes {n} of cloth; {h} is on hand.", n=need, h=have)
        remedy = {"cloth.on_hand": None}
        does = phrase("Buy what it takes")
        yield Finding("cloth-on-hand-suffices", "doubt", says, "cloth.on_hand", "", remedy, does)
