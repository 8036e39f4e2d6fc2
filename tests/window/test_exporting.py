"""An export while the window lives."""

import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from opening import settle
from PySide6.QtCore import QStandardPaths, Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from studio.export import Step
from studio.window.export_sheet import ExportSheet
from studio.window.exporting import Exporting
from studio.window.running import LOG, Faults
from studio.window.shop import Shop


def test_an_unforeseen_fault_is_not_called_done(shop: Shop, tmp_path: Path, monkeypatch: pytest.MonkeyPatch):
    """Whatever breaks in the writing, the sheet says so, never that it is done; the log has the whole of it."""
    monkeypatch.setattr(QStandardPaths, "writableLocation", lambda _: str(tmp_path))
    monkeypatch.setattr(sys, "excepthook", Faults(shop))

    def breaking(*_: object) -> Iterator[Step]:
        yield Step(0, 2, "page 1")
        raise ZeroDivisionError("a sheet of no width")

    shop.window.do.export.trigger()
    leaf = shop.leaf
    assert isinstance(leaf, ExportSheet)
    leaf.exporter = breaking
    QTest.mouseClick(leaf.lead, Qt.MouseButton.LeftButton)
    settle(shop)
    assert leaf.says.text().startswith("Something went wrong")
    assert leaf.work is not None and not leaf.work.running
    assert leaf.lead.isEnabled() and not leaf.show_folder.isVisible()
    assert "a sheet of no width" in (tmp_path / LOG).read_text()
    leaf.reject()


def test_cancelling_ends_the_writing_at_once(qtbot: QtBot, shop: Shop):
    """Cancel lets the writer put away what it has begun, and nothing more comes of it."""
    put_away = []

    def writing() -> Iterator[Step]:
        try:
            for page in range(1000):
                yield Step(0, 1, f"page {page}")
        finally:
            put_away.append(True)

    work = Exporting(writing(), shop)
    with qtbot.waitSignal(work.stepped):
        pass
    with qtbot.waitSignal(work.cancelled), qtbot.assertNotEmitted(work.done):
        work.cancel()
    assert [True] == put_away
    with qtbot.assertNotEmitted(work.stepped, wait=20):
        pass
