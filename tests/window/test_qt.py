"""What is asked of the Qt underneath."""

import sys

from PySide6.QtGui import QPainterPath


def test_drawing_does_not_wear_out_the_interpreter() -> None:
    """A long day's drawing must not end in a crash: some Qt bindings lose a reference to None at each void call."""
    path = QPainterPath()
    before = sys.getrefcount(None)
    for _ in range(1000):
        path.lineTo(1, 1)
    assert sys.getrefcount(None) > before - 200
