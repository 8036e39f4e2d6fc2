"""The names of the pieces on the board."""

from itertools import combinations

import pytest
from pytestqt.qtbot import QtBot

from studio.styles import rack
from studio.window.board.board import Board
from studio.workroom import make_up

ODD = {"opening.kind": "placket", "opening.place": "front", "waistband.kind": "faced", "pockets.kind": "in seam"}
"""Many small parts."""


@pytest.mark.parametrize("style", rack.RACK)
@pytest.mark.parametrize("edits", [{}, ODD, {"lining.kind": "straight", "waistband.kind": "contour"}], ids=str)
@pytest.mark.parametrize("size", [(690, 550), (1330, 830)])
def test_every_piece_is_called(qtbot: QtBot, style: str, edits: dict[str, str], size: tuple[int, int]):
    """Each piece has its name, or where there is no room its number, whole, and over no other piece, name or legend."""
    board = Board()
    qtbot.addWidget(board)
    board.resize(*size)
    docket = make_up(rack.edit(rack.edit(rack.usual(), {"skirt.style": style}), edits))
    board.show_docket(docket)
    board.fit()
    scene, place = board.scene, board._place()
    called = {name.name.split()[0]: name for name in scene.names}
    assert [str(k) for k in range(1, len(docket.pieces) + 1)] == sorted(called, key=int)
    for k, piece in enumerate(docket.pieces, 1):
        assert called[str(k)].name in (f"{k} {piece.name}", str(k))
    assert 0 == place.hidden([name.box for name in scene.names], board.view)
    assert not [(a, b) for a, b in combinations(scene.names, 2) if a.box.meets(b.box)]
    boxes = {str(one.number): scene.box(k) for k, one in enumerate(scene.laid)}
    for number, name in called.items():
        assert not [k for k, box in boxes.items() if k != number and box.meets(name.box)]
    if size[0] > 1000:
        assert not [name for name in called.values() if " " not in name.name]
