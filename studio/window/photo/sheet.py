"""The sheet on which a photograph becomes a cloth: corners, reading, and what was read put right by hand."""

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QProgressBar, QStackedWidget, QWidget

from studio.brief import Cloth
from studio.trouble import Trouble
from studio.units import Unit, spell
from studio.words import tr

from ..cloth import pictures
from ..leaf import Leaf
from .becomes import cloth_of, ill_laid
from .corner_page import CornerPage
from .jobs import open_picture, read_print
from .print_page import PrintPage
from .work import Work

if TYPE_CHECKING:
    from studio.cloth.photo.flat import Flat
    from studio.cloth.photo.found import Corners, Photo, Print

_WIDE: Final = 760


class PhotoSheet(Leaf):
    """`used` carries what the cloth in the brief becomes: values by path."""

    used = Signal(object)

    def __init__(self, path: Path, cloth: Cloth, unit: Unit, parent: QWidget) -> None:
        super().__init__(tr("The cloth from a photograph"), parent, _WIDE)
        self._cloth, self._unit = cloth, unit
        self._photo: Photo | None = None
        self.flat: Flat | None = None
        self.work: Work | None = None
        self._without = False  # the picture cannot be kept, and the maker knows
        self.says = self.add_words("", "quiet")
        self.corners, self.print = CornerPage(cloth.width, unit, self), PrintPage(unit, self)
        self.pages = QStackedWidget(self)
        for page in (self.corners, self.print):
            self.pages.addWidget(page)
        self.column.addWidget(self.pages, 1)
        self.progress = QProgressBar(self)
        self.progress.setTextVisible(False)
        self.progress.setRange(0, 100)
        self.progress.setAccessibleName(tr("How far the reading is"))
        self.column.addWidget(self.progress)
        self.lead = self.add_button(tr("Read the print"), lead=True)
        self.back = self.add_button(tr("Back to the corners"))
        self.cancel = self.add_button(tr("Cancel"))
        self.finish()
        self.lead.clicked.connect(self._go_on)
        self.back.clicked.connect(self._to_corners)
        self.cancel.clicked.connect(self.reject)
        self.print.told.connect(self.says.setText)
        self._show_page(0)
        self._begin(lambda on: open_picture(path, on), self._take_photo, tr("Opening the picture …"))

    def reject(self) -> None:
        """Cancel: first what is being worked on, then the sheet itself."""
        if self.work is not None and self.work.running and self._photo is not None:
            self._rest(tr("Stopped."))
        else:
            self._stop()
            super().reject()

    def _begin(self, job: Callable[[Callable[[float], bool]], Any], done: Callable[[Any], None], says: str) -> None:
        self._stop()
        self.says.setText(says)
        self.progress.setValue(0)
        self.progress.show()
        self.lead.setEnabled(False)
        self.work = Work(job, self)
        self.work.progressed.connect(self._show_progress)
        self.work.done.connect(done)
        self.work.failed.connect(self._rest)
        self.work.start()

    def _show_progress(self, share: float) -> None:
        self.progress.setValue(round(100 * share))

    def _stop(self) -> None:
        if self.work is not None:
            self.work.stop()
            self.work = None

    def _rest(self, says: str) -> None:
        self._stop()
        self.progress.hide()
        self.says.setText(says)
        self.lead.setEnabled(self._photo is not None)

    def _take_photo(self, opened: "tuple[Photo, Corners]") -> None:
        self._photo, corners = opened
        notes = " ".join(spell(n, self._unit) for n in self._photo.notes)
        sure = (
            tr("These corners were found; drag what is off.")
            if corners.sure >= 0.5
            else tr("No edge of the cloth was found: put each corner on the cloth’s own.")
        )
        self._rest(f"{notes} {sure} {tr('The first selvedge lies at the top.')}".strip())
        self.corners.take(self._photo, corners)

    def _go_on(self) -> None:
        if self.pages.currentIndex() == 1:
            self._use()
            return
        from studio.cloth.photo.found import Corners

        try:
            length, between = self.corners.asked()
        except Trouble as fault:
            self.says.setText(str(fault))
            return
        photo, (a, b, c, d) = self._photo, self.corners.view.corners
        assert photo is not None
        corners = Corners((a, b, c, d))
        self._begin(
            lambda on: read_print(photo, corners, length, between, on), self._take_print, tr("Reading the print …")
        )

    def _take_print(self, read: "tuple[Flat, Print] | None") -> None:
        if read is None:
            return
        flat, found = read
        try:
            self.corners.refuse(flat.photo.height * flat.mm_per_dot)
        except Trouble as fault:
            self._rest(str(fault))
            return
        self.flat = flat
        self._rest("")
        self._show_page(1)
        self.print.take(flat, found)

    def _to_corners(self) -> None:
        self._show_page(0)
        self.says.setText(tr("The first selvedge lies at the top."))

    def _show_page(self, page: int) -> None:
        self.pages.setCurrentIndex(page)
        self.back.setVisible(page == 1)
        self.lead.setText(tr("Use this cloth") if page else tr("Read the print"))

    def _use(self) -> None:
        view = self.print.view
        now = cloth_of(self._cloth, view.width_mm, view.bands, view.repeat, view.offset)
        if fault := ill_laid(now):
            self.says.setText(spell(fault, self._unit))
            return
        repeat = view.repeat / view.mm_per_dot if view.repeat else None
        try:
            name = pictures.keep(pictures.begun(view.image, view.offset / view.mm_per_dot, repeat))
            pictures.sizes(name)  # here, where the maker waits anyway, and not at the next repaint
        except OSError:
            if not self._without:
                self._without = True
                self.says.setText(
                    tr("The picture could not be kept on this desktop. Press again to use the cloth without it.")
                )
                return
            name = ""
        edits = {
            "cloth.width": now.width, "cloth.bands": now.bands, "cloth.repeat": now.repeat, "cloth.offset": now.offset,
            "cloth.one_way": self.print.one_way.isChecked(), "cloth.photo": name,
        }  # fmt: skip
        self.used.emit(edits)
        self.accept()
