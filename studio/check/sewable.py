"""What cannot be sewn as it is asked for, with the nearest that can."""

from collections.abc import Iterator
from typing import Any

from studio.brief.conditions import BANDS, ZIPS
from studio.draft import Draft, Edge, Piece
from studio.draft.placket import LEAST
from studio.styles.style import Edit
from studio.words import Phrase, phrase, tr

from .finding import Finding, Worked, tried
from .rebanded import NAMES, USUAL_LAP, rebanded

EASED = 1.05
"""Up to this ratio cloth is eased to a facing; above it is gathered (common practice, no source)."""
EDGES = {"bound": "bound edge", "faced": "faced edge"}


def can_be_sewn(w: Worked) -> Iterator[Finding]:
    """Band, opening, fastening and the waist of the skirt go together; where they do not, the nearest that does.

    Elastic goes round in one piece. A placket wants a band that laps over it, as wide as its strips. An edge without
    a band is hooked, for it takes no buttons, nor snaps where its ends only meet. A facing lies flat, so nothing
    gathered or pleated can be faced. Sides that are cut alike and shaped over the hips cannot be a wrap on the left and
    a seam on the right.
    """
    band, opening = w.brief.waistband, w.brief.opening.kind
    if band.kind == "elastic" and opening != "none":
        yield _stop(
            w, "opening.kind", phrase("Elastic runs through its casing all round; an opening would part it."),
            {"opening.kind": "none"}, phrase("No opening"),
        )  # fmt: skip
    if opening == "wrap" and any(e.name.endswith(OPENING) for e in _joined(w.draft)):
        says = phrase("The sides are shaped over the hips; a wrap wants straight edges that lie over each other.")
        yield _stop(w, "opening.place", says, {"opening.place": "centre back"}, phrase("Open at the back"))
    if band.kind in EDGES:
        yield from _edge(w, tr(EDGES[band.kind]))
    if band.kind in BANDS and opening == "placket" and w.brief.lap < LEAST:
        says = phrase("A placket as narrow as the extension of {x} cannot be turned; {n} can.", x=w.brief.lap, n=LEAST)
        remedy = {"waistband.extension": USUAL_LAP}
        yield _stop(w, "waistband.extension", says, remedy, phrase("Extension {x}", x=USUAL_LAP))


OPENING = " opening"
"""How the names of edges end that lie at the opening."""


def _joined(draft: Draft) -> Iterator[Edge]:
    """The edges that are sewn panel to panel."""
    pieces = {p.id: p for p in draft.pieces}
    for seam in draft.seams:
        if seam.name == "join":
            yield from (pieces[part.piece].edge(part.edge) for part in (*seam.one, *seam.other))


def _edge(w: Worked, edge: str) -> Iterator[Finding]:
    """What an edge without a band cannot have; what it can't be at all comes first, and alone."""
    if w.brief.waistband.kind == "faced" and (how := _drawn_up(w.draft)):
        says = phrase("A {h:word} waist cannot be faced: a facing lies flat.", h=tr(how))
        yield _stop(w, "waistband.kind", says, rebanded(w.brief, "folded"), NAMES["folded"])
        return
    opening, held = w.brief.opening.kind, w.brief.fastening.kind
    hooked: dict[str, Any] = {"fastening.kind": "hook and bar"}
    if opening == "placket":
        says = phrase("A placket wants a band that laps over it; a {e:word} does not.", e=edge)
        remedy = {"opening.kind": "lapped"} | (hooked if held != "hook and bar" else {})
        yield _stop(w, "opening.kind", says, remedy, phrase("Lapped zip"))
    elif opening != "none" and held == "buttons":
        says = phrase("A {e:word} takes no buttonhole.", e=edge)
        yield _stop(w, "fastening.kind", says, hooked, phrase("Hook it"))
    elif opening in ZIPS and held == "snap":
        says = phrase("The ends of a {e:word} meet above the zip, and a snap wants them to lap.", e=edge)
        yield _stop(w, "fastening.kind", says, hooked, phrase("Hook it"))


def _drawn_up(draft: Draft) -> str:
    """How the waist of the skirt is taken in, if in a way that a facing cannot follow: darts it can."""
    pieces = {p.id: p for p in draft.pieces}
    waist = next(s for s in draft.seams if s.name == "waist")
    edges = [(pieces[part.piece], pieces[part.piece].edge(part.edge)) for part in waist.one]
    if any(e.ratio > EASED for _, e in edges):
        return "gathered"
    return "pleated" if any(_pleated(p, e) for p, e in edges) else ""


def banded(w: Worked, remedy: Edit | None) -> Edit | None:
    """A remedy of the skirt's width, with a band to go with it where it gathers what was faced until then."""
    if remedy is None or w.brief.waistband.kind != "faced" or _drawn_up(w.draft):
        return remedy
    if not _drawn_up(tried(w, remedy).draft):
        return remedy
    return {**remedy, **rebanded(w.brief, "folded")}


def _pleated(piece: Piece, edge: Edge) -> bool:
    return bool(edge.closes) and not any(m.role == "dart" for m in piece.lines)


def _stop(w: Worked, where: str, says: Phrase, remedy: dict[str, Any], does: Phrase) -> Finding:
    piece = "" if w.brief.waistband.kind == "faced" else "waistband"
    return Finding("can-be-sewn", "stop", says, where, piece, remedy, does)
