"""A piece traced on the cloth lies where each of its points does, however it is turned."""

import pytest
from briefs import brief
from msgspec.structs import replace

from studio.cloth.traced import traced
from studio.cloth.which import which_copy
from studio.units import spell
from studio.workroom import make_up


@pytest.mark.parametrize("turn", [0, 90, 180, 270])
@pytest.mark.parametrize("mirrored", [False, True])
def test_lines_go_with_their_points(turn: int, mirrored: bool):
    """Turned by quarters and turned over, every corner of a gore's outline comes where `on_cloth` has it."""
    placed = next(p for p in make_up(brief("gored")).lay.placed if p.piece.id != "waistband")
    placed = replace(placed, turn=turn, mirrored=mirrored)
    path = placed.laid(placed.outline)
    wanted = [placed.on_cloth(c.start) for c in placed.outline.curves]
    assert all(min(one.distance(c.start) for c in path.curves) < 1e-6 for one in wanted)
    assert placed.at.x == pytest.approx(path.box.left, abs=1e-6)
    assert placed.at.y == pytest.approx(path.box.top, abs=1e-6)


def test_what_is_drawn_on_the_fold_is_whole_where_the_cloth_lies_open():
    """Of a front that is drawn by half, open cloth shows both halves of its seam line, inside what is cut."""
    front = next(p for p in make_up(brief("straight")).lay.placed if p.piece.on_fold)
    lines = traced(front)
    assert lines.cut.box.joined(lines.seam.box) == lines.cut.box
    assert 2 * front.piece.seam_line.box.width == pytest.approx(lines.seam.box.height)
    assert len(lines.folds) == 2 * sum(m.role in ("fold", "hem") for m in front.piece.lines)


def test_which_copy_it_is():
    """One of two says so, a pair through both layers says both; what is cut once says nothing."""
    back = next(p for p in make_up(brief("straight", cloth__lies="folded")).lay.placed if p.piece.cut == 2)
    assert "1 and 2 of 2" == spell(which_copy(back), "cm")  # type: ignore[arg-type]
    assert "1 of 2" == spell(which_copy(replace(back, layers=1)), "cm")  # type: ignore[arg-type]
    band = next(p for p in make_up(brief()).lay.placed if p.piece.cut == 1)
    assert which_copy(band) is None
