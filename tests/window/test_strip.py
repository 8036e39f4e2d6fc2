"""The strip at the bottom of the window."""

from briefs import brief
from pytestqt.qtbot import QtBot

from studio.window.numbers import facts
from studio.workroom import make_up


def test_no_length_is_named_while_a_piece_does_not_fit(qtbot: QtBot):
    """Cloth to buy is a dash until every piece lies on the cloth."""
    caption, figure, *_ = facts(make_up(brief(skirt__length=1200.0, cloth__width=1100.0)), "cm")[0]
    assert ("Cloth to buy", "–") == (caption, figure)
    assert "1.5" == facts(make_up(brief()), "cm")[0][1]
