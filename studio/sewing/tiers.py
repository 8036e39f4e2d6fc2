"""Tiers, drawn up and joined one to another: as rings, or as strips where the opening would cross a join."""

from collections.abc import Iterator

from studio.brief import Brief
from studio.draft import Draft
from studio.draft.making import Making, Shown
from studio.draft.seam import Seam, walked
from studio.geometry import TOUCH
from studio.units import spell
from studio.words import phrase

from .gather import rows_of
from .saying import top_panel

SEAM_BELOW = 20.0
"""So much of a seam (mm) is wanted between the end of an opening and the join below it, to be sewn at all (common
practice, no source)."""


def tiers(brief: Brief, draft: Draft) -> Iterator[Making]:
    """Each tier gathered to the one above, from the top down."""
    for number, seam in enumerate((s for s in draft.seams if s.name == "tier"), 2):
        yield _tier(brief, draft, seam, number)


def as_strips(brief: Brief, draft: Draft) -> bool:
    """Whether tiers are joined while they lie open, and the opening's seam is sewn through them all: those of a wrap,
    and those of a skirt whose zip or placket, tail and all, goes down as far as the first join.
    """
    if brief.opening.kind == "none" or not any(s.name == "tier" for s in draft.seams):
        return False
    sides = [e for e in top_panel(draft).edges if e.name.split(" ")[0] == "left"]
    return brief.opening.kind == "wrap" or reach(brief, draft) > sum(e.path.length for e in sides) + TOUCH


def reach(brief: Brief, draft: Draft) -> float:
    """How far below the waist seam an opening needs the seam it lies in, mm: to the end of its zip as it is cut, and
    far enough below the stop for the seam there to be sewn.
    """
    zip_ = next((n.sizes for n in draft.notions if n.what == "zip"), {})
    return max(brief.stop + SEAM_BELOW, float(zip_.get("cut_at", zip_.get("length", 0.0))))


def _tier(brief: Brief, draft: Draft, seam: Seam, number: int) -> Making:
    by_id = {p.id: p for p in draft.pieces}
    pieces = list({part.piece: by_id[part.piece] for part in seam.other}.values())
    above = walked(seam.one, by_id)
    flat = sum(by_id[p.piece].edge(p.edge).path.length for p in seam.other)
    says = [
        *rows_of(brief, draft, pieces),
        phrase("Pin it to the tier above, right sides together, ends and notches first."),
        phrase("Draw {f} up to {s}, and spread the fullness evenly.", f=flat, s=above),
        phrase("Sew {a} from the edge, gathers upwards.", a=brief.seams.allowance),
        phrase("Neaten both allowances together, and press them up."),
    ]
    title = spell(phrase("Gather and join tier {n:count}", n=number), "cm")
    shown = Shown(pieces[0].id, ("top",), ("gather", "quarter"), "top")
    return Making(f"tier/{number}", "gather", title, tuple(says), shown, ("needle", "pins"))
