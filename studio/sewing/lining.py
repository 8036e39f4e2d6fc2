"""The lining: sewn as a second skirt, hung inside the waist, caught at the opening."""

from collections.abc import Iterator

from studio.brief import Brief
from studio.draft import Draft, Piece
from studio.draft.lining import lining_length
from studio.draft.making import Making, Shown
from studio.words import phrase, tr

from .hem import levels

CHAIN = 50.0
"""A thread chain that holds a lining at the hem is so long, mm (common practice, no source)."""


def lining(brief: Brief, draft: Draft) -> Iterator[Making]:
    """What a lined skirt takes, where the draft has a lining."""
    pieces = lining_panels(draft)
    if not pieces:
        return
    a, first = brief.seams.allowance, pieces[0]
    sides = tuple(e.name for e in first.edges if e.name in ("left", "right") and not e.fold)
    sewn = [
        phrase("Sew the lining’s seams, {a} from the edge.", a=a),
        phrase("Neaten their edges and press them open."),
    ]
    if brief.opening.kind not in ("none", "wrap"):
        text = "Leave the opening’s seam open to {s} below the waist seam."
        sewn.append(phrase(text, s=brief.stop))
    if any(m.role in ("dart", "pleat fold") for p in pieces for m in p.lines):
        sewn.append(phrase("Lay its darts as tucks, the other way from the skirt’s."))
    yield Making("lining", "lining", tr("Sew the lining"), tuple(sewn), Shown(first.id, sides), ("needle",))
    hung = [
        phrase("Slip the lining into the skirt, wrong sides together, seams and notches matched."),
        phrase("Baste the waists together inside the seam allowance; the band takes both."),
    ]
    if brief.opening.kind not in ("none", "wrap"):
        hung.append(phrase("Turn its edges under at the opening and slip-stitch them, clear of the teeth."))
    yield Making("lining hung", "lining", tr("Hang the lining"), tuple(hung), Shown(first.id, ("waist",), (), "top"))


def lining_hem(brief: Brief, draft: Draft) -> Iterator[Making]:
    """The lining is hemmed when the skirt's own hem is level and done, and measured against it."""
    pieces = lining_panels(draft)
    if not pieces:
        return
    first = pieces[0]
    says = [
        phrase("Its hem line lies {s} above the skirt’s.", s=brief.finished_length - lining_length(brief)),
        phrase("Turn {h} up, the raw edge under first, and stitch.", h=first.edge("hem").allowance),
        phrase("Catch it to the side seams at the hem with thread chains of {c}.", c=CHAIN),
    ]
    if levels(brief):
        says.insert(1, phrase("Measure it all round from the levelled skirt, and trim it."))
    shown = Shown(first.id, ("hem",), ("hem", "first turn"), "foot")
    yield Making("lining hem", "hem", tr("Hem the lining"), tuple(says), shown, ("needle", "iron"))


def lining_panels(draft: Draft) -> tuple[Piece, ...]:
    """The panels cut of lining cloth; a band's facing is not one."""
    return tuple(p for p in draft.pieces if p.cloth == "lining" and any(e.name == "hem" for e in p.edges))
