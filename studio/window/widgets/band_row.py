"""One band of the print as it is typed and chosen: from and to, what it is for, what is laid on it, how it stands."""

from collections.abc import Sequence
from typing import Any, Final

from msgspec.structs import replace
from PySide6.QtCore import QRectF, Qt, Signal
from PySide6.QtGui import QPainter, QPaintEvent
from PySide6.QtWidgets import QApplication, QGridLayout, QHBoxLayout, QWidget

from studio.brief import Cloth, PrintBand
from studio.brief.across import amiss
from studio.brief.bands import usual_hold
from studio.units import Unit, Unreadable, spell
from studio.words import phrase, tr

from .. import theme
from ..tokens import SPACE
from .band_ends import BandEnds
from .band_words import PARTS, choices, speak
from .choice import Pick, opened
from .field import step_of
from .label import Label
from .small_button import SmallButton
from .strokes import Fade, slab

_PICKED: Final = ("holds", "by", "tops")


class BandRow(QWidget):
    """From and to are read together, so that either may be typed first.

    What reads cleanly and has its room on the cloth takes effect at once. What does not waits, and is called a fault
    only when the maker presses Enter or goes on; the band is then the one from before. `changed` carries the row with
    its new `band`, `finished` says that the edit is over, `removed` that the band is to go.
    """

    changed = Signal(object)
    finished = Signal()
    removed = Signal(object)

    def __init__(self, band: PrintBand, unit: Unit, parent: QWidget) -> None:
        super().__init__(parent)
        self.band, self.unit = band, unit
        self.fault = ""
        self.lit = False
        self._standing = ""  # what is wrong with the band as it is, whoever made it so
        self._others: tuple[PrintBand, ...] = ()
        self._cloth = Cloth()
        self._before: PrintBand | None = None  # the band before the edit that is going on
        self._offered: dict[str, tuple[str, ...]] = {}
        self._said: tuple[object, ...] = ()
        self._plate = Fade(self)
        self.title, self.wide = Label("", self, bold=True), Label("", self, "small", "quiet")
        self.remove = SmallButton("remove", tr("Remove this band"), self)
        self._pair = BandEnds(self)
        self.ends = self._pair.boxes
        self.picks = {name: Pick(self) for name in _PICKED}
        self.fault_line = Label("", self, "small", "stop")
        self.controls: list[QWidget] = [*self.ends.values(), *self.picks.values(), self.remove]
        self._lay_out()
        self._pair.typed.connect(self._read_on)
        self._pair.entered.connect(self.finished)
        self._pair.given_up.connect(self._escape)
        self._pair.stepped.connect(self._step)
        for pick in self.picks.values():
            pick.activated.connect(self._choose)
        self.remove.clicked.connect(self._remove)
        self._write()

    def show_band(self, band: PrintBand, unit: Unit) -> None:
        """Show a band; what the maker is typing at this moment stays, and so does a fault in what is unchanged."""
        same = band == self.band and unit == self.unit
        self.band, self.unit = band, unit
        if not self._pair.typing and not (same and self.fault):
            self._write()

    def show_place(self, number: int, others: Sequence[PrintBand], cloth: Cloth, shown: Sequence[str]) -> None:
        """Say which of the bands it is, and what it lies beside; `shown` is what on this skirt can show it."""
        self._others, self._cloth = tuple(others), cloth
        said = amiss(self.band.start, self.band.end, self._others, cloth)
        self._standing = spell(said, self.unit) if said else ""
        self.title.setText(spell(phrase("Band {n:count}", n=number), self.unit))
        self.wide.setText(spell(phrase("{w} wide", w=self.band.end - self.band.start), self.unit))
        for name in _PICKED:
            self._offer(name, choices(name, self.band, shown))
        self._describe()

    def set_lit(self, on: bool) -> None:
        """Light the row: it is in hand, or the pointer is on its band."""
        self.lit = on
        self._plate.to(on)

    def take_in_hand(self) -> None:
        """Put the cursor where the band begins, so that what is typed replaces what is there."""
        self.ends["start"].setFocus(Qt.FocusReason.OtherFocusReason)
        self.ends["start"].selectAll()

    def settle(self) -> None:
        """Take what has been typed as meant, and end the edit."""
        try:
            band = self._read()
        except Unreadable as fault:
            self._set_fault(str(fault))
            self._take_back()
            self._pair.leave()
        else:
            self._change(band)
            self._write()
        self._before = None

    def waits(self) -> bool:
        """The cursor goes from one end to the other: whether what has been typed is not yet a band, but may become one.

        The band is as it was before, meanwhile.
        """
        try:
            self._read()
        except Unreadable:
            self._take_back()
            return True
        return False

    def give_up(self) -> None:
        """Leave the band as it was before this edit."""
        self._take_back()
        self._write()
        self._before = None

    def hint(self) -> str:
        """What the part in hand is, in one sentence; "" for none."""
        now = QApplication.focusWidget()
        parts = {**self.ends, **self.picks}
        return next((tr(PARTS[name].hint) for name, control in parts.items() if control is now), "")

    def _lay_out(self) -> None:
        grid = QGridLayout(self)
        grid.setContentsMargins(SPACE.m, SPACE.xs, SPACE.m, SPACE.s)
        grid.setHorizontalSpacing(SPACE.xs)
        grid.setVerticalSpacing(SPACE.xs)
        head = QHBoxLayout()
        head.setSpacing(SPACE.s)
        head.addWidget(self.title)
        head.addWidget(self.wide)
        head.addStretch(1)
        head.addWidget(self.remove)
        grid.addLayout(head, 0, 0, 1, 2)
        grid.addWidget(self._label("start", self.ends["start"]), 1, 0)
        grid.addWidget(self._pair, 1, 1)
        for line, (name, pick) in enumerate(self.picks.items(), 3):
            pick.setFixedWidth(self._pair.width())
            grid.addWidget(self._label(name, pick), line, 0)
            grid.addWidget(pick, line, 1)
        self.fault_line.setWordWrap(True)
        self.fault_line.hide()
        grid.addWidget(self.fault_line, 2, 0, 1, 2)
        grid.setColumnStretch(0, 1)

    def _label(self, name: str, control: QWidget) -> Label:
        label = Label(tr(PARTS[name].words), self)
        label.setBuddy(control)
        return label

    def _read(self) -> PrintBand:
        start, end = self._pair.read()
        said = amiss(start, end, self._others, self._cloth)
        if said and (start, end) != self._pair.kept:  # what is wrong already is no fault of the hand
            raise Unreadable(spell(said, self.unit))
        return replace(self.band, start=start, end=end if said else min(end, self._cloth.washed))

    def _read_on(self) -> None:
        """A keystroke."""
        try:
            band = self._read()
        except Unreadable as fault:
            if self.fault:
                self._set_fault(str(fault))
            return
        self._set_fault("")
        self._change(band)

    def _escape(self) -> None:
        self.give_up()
        self.finished.emit()
        self._pair.select()

    def _step(self, name: str, steps: int) -> None:
        """Move an end, as far as there is room for the band."""
        one, now = PARTS[name], getattr(self.band, name)
        to = round(min(max(now + steps * step_of(one, self.unit), one.least), one.most), 6)
        band = {"start": self.band.start, "end": self.band.end, name: to}
        if amiss(band["start"], band["end"], self._others, self._cloth) is None:
            self._change(replace(self.band, **band))
            self._write()

    def _choose(self) -> None:
        """A word was chosen; for something else, what is usual there is laid on the band."""
        words: dict[str, Any] = {n: self._offered[n][p.currentIndex()] for n, p in self.picks.items() if p.count()}
        if words["holds"] != self.band.holds:
            words["by"] = usual_hold(words["holds"])
        self._change(replace(self.band, **words))
        self.finished.emit()

    def _remove(self) -> None:
        self.removed.emit(self)

    def _change(self, band: PrintBand) -> None:
        if band != self.band:
            if self._before is None:
                self._before = self.band
            self.band = band
            self.changed.emit(self)

    def _take_back(self) -> None:
        if self._before is not None:
            self._change(self._before)

    def _write(self) -> None:
        self._pair.write(self.band.start, self.band.end, self.unit)
        self._set_fault("")

    def _offer(self, name: str, words: dict[str, str]) -> None:
        pick = self.picks[name]
        said = [opened(one) for one in words.values()]
        if said != [pick.itemText(k) for k in range(pick.count())]:
            pick.clear()
            pick.addItems(said)
        self._offered[name] = tuple(words)
        pick.setCurrentIndex(self._offered[name].index(getattr(self.band, name)) if words else -1)
        pick.setEnabled(bool(words))

    def _set_fault(self, words: str) -> None:
        self.fault = words
        self._describe()

    def _describe(self) -> None:
        """Say what is wrong, and for a screen reader of which band everything is."""
        says, title = self.fault or self._standing, self.title.text()
        wrong = self._pair.wrong if self.fault else tuple(self.ends) if says else ()
        if (title, says, wrong, self.unit) == self._said:  # not again at each keystroke
            return
        self._said = (title, says, wrong, self.unit)
        self.fault_line.setText(says)
        self.fault_line.setVisible(bool(says))
        self._pair.describe(title, says, wrong)
        for name, pick in self.picks.items():
            speak(pick, title, name)
            pick.view().setAccessibleName(pick.accessibleName())
        self.remove.setAccessibleName(f"{title}, {tr('remove')}")
        self.update()

    def paintEvent(self, event: QPaintEvent) -> None:
        wrong = bool(self.fault or self._standing)
        level = 1.0 if wrong else self._plate.level
        if not level:
            return
        token, bar = ("stop_bg", "stop") if wrong else ("plate", "accent")
        box = QRectF(self.rect()).adjusted(SPACE.xs, 0, -SPACE.xs, 0)
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            slab(painter, box, theme.colour(token, round(255 * level)))
            box.setWidth(3)
            slab(painter, box, theme.colour(bar, round(255 * level)), 1.5)
