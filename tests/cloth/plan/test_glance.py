"""The plan at a glance against every way there is to lay a few boxes."""

import random

import pytest
from brute import least_length

from studio.brief import Cloth, Held
from studio.cloth.lay import lay_out
from studio.cloth.outlines import task
from studio.draft import Piece
from studio.geometry import Point, rectangle


def few_pieces(seed: int) -> tuple[tuple[Piece, ...], Cloth]:
    """Up to five rectangles of whole millimetres on a narrow cloth: open or folded, with a gap, one of them held."""
    chance = random.Random(seed)
    width = chance.randint(4, 9)
    pieces = []
    for k in range(chance.randint(1, 3)):
        a, b = chance.randint(1, 8), chance.randint(1, width)
        pieces.append(Piece(f"piece {k}", "", (), rectangle(0, 0, a, b), (Point(0, b / 2), Point(a, b / 2)),
                            cut=chance.randint(1, 2)))  # fmt: skip
    held: tuple[Held, ...] = ()
    if chance.random() < 0.25:
        held = (
            Held("piece 0", 0, chance.randint(0, 6), chance.randint(0, width - int(pieces[0].cut_line.box.height))),
        )
    folded = chance.random() < 0.2
    cloth = Cloth(width=width * (2 if folded else 1), selvedge=0.0, gap=float(chance.choice((0, 0, 1, 2))), held=held,
                  lies="folded" if folded else "open")  # fmt: skip
    return tuple(pieces), cloth


@pytest.mark.parametrize("batch", range(4))
def test_a_glance_claims_no_more_than_is_so(batch: int):
    """Of a few boxes every plan there is was tried: none is shorter than the plan at a glance says any must be, and
    what it calls best possible is.
    """
    proven = below = 0
    for seed in range(batch * 30, batch * 30 + 30):
        pieces, cloth = few_pieces(seed)
        lay = lay_out(pieces, cloth)
        least = least_length(task(pieces, cloth).problem, round(lay.length))
        assert lay.length >= least - 0.01, seed
        assert lay.bound <= least + 0.01, seed
        assert not lay.proven or least == pytest.approx(lay.length, abs=0.01), seed
        proven, below = proven + lay.proven, below + (least < lay.length - 0.01)
    assert proven >= 10
    assert below >= 1
