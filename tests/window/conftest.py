"""An empty window for each test to put widgets in."""

import pytest
from PySide6.QtWidgets import QVBoxLayout, QWidget
from pytestqt.qtbot import QtBot


@pytest.fixture
def bench(qtbot: QtBot) -> QWidget:
    """An empty window, closed after the test."""
    window = QWidget()
    QVBoxLayout(window)
    qtbot.addWidget(window)
    return window
