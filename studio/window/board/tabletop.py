"""What is seen of the pieces: a docket laid out at a scale and painted. The hand on it is read in `board`."""

from functools import reduce
from typing import Final

from PySide6.QtCore import QPointF, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from studio.brief import Brief
from studio.drawing.arrange import Laid, arrange
from studio.geometry import Box, Point
from studio.words import tr
from studio.workroom import Docket

from .. import theme
from ..cloth.under import Prints, prints
from ..tokens import SIZE
from .bubble import bubble_box, bubble_words, paint_bubble
from .drag import Drag, Grip
from .fitting import Place, fitted
from .glass import read_aloud
from .handles import State, paint_handle
from .legend import Legend
from .scene import Scene, changed, paint_scene, set_scene
from .surface import Surface
from .view import View

_SMALLER: Final = 1.3
"""Fitted pieces that could be larger by more than this are fitted anew."""


class Tabletop(Surface):
    """The pieces to scale, with rulers, measured lines, handles and legend."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.scene: Scene | None = None
        self._brief: Brief | None = None
        self._boxes: list[Box] = []  # of the cut lines, mm on the table
        self._held = False  # a number is being dragged somewhere else
        self._sparse = False  # the pieces filled little of the view when last at rest
        self._another = True  # the next docket is of another skirt
        self._shown = True  # when last fitted, all that is written could be seen
        self._legend_on = True
        self._lit = ""
        self._hover: tuple[str, str] | None = None  # piece and path of the handle under the pointer
        self._drag: Drag | None = None
        self._before: Scene | None = None  # the scene when a drag began
        self._bubble_shown: Box | None = None
        self._legend = Legend()
        self._under: Prints | None = None
        self.setAccessibleName(tr("Pieces"))

    def show_docket(self, docket: Docket) -> None:
        """Show what has been made up; it stays where it is unless it would leave the view, or fill little of it.

        Another style is seen whole.
        """
        self._another |= self._brief is not None and type(self._brief.skirt) is not type(docket.brief.skirt)
        self._brief = docket.brief
        laid, before = arrange(docket.pieces), self.scene
        self._boxes = [one.box for one in laid]
        self._lay(laid)
        under, self._under = self._under, prints(docket)
        if under != self._under:
            self.update()
        if before is None or self._another:
            self._another = False
            self.fit()
        elif not self._rest():
            self._update_only(before)
        self.setAccessibleDescription(read_aloud(laid, self.unit))

    def await_another(self) -> None:
        """The next docket is of another skirt, to be seen whole."""
        self._another = True

    def hold(self, on: bool) -> None:
        """A number is being dragged by its slider: until it is let go the view stays, as with a drag here."""
        released, self._held = self._held and not on, on
        if released:
            self._rest()

    def light(self, path: str) -> None:
        """Light every line that the path governs, its dimension and its handle; "" lights nothing."""
        if path != self._lit:
            self._lit = path
            self.update()

    def fit(self) -> None:
        """All pieces in view, and so again when the board changes its size."""
        self._fitted = True
        if self._boxes:
            self._look(self._fit_view(), fitted=True)
            self._shown, self._sparse = not self._hides(), self._place().sparse(self._now())

    @property
    def legend(self) -> bool:
        """Whether the legend is shown."""
        return self._legend_on

    @legend.setter
    def legend(self, on: bool) -> None:
        self._legend_on = on
        if self._fitted:
            self.fit()
        self.update()

    def _lay(self, laid: tuple[Laid, ...]) -> None:
        self.scene = set_scene(laid, self.view.scale, self.unit, self.scene)

    def _relay(self) -> None:
        if self.scene is not None:
            self._lay(self.scene.laid)
        self.update()

    def _legend_box(self) -> QRect | None:
        if self.scene is None or not self._legend_on:
            return None
        return self._legend.box(self.scene.meanings, self.size())

    def _place(self) -> Place:
        legend = self._legend_box()
        aside = Box(legend.left(), legend.top(), legend.right() + 1, legend.bottom() + 1) if legend else None
        return Place(self._room(), aside)

    def _fit_view(self) -> View:
        scene = self.scene
        assert scene is not None
        return fitted(self._boxes, self._place(), lambda k: set_scene(scene.laid, k, self.unit, scene).written)

    def _hides(self) -> bool:
        """Whether something written is cut off, or lies under the legend."""
        return self.scene is not None and self._place().hidden(self.scene.written, self.view) > 0

    def _rest(self) -> bool:
        """Fit anew where that is wanted: never while something is dragged, nor once the maker has zoomed by hand."""
        if self._drag is not None or self._held or self._zoomed or not self._boxes:
            return False
        wanted = self._wants_fit()
        self._sparse = self._place().sparse(self._now())
        if wanted:
            self.fit()
        return wanted

    def _now(self) -> Box:
        """The box of all pieces, px on the board."""
        return self.view.box(reduce(Box.joined, self._boxes))

    def _wants_fit(self) -> bool:
        """Whether pieces would leave the view or words be hidden, or all have become so small as to be shown larger."""
        place, now = self._place(), self._now()
        if place.sparse(now) and not self._sparse:
            return True
        if not self._fitted:  # carried elsewhere by hand: only what could not be seen whole counts
            return now.width > place.room.width or now.height > place.room.height
        if not place.holds(now) or (self._shown and self._hides()):
            return True
        if min(place.inner.width / now.width, place.inner.height / now.height) <= _SMALLER:
            return False
        return self._fit_view().scale > _SMALLER * self.view.scale

    def _update_only(self, before: Scene) -> None:
        """Ask for the painting of what has changed since the scene before; one box, since Qt is slow in ragged ones."""
        box = changed(before, self.scene) if self.scene else None
        if box is None:
            return
        x, y = round(self.view.x), round(self.view.y)
        box, bubble = box.moved(x, y), self._bubble()
        for other in (self._bubble_shown, bubble and bubble[0]):
            box = box.joined(other.grown(2)) if other else box
        self.update(QRectF(box.left, box.top, box.width, box.height).toAlignedRect())

    def paintEvent(self, event: QPaintEvent) -> None:
        area, size, density = event.rect(), self.size(), self.devicePixelRatioF()
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            self._ground.paint_dots(painter, area, size, density, self.view, self.unit)
            if self.scene is not None:
                self._paint_scene(painter, self.scene, area)
                if self._legend_on:
                    self._legend.paint(painter, self.scene.meanings, size, density)
            self._ground.paint_rulers(painter, size, theme.px(SIZE.ruler), density, self.view, self.unit)
            self._paint_bubble(painter)
            if self._ring and self.hasFocus():
                painter.setPen(QPen(theme.colour("accent"), 2))
                painter.setBrush(Qt.BrushStyle.NoBrush)
                painter.drawRect(QRectF(self.rect()).adjusted(1, 1, -1, -1))

    def _paint_scene(self, painter: QPainter, scene: Scene, area: QRect) -> None:
        x, y = round(self.view.x), round(self.view.y)
        seen = Box(area.left() - x, area.top() - y, area.right() + 1 - x, area.bottom() + 1 - y)
        lit = self._drag.grip.path if self._drag else self._lit
        painter.translate(x, y)
        paint_scene(painter, scene, lit, seen, self._before, self._under)
        for grip in scene.grips:
            at = Point(grip.at.x * scene.scale, grip.at.y * scene.scale)
            if Box(*at, *at).grown(16).meets(seen):
                paint_handle(painter, QPointF(*at), grip.axis, self._state(grip, lit))
        painter.translate(-x, -y)

    def _state(self, grip: Grip, lit: str) -> State:
        here = (grip.piece, grip.path)
        if self._drag:
            return "held" if here == (self._drag.grip.piece, self._drag.grip.path) else "rest"
        return "hover" if here == self._hover else "lit" if grip.path == lit else "rest"

    def _bubble(self) -> tuple[Box, tuple[str, str, str]] | None:
        """Where the bubble of a drag is, and what it says: name, value and change."""
        if self._drag is None or self._brief is None or self.scene is None:
            return None
        held = self._drag.grip
        grip = next((g for g in self.scene.grips if (g.piece, g.path) == (held.piece, held.path)), None)
        if grip is None:
            return None
        words = bubble_words(self._drag, self._brief, self.unit)
        return bubble_box(self.view.px(grip.at), self._room(), *words), words

    def _paint_bubble(self, painter: QPainter) -> None:
        bubble = self._bubble()
        self._bubble_shown = bubble and bubble[0]
        if bubble:
            paint_bubble(painter, bubble[0], *bubble[1])

    def sizeHint(self) -> QSize:
        return QSize(690, 550)
