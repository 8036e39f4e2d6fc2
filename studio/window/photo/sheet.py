"""The sheet on which a photograph becomes a cloth: corners, reading, and what was read put right by hand."""

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from PySide6.QtCore import Signal
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QHBoxLayout, QProgressBar, QPushButton, QStackedWidget, QWidget

from studio.brief import Cloth, PrintBand
from studio.brief.bands import usual_hold
from studio.cloth.photo import word
from studio.files import file_name
from studio.geometry import Point
from studio.units import Unit, Unreadable, read_length, spell, write_length
from studio.words import phrase, tr

from ..cloth import pictures
from ..leaf import Leaf
from ..tokens import SPACE
from ..widgets.box import Box
from ..widgets.label import Label
from ..widgets.yes_no import Tick
from .flat_view import FlatView
from .picture_view import CornerView
from .work import Work

if TYPE_CHECKING:
    from studio.cloth.photo.flat import Flat
    from studio.cloth.photo.found import Corners, Photo, Print

_WIDE: Final = 760
_FACE: Final = 150.0
"""A band not broader than this (mm) may be meant for a waistband's face."""


class PhotoSheet(Leaf):
    """`used` carries what the cloth in the brief becomes: values by path."""

    used = Signal(object)

    def __init__(self, path: Path, cloth: Cloth, unit: Unit, parent: QWidget) -> None:
        super().__init__(tr("The cloth from a photograph"), parent, _WIDE)
        self._cloth, self._unit = cloth, unit
        self._photo: Photo | None = None
        self.flat: Flat | None = None
        self.found: Print | None = None
        self.work: Work | None = None
        self._without = False  # the picture cannot be kept, and the maker knows
        self.says = self.add_words("", "quiet")
        self.corners, self.strip = CornerView(self), FlatView(self)
        self.pages = QStackedWidget(self)
        for view in (self.corners, self.strip):
            self.pages.addWidget(view)
        self.column.addWidget(self.pages, 1)
        self.width_box, self.turn = Box(self), QPushButton(tr("Start from the next corner"), self)
        self.halve, self.double = QPushButton("÷ 2", self), QPushButton("× 2", self)
        self.repeat_says = Label("", self, "body")
        self.one_way = Tick(tr("One way: the print has a top"), self)
        self._asking = self._row(Label(tr("Width of the cloth"), self), self.width_box, self.turn)
        self._read = self._row(self.repeat_says, self.halve, self.double, self.one_way)
        self.progress = QProgressBar(self)
        self.progress.setTextVisible(False)
        self.progress.setRange(0, 100)
        self.progress.setAccessibleName(tr("How far the reading is"))
        self.column.addWidget(self.progress)
        self.lead = self.add_button(tr("Read the print"), lead=True)
        self.back = self.add_button(tr("Back to the corners"))
        self.cancel = self.add_button(tr("Cancel"))
        self.finish()
        self._connect()
        self.width_box.hold_number()
        self.width_box.set_unit(unit)
        self.width_box.write(write_length(cloth.width, unit, bare=True))
        self.width_box.setAccessibleName(tr("Width of the cloth"))
        for button, words in ((self.halve, tr("Half the repeat")), (self.double, tr("Twice the repeat"))):
            button.setAccessibleName(words)
        self._show_page(0)
        self._name = file_name(path)
        self._begin(lambda on: _opened(path, on), self._take_photo, tr("Opening the picture …"))

    def reject(self) -> None:
        """Cancel: first what is being worked on, then the sheet itself."""
        if self.work is not None and self.work.running and self._photo is not None:
            self._rest(tr("Stopped."))
        else:
            self._stop()
            super().reject()

    def _row(self, *parts: QWidget) -> QWidget:
        row = QWidget(self)
        line = QHBoxLayout(row)
        line.setContentsMargins(0, 0, 0, 0)
        line.setSpacing(SPACE.m)
        for part in parts:
            line.addWidget(part)
        line.addStretch(1)
        self.column.addWidget(row)
        return row

    def _connect(self) -> None:
        self.lead.clicked.connect(self._go_on)
        self.back.clicked.connect(self._to_corners)
        self.cancel.clicked.connect(self.reject)
        self.turn.clicked.connect(self._turn)
        self.halve.clicked.connect(self._halve)
        self.double.clicked.connect(self._double)
        self.strip.changed.connect(self._tell)

    def _begin(self, job: Callable[[Callable[[float], bool]], Any], done: Callable[[Any], None], says: str) -> None:
        self._stop()
        self.says.setText(says)
        self.progress.setValue(0)
        self.progress.show()
        self.lead.setEnabled(False)
        self.work = Work(job, self)
        self.work.progressed.connect(self._show_progress)
        self.work.done.connect(done)
        self.work.failed.connect(self._fail)
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

    def _fail(self, sentence: str) -> None:
        self._rest(sentence)

    def _take_photo(self, opened: "tuple[Photo, Corners]") -> None:
        self._photo, corners = opened
        self.corners.show_image(_image(self._photo))
        self.corners.put(corners.points)
        notes = " ".join(spell(n, self._unit) for n in self._photo.notes)
        sure = (
            tr("These corners were found; drag what is off.")
            if corners.sure >= 0.5
            else tr("No edge of the cloth was found: put each corner on the cloth’s own.")
        )
        self._rest(f"{notes} {sure} {tr('The first selvedge lies at the top.')}".strip())
        self.corners.setFocus()

    def _turn(self) -> None:
        """For a picture that lies on its side: the next corner becomes the first."""
        self.corners.put([*self.corners.corners[1:], *self.corners.corners[:1]])

    def _go_on(self) -> None:
        if self.pages.currentIndex() == 1:
            self._use()
            return
        try:
            width = read_length(self.width_box.text(), self._unit)
        except Unreadable as fault:
            self.says.setText(str(fault))
            return
        if not 300 <= width <= 3200:
            says = phrase("A cloth is between {a} and {b} wide.", a=300.0, b=3200.0)
            self.says.setText(spell(says, self._unit))
            return
        photo, points = self._photo, tuple(self.corners.corners)
        self._begin(lambda on: _read(photo, points, width, on), self._take_print, tr("Reading the print …"))

    def _take_print(self, read: "tuple[Flat, Print] | None") -> None:
        if read is None:
            return
        self.flat, self.found = read
        self.strip.mm_per_dot = self.flat.mm_per_dot
        self.strip.show_image(_image(self.flat.photo))
        self.strip.bands = [(b.start, b.end) for b in self.found.bands]
        repeat = self.found.repeat
        self.strip.repeat = repeat.length if repeat else None
        self.strip.offset = repeat.offset if repeat else 0.0
        self.one_way.setChecked(self.found.one_way)
        self._rest("")
        self._show_page(1)
        self._tell()

    def _tell(self) -> None:
        """What is there now, and how sure the reading was of what is still as it was read."""
        found = self.found
        if found is None:
            return
        n = len(self.strip.bands)
        bands = spell(phrase("{n:count} band" if n == 1 else "{n:count} bands", n=n), self._unit)
        sure = min((b.sure for b in found.bands), default=0.0)
        as_read = self.strip.bands == [(b.start, b.end) for b in found.bands]
        hint = f" ({_sure(sure)})" if found.bands and as_read else ""
        self.says.setText(
            f"{bands}{hint}. {tr('Drag a line to put it right; drag where there is none for another band.')}"
        )
        if self.strip.repeat is None:
            self.repeat_says.setText(tr("No repeat was found."))
        else:
            text = spell(phrase("Repeat {r}", r=self.strip.repeat), self._unit)
            as_read = found.repeat is not None and found.repeat.length == self.strip.repeat
            self.repeat_says.setText(f"{text} ({_sure(found.repeat.sure)})" if found.repeat and as_read else text)
        for button in (self.halve, self.double):
            button.setEnabled(self.strip.repeat is not None)
        self.one_way.setToolTip(_sure(found.one_way_sure))

    def _halve(self) -> None:
        self._set_repeat((self.strip.repeat or 0.0) / 2)

    def _double(self) -> None:
        self._set_repeat((self.strip.repeat or 0.0) * 2)

    def _set_repeat(self, repeat: float) -> None:
        self.strip.repeat = min(max(5.0, repeat), 3000.0)
        self.strip.update()
        self._tell()

    def _to_corners(self) -> None:
        self._show_page(0)
        self.says.setText(tr("The first selvedge lies at the top."))

    def _show_page(self, page: int) -> None:
        self.pages.setCurrentIndex(page)
        self._asking.setVisible(page == 0)
        self._read.setVisible(page == 1)
        self.back.setVisible(page == 1)
        self.lead.setText(tr("Use this cloth") if page else tr("Read the print"))

    def _use(self) -> None:
        assert self.flat is not None
        image = _image(self.flat.photo)
        width = round(image.height() * self.flat.mm_per_dot, 1)
        try:
            name = pictures.keep(image)
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
            "cloth.width": width, "cloth.bands": as_bands(self.strip.bands), "cloth.repeat": self.strip.repeat,
            "cloth.offset": min(3000.0, max(0.0, self.strip.offset)), "cloth.one_way": self.one_way.isChecked(),
            "cloth.photo": name,
        }  # fmt: skip
        self.used.emit(edits)
        self.accept()


def as_bands(found: list[tuple[float, float]]) -> tuple[PrintBand, ...]:
    """Bands as they are usually worn: the broadest on the skirt's hem, the narrowest other on the waistband's face."""
    wide = sorted(((min(b), max(b)) for b in found if b[0] != b[1]), key=lambda b: b[0] - b[1])
    made = []
    for k, (start, end) in enumerate(wide):
        last = k > 0 and k == len(wide) - 1 and end - start <= _FACE
        holds = "skirt" if k == 0 else "waistband" if last else "nothing"
        made.append(PrintBand(start, end, holds, usual_hold(holds)))  # type: ignore[arg-type]
    return tuple(sorted(made, key=lambda b: b.start))


def _opened(path: Path, on: Callable[[float], bool]) -> "tuple[Photo, Corners]":
    from studio.cloth.photo.corners import find_corners
    from studio.cloth.photo.picture import open_photo

    on(0.1)
    photo = open_photo(path)
    on(0.6)
    return photo, find_corners(photo)


def _read(
    photo: "Photo | None", points: tuple[Point, ...], width: float, on: Callable[[float], bool]
) -> "tuple[Flat, Print] | None":  # fmt: skip
    from studio.cloth.photo.flat import straighten
    from studio.cloth.photo.found import Corners
    from studio.cloth.photo.reading import read

    assert photo is not None
    flat = straighten(photo, Corners(points), width)  # type: ignore[arg-type]
    found = read(flat.photo, flat.mm_per_dot, lambda share: on(0.2 + 0.8 * share))
    return None if found is None else (flat, found)


def _image(photo: "Photo") -> QImage:
    pixels = photo.pixels
    high, wide = pixels.shape[:2]
    return QImage(pixels.tobytes(), wide, high, 3 * wide, QImage.Format.Format_RGB888).copy()


def _sure(hint: float) -> str:
    """How sure a reading is, in words."""
    return {"sure": tr("sure"), "likely": tr("likely"), "guess": tr("a guess")}[word(hint)]
