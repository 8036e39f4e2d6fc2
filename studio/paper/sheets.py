"""Pieces on true-scale sheets: where they lie, and how the plan is cut up."""

import math
from collections.abc import Sequence

from msgspec import Struct

from studio.trouble import Trouble
from studio.words import tr

from .dodge import dodged
from .grid import Grid, cut_up
from .place import arranged
from .plan import EDGE, PatternPiece, Plan
from .sizes import PaperSize


class Layout(Struct, frozen=True):
    """A plan and the sheets it is cut into."""

    plan: Plan
    grid: Grid


def laid_out(pieces: Sequence[PatternPiece], paper: PaperSize) -> Layout:
    """The pieces on the paper, upright or lying, whichever takes fewer sheets (lying when both take as many)."""
    if not pieces:
        raise Trouble(tr("There is no piece to print."))
    ways = (paper,) if paper.roll else (max(paper, paper.turned(), key=_wide), min(paper, paper.turned(), key=_wide))
    return min((_on(pieces, way) for way in ways), key=lambda lay: len(lay.grid.sheets))


def _along_the_roll(piece: PatternPiece, paper: PaperSize) -> PatternPiece:
    """A piece too wide for the roll lies along it, if that takes fewer strips."""
    room = paper.live.width - 2 * EDGE
    across, along = (math.ceil(v / room) for v in (piece.box.width, piece.box.height))
    return piece.turned() if along < across else piece


def _wide(paper: PaperSize) -> float:
    return paper.width


def _on(pieces: Sequence[PatternPiece], paper: PaperSize) -> Layout:
    if paper.roll:
        pieces = [_along_the_roll(p, paper) for p in pieces]
    plan = Plan(arranged(pieces, paper.live))
    plan = dodged(plan, cut_up(plan, paper))
    return Layout(plan, cut_up(plan, paper))
