"""Where the title block of a piece stands on paper."""

import pytest

from studio.paper.pattern import Said, pattern_piece
from studio.paper.reach import boxed
from studio.styles import rack
from studio.workroom import make_up

PLACKET = {"opening.kind": "placket", "opening.place": "front", "fastening.count": 3}
FACED = {"waistband.kind": "faced", "pockets.kind": "in seam", "lining.kind": "straight"}


@pytest.mark.parametrize("edits", [{}, PLACKET, FACED], ids=["usual", "placket", "faced"])
def test_a_block_stands_on_its_piece(edits: dict[str, object]):
    """The block with a piece's number lies wholly on the piece, level or upright, over no button and no hole, where
    the piece is a rectangle that can hold it; of any skirt on the rack."""
    seen = 0
    for brief in (rack.edit(rack.edit(rack.usual(), {"skirt.style": style}), edits) for style in rack.RACK):
        for piece in make_up(brief).pieces:
            printed = pattern_piece(piece, Said(brief, "cm", "1"))
            block, box = boxed(printed.blocks)[0].box, piece.cut_line.box
            long, short = sorted((box.width, box.height), reverse=True)
            roomy = long > max(block.width, block.height) + 25 and short > min(block.width, block.height) + 25
            if roomy and piece.cut_line.area > 0.98 * box.width * box.height and piece.id != "waistband":
                assert box.holds(block), piece.id
                assert not any(block.meets(whole) for whole in printed.whole), piece.id
                seen += 1
    assert seen >= 5
