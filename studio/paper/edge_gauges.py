"""The edge gauges: one sheet at true size holds everything that a chalked skirt needs true size for."""

from collections.abc import Callable, Iterator
from functools import partial
from typing import TypeAlias

from studio.draft import Piece
from studio.drawing import Drawing, moved
from studio.drawing.furniture import paragraph
from studio.geometry import Box
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
    ways = (lying(paper), upright(paper))
    found: dict[Size, list[CutOut]] = {size: [] for size in ways}
    told: list[str] = []
    for name, make in _makers(pieces, unit, step):
        for size in ways:
            room = body(size, paper.margin)
            made = make(room.width)
            if isinstance(made, str):
                told.append(made)
                break
            if made.width <= room.width and made.height <= room.height - _intro(room, unit).height:
                found[size].append(made)
                break
        else:
            told.append(spell(phrase("{name:word}: no gauge, since it is larger than the paper.", name=name), unit))
    ...
