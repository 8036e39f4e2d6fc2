"""An empty window for each test to put widgets in, and the whole window on a skirt."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from band_hands import FACE, HEM
from opening import open_shop, settle, shut
from PySide6.QtCore import QSettings
from PySide6.QtWidgets import QApplication, QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot

from studio.window.settings import Settings
from studio.window.shop import Shop


@pytest.fixture
def bench(qtbot: QtBot) -> QWidget:
    """An empty window, closed after the test."""
    window = QWidget()
    QVBoxLayout(window)
    qtbot.addWidget(window)
    return window


@pytest.fixture
def settings(tmp_path: Path) -> Settings:
    """What a maker's desktop would remember, in a file of the test's own; in centimetres, not new here."""
    kept = Settings(QSettings(str(tmp_path / "settings.ini"), QSettings.Format.IniFormat))
    kept.unit, kept.started, kept.wish = "cm", True, "light"
    return kept


@pytest.fixture
def shop(qtbot: QtBot, settings: Settings) -> Iterator[Shop]:
    """The whole window on the usual skirt, closed after the test without a question."""
    shop = open_shop(qtbot, settings)
    yield shop
    shut(qtbot, shop)


@pytest.fixture
def cloth(shop: Shop) -> Iterator[Shop]:
    """The usual skirt with its Cloth section open, and two bands on the cloth."""
    pause = QApplication.keyboardInputInterval()
    QApplication.setKeyboardInputInterval(0)  # each letter typed in a list is looked for by itself
    shop.window.table.construction.open_sections(["cloth"])
    shop.desk.mend({"cloth.bands": (HEM, FACE)})
    settle(shop)
    yield shop
    QApplication.setKeyboardInputInterval(pause)
