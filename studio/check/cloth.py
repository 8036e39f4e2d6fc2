"""Rules about the cloth."""

from collections.abc import Iterator

from studio.cloth.buying import cloth_needed
from studio.cloth.ways import across
from studio.words import phrase

from .finding import Finding, Worked
from .fitting import fitted, joined


def pieces_fit_cloth(w: Worked) -> Iterator[Finding]:
    """Every piece fits between the selvedges with its grain along the cloth.

    The remedy is the first of these that makes it fit: as many panels as the cloth asks, a band that is narrower or of
    two pieces, cloth laid open, panels cut across, more panels or gores, cloth just so wide. Where nothing parts the
    piece, the words say in how many it would fit, joined on the straight grain: n parts of a piece c wide, each with
    the allowance a at its joins, are (c + 2a(n − 1)) / n wide (derived).
    """
    cloth = w.brief.cloth
    panels = [p for p in w.lay.misfits if p.id != "waistband"]
    for piece in [p for p in w.lay.misfits if p.id == "waistband"] + panels[:1]:
        way = fitted(w, piece)
        parts = joined(piece, cloth, w.brief.seams.allowance) if way is None or "cloth.width" in way[0] else None
        text = FOLDED if cloth.lies == "folded" else OPEN
        says = phrase(text, p=piece.name, a=across(piece, cloth), u=cloth.usable)
        if parts is not None:
            says = phrase(IN_PARTS, **says.values, n=parts[0], x=parts[1])
        remedy, does = way or (None, None)
        yield Finding("pieces-fit-cloth", "stop", says, "cloth.width", piece.id, remedy, does)


OPEN = "{p:word} lies {a} across cloth that has {u} between its selvedges."
FOLDED = "{p:word} lies {a} across folded cloth that has {u} from fold to selvedge."
IN_PARTS = "{p:word} lies {a} across, the cloth holds {u}: {n:count} parts of {x} fit, joined on the straight grain."


def cloth_on_hand_suffices(w: Worked) -> Iterator[Finding]:
    """The length on hand, after shrinking, is as long as the lay plan. The remedy is to buy what is missing."""
    have = w.brief.cloth.on_hand
    if have is None or w.lay.misfits:
        return
    need = cloth_needed(w.brief, w.lay)
    if have < need - 1e-9:
        text = "This skirt needs {n} of cloth; {h} is on hand."
        if w.brief.cloth.shrinkage:
            text = "Before the wash this skirt needs {n} of cloth; {h} is on hand."
        says = phrase(text, n=need, h=have)
        remedy = {"cloth.on_hand": None}
        does = phrase("Buy what it needs")
        yield Finding("cloth-on-hand-suffices", "doubt", says, "cloth.on_hand", "", remedy, does)
