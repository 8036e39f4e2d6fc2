"""The seams between panels: how many, how long, and what each ends in; tier by tier."""

from collections.abc import Iterator

from studio.brief import Brief
from studio.draft import Draft
from studio.draft.making import Making, Shown
from studio.draft.seam import Seam
from studio.words import Phrase, phrase, tr

from .ends import End, ended
from .saying import seam_at
from .tiers import as_strips


def seams(brief: Brief, draft: Draft) -> Iterator[Making]:
    """Every seam between panels but the one the opening lies in, which is sewn with it."""
    found = [s for s in joins(draft) if not with_opening(brief, draft, s)]
    if not found:
        return
    part = found[0].one[-1]
    says = [
        phrase("Right sides together, pin both ends and the notches first, then between."),
        phrase("Sew {a} from the edge.", a=brief.seams.allowance),
    ]
    says += _tiers(brief, draft, found) if _in_tiers(draft) else _grouped(draft, found)
    if any(p.id == "pocket-bag" for p in draft.pieces):
        says += [
            phrase("Sew round the pocket bags in one with the side seams."),
            phrase("Neaten round the bags, both layers together."),
        ]
    says.append(phrase("Press each seam open before the next crosses it."))
    title = tr("Sew the panel seams") if len(found) > 1 else tr("Sew the panel seam")
    near = "left" if part.edge.startswith("left") else "right"
    shown = Shown(part.piece, tuple(p.edge for p in found[0].one), (), near)  # type: ignore[arg-type]
    yield Making("seams", "seams", title, tuple(says), shown, ("needle", "pins"))


def _in_tiers(draft: Draft) -> bool:
    return any(s.name == "tier" for s in draft.seams)


def _tiers(brief: Brief, draft: Draft, found: list[Seam]) -> list[Phrase]:
    """Tiers are rings before they are joined; strips, where the opening's seam is sewn through all of them."""
    if len(found) > 1:
        says = [phrase("There are {n:count} such seams, each from raw edge to raw edge.", n=len(found))]
    else:
        says = [phrase("There is one such seam, from raw edge to raw edge.")]
    if brief.opening.kind == "wrap":
        return [*says, phrase("Each tier becomes one strip, open at the free edges.")]
    if as_strips(brief, draft):
        return [*says, phrase("Each tier becomes one strip: leave the {seam:word} open.", seam=seam_at(brief))]
    return [*says, phrase("Each tier becomes a ring.")]


def _grouped(draft: Draft, found: list[Seam]) -> list[Phrase]:
    """Seams that end alike are said together; where they do not, by the pieces that meet in them."""
    groups: dict[tuple[str, str], list[End]] = {}
    for seam in found:
        end = ended(draft, seam)
        groups.setdefault((end.words, "" if _alike(draft, found) else _named(draft, seam)), []).append(end)
    return [_group(names, ends) for (_, names), ends in groups.items()]


def _alike(draft: Draft, found: list[Seam]) -> bool:
    return len({ended(draft, s).words for s in found}) == 1


def _named(draft: Draft, seam: Seam) -> str:
    """The pieces that meet in a seam, whichever way round."""
    one, other = sorted((tr(draft.piece(s[-1].piece).name) for s in (seam.one, seam.other)), reverse=True)
    return f"{one} {tr('to')} {other.lower()}"


def _group(names: str, ends: list[End]) -> Phrase:
    long, to, n = max(e.length for e in ends), ends[0].words, len(ends)
    if names and n == 1:
        return phrase("{names:word}, one seam: {l} {to:word}.", names=names, l=long, to=to)
    if names:
        return phrase("{names:word}, {n:count} seams: each {l} {to:word}.", names=names, n=n, l=long, to=to)
    if n == 1:
        return phrase("Sew {l} {to:word}.", l=long, to=to)
    return phrase("There are {n:count} such seams, each {l} {to:word}.", n=n, l=long, to=to)


def joins(draft: Draft) -> list[Seam]:
    """The seams between panels of the main cloth; a corner goes on with its panel's seam."""
    tops = {p.id for p in draft.pieces if p.cloth == "main" and {"waist", "top"} & {e.name for e in p.edges}}
    return [s for s in draft.seams if s.name == "join" and s.one[0].piece in tops]


def with_opening(brief: Brief, draft: Draft, seam: Seam) -> bool:
    """Whether a seam closes the ring below the opening, and is sewn with it: its side is sewn there, and the opening
    above it is not. Tiers that are joined as strips have all theirs sewn in one.
    """
    if not seam.closes or brief.opening.kind == "none":
        return False
    names = {e.name for e in draft.piece(seam.one[-1].piece).edges}
    return as_strips(brief, draft) or f"{seam.one[-1].edge} opening" in names
