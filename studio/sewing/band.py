"""The band: sewn to the skirt, closed, turned in; each kind in its own way."""

from collections.abc import Callable, Iterator

from studio.brief import Brief
from studio.draft import Draft
from studio.draft.bands.elastic import BESIDE, GAP, JOIN
from studio.draft.bands.outline import ring
from studio.draft.making import Making, Shown
from studio.draft.seam import notches
from studio.words import Phrase, phrase, tr

from .saying import EXTENSION_LIES, in_rows, level, seam_at, top_panel

UNDER = 2.0
"""Understitching lies so far (mm) from the seam (common practice, no source)."""


def band(brief: Brief, draft: Draft) -> Iterator[Making]:
    """Everything between a finished skirt top and a finished band."""
    yield from KINDS[brief.waistband.kind](brief, draft)


def _folded(brief: Brief, draft: Draft) -> Iterator[Making]:
    if ring(brief):
        yield _ring(brief, "waistband", tr("Close the band to a ring"))
    yield _join(brief, draft)
    if not ring(brief):
        a = brief.seams.allowance
        says = [phrase("Fold the band along its fold, right sides in, and sew both ends, {a} from the edge.", a=a)]
        says += _under_the_lap(brief)
        says.append(phrase("Trim the corners, turn the ends out and press."))
        shown = Shown("waistband", ("plain end", "extension end", "extension", "facing extension"), ("fold",))
        yield Making("band ends", "band", tr("Sew the band’s ends"), tuple(says), shown, ("needle",))
    yield _turned_in(brief, "waistband", "facing")


def _in_two(brief: Brief, draft: Draft) -> Iterator[Making]:
    """Two-piece and contour: the facing goes on along the top first."""
    a, curved = brief.seams.allowance, brief.waistband.kind == "contour"
    if ring(brief):
        yield _ring(brief, "waistband", tr("Close band and facing to rings"), both=True)
    says = [phrase("Right sides together, sew band and facing along the top, {a} from the edge.", a=a)]
    if curved:
        says.append(phrase("Lay a tape in this seam: the curve must not stretch."))
        says.append(phrase("Trim the allowances in steps and clip them every {c}.", c=CLIP))
    else:
        says.append(phrase("Trim the allowances in steps."))
    says.append(phrase("Press them to the facing and stitch it to them, {u} from the seam.", u=UNDER))
    shown = Shown("waistband", ("top",), ("centre", "quarter"))
    yield Making("band top", "band", tr("Join band and facing"), tuple(says), shown, ("needle", "iron"))
    yield _join(brief, draft)
    if not ring(brief):
        ends = [phrase("Fold the facing back over the band, right sides in; sew both ends, {a} from the edge.", a=a)]
        ends += _under_the_lap(brief)
        ends.append(phrase("Trim the corners, turn the ends out and press."))
        shown = Shown("waistband", ("plain end", "extension end", "extension"))
        yield Making("band ends", "band", tr("Sew the band’s ends"), tuple(ends), shown, ("needle",))
    yield _turned_in(brief, "waistband-facing", "waist")


CLIP = 15.0
"""A curve is clipped every so often, mm (common practice, no source)."""


def _elastic(brief: Brief, draft: Draft) -> Iterator[Making]:
    a = brief.seams.allowance
    yield _ring(brief, "waistband", tr("Close the casing to a ring"))
    yield _join(brief, draft)
    fold = (
        phrase("Fold the casing along its fold, so that {w} shows, its free edge turned under {a}.",
               w=brief.waistband.depth, a=a),
        phrase("Stitch the free edge down along the waist seam."),
        phrase("Leave {g} open, beginning {b} from the casing’s own seam.", g=GAP, b=BESIDE),
    )  # fmt: skip
    shown = Shown("waistband", ("facing",), ("fold", "slit"))
    yield Making("casing", "band", tr("Stitch the casing down"), fold, shown, ("needle",))
    elastic = next(n for n in draft.notions if n.what == "elastic")
    long = float(elastic.sizes["length"])
    thread = (
        phrase("Cut the elastic {l} long; it is {w} wide.", l=long, w=float(elastic.sizes["width"])),
        phrase("Pin one end beside the gap and draw the other round with a safety pin."),
        phrase("Lay the ends {j} over each other, pin, and try the skirt on.", j=JOIN),
        phrase("Sew the ends in a square: the ring measures {r}.", r=long - JOIN),
        phrase("Close the gap. Spread the fullness, and stitch through the elastic at the side seams."),
    )
    yield Making("elastic", "band", tr("Draw the elastic in"), thread, Shown("waistband", (), ("fold", "slit")))


def _bound(brief: Brief, draft: Draft) -> Iterator[Making]:
    a, b = brief.seams.allowance, brief.waistband.binding
    if ring(brief):
        yield _ring(brief, "waistband", tr("Close the binding to a ring"))
    says = [
        *([] if level(top_panel(draft).edge("waist")) else [phrase(CURVED)]),
        phrase("Lay the binding on the skirt, right sides together, seam line on seam line."),
        *_pinned(brief, draft),
        phrase("Sew {b} from the binding’s edge, {a} from the skirt’s.", a=a, b=b),
        phrase("Trim the skirt’s allowance to {b}: it fills the binding.", b=min(a, b)),
    ]
    yield Making("band", "band", tr("Sew the binding on"), tuple(says), _top(draft), ("needle", "pins"))
    turn = [] if ring(brief) else [phrase("Fold {a} in at both ends, level with the opening.", a=a)]
    turn += [
        phrase("Turn the binding over the edge, and its own edge {b} under.", b=b),
        phrase("It shows {b} wide. Slip-stitch it to the seam inside.", b=b),
    ]
    shown = Shown("waistband", ("facing", "plain end", "extension end"), ("fold",))
    yield Making("band turned", "band", tr("Turn the binding over"), tuple(turn), shown)


CURVED = "The waist is a curve: press a binding that is cut on the straight to it with steam first."


def _faced(brief: Brief, draft: Draft) -> Iterator[Making]:
    a = brief.seams.allowance
    facings = [p for p in draft.pieces if p.id.startswith("facing-") and p.cloth != "interfacing"]
    first = facings[0]
    if any(s.name == "facing join" for s in draft.seams):
        says = (
            phrase("Right sides together, join the facings at their sides, {a} from the edge.", a=a),
            phrase("Press the seams open and neaten the lower edge."),
        )
        shown = Shown(first.id, tuple(e.name for e in first.edges if e.name in ("left", "right") and not e.fold))
        yield Making("facings", "band", tr("Join the facings"), says, shown, ("needle",))
    on = (
        phrase("Lay the facing on the skirt, right sides together; pin seams and notches."),
        phrase("Lay a tape of {l} on the seam line, so that it cannot stretch.", l=brief.waist_seam),
        phrase("Sew {a} from the edge.", a=a),
        phrase("Trim the allowances in steps and clip them every {c}.", c=CLIP),
        phrase("Press them to the facing and stitch it to them, {u} from the seam.", u=UNDER),
    )
    yield Making("band", "band", tr("Sew the facing on"), on, _top(draft), ("needle", "pins"))
    turned = [phrase("Turn the facing in, {d} deep, the seam rolled just inside.", d=brief.waistband.facing_depth)]
    if not ring(brief):
        turned.append(phrase("Turn its ends under, clear of the opening, and slip-stitch them."))
    turned.append(phrase("Catch its lower edge to the allowances of seams and darts only."))
    lower = tuple(e.name for e in first.edges if e.name not in ("left", "right", "waist"))
    yield Making("band turned", "band", tr("Turn the facing in"), tuple(turned), Shown(first.id, lower), ("iron",))


KINDS: dict[str, Callable[[Brief, Draft], Iterator[Making]]] = {
    "folded": _folded, "two-piece": _in_two, "contour": _in_two, "elastic": _elastic, "bound": _bound, "faced": _faced,
}  # fmt: skip
"""How each kind of waistband is sewn."""


def _ring(brief: Brief, piece: str, title: str, *, both: bool = False) -> Making:
    a = brief.seams.allowance
    text = "Sew its two ends together, right sides in, {a} from the edge, and press the seam open."
    if both:
        text = "Sew the two ends of each together, right sides in, {a} from the edge; press open."
    shown = Shown(piece, ("plain end", "extension end"))
    return Making("band ring", "band", title, (phrase(text, a=a),), shown, ("needle",))


def _join(brief: Brief, draft: Draft) -> Making:
    """The seam between band and skirt, gathers drawn up to it."""
    elastic = brief.waistband.kind == "elastic"
    lay = "Lay the casing on the skirt, right sides together, raw edges level." if elastic else LAY
    says = [phrase(lay), *_pinned(brief, draft)]
    if brief.lap:
        text = "{x} of the band goes on past the opening, {where:word}."
        says.append(phrase(text, x=brief.lap, where=tr(EXTENSION_LIES[brief.opening.place])))
    gathers = any(m.role == "gather" for m in top_panel(draft).lines)
    if gathers:
        says += [
            phrase("Draw up the rows between pin and pin until the skirt lies flat on it."),
            phrase("All of it now measures {b}.", b=brief.waist_seam),
        ]
    over = ", gathers upwards" if gathers else ""
    says.append(phrase(f"Sew {{a}} from the edge{over}.", a=brief.seams.allowance))
    says.append(phrase("Press the seam upwards, touching the allowances only."))
    title = tr("Sew the casing on") if elastic else tr("Sew the band on")
    return Making("band", "band", title, tuple(says), _top(draft), ("needle", "pins", "wheel"))


LAY = "Lay the band on the skirt, right sides together, raw edges level."


def _top(draft: Draft) -> Shown:
    return Shown(top_panel(draft).id, ("waist",), ("gather", "row stop"), "top")


def _pinned(brief: Brief, draft: Draft) -> tuple[Phrase, ...]:
    """Where notches of band and skirt meet, from the band's plain end; from its seam, once it is a ring."""
    seam, closed = next(s for s in draft.seams if s.name == "waist"), ring(brief)
    places = [at for at in notches(seam.other, {p.id: p for p in draft.pieces}) if at > 1.0]
    start = (phrase("Its seam meets the {seam:word}.", seam=seam_at(brief)),) if closed else ()
    if not places or len(places) > MOST:
        first = "Pin the notches first, then between." if closed else "Pin ends and notches first, notch to notch."
        return (*start, phrase(first))
    which = "notches" if len(places) > 1 else "notch"
    if closed:
        text = f"Pin the {which} {{lengths}} on from there, to the right as seen from outside."
        return (*start, *in_rows(text, places), phrase("Then pin between."))
    return (*in_rows(f"Pin the {which} {{lengths}} from its plain end.", places),
            phrase("Then pin both ends, then between."))  # fmt: skip


MOST = 8
"""More notches than these are not read out."""


def _under_the_lap(brief: Brief) -> list[Phrase]:
    if not brief.lap:
        return []
    return [phrase("At the extension sew its {x} of lower edge too, as far as the opening.", x=brief.lap)]


def _turned_in(brief: Brief, piece: str, edge: str) -> Making:
    says = (
        phrase("Turn the inside edge under by {a} and lay it just over the waist seam.", a=brief.seams.allowance),
        phrase("Slip-stitch it, or stitch from outside in the groove of the seam."),
        phrase("The band stands {w} high.", w=brief.waistband.depth),
    )
    return Making("band turned", "band", tr("Turn the band’s inside down"), says, Shown(piece, (edge,), ("fold",)))
