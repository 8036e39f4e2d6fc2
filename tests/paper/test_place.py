"""Where the pieces lie on the grid."""

import math
from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from sample_plan import template, waistband
from test_grid import PAPERS

from studio.geometry import Box, rectangle
from studio.paper.grid import cut_up
from studio.paper.page import Size
from studio.paper.pattern import Said, pattern_piece
from studio.paper.place import arranged
from studio.paper.plan import EDGE, GAP, PatternPiece, Plan
from studio.paper.sheets import laid_out
from studio.paper.sizes import PaperSize, paper_size
from studio.paper.slide import CLEAR
from studio.paper.template import moves
from studio.paper.template import template as whole_template
from studio.styles import rack
from studio.workroom import make_up

LIVE = Size(260, 173)


def nearest(piece: PatternPiece, pieces: tuple[PatternPiece, ...], paper: PaperSize) -> float:
    """The least distance between a join of sheets and a line of the piece that runs along it, or a hole; mm."""
    found = [math.inf]
    for join in cut_up(Plan(pieces), paper).joins:
        upright = join.way == "upright"
        across = (piece.box.top, piece.box.bottom) if upright else (piece.box.left, piece.box.right)
        if join.start < across[1] and across[0] < join.end:
            lines = piece.upright if upright else piece.lying
            holes = [(b.left, b.right) if upright else (b.top, b.bottom) for b in piece.whole]
            found += [max(a - join.place, join.place - b, 0.0) for a, b in (*((v, v) for v in lines), *holes)]
    return min(found)


def bare(wide: float, high: float, **more) -> PatternPiece:
    """A rectangle somewhere off the plan."""
    return PatternPiece("1", "piece", rectangle(-50, 30, wide - 50, 30 + high), (), **more)


@given(st.lists(st.tuples(st.floats(20, 900), st.floats(20, 700)), min_size=1, max_size=7))
def test_pieces_lie_apart(sizes):
    """No piece lies on another or runs off the paper, and the scissors have room."""
    boxes = [p.box for p in arranged([bare(*s) for s in sizes], LIVE)]
    assert all(b.left >= EDGE - 1e-6 and b.top >= EDGE - 1e-6 for b in boxes)
    for a, b in combinations(boxes, 2):
        assert not a.meets(b.grown(GAP - 1e-3))
    for b, size in zip(boxes, sizes, strict=True):
        assert size == pytest.approx((b.width, b.height))


@given(st.lists(st.tuples(st.floats(20, 900), st.floats(20, 700)), min_size=1, max_size=7))
def test_few_sheets_are_needed(sizes):
    """Never more sheets than with each piece on its own, nor fewer than their area needs."""
    plan = Plan(arranged([bare(*s) for s in sizes], LIVE))
    used = len(cut_up(plan, PaperSize("A4", 297, 210)).sheets)
    alone = sum(math.ceil((w + EDGE) / 260) * math.ceil((h + EDGE) / 173) for w, h in sizes)
    assert math.ceil(sum(w * h for w, h in sizes) / (260 * 173) - 0.02) <= used <= alone


def test_small_pieces_share_a_sheet():
    """Four small pieces take one sheet, not four."""
    plan = Plan(arranged([bare(110, 70)] * 4, LIVE))
    assert 1 == len(cut_up(plan, PaperSize("A4", 297, 210)).sheets)


@pytest.mark.parametrize("paper", PAPERS[:4], ids=lambda p: f"{p.name} {p.width:.0f}")
def test_joins_keep_clear_of_lines_and_holes(paper: PaperSize):
    """No join runs within 8 mm of a fold, a seam or a buttonhole, where the pieces have room to slide."""
    pieces = arranged((waistband(), template()), paper.live)
    for piece in pieces:
        assert CLEAR <= nearest(piece, pieces, paper)


@pytest.mark.parametrize("unit", ["cm", "in"])
@pytest.mark.parametrize("size", ["A4", "A3", "US Letter"])
@pytest.mark.parametrize("fastening", ["buttons", "hook and bar"])
def test_joins_keep_clear_of_a_drafted_skirt(unit: str, size: str, fastening: str):
    """On every paper the usual skirt's joins cut no hole or button, and keep some 8 mm from lines: 6.5 where 8 has no room."""
    one = rack.edit(rack.usual(unit), {"paper.size": size, "fastening.kind": fastening})
    docket, paper, said = make_up(one), paper_size(one.paper), Said(one, unit)
    band, skirt, interfacing = docket.pieces
    drawn = (
        pattern_piece(band, said), whole_template(skirt, said, moves(skirt, min(paper.live))),
        pattern_piece(interfacing, said),
    )  # fmt: skip
    lay = laid_out(drawn, paper)
    assert all(nearest(p, lay.plan.pieces, lay.grid.paper) >= CLEAR - 1.5 for p in lay.plan.pieces)


def test_a_join_never_cuts_a_buttonhole():
    """A buttonhole that would lie across a join slides off it with its piece."""
    hole = Box(205, 60, 226, 66)
    (piece,) = arranged([bare(400, 100, whole=(hole.moved(-50, 0),))], LIVE)
    (there,) = piece.whole
    assert there.right <= 260 - CLEAR or there.left >= 260 + CLEAR
    assert (21, 6) == pytest.approx((there.width, there.height))


def test_each_piece_slides_for_itself():
    """Where no one place suits all, each piece finds its own."""
    first = [246 - 15 * k - 55 for k in range(14)]
    second = [v - 55 for v in (253, 238, 223, 208, 193, 178, 168, *range(142, 30, -15))]
    pieces = arranged([bare(300, 140, upright=tuple(first)), bare(300, 140, upright=tuple(second))], LIVE)
    assert all(nearest(p, pieces, PaperSize("A4", 297, 210)) >= CLEAR for p in pieces)


def test_the_arrangement_is_the_same_each_time():
    """The same pieces lie the same way in every print."""
    pieces = (waistband(), template())
    assert arranged(pieces, LIVE) == arranged(pieces, LIVE)
