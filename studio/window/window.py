"""The window: toolbar above, the first sheet or the worktable below, and a notice over them when there is one."""

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Final

from PySide6.QtCore import QEvent, QMimeData, QSize, Qt, Signal
from PySide6.QtGui import QCloseEvent, QDragEnterEvent, QDropEvent, QKeyEvent
from PySide6.QtWidgets import QMainWindow, QStackedWidget, QVBoxLayout, QWidget

from studio.units import Unit
from studio.words import tr

from . import theme

if TYPE_CHECKING:
    from studio.workroom import Docket

    from .actions import Actions
    from .areas import Areas
    from .menus import RecentMenu
    from .notice import Notice
    from .start import Start
    from .toolbar import Toolbar
    from .worktable import Worktable

LEAST: Final = (1100, 700)  # px; nothing is dropped down to here
USUAL: Final = (1280, 800)


class Window(QMainWindow):
    """Layout only: it says what was wished, and shows what it is given.

    It can be shown bare at once; `furnish` brings everything that takes longer to fetch. `wants_close` asks whether
    it may go; it goes once `may_close` is set. `file_dropped` carries a skirt's path.
    """

    wants_close = Signal()
    file_dropped = Signal(object)

    do: "Actions"
    recent: "RecentMenu"
    toolbar: "Toolbar"
    start: "Start"
    table: "Worktable"
    notice: "Notice"
    areas: "Areas"

    def __init__(self) -> None:
        super().__init__()
        self.may_close = False
        self.setWindowTitle("Skirtwright")
        self.setMinimumSize(*LEAST)
        room = self.screen().availableSize()
        self.resize(QSize(*(theme.px(side) for side in USUAL)).boundedTo(room))

    def furnish(self, unit: Unit, recent: Callable[[], list[Path]]) -> None:
        """Bring menus, toolbar, first sheet and worktable."""
        from studio.styles import rack

        from .actions import Actions
        from .areas import Areas
        from .canvas import VIEWS
        from .menus import RecentMenu, fill_menus
        from .notice import Notice
        from .start import Start
        from .toolbar import Toolbar
        from .worktable import Worktable

        self.setAcceptDrops(True)
        self.do = Actions(self)
        self.recent = RecentMenu(recent, self)
        fill_menus(self.menuBar(), self.do, self.recent)
        body = QWidget(self)
        self.toolbar = Toolbar(self.do, [(name, tr(words)) for name, words, _ in VIEWS], body)
        self.stack = QStackedWidget(body)
        self.start = Start(tuple(rack.RACK), rack.declarations(rack.usual()), unit, self.stack)
        self.table = Worktable(self.do, unit, self.stack)
        self.notice = Notice(self.stack)
        for page in (self.start, self.table):
            self.stack.addWidget(page)
        self._lay_out(body)
        table = self.table
        self.areas = Areas((table.measurements, table.canvas, table.construction, table.strip), self)
        self.do.next_area.triggered.connect(self.areas.next)
        self.do.area_before.triggered.connect(self.areas.before)
        self.toolbar.view_chosen.connect(table.canvas.choose)

    @property
    def at_table(self) -> bool:
        """Whether the worktable shows, and not the first sheet."""
        return self.stack.currentWidget() is self.table

    def show_table(self) -> None:
        """Lay out the worktable."""
        self._show(self.table)
        self.table.canvas.board.setFocus()

    def show_start(self, *, can_go_back: bool) -> None:
        """Lay out the first sheet, and nothing else."""
        self._show(self.start)
        self.start.begin(can_go_back=can_go_back)

    def show_docket(self, docket: "Docket", unit: Unit) -> None:
        """Show what has been made up, in a unit."""
        if unit != self.table.unit:
            self.table.unit = unit
            self.start.set_unit(unit)
        self.table.show_docket(docket)

    def name(self, title: str, file: Path | None, *, clean: bool) -> None:
        """Say in the title what is on the table, and whether it is changed."""
        self.setWindowFilePath(str(file) if file else "")
        plain = (title or tr("Skirt")).replace("[*]", "[*][*]")  # Qt takes a single one for the place of its mark
        self.setWindowTitle(f"{plain}[*] – Skirtwright")
        self.setWindowModified(not clean)

    def _show(self, page: QWidget) -> None:
        self.stack.setCurrentWidget(page)
        here = page is self.table
        self.toolbar.heading.setVisible(here)
        do = self.do
        for action in (do.save, do.save_as, do.export, do.buy, do.fit, do.life_size, do.larger, do.smaller, do.lines):
            action.setEnabled(here)
        if here:
            self.table.canvas.choose(self.table.canvas.view)  # which of them its view has use for
        for action in (do.undo, do.redo):  # at the table it depends on the steps there are
            action.setEnabled(False)

    def _lay_out(self, body: QWidget) -> None:
        from .widgets.strokes import hairline

        column = QVBoxLayout(body)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(0)
        column.addWidget(self.toolbar)
        column.addWidget(hairline(body))
        column.addWidget(self.stack, 1)
        self.setCentralWidget(body)
        body.show()  # the window may be there already

    def closeEvent(self, event: QCloseEvent) -> None:
        if not self.may_close:
            self.wants_close.emit()
        if self.may_close:
            super().closeEvent(event)
        else:
            event.ignore()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape and "notice" in self.__dict__ and self.notice.text:
            self.notice.clear()
        else:
            super().keyPressEvent(event)

    def dragEnterEvent(self, event: QDragEnterEvent) -> None:
        if _skirt(event.mimeData()):
            event.acceptProposedAction()

    def dropEvent(self, event: QDropEvent) -> None:
        if path := _skirt(event.mimeData()):
            event.acceptProposedAction()
            self.file_dropped.emit(path)

    def changeEvent(self, event: QEvent) -> None:
        super().changeEvent(event)
        if event.type() == QEvent.Type.PaletteChange and "table" in self.__dict__:
            self.table.canvas.board.theme_changed()


def _skirt(carried: QMimeData) -> Path | None:
    """The one skirt file that is carried; None for anything else."""
    paths = [Path(url.toLocalFile()) for url in carried.urls() if url.isLocalFile()]
    return paths[0] if len(paths) == 1 and paths[0].suffix == ".skirt" else None
