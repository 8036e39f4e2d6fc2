"""Before the first stitch: wash, cut, interface."""

from collections.abc import Iterator

from studio.brief import Brief
from studio.draft import Draft, Piece
from studio.draft.cutting import cut_words
from studio.draft.interfacing import CAUGHT
from studio.draft.making import Making, Shown
from studio.draft.marks import notch_depth
from studio.words import Phrase, phrase, tr

from .saying import level, top_panel


def prepare(brief: Brief, draft: Draft) -> Iterator[Making]:
    """Wash, press, straighten the grain."""
    says = [phrase("Wash the cloth as the skirt will be washed.")]
    if brief.cloth.shrinkage:
        says.append(phrase("Its length is reckoned to shrink by {s:share}.", s=brief.cloth.shrinkage))
    else:
        says.append(phrase("No shrinkage is reckoned with: wash a measured piece first and see."))
    says.append(phrase("Press it dry, along the grain."))
    if any(p.cloth == "lining" for p in draft.pieces):
        says.append(phrase("Do the same with the lining."))
    says.append(phrase("Pull a thread across one end and cut along it, square to the selvedge."))
    yield Making("prepare", "prepare", tr("Wash, press, straighten"), tuple(says), cautions=("iron",))


def cut(brief: Brief, draft: Draft) -> Iterator[Making]:
    """Each piece, how many, and how large."""
    says = [phrase("Set each grain line along the selvedge: measure from both its ends.")]
    says += [_cut(k, p) for k, p in enumerate(draft.pieces, 1)]
    if any(p.mirrored for p in draft.pieces):
        says.append(phrase("Turn the pattern over for a mirrored piece."))
    if any(p.on_fold for p in draft.pieces):
        says.append(phrase("Sizes on the fold are those of the half."))
    if brief.waistband.kind == "bound" and not level(top_panel(draft).edge("waist")):
        says.append(phrase("The waist is a curve: cut the binding on the bias where there is cloth for it."))
    says.append(phrase("Snip notches no deeper than {d}.", d=notch_depth(brief.seams.allowance)))
    shown = Shown(top_panel(draft).id, right_side=True)
    yield Making("cut", "cut", tr("Cut the pieces"), tuple(says), shown, cautions=("shears", "blade"))


def _cut(number: int, piece: Piece) -> Phrase:
    box = piece.cut_line.box
    text = "{n:count} {p:word}: {cut:word}, {w} × {h}."
    return phrase(text, n=number, p=tr(piece.name), cut=cut_words(piece), w=box.width, h=box.height)


REACHES = {
    "whole": phrase("It reaches to every cut edge."),
    "outer half": phrase("One long edge lies on the fold; the inside half stays bare."),
    "trimmed": phrase("It reaches {c} past the seam lines, so that the stitching holds it.", c=CAUGHT),
}


def interface(brief: Brief, draft: Draft) -> Iterator[Making]:
    """Fuse what stiffens the band."""
    for piece in draft.pieces:
        if piece.cloth != "interfacing":
            continue
        to = stiffened(piece, draft)
        says = [
            phrase("Try a scrap first: the edge must not show through."),
            phrase("Fuse piece {n:count} to the wrong side of the {p:word}.", n=draft.pieces.index(piece) + 1,
                   p=tr(to.name).lower()),
        ]  # fmt: skip
        if brief.waistband.interfacing in REACHES:
            says.append(REACHES[brief.waistband.interfacing])
        says += [phrase("Press and lift, never slide."), phrase("Let it cool flat.")]
        key = "interface" if piece.id == "interfacing" else f"interface/{piece.id}"
        title = tr("Interface the band") if to.id == "waistband" else f"{tr('Interface')}: {tr(to.name).lower()}"
        yield Making(key, "cut", title, tuple(says), Shown(piece.id), ("iron",))


def stiffened(piece: Piece, draft: Draft) -> Piece:
    """What a piece of interfacing is fused to: it is named for it, and lies in the same place."""
    name = piece.id.removeprefix("interfacing").removeprefix("-") or "waistband"
    return next(p for p in draft.pieces if p.id == name)
