"""The seams between panels, tier by tier."""

from collections.abc import Iterator

from studio.brief import Brief
from studio.draft import Draft
from studio.draft.making import Making, Shown
from studio.draft.seam import Seam
from studio.words import Phrase, phrase, tr


def seams(brief: Brief, draft: Draft) -> Iterator[Making]:
    """Every seam between panels but the one the opening lies in, which is sewn with it."""
    found = [s for s in joins(draft) if not below_opening(draft, s)]
    if not found:
        return
    part = found[0].one[-1]
    says = [_how(brief, draft, found[0])]
    says.append(phrase("Pin both ends and the notches first, then between."))
    if len(found) > 1:
        says.append(phrase("There are {n:count} such seams.", n=len(found)))
    if brief.pockets.kind == "in seam":
        says.append(phrase("Sew round the pocket bags in one with the side seams."))
    says.append(phrase("Press each seam open before the next crosses it."))
    title = tr("Sew the panel seams") if len(found) > 1 else tr("Sew the panel seam")
    near = "left" if part.edge.startswith("left") else "right"
    shown = Shown(part.piece, tuple(p.edge for p in found[0].one), (), near)  # type: ignore[arg-type]
    yield Making("seams", "seams", title, tuple(says), shown, ("needle", "pins"))


def _how(brief: Brief, draft: Draft, seam: Seam) -> Phrase:
    """How far a seam is sewn: to the hem, or to a godet's point."""
    part = seam.one[-1]
    piece = draft.piece(part.piece)
    a = brief.seams.allowance
    if any(e.name == f"{part.edge.split(' ')[0]} godet" for e in piece.edges):
        text = "Right sides together, sew {a} from the edge, from the waist to {l} below its seam line."
        return phrase(text, a=a, l=piece.edge(part.edge).path.length)
    if any(s.name == "tier" for s in draft.seams):
        return phrase("Right sides together, sew {a} from the edge, each tier to a ring.", a=a)
    return phrase("Right sides together, sew {a} from the edge, top to hem.", a=a)


def joins(draft: Draft) -> list[Seam]:
    """The seams between panels of the main cloth."""
    cloth = {p.id: p.cloth for p in draft.pieces}
    return [s for s in draft.seams if s.name == "join" and cloth[s.one[0].piece] == "main"]


def below_opening(draft: Draft, seam: Seam) -> bool:
    """Whether a seam closes the ring below the opening: its side is sewn, and the opening above it is not."""
    names = {p.id: {e.name for e in p.edges} for p in draft.pieces}
    side = seam.one[-1]
    stem = side.edge.split(" ")[0]
    sewn = {part.edge for part in seam.one}
    return f"{stem} opening" in names[side.piece] and f"{stem} opening" not in sewn
