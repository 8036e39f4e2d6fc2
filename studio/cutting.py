"""The order of cutting: the lay plan as one cuts it, every place measured from the cut end and the first edge."""

from collections.abc import Iterator

from studio.brief import Brief, PrintBand
from studio.brief.bands import LINES
from studio.cloth.placed import Lay, Placed
from studio.cloth.ways import band_of
from studio.paper.sizes import paper_size
from studio.paper.template import is_panel, moves
from studio.sewing.cautions import CAUTIONS
from studio.units import spell
from studio.words import Phrase, phrase, tr
from studio.workroom import Docket


def cutting_order(docket: Docket) -> tuple[Phrase, ...]:
    """The steps from the squared end to the last cut, each a sentence or a few.

    Pieces come in the order in which shears meet them: by their distance from the cut end, then across.
    """
    lay, brief = docket.lay, docket.brief
    return (
        phrase("Wash, dry and press the cloth. Square its cut end to the selvedge: everything is measured from there."),
        phrase(FOLDED if lay.folded else OPEN),
        *_bands(brief, lay),
        *(step for p in sorted(lay.placed, key=lambda p: (round(p.at.x), p.at.y)) for step in _piece(brief, lay, p)),
        phrase("Look along the bands and the grain once more. Then cut.") if brief.cloth.bands
        else phrase("Look along the grain once more. Then cut."),
        phrase("Mark notches, folds and stops before you move a piece."),
        CAUTIONS["shears"],
        CAUTIONS["blade"],
    )  # fmt: skip


OPEN = "Lay it out in one layer, right side up, the first selvedge away from you."
FOLDED = "Fold it along its length, selvedge on selvedge, right side in, the fold away from you."


def _bands(brief: Brief, lay: Lay) -> Iterator[Phrase]:
    if lay.folded:
        return
    for band in brief.cloth.bands:
        yield phrase("The band at {a:bare} to {b} is for the {h:word}.", a=band.start, b=band.end, h=tr(band.holds))


def _piece(brief: Brief, lay: Lay, p: Placed) -> Iterator[Phrase]:
    """Where a piece is chalked, how it lies, what must run along its band, and the moves of its template."""
    far = tr("fold") if lay.folded else tr("first selvedge")
    name = tr(p.piece.name)
    if p.piece.cut > 1:
        pair = p.layers == 2 and not p.half and p.copy + 2 <= p.piece.cut
        text = "{p:word} {k:count} and {m:count} of {n:count}" if pair else "{p:word} {k:count} of {n:count}"
        name = spell(phrase(text, p=name, k=p.copy + 1, m=p.copy + 2, n=p.piece.cut), "cm")
    text = "{p:word}: from {a:bare} to {b} along; from {c:bare} to {d} across, from the {far:word}{how:word}."
    yield phrase(
        text, p=name, a=p.at.x, b=p.at.x + p.along, c=p.at.y, d=p.at.y + p.across, far=far, how=_how(p)
    )  # fmt: skip
    band = None if lay.folded else band_of(p, brief.cloth)
    if band is not None:
        yield _on_band(p, band)
    yield from _moves(brief, p)


def _how(p: Placed) -> str:
    ways = {0: "", 90: tr("turned a quarter"), 180: tr("turned half round"), 270: tr("turned three quarters")}
    layers = tr("on the fold") if p.half else tr("through both layers") if p.layers == 2 else ""
    said = ", ".join(filter(None, (tr("turned over") if p.mirrored and not p.half else "", ways[p.turn], layers)))
    return f"; {said}" if said else ""


def _on_band(p: Placed, band: PrintBand) -> Phrase:
    edge = band.start if p.turn == 180 else band.end
    if band.by in ("top", "fold"):
        edge = band.end if p.turn == 180 else band.start
    at = (band.start + band.end) / 2 if band.by == "face centre" else edge
    return phrase("The {l:word}, at {y}, runs along the print’s band.", l=tr(LINES[band.by]), y=at)


def _moves(brief: Brief, p: Placed) -> Iterator[Phrase]:
    """Where each move of the template begins, from the cut end; a piece turned half round is walked towards it."""
    if brief.paper.panels != "template" or not is_panel(p.piece) or p.turn % 180:
        return
    step = moves(p.piece, min(paper_size(brief.paper).live))
    if step.count == 1:
        return
    start, way = (p.at.x + p.along, -1) if p.turn else (p.at.x, 1)
    for k in range(step.count):
        last = k == step.count - 1 and step.last != step.width
        text = "Move {k:count}, the last, begins at {x} and is {w} wide." if last else "Move {k:count} begins at {x}."
        yield phrase(text, k=k + 1, x=start + way * k * step.width, w=step.last if last else step.width)
