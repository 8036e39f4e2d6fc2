"""The edge gauges: one sheet at true size holds everything that a chalked skirt needs true size for."""

from collections.abc import Callable, Iterator
from functools import partial
from typing import TypeAlias

from studio.draft import Piece
from studio.draft.piece import PARTS
from studio.drawing import moved
from studio.drawing.furniture import paragraph
from studio.geometry import TOUCH, Box, Line, Path
from studio.units import Unit, spell
from studio.words import phrase, tr

from .cut_out import CutOut, shelves
from .end_gauge import extension_end, plain_end
from .moving import moving
from .page import Page, Size
from .single import Block, Column, body, flow, lying, numbers_are, single, upright
from .sizes import PaperSize
from .strip import scale_bar
from .strip_gauge import hem_gauge, waist_gauge
from .template import Moves

Maker: TypeAlias = Callable[[float], CutOut | str]
"""Makes a gauge for a room so wide (mm), or says in one sentence why there is none."""

_SCALE, _TEXT = 62.0, 3.6


def edge_gauges(
    pieces: tuple[Piece, ...], title: str, unit: Unit, paper: PaperSize, step: Moves | None = None
) -> tuple[Page, ...]:  # fmt: skip
    """Pages of gauges: waist, hem and band ends, and how the template is moved where `step` says that one is.

    Pages lie on their side; a gauge too high for that stands on an upright one. What no page holds is named in a
    line of its own.
    """
    ways = list(dict.fromkeys((lying(paper), upright(paper))))
    found: dict[Size, list[CutOut]] = {size: [] for size in ways}
    told: list[str] = []
    for name, make in _makers(pieces, unit, step):
        rooms = {size: _room(size, unit, paper) for size in ways}
        made = {size: make(room.width) for size, room in rooms.items()}
        fits = next((s for s, m in made.items() if isinstance(m, CutOut) and _fits(m, rooms[s])), None)
        first = made[ways[0]]
        if fits is not None and isinstance(gauge := made[fits], CutOut):
            found[fits].append(gauge)
        elif isinstance(first, str):
            told.append(first)
        else:
            told.append(spell(phrase("{name:word} left out: it is larger than the paper.", name=name), unit))
    used = [size for size in ways if found[size]] or (ways[:1] if told else [])
    pages: list[Page] = []
    for size in used:
        blocks = shelves(found[size], _room(size, unit, paper).width)
        blocks += [_told(told, size, unit, paper)] if told and size == used[-1] else []
        pages += (_page(column, size, title, unit, paper) for column in flow(blocks, _room(size, unit, paper).height))
    return tuple(pages)


def _makers(pieces: tuple[Piece, ...], unit: Unit, step: Moves | None) -> Iterator[tuple[str, Maker]]:
    skirt = [p for p in pieces if p.cloth == "main" and 0 < p.row < PARTS]
    top = next((p for p in skirt if any(e.name == "waist" for e in p.edges)), None)
    hemmed = next((p for p in skirt if any(m.role == "hem" for m in p.lines)), None)
    band = next((p for p in pieces if p.id == "waistband"), None)
    yield tr("Waist gauge"), partial(_waist, top, unit)
    yield tr("Hem gauge"), partial(_hem, hemmed, unit)
    yield tr("Band end"), partial(extension_end, band, unit)
    yield tr("Plain end"), partial(plain_end, band, unit)
    if step is not None and step.count > 1:
        yield tr("Moving the template"), partial(moving, step, unit)


def _waist(panel: Piece | None, unit: Unit, wide: float) -> CutOut | str:
    if panel is None or not _level(panel.edge("waist").path):
        return tr("Waist gauge left out: the waist edge is curved; take it from the pattern.")
    return waist_gauge(panel, unit, wide)


def _hem(panel: Piece | None, unit: Unit, wide: float) -> CutOut | str:
    if panel is None:
        return tr("Hem gauge left out: the hem is faced.")
    if not all(_level(m.path) for m in panel.lines if m.role == "hem"):
        return tr("Hem gauge left out: the hem is curved; measure it up from the raw edge.")
    return hem_gauge(panel, unit, wide)


def _level(path: Path) -> bool:
    """Whether a line runs straight along the piece."""
    return all(isinstance(c, Line) and abs(c.start.y - c.end.y) < TOUCH for c in path.curves)


def _fits(made: CutOut, room: Box) -> bool:
    return made.width <= room.width and made.height <= room.height


def _room(size: Size, unit: Unit, paper: PaperSize) -> Box:
    """What the introduction and the scale leave of a page."""
    room = body(size, paper.margin)
    return Box(room.left, room.top + _intro(room, unit).height + 3, room.right, room.bottom)


def _intro(room: Box, unit: Unit) -> Block:
    """How the gauges are used, and the scale that is measured first."""
    how = tr(
        "Print at 100 % and measure the scale first. Cut out each gauge on the thick line, lay it on its edge and "
        "slide it along."
    )
    told = paragraph(how, 0, -1, room.width - _SCALE - 6, _TEXT)
    scale = scale_bar(room.width - _SCALE, 5, unit, "plain")
    return Block((*told.marks, *scale), max(7.0, told.below))


def _told(told: list[str], size: Size, unit: Unit, paper: PaperSize) -> Block:
    text = paragraph(" ".join(told), 0, 0, _room(size, unit, paper).width, _TEXT)
    return Block(text.marks, text.below, 5)


def _page(column: Column, size: Size, title: str, unit: Unit, paper: PaperSize) -> Page:
    whole, room = body(size, paper.margin), _room(size, unit, paper)
    marks = (*moved(_intro(whole, unit).marks, *whole[:2]), *moved(column.marks, *room[:2]))
    foot = (f"{numbers_are(unit)} {tr('Scale 1:1.')}", "Skirtwright")
    return single(size, paper.margin, tr("Edge gauges, true size"), title, marks, foot)
