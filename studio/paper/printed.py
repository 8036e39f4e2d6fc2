"""All that the printer prints: what to measure and to have ready, the sheets, chalk lists and edge gauges."""

from collections.abc import Iterable, Iterator

from studio.draft import Notion, Piece
from studio.words import Phrase, phrase, tr

from .chalk_list import chalk_list
from .chalk_pleats import is_pleated
from .edge_gauges import edge_gauges
from .first_page import first_page
from .page import Page
from .pattern import Said, pattern_piece
from .plan import PatternPiece
from .ready import ready_pages
from .sheets import Layout, laid_out
from .sizes import paper_size
from .template import comes_as, is_panel, moves, template
from .tiles import sheet_pages
from .whole import numbered


def printed(pieces: tuple[Piece, ...], notions: Iterable[Notion], said: Said) -> Iterator[Page]:
    """The page to measure first, what to have ready, the sheets, chalk lists of panels and band, edge gauges."""
    paper, title, unit = paper_size(said.brief.paper), said.brief.title, said.unit
    room, lay = min(paper.live), _laid(pieces, said)
    yield first_page(lay.plan, lay.grid, title, unit)
    yield from ready_pages(numbered(pieces), notions, said, paper)
    yield from sheet_pages(lay.plan, lay.grid, title, unit)
    chalked = [p for p in pieces if is_panel(p) or is_pleated(p)]
    band = straight_band(pieces)
    for panel in chalked:
        yield from chalk_list(panel, title, unit, paper, band if panel is chalked[-1] else None)
    panels = [p for p in chalked if is_panel(p)]
    moved = said.brief.paper.panels == "template" and panels
    yield from edge_gauges(pieces, title, unit, paper, moves(panels[0], room) if moved else None)


def sheet_count(pieces: tuple[Piece, ...], said: Said) -> int:
    """How many sheets are glued together."""
    return len(_laid(pieces, said).grid.sheets)


def many(count: int, said: Said) -> Phrase | None:
    """What takes fewer sheets, where there are very many."""
    if count <= MANY:
        return None
    other = tr("a template or a chalk list of the panels, or larger paper")
    if said.brief.paper.panels != "whole":
        other = tr("larger paper or a roll")
    return phrase("{n:count} sheets are many to glue; {o:word} (under Paper) takes fewer.", n=count, o=other)


MANY = 40
"""More sheets than this are many."""


def _laid(pieces: tuple[Piece, ...], said: Said) -> Layout:
    paper = paper_size(said.brief.paper)
    return laid_out(list(_drawn(pieces, said, min(paper.live))), paper)


def straight_band(pieces: Iterable[Piece]) -> Piece | None:
    """The band, where it is a strip that can be chalked."""
    return next((p for p in pieces if p.id == "waistband" and p.rectangular), None)


def _drawn(pieces: tuple[Piece, ...], said: Said, room: float) -> Iterator[PatternPiece]:
    for number, piece in numbered(pieces):
        how = comes_as(piece, said.brief.paper.panels)
        if how == "template":
            yield template(piece, said.called(number), moves(piece, room))
        elif how == "whole":
            yield pattern_piece(piece, said.called(number))
