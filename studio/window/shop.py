"""The shop: window, desk, files and settings of one maker, and what goes between them.

Leaves are fetched when they are laid down: the first paint does not wait for them.
"""

from pathlib import Path
from typing import Any

from PySide6.QtCore import QObject

from studio.check import Finding
from studio.files import file_name, file_stem
from studio.styles import rack
from studio.trouble import Trouble
from studio.units import Unit, spell
from studio.words import phrase, tr
from studio.workroom import Docket

from . import theme
from .choosing import choose_file, choose_picture, documents, shelf_folder
from .desk import Desk
from .files import Chooser, Files
from .leaf import Leaf
from .notice import Deed
from .settings import Settings
from .theme import Wish
from .window import Window


class Shop(QObject):
    """Everything a maker does in the window, and what comes of it."""

    def __init__(self, settings: Settings, window: Window) -> None:
        super().__init__()
        self.settings = settings
        self.unit: Unit = settings.unit
        self.desk = Desk(self)
        self.desk.unit = self.unit
        self.window = window
        window.furnish(self.unit, self._recent)
        self.files = Files(self.desk, settings, self.window)
        self.leaf: Leaf | None = None
        self.choose_picture: Chooser = choose_picture
        self.choose_plan: Chooser = lambda at, start: choose_file(at, tr("Print the lay plan into a PDF"), start)
        self._unfolded = False
        self._connect()
        self._furnish()

    def open(self, file: Path | None) -> None:
        """Open up: this file, the last one, the sample, or the first sheet at the very first start."""
        if self.files.begin(file):
            self.desk.deliver()
        else:
            self.window.show_start(can_go_back=False)
        self.window.show()
        self._open_sections()

    def say(self, sentence: str, about: Deed = "save") -> None:
        """Show a sentence about what went wrong, until what it is about has been done."""
        self.window.notice.say(sentence, about)

    def _recent(self) -> list[Path]:
        return self.files.recent()

    def _connect(self) -> None:
        do, window, desk, files, table = self.window.do, self.window, self.desk, self.files, self.window.table
        do.new.triggered.connect(self._new)
        do.open.triggered.connect(files.open)
        do.save.triggered.connect(files.save)
        do.save_as.triggered.connect(files.save_as)
        do.export.triggered.connect(self._export)
        do.photo.triggered.connect(self._photo)
        do.shelf.triggered.connect(self._shelf)
        do.buy.triggered.connect(self._buy)
        table.strip.cloth.pressed.connect(self._buy)
        table.strip.findings.asked.connect(self._buy)
        do.close_window.triggered.connect(window.close)
        do.undo.triggered.connect(self._undo)
        do.redo.triggered.connect(desk.redo)
        do.how_to_measure.triggered.connect(self._how_to_measure)
        do.how_to_read.triggered.connect(self._how_to_read)
        do.about.triggered.connect(self._about)
        do.unit_chosen.connect(self._set_unit)
        do.wish_chosen.connect(self._set_wish)
        do.lines.toggled.connect(self._keep_legend)
        table.edited.connect(desk.edit)
        table.finished.connect(desk.finish)
        table.mended.connect(self._mend)
        table.better.connect(desk.relay)
        table.canvas.lay.printing.connect(self._print_plan)
        table.canvas.sewing.ticked.connect(self._keep_ticks)
        table.construction.folded.connect(self._keep_sections)
        desk.made_up.connect(self._show)
        desk.settling.connect(table.settle)
        desk.taken.connect(table.clear)
        desk.taken.connect(self._take)
        files.trouble.connect(self.say)
        files.opened.connect(self._opened)
        files.saved.connect(self._saved)
        window.recent.picked.connect(files.open_path)
        window.file_dropped.connect(files.open_path)
        window.wants_close.connect(self._leave)
        window.start.drafted.connect(self._draft)
        window.start.wanted_file.connect(files.open)
        window.start.wanted_sample.connect(files.open_sample)
        window.start.given_up.connect(self._to_table)

    def _furnish(self) -> None:
        """As it was left: open sections, legend, ticks in the menus."""
        do, settings = self.window.do, self.settings
        do.tick(do.units, self.unit)
        do.tick(do.wishes, settings.wish)
        do.lines.setChecked(settings.legend)
        self.window.table.canvas.board.legend = settings.legend

    def _open_sections(self) -> None:
        """As they were left; the first time as many as the window holds, which only shows at the table."""
        if self.window.at_table and not self._unfolded:
            self._unfolded = True
            self.window.table.construction.open_sections(self.settings.sections)

    def _show(self, docket: Docket) -> None:
        self.window.show_docket(docket, self.unit)
        self._show_state()

    def _show_state(self) -> None:
        """The title, whether there are steps to take back, and whether what was last saved is what lies here."""
        desk, do, here = self.desk, self.window.do, self.window.at_table
        self.window.name(desk.brief.title, desk.file, clean=desk.clean)
        do.undo.setEnabled(here and desk.history.can_undo)
        do.redo.setEnabled(here and desk.history.can_redo)
        if not desk.clean:
            self.window.table.canvas.foot.tell("")

    def _take(self) -> None:
        file = self.desk.file
        self.window.table.canvas.sewing.take(self.settings.ticks(file) if file else ())

    def _keep_ticks(self) -> None:
        """With the skirt's file, where it has one."""
        if self.desk.file:
            self.settings.keep_ticks(self.desk.file, self.window.table.canvas.sewing.done)

    def _opened(self) -> None:
        self.window.notice.clear()
        self.window.table.canvas.foot.tell("")
        self._to_table()

    def _saved(self, path: Path) -> None:
        self.window.notice.done("save")
        self._keep_ticks()
        self.window.table.canvas.foot.tell(spell(phrase("Saved {name:word}", name=file_name(path)), self.unit))
        self._show_state()

    def _to_table(self) -> None:
        if not self.window.at_table:
            self.window.show_table()
        self._show_state()
        self._open_sections()

    def _new(self) -> None:
        self.desk.settle()
        self.window.show_start(can_go_back=self.window.at_table or not self.window.start.back.isHidden())

    def _draft(self, values: dict[str, Any]) -> None:
        self.files.draft(rack.edit(rack.usual(self.unit), values, self.unit))

    def _mend(self, finding: Finding) -> None:
        if finding.remedy is not None:
            self.desk.mend(finding.remedy)

    def _undo(self) -> None:
        """The last step back; where something unreadable is being typed, that is what is taken back."""
        if not self.window.table.give_up():
            self.desk.undo()

    def _set_unit(self, unit: Unit) -> None:
        self.desk.settle()
        self.unit = self.desk.unit = unit
        self.settings.unit = unit
        self._show(self.desk.docket)

    def _set_wish(self, wish: Wish) -> None:
        self.settings.wish = wish
        theme.wear(wish)

    def _keep_legend(self, on: bool) -> None:
        self.settings.legend = on

    def _keep_sections(self) -> None:
        self.settings.sections = self.window.table.construction.opened()

    def _leave(self) -> None:
        self.files.leave(self._close)

    def _close(self) -> None:
        self.settings.geometry = self.window.saveGeometry()
        self.window.may_close = True
        self.window.close()

    def _export(self) -> None:
        from .export_sheet import ExportSheet

        self.desk.settle()
        folder = (self.desk.file.parent if self.desk.file else documents()) / file_stem(self.desk.brief.title)
        sheet = ExportSheet(self.desk.docket, folder, self.unit, self.window)
        self.desk.made_up.connect(sheet.show_docket)
        self._lay(sheet)

    def _photo(self) -> None:
        from PySide6.QtCore import QStandardPaths

        self.desk.settle()
        place = QStandardPaths.writableLocation(QStandardPaths.StandardLocation.PicturesLocation)
        if path := self.choose_picture(self.window, Path(place)):
            self.show_photo(path)

    def show_photo(self, path: Path) -> None:
        """Lay down the sheet on which a photograph becomes the cloth."""
        from .photo.sheet import PhotoSheet

        sheet = PhotoSheet(path, self.desk.brief.cloth, self.unit, self.window)
        sheet.used.connect(self.desk.mend)
        self._lay(sheet)

    def _shelf(self) -> None:
        from .shelf import ShelfSheet

        self.desk.settle()
        sheet = ShelfSheet(shelf_folder(), self.desk.brief.cloth, self.unit, self.window)
        sheet.used.connect(self.desk.mend)
        self._lay(sheet)

    def _buy(self) -> None:
        from .buy_sheet import BuySheet

        self.desk.settle()
        folder = self.desk.file.parent if self.desk.file else documents()
        sheet = BuySheet(self.desk.docket, folder, self.unit, self.window)
        sheet.chosen.connect(self.desk.mend)
        self.desk.made_up.connect(sheet.show_docket)
        self._lay(sheet)

    def _print_plan(self, docket: Docket) -> None:
        """Print the plan that is shown, even while a better one is looked for."""
        from studio.plan_pages import put_plan

        folder = self.desk.file.parent if self.desk.file else documents()
        name = f"{file_stem(docket.brief.title)}-{file_stem(tr('lay plan'))}.pdf"
        if path := self.choose_plan(self.window, folder / name):
            try:
                put_plan(path, docket, self.unit)
            except Trouble as trouble:
                self.say(str(trouble))
            else:
                says = phrase("Saved {name:word}", name=file_name(path))
                self.window.table.canvas.foot.tell(spell(says, self.unit))

    def _how_to_measure(self) -> None:
        from .guides import HowToMeasure

        self._lay(HowToMeasure(rack.declarations(self.desk.brief), self.window))

    def _how_to_read(self) -> None:
        from .guides import HowToRead

        self._lay(HowToRead(self.window))

    def _about(self) -> None:
        from .about import About

        self._lay(About(self.window))

    def _lay(self, leaf: Leaf) -> None:
        """Lay a leaf over the window; one at a time."""
        self.leaf = leaf
        leaf.open()
