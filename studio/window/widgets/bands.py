"""The bands of a print: a row for each, and a button for one more."""

from typing import Final

from PySide6.QtCore import QEvent, QObject, Qt, Signal
from PySide6.QtGui import QFocusEvent, QPaintEvent
from PySide6.QtWidgets import QApplication, QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from studio.brief import Brief, Declared, PrintBand
from studio.brief.across import next_band
from studio.brief.typed import Typed
from studio.cloth.ways import shown
from studio.units import Unit
from studio.words import tr
from studio.workroom import Docket

from .. import theme
from ..tokens import SIZE, SPACE
from .band_row import BandRow
from .entry import PASSING, Entry
from .label import Label

_FULL: Final = "There is no room for another band."


class Bands(Entry):
    """In the order in which they lie across the cloth, once an edit is over; while one types, no row moves.

    `lit` carries the path of the row in hand, as cloth.bands.0. `rearranged` says that Tab has other controls to stop
    at, `added` carries a row that the maker has added.
    """

    rearranged = Signal()
    added = Signal(object)

    def __init__(self, declared: Declared, unit: Unit, parent: QWidget) -> None:
        super().__init__(declared, unit, parent)
        self.rows: list[BandRow] = []
        self._brief: Brief | None = None
        self._shown: tuple[str, ...] = ()
        self._said = ""  # the path last said to be in hand
        self.label = Label(tr(declared.words), self)
        self.add = QPushButton(tr("Add a band"), self)
        self.add.setFixedSize(theme.px(SIZE.pick_w), theme.px(SIZE.box_h))
        self.add.setAccessibleName(f"{tr(declared.words)}, {tr('Add a band')}")
        self.add.setAccessibleDescription(tr(declared.hint))
        foot = QHBoxLayout()
        foot.setContentsMargins(SPACE.m, SPACE.xs, SPACE.m, SPACE.xs)
        foot.addWidget(self.label, 1)
        foot.addWidget(self.add)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        self._column.setSpacing(SPACE.xs)
        self._column.addLayout(foot)
        self._watch(self.add)
        self.add.clicked.connect(self._add)

    @property
    def hint(self) -> str:
        return next((said for row in self.rows if (said := row.hint())), super().hint)

    def show_docket(self, docket: Docket) -> None:
        """Know the skirt and its cloth: what can show a band, and where one can lie."""
        self._brief, self._shown = docket.brief, tuple(shown(docket.pieces))
        self._place()

    def show_value(self, value: Typed, unit: Unit) -> None:
        super().show_value(value, unit)
        bands = self._bands()
        while len(self.rows) > len(bands):
            self._drop(self.rows[-1])
        for row, band in zip(self.rows, bands, strict=False):
            row.show_band(band, unit)
        for band in bands[len(self.rows) :]:
            self._make(band)
        self._place()
        self._note_fault()

    def settle(self) -> None:
        for row in self.rows:
            row.settle()
        self._end()

    def give_up(self) -> None:
        for row in self.rows:
            row.give_up()
        self._end()

    def take_in_hand(self, path: str = "") -> QWidget:
        row = next((row for k, row in enumerate(self.rows) if path in (self.path, f"{self.path}.{k}")), None)
        if row is None:
            return super().take_in_hand(path)
        row.take_in_hand()
        return row

    def light(self, path: str) -> None:
        for k, row in enumerate(self.rows):
            row.set_lit(path in (self.path, f"{self.path}.{k}"))

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:
        if event.type() == QEvent.Type.FocusIn:
            self._tell()
        elif event.type() == QEvent.Type.FocusOut and isinstance(event, QFocusEvent) and event.reason() not in PASSING:
            now = QApplication.focusWidget()
            row = next((row for row in self.rows if watched in row.ends.values()), None)
            if row is None or now not in row.ends.values() or not row.waits():
                self.settle()
            self._tell()
        return False

    def _bands(self) -> tuple[PrintBand, ...]:
        return self.value if isinstance(self.value, tuple) else ()  # type: ignore[return-value]

    def _tell(self) -> None:
        """Say what is in hand now."""
        now = QApplication.focusWidget()
        k = next((k for k, row in enumerate(self.rows) if now in row.controls), None)
        path = f"{self.path}.{k}" if k is not None else self.path if now is self.add else ""
        if path or self._said:  # within a row, too: another part of it has another hint
            self._said = path
            self.lit.emit(path)

    def _make(self, band: PrintBand) -> BandRow:
        row = BandRow(band, self.unit, self)
        row.changed.connect(self._take)
        row.finished.connect(self.settle)
        row.removed.connect(self._remove)
        self.rows.append(row)
        self._column.insertWidget(len(self.rows) - 1, row)
        for control in row.controls:
            control.installEventFilter(self)
        row.show()  # now: a layout would wait for the event loop, and the row is to be scrolled to
        self._count()
        return row

    def _drop(self, row: BandRow) -> None:
        if QApplication.focusWidget() in row.controls:
            self.add.setEnabled(True)
            self.add.setFocus(Qt.FocusReason.OtherFocusReason)
        self.rows.remove(row)
        self._column.removeWidget(row)
        row.hide()  # now: deleteLater waits for the event loop, and a row must leave the tab order
        row.deleteLater()
        self._count()

    def _count(self) -> None:
        self.controls = [control for row in self.rows for control in row.controls] + [self.add]
        self.label.setText("" if self.rows else tr(self.declared.words))
        self.rearranged.emit()

    def _place(self) -> None:
        """Tell each row what lies beside it; and whether there is room for one more."""
        if self._brief is None:
            return
        bands = [row.band for row in self.rows]
        for k, row in enumerate(self.rows):
            row.show_place(k + 1, bands[:k] + bands[k + 1 :], self._brief.cloth, self._shown)
        full = next_band(self._brief, self._shown, self.unit) is None
        self.add.setEnabled(not full)
        self.add.setToolTip(tr(_FULL if full else self.declared.hint))

    def _take(self, row: BandRow) -> None:
        self._change(tuple(row.band for row in self.rows))
        self._place()

    def _finish(self) -> None:
        """The edit is over: the rows come into their order across the cloth."""
        if self._before is not None:
            self.rows.sort(key=lambda row: row.band.start)
            for k, row in enumerate(self.rows):
                if self._column.indexOf(row) != k:
                    self._column.insertWidget(k, row)
            self._change(tuple(row.band for row in self.rows))
            self._count()
            self._place()
            self._tell()
        super()._finish()

    def _end(self) -> None:
        self._note_fault()
        self._finish()

    def _note_fault(self) -> None:
        self.fault = next((row.fault for row in self.rows if row.fault), "")

    def _add(self) -> None:
        self.settle()
        band = self._brief and next_band(self._brief, self._shown, self.unit)
        if band:
            row = self._make(band)
            self._take(row)
            self._finish()
            row.take_in_hand()
            self.added.emit(row)

    def _remove(self, row: BandRow) -> None:
        self.settle()
        k, here = self.rows.index(row), QApplication.focusWidget() in row.controls
        self._drop(row)
        self._take(row)
        self._finish()
        if here and self.rows:
            self.rows[min(k, len(self.rows) - 1)].remove.setFocus(Qt.FocusReason.OtherFocusReason)

    def paintEvent(self, event: QPaintEvent) -> None:
        """Each row has its own plate."""
