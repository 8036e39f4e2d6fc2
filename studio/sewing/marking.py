"""Marks to carry to the cloth, and edges to neaten, while the pieces still lie flat."""

from collections.abc import Iterator

from studio.brief import Brief
from studio.brief.conditions import ZIPS
from studio.draft import Draft, Edge, Piece
from studio.draft.making import Making, Shown
from studio.draft.piece import Role
from studio.words import Phrase, phrase, tr

from .saying import in_rows, level, panels

CARRIED: dict[Role, str] = {
    "dart": "darts",
    "pleat fold": "pleat folds",
    "placement": "pleat placements",
    "pocket": "pocket places",
    "stitching": "where stitching ends",
    "slit": "slits",
    "slit top": "the top of the slit",
}
"""What else is carried over, by the role of its lines."""
SHOWN: tuple[Role, ...] = ("zip stop", "centre", "quarter", "hem", *CARRIED)
MOST_PIECES = 3
"""Notches are read out for so many pieces; of more the pattern tells them better."""


def mark(brief: Brief, draft: Draft) -> Iterator[Making]:
    """Notches with their distances, the stop, the hem line, and what else the pattern shows."""
    says = [phrase("Chalk on the wrong side; try it on a scrap.")]
    says += _notches(draft)
    stop = brief.stop
    if brief.opening.kind in (*ZIPS, "placket"):
        text = "Zip stop: {r} below the raw edge, {s} below the seam line."
        if brief.opening.kind == "placket":
            text = "End of the opening: {r} below the raw edge, {s} below the seam line."
        says.append(phrase(text, r=stop + brief.seams.allowance, s=stop))
    if brief.seams.hem_kind != "faced":
        says.append(phrase("Hem line: {h} above the raw edge.", h=brief.hem))
    roles = {m.role for p in draft.pieces if p.id != "waistband" for m in p.lines}
    carried = [tr(words) for role, words in CARRIED.items() if role in roles]
    if carried:
        says.append(phrase("Carry over too: {what:word}.", what=", ".join(carried)))
    first = panels(draft.pieces)[0]
    yield Making("mark", "mark", tr("Mark"), tuple(says), Shown(first.id, roles=SHOWN))


def _notches(draft: Draft) -> list[Phrase]:
    """Where the notches of the waist stand, from the cut edge at the left; of all others the pattern says it."""
    shown = [draft.piece("waistband")] if any(p.id == "waistband" for p in draft.pieces) else []
    shown += [p for p in panels(draft.pieces) if any(e.name == "waist" for e in p.edges)]
    found: list[Phrase] = []
    read = 0
    for piece in shown if len(shown) <= MOST_PIECES else shown[:1]:
        if piece.on_fold or not level(piece.edge("waist")):
            continue
        left = piece.cut_line.box.left
        notches = sorted((s for s in piece.spots if s.role == "notch" and s.on == "waist"), key=lambda s: s.at.x)
        text = "{p:word}: notches {lengths} from the left cut edge, right side up."
        if piece.id == "waistband":
            text = "{p:word}: notches {lengths} from the cut plain end."
        found += in_rows(text, [s.at.x - left for s in notches], p=tr(piece.name))
        read += len(notches)
    if sum(s.role == "notch" for p in draft.pieces if p.cloth == "main" for s in p.spots) > read:
        text = "Snip every other notch the pattern shows too." if read else "Snip every notch the pattern shows."
        found.append(phrase(text))
    return found


def neaten(brief: Brief, draft: Draft) -> Iterator[Making]:
    """Overlock or zigzag the edges that nothing will cover."""
    found = [(p, e) for p in panels(draft.pieces) for e in raw_edges(brief, p)]
    if not found:
        return
    count = sum(p.cut * (2 if p.on_fold else 1) for p, e in found if e.name in ("left", "right"))
    says = [phrase("Overlock or zigzag, and cut nothing away.")]
    if count:
        text = "Side edges of the panels: {n:count}, the longest about {l}."
        says.append(phrase(text, n=count, l=_longest(brief, [p for p, _ in found])))
    if any(e.name == "hem" for _, e in found):
        says.append(phrase("The hem’s raw edge too."))
    if brief.lining.kind != "none":
        says.append(phrase("Under a lining, cloth that does not fray may stay as it is."))
    shown = next(p for p, _ in found)
    names = tuple(e.name for p, e in found if p is shown)
    yield Making("neaten", "mark", tr("Neaten the edges"), tuple(says), Shown(shown.id, edges=names))


def _longest(brief: Brief, pieces: list[Piece]) -> float:
    """The longest side from cut edge to cut edge, the opening and what else lies in it included, mm."""
    whole = max(
        sum(e.path.length for e in p.edges if e.name.split(" ")[0] == side)
        for p in pieces
        for side in ("left", "right")
    )
    return whole + brief.seams.allowance + brief.hem


def raw_edges(brief: Brief, piece: Piece) -> list[Edge]:
    """The edges of a panel that stay raw inside: its sides, unless they are on a fold or turned under as a wrap's; and
    the hem where it is turned once.
    """
    found = [e for e in piece.edges if e.name.split(" ")[0] in ("left", "right") and not e.fold]
    if brief.opening.kind == "wrap":
        found = [e for e in found if "opening" not in e.name]
    if brief.seams.hem_kind == "single" or (brief.seams.hem_kind == "turned twice" and not brief.first_turn):
        found += [e for e in piece.edges if e.name == "hem"]
    return found
