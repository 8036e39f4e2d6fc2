"""The hand on the lay plan: a piece is dragged, turned, held and let go, by pointer or by key."""

from typing import Final

from msgspec import Struct
from msgspec.structs import replace
from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtGui import QHideEvent, QKeyEvent, QMouseEvent
from PySide6.QtWidgets import QWidget

from studio.brief import Held
from studio.brief.bands import PATH
from studio.cloth.placed import Placed
from studio.geometry import Point
from studio.workroom import Docket

from ..board.surface import LEFT, SHIFT
from .bands import BESIDE, BandDrag, end_near, take_band
from .laid import drawn
from .table import ClothTable

_NUDGE: Final[dict[int, tuple[int, int]]] = {
    Qt.Key.Key_Left: (-1, 0), Qt.Key.Key_Right: (1, 0), Qt.Key.Key_Up: (0, -1), Qt.Key.Key_Down: (0, 1)
}  # fmt: skip
_STEP, _FINE = 10.0, 1.0  # mm for a key, and with Shift
_CATCH: Final = 6.0  # px from the end of a band


class _Grasp(Struct, frozen=True):
    """A piece in the hand: where it lay, where the button went down (mm), and where it is now, once it has moved."""

    placed: Placed
    pressed: Point
    now: Placed | None = None


class HandTable(ClothTable):
    """`put` carries all that is held once a piece has been moved, turned, or let go: one step to undo. `banded`
    carries the bands of the print once one has been drawn or moved at the left edge of the cloth. `lit_here` carries
    the path of the band whose end is under the pointer, then ""; `asked` that of one that was clicked.
    """

    put = Signal(object)
    banded = Signal(object)
    lit_here = Signal(str)
    asked = Signal(str)
    picked = Signal(str)

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._grasp: _Grasp | None = None
        self._band: BandDrag | None = None
        self._pointed = ""

    def show_docket(self, docket: Docket) -> None:
        """Show a docket's lay; a piece in the hand stays there, if it still is one."""
        super().show_docket(docket)
        grasp = self._grasp
        if grasp and not any(d.key == (grasp.placed.piece.id, grasp.placed.copy) for d in self.pieces):
            self._grasp = None
        elif grasp and grasp.now is not None:
            self._show(grasp.now)

    def _busy(self) -> bool:
        return self._grasp is not None or self._band is not None

    def mousePressEvent(self, event: QMouseEvent) -> None:
        at = Point(*event.position().toTuple())
        if self._busy() or self._pan:
            return
        if event.button() == LEFT and not self._space and self._beside(at):
            self._band = self._band_at(at)
            return
        one = self.at(at) if event.button() == LEFT and not self._space else None
        if one is not None:
            self._choose(one.key)
            self._grasp = _Grasp(one.placed, self.view.mm(at))
        elif not self._start_pan(event, at):
            event.ignore()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        at = Point(*event.position().toTuple())
        if self._grasp:
            self._carry(self._grasp, self.view.mm(at))
        elif self._band:
            self._band = self._band.to(self._across(at))
            self.bands = self._band.bands
            self.update()
        elif self._pan:
            self._pan_to(self._pan, at)
        elif self._beside(at):
            self.setCursor(Qt.CursorShape.SizeVerCursor)
            self._point(self._band_path(at))
        else:
            self._point("")
            over = self.at(at) is not None
            self.setCursor(Qt.CursorShape.SizeAllCursor if over else Qt.CursorShape.ArrowCursor)

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if self._grasp and event.button() == LEFT:
            grasp, self._grasp = self._grasp, None
            if grasp.now is not None:
                self._hold(grasp.now)
        elif self._band and event.button() == LEFT:
            drag, self._band, self.bands = self._band, None, None
            if drag.moved:
                self.banded.emit(drag.bands)
            elif path := self._band_path(Point(*event.position().toTuple())):
                self.asked.emit(path)
            self.update()
        elif self._pan and event.button() == self._pan.button:
            pan, self._pan = self._pan, None
            if not pan.sure:
                self._choose(None)

    def hideEvent(self, event: QHideEvent) -> None:
        super().hideEvent(event)
        self._pan = self._band = self.bands = None
        self._point("")
        self._drop_back()

    def leaveEvent(self, event: QEvent) -> None:
        super().leaveEvent(event)
        self._point("")

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key = event.key()
        one = next((d.placed for d in self.pieces if d.key == self.chosen), None)
        if key == Qt.Key.Key_Escape and (self._grasp or self.chosen):
            self._drop_back()
            self._choose(None)
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter) and self.pieces:
            self._choose_next(-1 if event.modifiers() & SHIFT else 1)
        elif one is not None and key in _NUDGE:
            step = _FINE if event.modifiers() & SHIFT else _STEP
            x, y = _NUDGE[key]
            self._hold(self._kept(one, one.at.moved(x * step, y * step)))
        elif one is not None and key == Qt.Key.Key_R:
            self.turn()
        elif one is not None and key in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            self.let_go()
        else:
            super().keyPressEvent(event)

    def turn(self) -> None:
        """Turn the chosen piece half round, about its middle; quarter turns would leave the grain."""
        one = next((d.placed for d in self.pieces if d.key == self.chosen), None)
        one_way = self.docket is not None and self.docket.brief.cloth.one_way
        if one is not None and not one.half and not one_way:
            self._hold(replace(one, turn=(one.turn + 180) % 360))

    def let_go(self) -> None:
        """Let the planner place the chosen piece again."""
        assert self.docket is not None
        rest = tuple(h for h in self.docket.brief.cloth.held if (h.piece, h.copy) != self.chosen)
        if rest != self.docket.brief.cloth.held:
            self.put.emit(rest)

    def let_all_go(self) -> None:
        """Let the planner place everything again."""
        assert self.docket is not None
        if self.docket.brief.cloth.held:
            self.put.emit(())

    def _beside(self, at: Point) -> bool:
        """Whether the pointer is at the left edge of open cloth, where bands are drawn."""
        if self.docket is None or self.docket.lay.folded:
            return False
        v, width = self.view, self.docket.brief.cloth.washed
        return v.x - BESIDE <= at.x < v.x - 2 and v.y <= at.y <= v.y + width * v.scale

    def _across(self, at: Point) -> float:
        assert self.docket is not None
        return min(max(0.0, float(round(self.view.mm(at).y))), self.docket.brief.cloth.washed)

    def _band_at(self, at: Point) -> BandDrag | None:
        """The end of a band that is near, or a new band that begins here."""
        assert self.docket is not None
        return take_band(self.docket.brief.cloth.bands, self._across(at), _CATCH / self.view.scale)

    def _band_path(self, at: Point) -> str:
        """The path of the band whose end is near; "" where none is."""
        assert self.docket is not None
        found = end_near(self.docket.brief.cloth.bands, self._across(at), _CATCH / self.view.scale)
        return f"{PATH}.{found[0]}" if found else ""

    def _point(self, path: str) -> None:
        if path != self._pointed:
            self._pointed = path
            self.lit_here.emit(path)

    def _carry(self, grasp: _Grasp, at: Point) -> None:
        """Move the piece under the pointer; the print shows through it where it is."""
        by = grasp.pressed.to(at)
        if grasp.now is None and max(abs(by.x), abs(by.y)) * self.view.scale < 3:
            return
        now = self._kept(grasp.placed, grasp.placed.at.moved(by.x, by.y))
        self._grasp = replace(grasp, now=now)
        self._show(now)

    def _kept(self, placed: Placed, at: Point) -> Placed:
        """The piece at a place, kept on the cloth, to the millimetre."""
        assert self.docket is not None
        cloth, lay = self.docket.brief.cloth, self.docket.lay
        top = 0.0 if lay.folded else cloth.selvedge
        y = min(max(float(round(at.y)), top), max(top, lay.width - cloth.selvedge - placed.across))
        return replace(placed, at=Point(max(0.0, float(round(at.x))), 0.0 if placed.half else y))

    def _show(self, placed: Placed) -> None:
        key = (placed.piece.id, placed.copy)
        others = tuple(d for d in self.pieces if d.key != key)
        self.pieces = (*others, drawn(placed))  # what is in hand lies on top
        self.update()

    def _drop_back(self) -> None:
        grasp, self._grasp = self._grasp, None
        if grasp and grasp.now is not None:
            self._show(grasp.placed)

    def _hold(self, placed: Placed) -> None:
        assert self.docket is not None
        self._show(placed)
        turn = placed.turn
        one = Held(placed.piece.id, placed.copy, placed.at.x, placed.at.y, turn, placed.mirrored)  # type: ignore[arg-type]
        rest = tuple(h for h in self.docket.brief.cloth.held if (h.piece, h.copy) != (one.piece, one.copy))
        self.put.emit((*rest, one))

    def _choose(self, key: tuple[str, int] | None) -> None:
        if key != self.chosen:
            self.chosen = key
            name = next((d.placed.piece.name for d in self.pieces if d.key == key), "")
            self.picked.emit(name)
            self.update()

    def _choose_next(self, by: int) -> None:
        keys = [d.key for d in sorted(self.pieces, key=lambda d: (d.placed.at.x, d.placed.at.y))]
        first = 0 if by > 0 else -1
        self._choose(keys[(keys.index(self.chosen) + by) % len(keys) if self.chosen in keys else first])
