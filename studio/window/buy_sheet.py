"""The sheet that goes to the shop: what to buy, what is left over, and what the cloth on hand still makes."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QApplication, QHBoxLayout, QPushButton, QWidget

from studio.check.makes import comes_out, helpful, makes
from studio.files import file_name, file_stem, put_file, refusal
from studio.paper.pattern import Said
from studio.paper.pdf import write_pdf
from studio.paper.ready import shopping_pages
from studio.paper.sizes import paper_size
from studio.shopping import besides, buy_csv, buy_text, makes_words, quick_words, to_buy
from studio.trouble import Trouble
from studio.units import Unit, spell
from studio.words import phrase, tr
from studio.workroom import Docket

from .choosing import choose_file
from .files import Chooser
from .leaf import Leaf
from .tokens import SPACE
from .widgets.label import Label


class BuySheet(Leaf):
    """`chosen` carries the edit of a choice, which becomes one step of the skirt's history."""

    chosen = Signal(object)

    def __init__(self, docket: Docket, folder: Path, unit: Unit, parent: QWidget) -> None:
        super().__init__(tr("What to buy"), parent, 560)
        self._docket, self._folder, self._unit = docket, folder, unit
        self.choose_table: Chooser = lambda at, start: choose_file(at, tr("Save the list as"), start)
        self.choose_page: Chooser = lambda at, start: choose_file(at, tr("Print the list into a PDF"), start)
        self.lines = [self.add_words(line) for line in to_buy(docket, unit)]
        self.column.addSpacing(SPACE.s)
        self.besides = self.add_words("", "quiet")
        self.made, self.rows = makes(docket.brief), list[QWidget]()
        self.choices: list[QPushButton] = []
        self.nothing, self.quick = Label("", self, "body", "quiet"), Label("", self, "body", "quiet")
        self._add_choices()
        self.says = self.add_words("", "quiet")
        self.copy = self.add_button(tr("Copy"), lead=True)
        self.table = self.add_button(tr("Save as CSV…"))
        self.page = self.add_button(tr("Print…"))
        self.shut = self.add_button(tr("Close"))
        self.finish()
        self.copy.clicked.connect(self._copy)
        self.table.clicked.connect(self._save_table)
        self.page.clicked.connect(self._print)
        self.shut.clicked.connect(self.reject)

    def show_docket(self, docket: Docket) -> None:
        """The same skirt on another plan: while the sheet lies there, a shorter one may be found."""
        if docket.brief is not self._docket.brief:
            return  # a choice was taken, and the sheet is on its way out
        self._docket = docket
        for label, line in zip(self.lines, to_buy(docket, self._unit), strict=True):
            label.setText(line)
        self._show_plan()

    def _show_plan(self) -> None:
        """What hangs on the plan: what is left over, and which choices are of use."""
        self.besides.setText("\n".join(besides(self._docket, self._unit)))
        brief, lay = self._docket.brief, self._docket.lay
        kept = helpful(self.made, brief, lay)
        for one, row in zip(self.made, self.rows, strict=True):
            row.setVisible(one in kept)
        self.quick.setText("\n".join(quick_words(kept)))
        self.quick.setVisible(bool(self.quick.text()))
        fits = tr("The skirt as it stands comes out of this length.")
        none = tr("Nothing else comes out of this length; buy what it needs.")
        self.nothing.setText(fits if comes_out(brief, lay) else "" if kept else none)
        self.nothing.setVisible(brief.cloth.on_hand is not None and bool(self.nothing.text()))

    def _add_choices(self) -> None:
        """What comes out of the length on hand, each with a button that takes it."""
        if self._docket.brief.cloth.on_hand is not None:
            self.column.addSpacing(SPACE.m)
            self.column.addWidget(Label(tr("What this cloth makes"), self, "body", "ink"))
        self.column.addWidget(self.nothing)
        for one in self.made:
            self.rows.append(row := QWidget(self))
            across, words = QHBoxLayout(row), makes_words(one, self._unit)
            across.setContentsMargins(0, 0, 0, 0)
            across.addWidget(Label(words, row), 1)
            button = QPushButton(tr("Take"), row)
            button.setAutoDefault(False)
            button.setAccessibleName(f"{tr('Take')} {words}")
            button.clicked.connect(lambda _=False, edit=one.edit: self._choose(edit))
            across.addWidget(button)
            self.column.addWidget(row)
            self.choices.append(button)
        self.column.addWidget(self.quick)
        self._show_plan()

    def _choose(self, edit: object) -> None:
        self.accept()
        self.chosen.emit(edit)

    def _copy(self) -> None:
        QApplication.clipboard().setText("\n".join(buy_text(self._docket, self._unit)))
        self.says.setText(tr("Copied; paste it where you need it."))

    def _save_table(self) -> None:
        raw = buy_csv(self._docket, self._unit).encode("utf-8")
        self._put(self.choose_table, "csv", lambda path: put_file(path, raw))

    def _print(self) -> None:
        said = Said(self._docket.brief, self._unit)
        lines, more = to_buy(self._docket, self._unit), besides(self._docket, self._unit)

        def work(path: Path) -> None:
            pages = shopping_pages(lines, more, said, paper_size(said.brief.paper))
            list(write_pdf(path, pages, said.brief.title))

        self._put(self.choose_page, "pdf", work)

    def _put(self, choose: Chooser, suffix: str, work: Callable[[Path], object]) -> None:
        """Ask for a place and write there; what cannot be written is said."""
        title = file_stem(self._docket.brief.title)
        path = choose(self, self._folder / f"{title}-{file_stem(tr('what to buy'))}.{suffix}")
        if path is None:
            return
        try:
            work(path)
        except Trouble as trouble:
            self.says.setText(str(trouble))
        except OSError as fault:
            says = phrase("{name:word} cannot be written; choose another folder.", name=file_name(path))
            self.says.setText(refusal(fault, says))
        else:
            self.says.setText(spell(phrase("Saved {name:word}", name=file_name(path)), self._unit))
