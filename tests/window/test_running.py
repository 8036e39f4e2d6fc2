"""From opening to the last fault: what the maker is told when something breaks."""

import subprocess
import sys
from pathlib import Path

import pytest
from opening import type_in
from PySide6.QtCore import QStandardPaths

from studio.trouble import Trouble
from studio.window import run
from studio.window.running import LOG, Faults
from studio.window.shop import Shop


def test_no_screen_is_one_sentence(monkeypatch: pytest.MonkeyPatch):
    """Where there is no screen, that is said, with what works without one."""
    monkeypatch.setattr(sys, "platform", "linux")
    for name in ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"):
        monkeypatch.delenv(name, raising=False)
    with pytest.raises(Trouble, match="no screen"):
        run(None)


def test_no_screen_on_the_command_line():
    """The command ends with 2 and one line."""
    env = {"PATH": "/usr/bin", "HOME": "/nonexistent"}
    done = subprocess.run([sys.executable, "-m", "studio"], capture_output=True, text=True, env=env, check=False)
    assert (2, 1) == (done.returncode, done.stderr.count("\n"))
    assert done.stderr.startswith("skirtwright: There is no screen")


def test_an_unforeseen_fault_is_one_sentence_and_a_log(shop: Shop, monkeypatch: pytest.MonkeyPatch, tmp_path: Path):
    """A fault that nothing foresaw is said in one sentence, the whole of it is logged, and work goes on."""
    monkeypatch.setattr(QStandardPaths, "writableLocation", lambda _: str(tmp_path))
    fault = ZeroDivisionError("a seam of no length")
    Faults(shop)(ZeroDivisionError, fault, None)
    assert "your skirt is as it was" in shop.window.notice.text
    assert "a seam of no length" in (tmp_path / LOG).read_text()
    type_in(shop, "body.waist", "73")
    assert 730.0 == shop.desk.brief.body.waist
