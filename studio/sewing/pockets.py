"""Pockets: bags in the side seams, or patches set on the front while it lies flat."""

from collections.abc import Iterator

from studio.brief import Brief
from studio.draft import Draft
from studio.draft.making import Making, Shown
from studio.draft.pocket import PATCH_HEM
from studio.words import phrase, tr

from .hem import EDGE


def pockets(brief: Brief, draft: Draft) -> Iterator[Making]:
    """The pockets the draft has."""
    names = {p.id for p in draft.pieces}
    if "pocket-bag" in names:
        yield _bags(brief, draft)
    if "pocket" in names:
        yield _patches(brief, draft)


def _bags(brief: Brief, draft: Draft) -> Making:
    p = brief.pockets
    says = [
        phrase("Pin a bag to each side edge, right sides together, notch to notch."),
        phrase("The hand goes in from {t} to {f} below the waist seam.", t=p.top, f=p.top + p.opening),
        phrase("Sew {s} from the edge: just outside the seam line.", s=max(brief.seams.allowance - EDGE, EDGE)),
        phrase("Press bag and allowances outwards, and stitch the bag to them, {e} from the seam.", e=EDGE),
        phrase("Neaten each bag’s straight edge together with the allowance."),
        phrase("Sew the side seam later, down to the pocket, round the bag, and on."),
    ]
    if brief.opening.place == "side" and not in_opening_seam(brief, draft):
        says.append(phrase("Set no bag where the opening is: one edge cannot take both."))
    return Making(
        "pockets", "pockets", tr("Set the pocket bags"), tuple(says), Shown("pocket-bag", ("seam",)), ("needle",)
    )


def in_opening_seam(brief: Brief, draft: Draft) -> bool:
    """Whether a bag is set into the very seam that the opening lies in, below its end."""
    bagged = any(p.id == "pocket-bag" for p in draft.pieces)
    below = brief.pockets.top >= brief.stop
    return bagged and brief.opening.place == "side" and below


def _patches(brief: Brief, draft: Draft) -> Making:
    p = brief.pockets
    carrier = next((q for q in draft.pieces if any(m.role == "pocket" for m in q.lines)), None)
    says = (
        phrase("Turn in {t} at the top of each pocket and stitch it down.", t=PATCH_HEM),
        phrase("Press {a} under along sides and foot: it measures {w:bare} × {d}.", a=brief.seams.allowance, w=p.width,
               d=p.depth),
        phrase("Pin it to its place, the top {t} below the waist seam.", t=p.top),
        phrase("Stitch {e} from the edge, with a small triangle at both upper corners.", e=EDGE),
    )  # fmt: skip
    shown = Shown(carrier.id, (), ("pocket",), right_side=True) if carrier else Shown("pocket", ("top",))
    return Making("pockets", "pockets", tr("Set the patch pockets on"), says, shown, ("needle", "iron"))
