"""The right form: what the maker decides about the skirt, in sections that fold."""

from collections.abc import Mapping, Sequence
from itertools import pairwise
from typing import Final, get_type_hints

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtWidgets import QApplication, QGridLayout, QWidget

from studio.brief import Brief, Declared
from studio.brief.bands import PATH
from studio.styles import rack
from studio.units import Unit
from studio.words import tr
from studio.workroom import Docket

from .form import Form
from .summaries import summary
from .tokens import SPACE
from .widgets.bands import Bands
from .widgets.section import Section
from .widgets.style_pick import StylePick

_ROW: Final = 3  # style tiles beside each other
_ALWAYS: Final = ("skirt", "waistband")  # open at first


def _titles() -> dict[str, str]:
    """The records of the brief, in its order, with their words; the skirt's own is the style."""
    hints = get_type_hints(Brief, include_extras=True)
    titled = {name: note.title for name, hint in hints.items() for note in getattr(hint, "__metadata__", ())}
    return {"skirt": "Style"} | {n: t for n, t in titled.items() if t and n not in ("title", "who", "body")}


class Construction(Form):
    """Built from the declarations: a section for each record, a field for each number that can be decided.

    `folded` says that a section was folded or unfolded.
    """

    folded = Signal()

    def __init__(self, brief: Brief, unit: Unit, parent: QWidget) -> None:
        super().__init__(tr("Construction"), unit, parent)
        self.setVerticalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOn)  # its room is kept: nothing may shift
        self.verticalScrollBar().rangeChanged.connect(self._mute_bar)
        self._mute_bar(0, 0)
        self.sections = {name: Section(tr(words), self.sheet) for name, words in _titles().items()}
        self.styles = self._add_styles(self.sections["skirt"])
        self._declared: Mapping[str, Declared] = {}
        self._declare(brief)
        for section in self.sections.values():
            self.column.addWidget(section)
            section.folded.connect(self._fold)
            section.unfolded.connect(self._bring_into_view)
        self.column.addStretch(1)

    def show_docket(self, docket: Docket, unit: Unit) -> None:
        """Show the brief, what each section holds, and the heaviest finding in it."""
        brief = docket.brief
        if rack.declarations(brief) is not self._declared:
            self._declare(brief)
        for tile in self.styles:
            tile.setChecked(tile.style_name == rack.style_of(brief))
        self.bands.show_docket(docket)
        self.show_brief(brief, unit)
        for name, section in self.sections.items():
            weights = [f.weight for f in docket.findings if f.where.startswith(f"{name}.")]
            section.tell(summary(name, brief, unit), weights[0] if weights else None)
            section.setVisible(name == "skirt" or self._applies(name, brief))

    def _applies(self, section: str, brief: Brief) -> bool:
        """Whether this skirt needs any number of a section."""
        return any(rack.applies(brief, e.declared) for p, e in self.fields.items() if p.startswith(f"{section}."))

    def reveal(self, path: str) -> None:
        self.sections[path.partition(".")[0]].open()
        self.sheet.adjustSize()  # so that there is something to scroll to
        super().reveal(path)

    def open_sections(self, names: Sequence[str] | None) -> None:
        """Open these and fold the others; with None, the first ones and as many more as the height holds."""
        for name, section in self.sections.items():
            section.open(name in (_ALWAYS if names is None else names))
        for name, section in self.sections.items() if names is None else ():
            if name not in _ALWAYS:
                section.open()
                if self.column.sizeHint().height() > self.viewport().height():
                    section.open(False)
                    return

    def opened(self) -> list[str]:
        """The names of the sections that stand open."""
        return [name for name, section in self.sections.items() if section.is_open]

    def _declare(self, brief: Brief) -> None:
        """Make the fields for what this style declares; those that other styles declare alike are kept."""
        new = rack.declarations(brief)
        for path in [p for p in self.fields if p.startswith("skirt.") or self.fields[p].declared != new.get(p)]:
            gone = self.fields.pop(path)
            gone.hide()  # now: deleteLater waits for the event loop
            gone.deleteLater()
        for path, one in new.items():
            name, _, rest = path.partition(".")
            if rest and name in self.sections and path not in self.fields and _can_be_decided(one):
                self.sections[name].add(self._add_field(one, self.sections[name].body))
                if path == PATH:
                    self.bands.rearranged.connect(self._set_tab_order)
                    self.bands.added.connect(self._show_row)
        self._declared = new
        for entry in self.fields.values():  # said outright: a layout shows whatever was not hidden by name
            entry.setHidden(not rack.applies(brief, entry.declared))
        self._set_tab_order()

    @property
    def bands(self) -> Bands:
        """The bands of the print."""
        entry = self.fields[PATH]
        assert isinstance(entry, Bands)
        return entry

    def _show_row(self, row: QWidget) -> None:
        """Have all of a new row in view."""
        QApplication.sendPostedEvents(None, QEvent.Type.LayoutRequest)
        self.sheet.adjustSize()  # so that there is something to scroll to
        self.ensureWidgetVisible(row, 0, SPACE.xxl)

    def _set_tab_order(self) -> None:
        """Down the form: each section, then what is in it."""
        row: list[QWidget] = []
        for name, section in self.sections.items():
            row += [section.head, *(self.styles if name == "skirt" else ())]
            for path, entry in self.fields.items():
                row += entry.controls if path.startswith(f"{name}.") else ()
        for one, other in pairwise(row):
            QWidget.setTabOrder(one, other)

    def _add_styles(self, section: Section) -> list[StylePick]:
        """A tile for each style on the rack."""
        place = QWidget(section.body)
        grid = QGridLayout(place)
        grid.setContentsMargins(SPACE.m, 0, SPACE.m, SPACE.s)
        grid.setSpacing(SPACE.s)
        tiles = [StylePick(style, place) for style in rack.RACK]
        for k, tile in enumerate(tiles):
            grid.addWidget(tile, k // _ROW, k % _ROW)
            tile.clicked.connect(self._choose_style)
        for k in range(_ROW):
            grid.setColumnStretch(k, 1)
        section.add(place)
        return tiles

    def _choose_style(self) -> None:
        chosen = next(tile for tile in self.styles if tile.isChecked())
        self.changed.emit("skirt.style", chosen.style_name)
        self.finished.emit("skirt.style")

    def _fold(self, on: bool) -> None:
        self.folded.emit()

    def _bring_into_view(self, section: Section) -> None:
        """Scroll as far as the section's foot, but never past its header."""
        QApplication.sendPostedEvents(None, QEvent.Type.LayoutRequest)
        self.sheet.adjustSize()  # so that there is something to scroll to
        top, bar = section.pos().y(), self.verticalScrollBar()
        bar.setValue(min(top, max(bar.value(), top + section.height() - self.viewport().height())))

    def _mute_bar(self, least: int, most: int) -> None:
        self.verticalScrollBar().setEnabled(most > least)


def _can_be_decided(one: Declared) -> bool:
    """The style has its tiles, what is held and the picture are not typed; one option alone is no choice."""
    return (
        one.path != "skirt.style"
        and one.kind not in ("held", "picture")
        and (one.kind != "choice" or len(one.options) > 1)
    )
