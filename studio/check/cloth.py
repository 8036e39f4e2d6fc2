"""Rules about the cloth."""

import math
from collections.abc import Iterator

from studio.cloth.lay import to_buy
from studio.styles.gathered import Gathered
from studio.words import phrase

from .finding import Finding, Worked


def pieces_fit_cloth(w: Worked) -> Iterator[Finding]:
    """Every piece fits between the selvedges with its grain along the cloth.

    The remedy cuts the skirt across the cloth in as many panels as it needs.
    """
    room = w.brief.usable_width
    for piece in w.lay.misfits:
        box = piece.cut_line.box
        start, end = piece.grain
        across = box.width if abs(end.y - start.y) > abs(end.x - start.x) else box.height
        says = phrase(
            "{p:word} lies {a} across cloth that has {u} between its selvedges.", p=piece.name, a=across, u=room
        )
        if piece.id == "waistband":
            width = math.floor((room - 2 * w.brief.seams.allowance) / 2)
            remedy, does = {"waistband.width": float(width)}, phrase("Band {w}", w=float(width))
            ok = width >= 10
            yield Finding(
                "pieces-fit-cloth", "stop", says, "cloth.width", piece.id, remedy if ok else None, does if ok else None
            )
            continue
        remedy = None
        if isinstance(w.brief.skirt, Gathered):
            remedy = {"skirt.cut": "across", "skirt.panels": 0}
        yield Finding(
            "pieces-fit-cloth", "stop", says, "cloth.width", piece.id,
            remedy, phrase("Cut across, as few panels as fit") if remedy else None,
        )  # fmt: skip


def cloth_on_hand_suffices(w: Worked) -> Iterator[Finding]:
    """The length on hand, after shrinking, is as long as the lay plan. The remedy is to buy what is missing."""
    have, s = w.brief.cloth.on_hand, w.brief.cloth.shrinkage
    if have is None or w.lay.misfits:
        return
    need = w.lay.length / (1 - s)
    if have < need - 1e-9:
        says = phrase("This skirt takes {n} of cloth; {h} is on hand.", n=need, h=have)
        remedy = {"cloth.on_hand": None}
        does = phrase("Buy {b:metres}", b=to_buy(w.lay.length, s))
        yield Finding("cloth-on-hand-suffices", "doubt", says, "cloth.on_hand", "", remedy, does)
