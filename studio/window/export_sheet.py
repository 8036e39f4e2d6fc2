"""The export sheet: what to write and where; then how far it is, and what was written."""

from collections.abc import Callable, Iterator
from contextlib import suppress
from pathlib import Path
from typing import Final, TypeAlias

from PySide6.QtCore import QTimer, QUrl
from PySide6.QtGui import QDesktopServices
from PySide6.QtWidgets import QHBoxLayout, QProgressBar, QPushButton, QWidget

from studio.export import Step, export, sheets
from studio.units import Unit, spell
from studio.words import phrase, tr
from studio.workroom import Docket

from .choosing import choose_folder
from .exporting import Exporting
from .files import Chooser
from .leaf import Leaf
from .tokens import SPACE
from .widgets.finding import FindingRow
from .widgets.label import Elided, Label
from .widgets.yes_no import Tick

Exporter: TypeAlias = Callable[[Docket, Path, tuple[str, ...], Unit], Iterator[Step]]

_KINDS: Final = {
    "pdf": "PDF: sheets to print and glue, and each piece whole",
    "booklet": "Booklet: measurements, what to buy and to cut, and the sewing order",
    "lay": "Lay plan: where each piece is cut, and the order of cutting",
    "svg": "SVG: each piece, for drawing programs and cutters",
    "dxf": "DXF: each piece, for cutters and plotters",
    "png": "PNG: pictures of the pieces",
}


SHEETS: Final = "PDF: {n:count} sheets of {p:word} to print and glue, and each piece whole"


class ExportSheet(Leaf):
    """What stops an export is listed, and has to be ticked off before it goes on."""

    def __init__(self, docket: Docket, folder: Path, unit: Unit, parent: QWidget) -> None:
        super().__init__(tr("Export"), parent, 560)
        self._docket, self._unit = docket, unit
        self.folder = folder
        self.choose_folder: Chooser = choose_folder
        self.exporter: Exporter = export
        self.work: Exporting | None = None
        self.kinds = {kind: Tick(tr(text), self) for kind, text in _KINDS.items()}
        self.kinds["pdf"].setChecked(True)
        for tick in self.kinds.values():
            self.column.addWidget(tick)
            tick.toggled.connect(self._weigh)
        self.place, self.other_place = Elided("", self), QPushButton(tr("Other folder…"), self)
        self._add_place()
        self.anyway = self._add_stops()
        self.says = self.add_words("", "quiet")
        self.progress = QProgressBar(self)
        self._add_progress()
        self.lead = self.add_button(tr("Export"), lead=True)
        self.show_folder = self.add_button(tr("Open the folder"))
        self.stop = self.add_button(tr("Cancel"))
        self.show_folder.hide()
        self.finish()
        self.lead.clicked.connect(self._begin)
        self.stop.clicked.connect(self.reject)
        self.show_folder.clicked.connect(self._open_folder)
        self._show_place()
        self._weigh()
        QTimer.singleShot(0, self._count)  # the sheet is seen before they are laid out

    def show_docket(self, docket: Docket) -> None:
        """The same skirt on a shorter plan, found while the sheet lies there."""
        self._docket = docket

    def _count(self) -> None:
        """Say how many sheets there will be, and what takes fewer where they are many."""
        count, fewer = sheets(self._docket, self._unit)
        self.kinds["pdf"].setText(spell(phrase(SHEETS, n=count, p=self._docket.brief.paper.size), self._unit))
        if fewer:
            self.says.setText(spell(fewer, self._unit))

    def reject(self) -> None:
        """Cancel: first what is being written, then the sheet itself."""
        if self.work and self.work.running:
            self.work.cancel()
        else:
            super().reject()

    def _add_place(self) -> None:
        row = QHBoxLayout()
        row.setContentsMargins(0, SPACE.s, 0, 0)
        row.setSpacing(SPACE.m)
        row.addWidget(Label(tr("Into"), self, "body", "quiet"))
        row.addWidget(self.place, 1)
        row.addWidget(self.other_place)
        self.column.addLayout(row)
        self.other_place.clicked.connect(self._choose_place)

    def _add_stops(self) -> Tick | None:
        """The findings that hold an export back, and the tick that lets it go on."""
        stops = [f for f in self._docket.findings if f.weight == "stop"]
        if not stops:
            return None
        for finding in stops:
            row = FindingRow(self)
            row.show_finding("stop", spell(finding.says, self._unit), "", finding.where)
            self.column.addWidget(row)
        tick = Tick(tr("Export although this is so"), self)
        tick.toggled.connect(self._weigh)
        self.column.addWidget(tick)
        return tick

    def _add_progress(self) -> None:
        self.progress.setTextVisible(False)
        self.progress.setAccessibleName(tr("How far the export is"))
        self.column.addWidget(self.progress)
        policy = self.progress.sizePolicy()
        policy.setRetainSizeWhenHidden(True)
        self.progress.setSizePolicy(policy)
        self.progress.hide()

    def _show_place(self) -> None:
        self.place.setText(str(self.folder))
        self.place.setAccessibleName(f"{tr('Into')} {self.folder}")
        with suppress(OSError):  # a folder that is not there yet, or that cannot be looked into
            if any(self.folder.iterdir()):
                self.says.setText(tr("Files of the same names there are replaced."))

    def _choose_place(self) -> None:
        if folder := self.choose_folder(self, self.folder):
            self.folder = folder
            self._show_place()

    def _chosen(self) -> tuple[str, ...]:
        return tuple(kind for kind, tick in self.kinds.items() if tick.isChecked())

    def _weigh(self) -> None:
        """Whether there is something to write, and nothing in its way."""
        held = self.anyway is not None and not self.anyway.isChecked()
        self.lead.setEnabled(bool(self._chosen()) and not held)

    def _begin(self) -> None:
        self._set_asking(False)
        self.progress.setRange(0, 0)
        self.progress.show()
        self.stop.setFocus()
        steps = self.exporter(self._docket, self.folder, self._chosen(), self._unit)
        self.work = Exporting(steps, self)
        self.work.stepped.connect(self._show_step)
        self.work.done.connect(self._finish)
        self.work.cancelled.connect(self._give_up)
        self.work.failed.connect(self._fail)

    def _set_asking(self, on: bool) -> None:
        for part in (*self.kinds.values(), self.other_place, self.lead, *([self.anyway] if self.anyway else [])):
            part.setEnabled(on)

    def _show_step(self, step: Step) -> None:
        self.progress.setRange(0, step.total)
        self.progress.setValue(step.done)
        self.says.setText(step.says)

    def _finish(self) -> None:
        assert self.work
        count = len(self.work.wrote)
        text = "{n:count} file is written." if count == 1 else "{n:count} files are written."
        self._end(spell(phrase(text, n=count), self._unit))
        self.show_folder.show()
        self.show_folder.setFocus()
        self.stop.setText(tr("Close"))

    def _give_up(self) -> None:
        assert self.work
        count = len(self.work.wrote)
        text = "Cancelled; {n:count} files were finished before." if count else "Cancelled; nothing was written."
        self._end(spell(phrase(text, n=count), self._unit))
        self._set_asking(True)

    def _fail(self, sentence: str) -> None:
        self._end(sentence, "stop")
        self._set_asking(True)

    def _end(self, sentence: str, shade: str = "ink") -> None:
        self.progress.hide()
        self.says.setProperty("voice", shade)
        self.says.style().unpolish(self.says)
        self.says.style().polish(self.says)
        self.says.setText(sentence)

    def _open_folder(self) -> None:
        QDesktopServices.openUrl(QUrl.fromLocalFile(str(self.folder)))
