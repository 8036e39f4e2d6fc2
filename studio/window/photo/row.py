"""A line of widgets under a picture."""

from PySide6.QtWidgets import QHBoxLayout, QWidget

from ..tokens import SPACE


def row(parent: QWidget, *parts: QWidget) -> QWidget:
    """Widgets beside each other, from the left."""
    whole = QWidget(parent)
    line = QHBoxLayout(whole)
    line.setContentsMargins(0, 0, 0, 0)
    line.setSpacing(SPACE.m)
    for part in parts:
        line.addWidget(part)
    line.addStretch(1)
    return whole
