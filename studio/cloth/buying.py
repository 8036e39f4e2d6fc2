"""What to buy for a skirt: one list, from which window, pages and command line all read."""

import math

from msgspec.structs import replace

from studio.brief import Brief, Cloth
from studio.draft import Draft, Notion
from studio.draft.piece import Material
from studio.units import shop_length
from studio.words import phrase

from .lay import lay_out
from .placed import Lay
from .thread import rows
from .ways import across, phase_point


def what_to_buy(brief: Brief, draft: Draft, lay: Lay) -> tuple[Notion, ...]:
    """Cloth, lining, interfacing, what closes it, elastic, thread; lengths before rounding are `needed`."""
    wide = {"lining": brief.lining.width, "interfacing": brief.waistband.interfacing_width}
    others = (_other(brief, draft, "lining", wide["lining"]), _other(brief, draft, "interfacing", wide["interfacing"]))
    return (_cloth(brief, lay), *(n for n in others if n), *draft.notions, _thread(brief, draft))


def cloth_needed(brief: Brief, lay: Lay) -> float:
    """Length of cloth before the wash, mm: the plan's, divided by what is left after shrinking. Where a print must be
    placed it is bought in whole repeats and one more to start from; the length on hand begins where its print does.
    """
    length, cloth = lay.length, brief.cloth
    here = cloth.on_hand is not None and length / (1 - cloth.shrinkage) <= cloth.on_hand + 1e-9
    if cloth.repeat and not here and any(phase_point(p.piece, cloth) is not None for p in lay.placed):
        length = whole_repeats(length, cloth.repeat) + cloth.repeat
    return length / (1 - cloth.shrinkage)


def whole_repeats(length: float, repeat: float) -> float:
    """A length, up to whole repeats of the print, mm."""
    return math.ceil(length / repeat - 1e-6) * repeat


def _cloth(brief: Brief, lay: Lay) -> Notion:
    cloth, need = brief.cloth, cloth_needed(brief, lay)
    sizes: dict[str, float | int | str] = {"length": shop_length(need, "cm"), "needed": need, "width": cloth.width}
    if cloth.on_hand is not None and cloth.on_hand >= need - 1e-9:
        return Notion("cloth", phrase("cloth {l:buy}, {w} wide, on hand", l=need, w=cloth.width), sizes)
    if cloth.price is None:
        return Notion("cloth", phrase("cloth {l:buy}, {w} wide", l=need, w=cloth.width), sizes)
    text = "cloth {l:buy}, {w} wide, costs {c:cost}"
    return Notion("cloth", phrase(text, l=need, w=cloth.width, c=(need, cloth.price)), sizes | {"price": cloth.price})


def _other(brief: Brief, draft: Draft, what: Material, wide: float) -> Notion | None:
    """Lining or interfacing: a plan of its own on its own width, on its own grain; between the cloth's selvedges, which
    interfacing does not have. A piece too wide is counted by its length, and a finding names it.
    """
    pieces = [replace(p, cloth="main") for p in draft.pieces if p.cloth == what]
    if not pieces:
        return None
    selvedge = brief.cloth.selvedge if what == "lining" else 0.0
    cloth = Cloth(width=wide, selvedge=selvedge)
    plan = lay_out(pieces, cloth)
    boxes = ((p, p.as_cut.box) for p in plan.misfits)
    need = plan.length + sum((box.width + box.height - across(p, cloth)) * p.cut for p, box in boxes)
    text = "lining {l:buy}, {w} wide" if what == "lining" else "interfacing {l:buy}, {w} wide"
    sizes = {"length": shop_length(need, "cm"), "needed": need, "width": wide}
    return Notion(what, phrase(text, l=need, w=wide), sizes)


def _thread(brief: Brief, draft: Draft) -> Notion:
    sizes = dict(rows(brief, draft))
    words = phrase("thread {t:metres}; for overedging {o:metres} more", t=sizes["length"], o=sizes["overedge"])
    return Notion("thread", words, sizes)
