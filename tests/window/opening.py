"""Opening the shop and shutting it, for tests of the whole window."""

from pathlib import Path

from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from studio.styles import rack
from studio.window.running import bare, furnished
from studio.window.settings import Settings
from studio.window.shop import Shop
from studio.window.widgets.field import Field
from studio.window.widgets.views import ViewSwitch


def open_shop(qtbot: QtBot, settings: Settings, file: Path | None = None) -> Shop:
    """A window at 1280 x 800 on a file, or on the usual skirt where a maker has been here before."""
    shop = furnished(settings, bare(settings))
    qtbot.addWidget(shop.window)
    shop.open(file)
    shop.window.resize(1280, 800)
    if file is None and settings.started:
        shop.desk.take(rack.usual(), None)
    qtbot.waitExposed(shop.window)
    shop.window.activateWindow()
    qtbot.waitUntil(shop.window.isActiveWindow)
    settle(shop)
    return shop


def shut(qtbot: QtBot, shop: Shop) -> None:
    """Close the window, whatever is unsaved."""
    shop.window.may_close = True
    shop.window.close()
    qtbot.wait(0)


def to_view(shop: Shop, name: str) -> None:
    """Choose a view by its word."""
    switch = shop.window.toolbar.heading
    assert isinstance(switch, ViewSwitch)
    QTest.mouseClick(switch.word(name), Qt.MouseButton.LeftButton)
    settle(shop)


def settle(shop: Shop) -> None:
    """Let everything that is queued be done."""
    for _ in range(6):
        QTest.qWait(0)


def field(shop: Shop, path: str) -> Field:
    """The number field of a path."""
    found = next(f.fields[path] for f in shop.window.table.forms if path in f.fields)
    assert isinstance(found, Field)
    return found


def type_in(shop: Shop, path: str, text: str, *, enter: bool = True) -> None:
    """Type into a field, as a maker would."""
    shop.window.table.reveal(path)
    box = field(shop, path).box
    box.setFocus()
    box.selectAll()
    QTest.keyClicks(box, text)
    if enter:
        QTest.keyClick(box, Qt.Key.Key_Return)
    settle(shop)


def handle_at(shop: Shop, path: str) -> QPoint:
    """Where on the board the ring of a path is."""
    board = shop.window.table.canvas.board
    at = board.view.px(next(grip.at for grip in board.scene.grips if grip.path == path))
    return QPoint(round(at.x), round(at.y))


def drag(shop: Shop, path: str, dx: int, dy: int, *, let_go: bool = True) -> None:
    """Drag the ring of a path across the board."""
    board = shop.window.table.canvas.board
    start = handle_at(shop, path)
    QTest.mouseMove(board, start)
    QTest.mousePress(board, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, start)
    for k in range(1, 5):
        QTest.mouseMove(board, start + QPoint(dx * k // 4, dy * k // 4))
        settle(shop)
    if let_go:
        QTest.mouseRelease(board, Qt.MouseButton.LeftButton, Qt.KeyboardModifier.NoModifier, start + QPoint(dx, dy))
    settle(shop)


def drag_band(shop: Shop, start: float, end: float) -> None:
    """Drag at the left edge of the lay plan, between two places across the cloth (mm)."""
    table = shop.window.table.canvas.lay.table
    x = round(table.view.x - 10)
    a, b = (QPoint(x, round(table.view.y + mm * table.view.scale)) for mm in (start, end))
    QTest.mousePress(table, Qt.MouseButton.LeftButton, pos=a)
    QTest.mouseMove(table, b)
    QTest.mouseRelease(table, Qt.MouseButton.LeftButton, pos=b)
    settle(shop)
