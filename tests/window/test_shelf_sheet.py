"""The sheet of the shelf, where it cannot do as it was asked."""

from pathlib import Path

import pytest
from pytestqt.qtbot import QtBot

from studio.brief import Cloth
from studio.cloth import shelf
from studio.window.shelf import ShelfSheet


def test_a_full_shelf_is_said_on_its_sheet(qtbot: QtBot, tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    """Where no more cloths can be kept the sheet says so, with the way out, and the shelf is as it was."""
    monkeypatch.setattr(shelf, "MOST", 1)
    shelf.put(tmp_path, Cloth(name="A"))
    sheet = ShelfSheet(tmp_path, Cloth(name="B"), "cm", None)
    qtbot.addWidget(sheet)
    sheet.keep.click()
    assert "The shelf is full: it holds 1 cloths. Take one off first." == sheet.says.text()
    assert 1 == sheet.list.count()
