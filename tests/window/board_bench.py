"""A board with a skirt on it, for its tests: it makes up what is dragged, as the window does."""

from typing import Any

from briefs import brief
from hands import put
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from studio.brief import Brief
from studio.geometry import Point
from studio.styles import rack
from studio.window.board import Board
from studio.workroom import make_up

LEFT = Qt.MouseButton.LeftButton
NONE = Qt.KeyboardModifier.NoModifier
SHIFT = Qt.KeyboardModifier.ShiftModifier
RULER = 22  # px


class Table:
    """A board in a window, with a record of what it says."""

    def __init__(self, qtbot: QtBot, bench: QWidget, size: tuple[int, int] = (700, 560), **changes: Any) -> None:
        """Show the usual skirt with some values changed."""
        self.brief: Brief = brief(**changes)
        self.board = Board(bench)
        self.dragged: list[tuple[str, float | None]] = []
        self.dropped: list[str] = []
        self.lit: list[str] = []
        self.chosen: list[str] = []
        self.board.dragged.connect(self._edit)
        self.board.dropped.connect(self.dropped.append)
        self.board.lit_here.connect(self.lit.append)
        self.board.chosen.connect(self.chosen.append)
        self.board.setFixedSize(*size)
        put(qtbot, self.board)
        self.show()
        self.board.setAttribute(Qt.WidgetAttribute.WA_UnderMouse, False)

    def show(self, **changes: Any) -> None:
        """Show the skirt with more values changed."""
        self.brief = rack.edit(self.brief, {path.replace("__", "."): value for path, value in changes.items()})
        self.board.show_docket(make_up(self.brief))

    def _edit(self, path: str, value: float | None) -> None:
        self.dragged.append((path, value))
        self.show(**{path: value})

    def handle(self, path: str) -> QPoint:
        """Where a handle is, px."""
        assert self.board.scene is not None
        return whole(self.board.view.px(next(g.at for g in self.board.scene.grips if g.path == path)))

    def words(self, path: str) -> QPoint:
        """The middle of a dimension's words, px."""
        assert self.board.scene is not None
        box = next(d.box for d in self.board.scene.dimensions if d.path == path)
        return whole(box.centre.moved(self.board.view.x, self.board.view.y))

    def press(self, at: QPoint, button: Qt.MouseButton = LEFT) -> None:
        """Put a button down."""
        QTest.mouseMove(self.board, at)
        QTest.mousePress(self.board, button, NONE, at)

    def move(self, at: QPoint) -> None:
        """Move the pointer."""
        QTest.mouseMove(self.board, at)

    def release(self, at: QPoint, button: Qt.MouseButton = LEFT) -> None:
        """Let a button go."""
        QTest.mouseRelease(self.board, button, NONE, at)

    def drag(self, start: QPoint, dx: int, dy: int) -> None:
        """Press, move in four steps, and let go."""
        self.press(start)
        for k in range(1, 5):
            self.move(start + QPoint(dx * k // 4, dy * k // 4))
        self.release(start + QPoint(dx, dy))

    def click(self, at: QPoint) -> None:
        """Press and let go."""
        self.press(at)
        self.release(at)

    def picture(self) -> QImage:
        """What is seen."""
        return self.board.grab().toImage()


def whole(at: Point) -> QPoint:
    """The pixel a point is in."""
    return QPoint(round(at.x), round(at.y))


def differing(one: QImage, other: QImage) -> list[tuple[int, int]]:
    """Pixels that are not the same in two pictures of one size."""
    return [
        (x, y)
        for y in range(one.height())
        if one.scanLine(y) != other.scanLine(y)
        for x in range(one.width())
        if one.pixel(x, y) != other.pixel(x, y)
    ]
