"""The findings: heaviest first, three in sight, each with what mends it."""

from collections import Counter
from collections.abc import Sequence
from typing import Final, TypeAlias

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QApplication, QFrame, QScrollArea, QVBoxLayout, QWidget

from studio.check import Finding
from studio.units import Unit, spell
from studio.words import tr

from . import theme
from .tokens import SIZE, SPACE
from .widgets.finding import FindingRow
from .widgets.label import Label

_Key: TypeAlias = tuple[str, str, str, int]  # rule, place, piece, and which of those

_MORE: Final = {"cloth-on-hand-suffices": "What it makes…"}
"""Where there is more than one way out, the button that shows them."""


class _Row(FindingRow):
    """A row that knows its finding."""

    chosen = Signal(object)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.finding: Finding | None = None
        self.mended.connect(self._choose)

    def tell(self, finding: Finding, unit: Unit) -> None:
        """Show a finding in a unit."""
        self.finding = finding
        does = spell(finding.does, unit) if finding.remedy is not None and finding.does else ""
        more = tr(_MORE.get(finding.rule, ""))
        self.show_finding(finding.weight, spell(finding.says, unit), does, finding.where, more)

    def _choose(self) -> None:
        self.chosen.emit(self.finding)


class Findings(QScrollArea):
    """Rows are kept by rule and place, so that focus and pointer stay where they are.

    `mended` carries the finding whose remedy was pressed, `pointed` the path of the one under the pointer, then "".
    `asked` is sent when what else the cloth makes is to be seen.
    """

    mended = Signal(object)
    pointed = Signal(str)
    asked = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.rows: dict[_Key, _Row] = {}
        self.setObjectName("findings")
        self.setWidgetResizable(True)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOn)  # its room is kept
        self.verticalScrollBar().rangeChanged.connect(self._mute_bar)
        self.verticalScrollBar().setEnabled(False)
        self.verticalScrollBar().setSingleStep(theme.px(SIZE.finding) + 2)
        self.setAccessibleName(tr("Findings"))
        self._sheet = QWidget(self)
        self._sheet.setObjectName("chrome")
        self._column = QVBoxLayout(self._sheet)
        self._column.setContentsMargins(0, SPACE.s, 0, SPACE.s - 1)
        self._column.setSpacing(2)
        self._nothing = Label(tr("Nothing to mend."), self._sheet, "body", "quiet")
        self._nothing.setContentsMargins(SPACE.l, SPACE.xs, 0, 0)
        self._column.addWidget(self._nothing)
        self._column.addStretch(1)
        self.setWidget(self._sheet)

    def show_findings(self, findings: Sequence[Finding], unit: Unit) -> None:
        """Show these, heaviest first as they come."""
        keys = _keys(findings)
        held = self._held()
        for key in [key for key in self.rows if key not in keys]:
            self._drop(self.rows.pop(key))
        for place, (key, finding) in enumerate(zip(keys, findings, strict=True)):
            row = self.rows.get(key)
            if row is None:
                row = self.rows[key] = _Row(self._sheet)
                row.chosen.connect(self.mended)
                row.pointed.connect(self.pointed)
                row.asked.connect(self.asked)
            if self._column.indexOf(row) != place:
                self._column.insertWidget(place, row)
            row.tell(finding, unit)
        wide = max((row.remedy_width() for row in self.rows.values()), default=0)
        for row in self.rows.values():
            row.remedy.setFixedWidth(wide)  # one column
        self._nothing.setVisible(not findings)
        if held is not None and keys and self._held() is None:
            row = self.rows[keys[min(held, len(keys) - 1)]]
            (row.remedy if row.remedy.text() else row).setFocus(Qt.FocusReason.OtherFocusReason)

    def words_width(self) -> int:
        """How wide it must be for every sentence to be read whole, px."""
        bar = self.verticalScrollBar().sizeHint().width()
        return bar + max((row.whole_width() for row in self.rows.values()), default=0)

    def in_order(self) -> list[FindingRow]:
        """The rows as they stand."""
        return sorted(self.rows.values(), key=self._column.indexOf)

    def _held(self) -> int | None:
        """The place of the row that has the focus."""
        now = QApplication.focusWidget()
        return next((k for k, row in enumerate(self.in_order()) if now and (now is row or row.isAncestorOf(now))), None)

    def _drop(self, row: _Row) -> None:
        row.hide()  # now: deleteLater waits for the event loop, and a row must leave the tab order
        self._column.removeWidget(row)
        row.deleteLater()
        self.pointed.emit("")

    def _mute_bar(self, least: int, most: int) -> None:
        self.verticalScrollBar().setEnabled(most > least)


def _keys(findings: Sequence[Finding]) -> list[_Key]:
    seen: Counter[tuple[str, str, str]] = Counter()
    keys = []
    for finding in findings:
        kind = (finding.rule, finding.where, finding.piece)
        keys.append((*kind, seen[kind]))
        seen[kind] += 1
    return keys
