"""The first sheet: what, for whom, of which cloth. The panels come with the first draft."""

from collections.abc import Mapping, Sequence
from typing import Final

from msgspec.structs import replace
from PySide6.QtCore import QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QPainter, QPaintEvent, QPen, QPixmap, QResizeEvent
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QScrollArea, QVBoxLayout, QWidget

from studio.brief.declare import Declared
from studio.units import Unit
from studio.words import tr

from . import theme
from .tokens import RADIUS, SIZE, SPACE
from .widgets.field import Field
from .widgets.figure import Figure
from .widgets.label import Label
from .widgets.strokes import frame, slab
from .widgets.style_pick import StylePick

ASKED: Final = ("body.waist", "body.hip", "skirt.length", "cloth.width")
_PITCH: Final = 24  # of the dots


class Ground(QWidget):
    """The bare board, dotted; the dots are kept as one small tile."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._tile = QPixmap()
        self._tile_for: tuple[str, float] | None = None

    def paintEvent(self, event: QPaintEvent) -> None:
        wanted = (theme.current().name, self.devicePixelRatioF())
        if wanted != self._tile_for:
            self._tile, self._tile_for = _dotted(wanted[1]), wanted
        with QPainter(self) as painter:
            painter.drawTiledPixmap(self.rect(), self._tile)


def _dotted(density: float) -> QPixmap:
    tile = QPixmap(round(_PITCH * density), round(_PITCH * density))
    tile.setDevicePixelRatio(density)
    tile.fill(theme.colour("board"))
    with QPainter(tile) as painter:
        painter.setRenderHint(QPainter.RenderHint.Antialiasing)
        painter.setPen(QPen(theme.colour("dot"), 1.6, Qt.PenStyle.SolidLine, Qt.PenCapStyle.RoundCap))
        painter.drawPoint(QPointF(_PITCH / 2, _PITCH / 2))
    return tile


class _Sheet(QWidget):
    """Paper on the board."""

    def paintEvent(self, event: QPaintEvent) -> None:
        box = QRectF(self.rect())
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            slab(painter, box.adjusted(0.5, 0.5, -0.5, -0.5), theme.colour("panel"), RADIUS.sheet)
            frame(painter, box, "hair", 1.0, RADIUS.sheet)


class Start(QScrollArea):
    """A new skirt, from four numbers at their usual values.

    `drafted` carries the values by path, the style under `skirt.style`; `wanted_file` asks for a saved skirt,
    `wanted_sample` for the sample. `given_up` goes back to the skirt on the table, where there is one.
    """

    drafted = Signal(dict)
    wanted_file = Signal()
    wanted_sample = Signal()
    given_up = Signal()

    def __init__(self, styles: Sequence[str], declared: Mapping[str, Declared], unit: Unit, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWidgetResizable(True)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        ground = Ground(self)
        self._sheet = _Sheet(ground)
        outer = QVBoxLayout(ground)
        outer.addStretch(3)
        outer.addWidget(self._sheet, 0, Qt.AlignmentFlag.AlignHCenter)
        outer.addStretch(4)
        self._column = QVBoxLayout(self._sheet)
        self._column.setContentsMargins(SPACE.l + SPACE.xs, 28, SPACE.xxl, 28)  # a field keeps 12 for its plate
        self._column.setSpacing(0)
        self._add_heading()
        self.styles = self._add_styles(styles)
        self.fields = {path: Field(_named(declared[path]), unit, self._sheet) for path in ASKED}
        self.figure = Figure(self._sheet)
        self.hint = Label(tr(declared[ASKED[0]].hint), self._sheet, "small", "quiet")
        self._add_fields()
        self.lead = QPushButton(tr("Draft it"), self._sheet)
        self.other = QPushButton(tr("Open a skirt…"), self._sheet)
        self.sample = QPushButton(tr("Open the sample"), self._sheet)
        self.back = QPushButton(tr("Go back"), self._sheet)
        self._add_ends()
        self.setWidget(ground)
        self.setFocusProxy(self.fields[ASKED[0]].box)

    def set_unit(self, unit: Unit) -> None:
        """Show the numbers in another unit."""
        for field in self.fields.values():
            field.set_unit(unit)

    def begin(self, *, can_go_back: bool) -> None:
        """Start afresh: every field at its usual value, the waist in hand."""
        for field in self.fields.values():
            field.show_value(field.default, field.unit)
        self.back.setVisible(can_go_back)
        self.fields[ASKED[0]].take_in_hand()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        if event.key() == Qt.Key.Key_Escape and self.back.isVisible():
            self.given_up.emit()
        else:
            super().keyPressEvent(event)

    def resizeEvent(self, event: QResizeEvent) -> None:
        super().resizeEvent(event)
        self._sheet.setFixedWidth(min(theme.px(SIZE.sheet_w), self.viewport().width() - 2 * SPACE.l))

    def _add_heading(self) -> None:
        title = Label(tr("A new skirt"), self._sheet, "display")
        below = tr("A waist and a length are enough to begin. The rest starts at its usual value.")
        for label, gap in ((title, SPACE.xs), (Label(below, self._sheet, "body", "quiet"), SPACE.l + SPACE.xs)):
            label.setContentsMargins(SPACE.m, 0, 0, 0)
            self._column.addWidget(label)
            self._column.addSpacing(gap)

    def _add_styles(self, styles: Sequence[str]) -> list[StylePick]:
        row = QHBoxLayout()
        row.setSpacing(SPACE.s)
        row.setContentsMargins(SPACE.m, 0, 0, 0)
        tiles = [StylePick(style, self._sheet) for style in styles]
        for tile in tiles:
            row.addWidget(tile, 1)
        tiles[0].setChecked(True)
        self._column.addLayout(row)
        self._column.addSpacing(SPACE.l + SPACE.xs)
        return tiles

    def _add_fields(self) -> None:
        form = QVBoxLayout()
        form.setSpacing(SPACE.xs)
        for field in self.fields.values():
            field.lit.connect(self._light)
            form.addWidget(field)
        self.hint.setContentsMargins(SPACE.m, SPACE.s, SPACE.m, 0)
        self.hint.setWordWrap(True)
        form.addWidget(self.hint)
        form.addStretch(1)
        self.figure.setMinimumHeight(theme.px(224))
        two = QHBoxLayout()
        two.setSpacing(SPACE.xl)
        two.addLayout(form, 3)
        two.addWidget(self.figure, 2)
        self._column.addLayout(two)
        self._column.addSpacing(SPACE.l + SPACE.xs)

    def _add_ends(self) -> None:
        self.lead.setObjectName("lead")
        self.lead.clicked.connect(self._draft)
        self.other.clicked.connect(self.wanted_file)
        self.sample.clicked.connect(self.wanted_sample)
        self.back.clicked.connect(self.given_up)
        self.back.hide()
        row = QHBoxLayout()
        row.setSpacing(SPACE.m)
        row.setContentsMargins(SPACE.m, 0, 0, 0)
        for button in (self.lead, self.other, self.sample):
            row.addWidget(button)
        row.addStretch(1)
        row.addWidget(self.back)
        self._column.addLayout(row)

    def _light(self, path: str) -> None:
        self.figure.light(path)
        if path:
            self.hint.setText(tr(self.fields[path].declared.hint))

    def _draft(self) -> None:
        """Send the values; a field that cannot be read is shown instead."""
        for field in self.fields.values():
            field.settle()
        for field in self.fields.values():
            if field.fault:
                field.box.setFocus()
                return
        style = next(tile.style_name for tile in self.styles if tile.isChecked())
        self.drafted.emit({"skirt.style": style} | {path: field.value for path, field in self.fields.items()})


def _named(declared: Declared) -> Declared:
    """On this sheet the cloth's width needs its full name."""
    return replace(declared, words="Cloth width") if declared.path == "cloth.width" else declared
