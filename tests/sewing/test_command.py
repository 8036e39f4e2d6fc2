"""`skirtwright sew`: the steps on paper or screen, without a window."""

import pytest

from studio.__main__ import main


def test_sew_prints_the_steps(capsys: pytest.CaptureFixture[str]):
    """Numbered steps, each with a box to tick, and this skirt's own numbers in the unit asked for."""
    assert 0 == main(["sew", "--set", "skirt.style=pleated", "--unit", "in"])
    out = capsys.readouterr().out
    assert "[ ]  1  Wash, press, straighten" in out
    assert "Lay the pleats" in out
    assert " in below the raw edge" in out
    assert " cm" not in out


def test_sew_says_what_it_cannot_read(capsys: pytest.CaptureFixture[str]):
    """A path that is not known is said in one line, and nothing is printed."""
    assert 2 == main(["sew", "--set", "waist=70"])
    said = capsys.readouterr()
    assert "" == said.out
    assert "waist=70" in said.err
