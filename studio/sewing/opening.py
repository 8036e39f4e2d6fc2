"""The opening: a zip set in one of three ways, a placket, or the free edges of a wrap."""

from collections.abc import Iterator

from studio.brief import Brief
from studio.draft import Draft, Piece
from studio.draft.making import Making, Shown
from studio.draft.panel import WRAP_HEM
from studio.draft.placket import OVER, UNDER
from studio.draft.zip import BELOW_TACK
from studio.units import spell
from studio.words import Phrase, phrase, tr

from .ends import ended
from .pockets import in_opening_seam
from .saying import panels, seam_at
from .seams import joins, with_opening

HAND = 15.0
"""What stays between the stop and the seam below it is closed by hand: 1 to 2 cm (common practice, no source)."""
FOOT = 6.0
"""A centred zip is stitched so far (mm) from its middle: 1/4 in (common practice, no source)."""
LAP = 12.0
"""The lap of a lapped zip is stitched so far (mm) from its fold: 1/2 in (common practice, no source)."""
PRESSED = 3.0
"""The under side of a lapped zip is pressed so far (mm) out past the seam line: 1/8 in (common practice, no source)."""
TURN = 10.0
"""First turn of a wrap's free edge, mm (common practice, no source)."""
LAPS = {"centre back": "left over right", "side": "front over back", "front": "right over left"}
"""Which edge laps over, on the wearer (common practice, no source)."""


def opening(brief: Brief, draft: Draft) -> Iterator[Making]:
    """The steps that the opening takes, before the other seams are closed."""
    match brief.opening.kind:
        case "invisible":
            yield _invisible(brief, draft)
            yield from _seam_below(brief, draft, "with the zip foot, as near the stop as it goes")
        case "centred" | "lapped":
            yield from _seam_below(brief, draft, "from the stop")
            yield _centred(brief, draft) if brief.opening.kind == "centred" else _lapped(brief, draft)
        case "placket":
            yield from _seam_below(brief, draft, "from the end of the opening")
            yield _placket(brief, draft)
        case "wrap":
            yield _wrap(brief, draft)


def opened(draft: Draft) -> tuple[Piece, str]:
    """A panel that lies at the opening, and the name of its edge there."""
    for piece in panels(draft.pieces):
        for e in piece.edges:
            if e.name.endswith(" opening"):
                return piece, e.name
    return panels(draft.pieces)[0], ""


def _at_opening(draft: Draft, *, right_side: bool = False) -> Shown:
    piece, name = opened(draft)
    near = "left" if name.startswith("left") else "right"
    return Shown(piece.id, (name,), ("zip stop",), near, right_side)  # type: ignore[arg-type]


def _depths(brief: Brief) -> dict[str, float]:
    return {"s": brief.stop, "r": brief.stop + brief.seams.allowance}


def _zip_ready(draft: Draft) -> list[Phrase]:
    """The zip itself, and where to shorten it."""
    zip_ = next(n for n in draft.notions if n.what == "zip")
    length = float(zip_.sizes["length"])
    if "bar_tack" not in zip_.sizes:
        return [phrase("The zip is {l} long.", l=length)]
    tack, cut = float(zip_.sizes["bar_tack"]), float(zip_.sizes["cut_at"])
    says = [phrase("The zip is {l} long: bar-tack it at {t}.", l=length, t=tack)]
    return [*says, phrase("Cut it off {b} below the tack.", b=min(BELOW_TACK, cut - tack))] if cut > tack else says


def _invisible(brief: Brief, draft: Draft) -> Making:
    a = brief.seams.allowance
    says = (
        *_zip_ready(draft),
        phrase("Open it and press the coils flat, on the wrong side."),
        phrase("Pin one tape face down on the right side, its coil on the seam line."),
        phrase("Its top lies {a} below the raw edge.", a=a),
        phrase("Sew from the top to the stop, {r} below the raw edge, {s} below the seam line.", **_depths(brief)),
        phrase("Sew the other tape to the other edge, from the top again."),
        phrase("Close it and look: no pucker, raw edges level."),
    )
    return Making(
        "zip", "opening", tr("Put in the zip"), says, _at_opening(draft, right_side=True), ("needle", "wheel")
    )


def _centred(brief: Brief, draft: Draft) -> Making:
    says = (
        *_zip_ready(draft),
        phrase("Baste the opening shut on the seam line and press the seam open."),
        phrase("Lay the zip face down on the allowances, its top {a} below the raw edge.", a=brief.seams.allowance),
        phrase("From the right side stitch {f} from the middle on both sides, down to the stop.", f=FOOT),
        phrase("The stop lies {r} below the raw edge, {s} below the seam line.", **_depths(brief)),
        phrase("Stitch across at the stop, then pull the basting out."),
    )
    return Making("zip", "opening", tr("Put in the zip"), says, _at_opening(draft), ("needle", "wheel"))


def _lapped(brief: Brief, draft: Draft) -> Making:
    over = tr(LAPS[brief.opening.place])
    says = (
        *_zip_ready(draft),
        phrase("It laps {o:word}, on the wearer.", o=over),
        phrase("Press the under edge {u} past the seam line, the lap on it.", u=PRESSED),
        phrase("Stitch the under fold close to the teeth, tape top {a} below the raw edge.", a=brief.seams.allowance),
        phrase("Lay the lap over to the seam line and stitch it {l} from its fold.", l=LAP),
        phrase("Stitch across at the stop, {r} below the raw edge, {s} below the seam line.", **_depths(brief)),
    )
    return Making("zip", "opening", tr("Put in the zip"), says, _at_opening(draft), ("needle", "wheel"))


def _seam_below(brief: Brief, draft: Draft, start: str) -> Iterator[Making]:
    """The seam that the opening lies in, from the stop down; through all tiers where they are joined first."""
    closing = [s for s in joins(draft) if with_opening(brief, draft, s)]
    if not closing:
        return
    ends = [ended(draft, s) for s in closing]
    says = [
        phrase("Right sides together, sew {a} from the edge.", a=brief.seams.allowance),
        phrase("Start {start:word}: {r} below the raw edge.", start=tr(start), r=brief.stop + brief.seams.allowance),
    ]
    text = "Sew {l} {to:word}." if len(ends) == 1 else "Sew {l} through all tiers, join on join, {to:word}."
    says.append(phrase(text, l=sum(e.length for e in ends), to=ends[-1].words))
    if in_opening_seam(brief, draft):
        says.append(phrase("Go round the pocket bag in one with it."))
    says.append(phrase("Fasten the start with two stitches back."))
    if brief.opening.kind == "invisible":
        says.append(phrase("Close what gap is left by hand, {h} at the most.", h=HAND))
    says.append(phrase("Press open."))
    part = max(zip(ends, closing, strict=True), key=lambda found: found[0].length)[1].one[-1]
    near = "left" if part.edge == "left" else "right"
    shown = Shown(part.piece, (part.edge,), ("zip stop", "slit top"), near)  # type: ignore[arg-type]
    yield Making("opening seam", "opening", phrase_title(seam_at(brief)), tuple(says), shown)


def phrase_title(seam: str) -> str:
    """Sew such a seam."""
    return spell(phrase("Sew the {seam:word}", seam=seam), "cm")


def _placket(brief: Brief, draft: Draft) -> Making:
    """The over strip goes on past its edge; the under strip is turned inside, behind the buttons."""
    over, under = draft.piece(OVER), draft.piece(UNDER)
    box, wide = over.cut_line.box, over.edge("end").path.length / 2
    says = (
        phrase("It laps {o:word}, on the wearer.", o=tr(LAPS[brief.opening.place])),
        phrase("Sew a strip, {w} × {h}, to each edge of the opening, right sides together.", w=box.width, h=box.height),
        phrase("Sew {a} from the edge, as far as the end of the opening.", a=brief.seams.allowance),
        phrase("That lies {r} below the raw edge, {s} below the seam line.", **_depths(brief)),
        phrase("{p:word}: press the seam towards the strip, fold the strip in half past it.", p=tr(over.name)),
        phrase("Turn its free edge under {a} and stitch it down: it stands out {w} past the seam line.",
               a=over.edge("facing").allowance, w=wide),
        phrase("{p:word}: turn the whole strip inside, its seam on the very edge of the opening.", p=tr(under.name)),
        phrase("Turn its free edge under {a} and stitch it down: it lies {w} deep inside, behind the buttons.",
               a=under.edge("facing").allowance, w=under.edge("end").path.length / 2),
        phrase("Lay the over strip on the under one and stitch across both at the end of the opening."),
    )  # fmt: skip
    return Making("placket", "opening", tr("Set the placket"), says, _at_opening(draft), ("needle",))


def _wrap(brief: Brief, draft: Draft) -> Making:
    says = (
        phrase("Both free edges: press {t} under, then {r}, along the seam line.", t=TURN, r=WRAP_HEM - TURN),
        phrase("Stitch {e} from the inner fold, from waist to hem.", e=2.0),
        phrase("The edges lie {o} over each other at the waist.", o=brief.opening.overlap),
    )
    piece, name = opened(draft)
    shown = Shown(piece.id, (name,), (), "left" if name.startswith("left") else "right")
    return Making("wrap edges", "opening", tr("Turn the free edges"), says, shown, ("iron", "needle"))
