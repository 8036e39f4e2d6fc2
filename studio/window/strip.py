"""The strip at the bottom: findings, and under Construction the numbers; between them, where there is room, notions."""

from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QWidget

from studio.units import Unit
from studio.workroom import Docket

from . import theme
from .columns import columns, is_wide
from .findings import Findings
from .numbers import Numbers, facts, notions
from .tokens import SIZE, SPACE
from .tool import chrome
from .widgets.strokes import hairline

_MOST: Final = 760  # px; a remedy stays near its words, unless they are longer
_NOTIONS: Final = 480


class Strip(QWidget):
    """In the columns of the window."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        chrome(self)
        self.setFixedHeight(theme.px(SIZE.strip))
        self.findings = Findings(self)
        self.notions = Numbers(SPACE.xl, self)
        self.numbers = Numbers(SPACE.l, self)
        self.cloth = self.numbers.shown[0]
        self.cloth.setCursor(Qt.CursorShape.PointingHandCursor)
        self.notions.setMaximumWidth(theme.px(_NOTIONS))
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(0)
        row.addWidget(self.findings, 3)
        row.addStretch(0)
        row.addWidget(self.notions, 1)
        row.addWidget(hairline(self, upright=True))
        row.addWidget(self.numbers)

    def show_docket(self, docket: Docket, unit: Unit) -> None:
        """Show findings, numbers and notions."""
        self.findings.show_findings(docket.findings, unit)
        self.numbers.tell(facts(docket, unit))
        self.notions.tell(notions(docket, unit))
        self._share()

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self.numbers.setFixedWidth(columns(self.width())[1])
        self.notions.setVisible(is_wide(self.width()))
        self._share()

    def _share(self) -> None:
        """Findings are as wide as their words want; beside notions, no wider."""
        most = max(theme.px(_MOST), self.findings.words_width()) if is_wide(self.width()) else self.width()
        self.findings.setMaximumWidth(most)
