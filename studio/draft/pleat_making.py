"""How pleats are laid and held: what a pleated skirt is sewn by beyond what every skirt is."""

from studio.brief import Brief
from studio.words import Phrase, phrase, tr

from .draft import Draft
from .making import Making, Shown


def pleat_making(brief: Brief, draft: Draft) -> tuple[Making, ...]:
    """Lay the pleats, and stitch them down where they are.

    A straight hem is turned up before pleats are pressed into it, if the length is sure (common practice, no source);
    an opening lies under a pleat (The New Dressmaker, 1921, ch. 21).
    """
    lay = Making(
        "pleats", "gather", tr("Lay the pleats"), tuple(_laying(brief, draft)),
        Shown("skirt", (), ("pleat fold", "placement", "direction"), right_side=True), ("iron", "pins"),
    )  # fmt: skip
    end = draft.fact("stitched_to")
    if not end:
        return (lay,)
    says = (
        phrase("Stitch each fold to what lies under it, {e} down from the waist seam, close to its edge.", e=end),
        phrase("Start at the lower end, so that all pleats are held at one height."),
    )
    shown = Shown("skirt", (), ("pleat fold", "stitching"), near="top", right_side=True)
    return lay, Making("pleats down", "gather", tr("Stitch the pleats down"), says, shown, ("needle",))


def _laying(brief: Brief, draft: Draft) -> list[Phrase]:
    depth, face, waist = draft.fact("pleat_depth"), draft.fact("face"), draft.fact("waist_face")
    says = [
        phrase("If the length is sure, turn up the hem first: it is easier flat."),
        phrase(
            "From outside, bring each fold to its placement line, the way of the arrow, in the order of the numbers."
        ),
        phrase("Each fold is {d} deep and each face {s}.", d=depth, s=face),
    ]
    if waist != face:
        says.append(phrase("Above the hip line the folds deepen, until faces measure {w} at the waist.", w=waist))
    says.append(phrase("Tack from waist to hem, and across the waist, which now measures {b}.", b=brief.waist_seam))
    says.append(phrase("Press under a cloth, with paper under each fold."))
    if brief.opening.kind not in ("none", "wrap"):
        says += _underlay(brief, draft)
    return says


def _underlay(brief: Brief, draft: Draft) -> list[Phrase]:
    """What goes on past the band at the opening: the edge that a placement line lies next to, under the fold that is
    laid to that line. Only an extension as long as that can take it in.
    """
    piece = draft.piece("skirt")
    marks = sorted((m for m in piece.lines if m.role in ("pleat fold", "placement")), key=lambda m: m.path.start.x)
    plain = marks[0].role == "placement"
    deep = marks[0].path.start.x if plain else piece.edge("waist").path.length - marks[-1].path.start.x
    end = tr("plain end") if plain else tr("extension") if brief.lap else tr("other end")
    says = [phrase("At the opening the edge at the band’s {end:word} goes on {d} under the other.", end=end, d=deep)]
    if not plain and brief.lap >= deep:
        return [*says, phrase("Take it into the extension, or bind its top.")]
    return [*says, phrase("Bind its top: it hangs free inside the waist.")]
