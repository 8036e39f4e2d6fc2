"""The order of cutting: the lay plan as one cuts it, every place measured from the cut end and the first edge."""

from collections.abc import Container, Iterator

from studio.brief import Brief, PrintBand
from studio.brief.bands import LINES
from studio.cloth.placed import Lay, Placed
from studio.cloth.ways import band_of
from studio.cloth.which import which_copy, which_layers
from studio.paper.cut_step import CutStep, Move, OnBand
from studio.paper.sizes import paper_size
from studio.paper.template import is_panel, moves
from studio.sewing.cautions import CAUTIONS
from studio.units import spell
from studio.words import Phrase, phrase, tr
from studio.workroom import Docket

OPEN = "Lay it out in one layer, right side up, the first selvedge away from you."
FOLDED = (
    "Fold it along its length, selvedge on selvedge, right side in, the fold away from you: the half with the first "
    "selvedge lies on top."
)

AT_THE_TABLE = ("cloth.on_hand", "cloth.held", "cloth.bands", "cloth.lies")
"""What is found of these is a caution before anything is cut."""


def cutting_order(docket: Docket) -> tuple[Phrase, ...]:
    """The steps from the squared end to the last cut, each a sentence or a few."""
    return tuple(said for step in cutting_steps(docket) for said in step_words(step))


def step_words(step: CutStep) -> tuple[Phrase, ...]:
    """All that is said of a step, the moves of its template too."""
    return (*step.says, *map(_move, step.moves))


def cutting_steps(docket: Docket) -> tuple[CutStep, ...]:
    """The same, step by step, with what is drawn of each.

    Pieces come in the order in which shears meet them: by their distance from the cut end, then across.
    """
    lay, brief = docket.lay, docket.brief
    wash = "Wash, dry and press the cloth. Square its cut end to the selvedge: everything is measured from there."
    look = "Look along the bands and the grain once more. Then cut."
    plain = "Look along the grain once more. Then cut."
    shown = {b for p in lay.placed if (b := band_of(p, brief.cloth)) is not None}
    return (
        *(CutStep((f.says,), caution=True) for f in docket.findings if f.where in AT_THE_TABLE),
        _plain(phrase(wash)),
        _plain(phrase(FOLDED if lay.folded else OPEN)),
        *map(_plain, _bands(brief, lay, shown)),
        *(_piece(brief, lay, p) for p in sorted(lay.placed, key=lambda p: (round(p.at.x), p.at.y))),
        _plain(phrase(look if shown and not lay.folded else plain)),
        _plain(phrase("Mark notches, folds and stops before you move a piece.")),
        CutStep((CAUTIONS["shears"],), caution=True),
        CutStep((CAUTIONS["blade"],), caution=True),
    )


def _plain(says: Phrase) -> CutStep:
    return CutStep((says,))


def _bands(brief: Brief, lay: Lay, shown: Container[PrintBand]) -> Iterator[Phrase]:
    if lay.folded:
        return
    for band in brief.cloth.bands:
        text = "The print’s band at {a:bare} to {b} is for the {h:word}."
        if band.holds == "nothing":
            text = "The print’s band at {a:bare} to {b} is not used."
        elif band not in shown:
            text = "The print’s band at {a:bare} to {b} is meant for the {h:word}, but no piece lies on it."
        yield phrase(text, a=band.start, b=band.end, h=tr(band.holds))


def _piece(brief: Brief, lay: Lay, p: Placed) -> CutStep:
    """Where a piece is chalked, how it lies, what must run along its band, and the moves of its template."""
    far = tr("fold") if lay.folded else tr("first selvedge")
    copy = which_copy(p)
    name = f"{tr(p.piece.name)}, {spell(copy, 'cm')}" if copy else tr(p.piece.name)
    text = "{p:word}: from {a:bare} to {b} along; from {c:bare} to {d} across, from the {far:word}{how:word}."
    where = phrase(
        text, p=name, a=p.at.x, b=p.at.x + p.along, c=p.at.y, d=p.at.y + p.across, far=far, how=_how(lay, p)
    )  # fmt: skip
    band = None if lay.folded else band_of(p, brief.cloth)
    on_band = None if band is None else _on_band(p, band)
    says = (where,) if on_band is None else (where, _runs(on_band))
    return CutStep(says, p, tuple(_moves(brief, p)), on_band)


def _how(lay: Lay, p: Placed) -> str:
    ways = {0: "", 90: tr("turned a quarter"), 180: tr("turned half round"), 270: tr("turned three quarters")}
    layers = which_layers(p, folded=lay.folded)
    said = ", ".join(filter(None, (tr("turned over") if p.mirrored and not p.half else "", ways[p.turn], layers)))
    return f"; {said}" if said else ""


def _on_band(p: Placed, band: PrintBand) -> OnBand:
    edge = band.start if p.turn == 180 else band.end
    if band.by in ("top", "fold"):
        edge = band.end if p.turn == 180 else band.start
    at = (band.start + band.end) / 2 if band.by == "face centre" else edge
    return OnBand(tr(LINES[band.by]), at)


def _runs(one: OnBand) -> Phrase:
    return phrase("The {l:word}, at {y}, runs along the print’s band.", l=one.line, y=one.at)


def _moves(brief: Brief, p: Placed) -> Iterator[Move]:
    """Where each move of the template begins, from the cut end; a piece turned half round is walked towards it."""
    if brief.paper.panels != "template" or not is_panel(p.piece) or p.turn % 180:
        return
    step = moves(p.piece, min(paper_size(brief.paper).live))
    if step.count == 1:
        return
    start, way = (p.at.x + p.along, -1) if p.turn else (p.at.x, 1)
    for k in range(step.count):
        last = k == step.count - 1
        begins = start + way * k * step.width
        ends = begins + way * (step.last if last else step.width)
        yield Move(k + 1, begins, ends, narrow=last and step.last != step.width)


def _move(one: Move) -> Phrase:
    text = "Move {k:count}, the last, begins at {x} and is {w} wide." if one.narrow else "Move {k:count} begins at {x}."
    return phrase(text, k=one.number, x=one.begins, w=one.wide)
