"""The cloth laid flat, with the lines that were read from it: each can be dragged, by pointer or by key."""

from typing import Final

from PySide6.QtCore import QLineF, QPointF, QRectF, Qt, Signal
from PySide6.QtGui import QKeyEvent, QMouseEvent, QPainter, QPen
from PySide6.QtWidgets import QWidget

from studio.geometry import Point
from studio.words import tr

from .. import theme
from .picture_view import PictureView

_CATCH: Final = 7.0  # px
_LEAST: Final = 3.0  # mm of a band
_APART: Final = 24.0  # px between lines of the repeat


class FlatView(PictureView):
    """Bands as pairs of places across the cloth (mm), and the repeat along it (mm, None for none); `changed` says that
    a line has been moved. A drag where no line is makes a new band.
    """

    changed = Signal()

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.mm_per_dot = 1.0
        self.bands: list[tuple[float, float]] = []
        self.repeat: float | None = None
        self.offset = 0.0
        self.chosen: tuple[int, int] | None = None  # band and end; (-1, 0) for the repeat
        self._held: tuple[int, int] | None = None
        self.setMouseTracking(True)
        self.setAccessibleName(tr("The cloth laid flat"))
        self.setAccessibleDescription(tr("Keys N and P choose a line, arrows move it, Delete takes its band away."))

    @property
    def width_mm(self) -> float:
        """How wide the cloth is."""
        return self.image.height() * self.mm_per_dot

    def lines(self) -> list[tuple[int, int]]:
        """Every line that can be chosen, in order."""
        repeat = [(-1, 0)] if self.repeat else []
        return [*((k, end) for k in range(len(self.bands)) for end in (0, 1)), *repeat]

    def take_away(self) -> None:
        """Take the chosen band away."""
        if self.chosen and self.chosen[0] >= 0:
            del self.bands[self.chosen[0]]
            self._held = self.chosen = None
            self._tell()

    def mousePressEvent(self, event: QMouseEvent) -> None:
        self._held = self.chosen = self._at(event.position())
        if self._held is None and not self.image.isNull() and len(self.bands) < 12:
            y = self._across(event.position())
            self.bands.append((y, y))
            self._held = self.chosen = (len(self.bands) - 1, 1)
        self.update()

    def mouseMoveEvent(self, event: QMouseEvent) -> None:
        if self._held is None:
            over = self._at(event.position())
            shape = Qt.CursorShape
            self.setCursor(
                shape.CrossCursor if over is None else shape.SizeHorCursor if over[0] < 0 else shape.SizeVerCursor
            )
            return
        along = self.to_dot(event.position()).x * self.mm_per_dot
        self._move(self._held, along - self.offset if self._held[0] < 0 else self._across(event.position()))

    def mouseReleaseEvent(self, event: QMouseEvent) -> None:
        if self._held is not None:
            self._held = None
            self.bands = [(min(b), max(b)) for b in self.bands if abs(b[1] - b[0]) >= _LEAST]
            self.chosen = None if self.chosen not in self.lines() else self.chosen
            self._tell()

    def keyPressEvent(self, event: QKeyEvent) -> None:
        key, lines = event.key(), self.lines()
        if key in (Qt.Key.Key_N, Qt.Key.Key_P) and lines:
            by = 1 if key == Qt.Key.Key_N else -1
            self.chosen = lines[(lines.index(self.chosen) + by) % len(lines)] if self.chosen in lines else lines[0]
            self.update()
        elif key in (Qt.Key.Key_Delete, Qt.Key.Key_Backspace):
            self.take_away()
        elif self.chosen is not None and key in (Qt.Key.Key_Up, Qt.Key.Key_Down, Qt.Key.Key_Left, Qt.Key.Key_Right):
            by = -1 if key in (Qt.Key.Key_Up, Qt.Key.Key_Left) else 1
            k, end = self.chosen
            now = (self.repeat or 0.0) if k < 0 else self.bands[k][end]
            self._move(self.chosen, now + by)
            self.bands = [(min(b), max(b)) if abs(b[1] - b[0]) >= _LEAST else (b[0], b[0] + _LEAST) for b in self.bands]
        else:
            super().keyPressEvent(event)

    def _across(self, px: QPointF) -> float:
        return round(self.to_dot(px).y * self.mm_per_dot, 1)

    def _at(self, px: QPointF) -> tuple[int, int] | None:
        found = [(abs(self._y(self.bands[k][end]) - px.y()), (k, end)) for k, end in self.lines() if k >= 0]
        if self.repeat:
            found += [(abs(x - px.x()), (-1, 0)) for x in (self._x(self.offset + self.repeat),)]
        near = min(found, default=(_CATCH + 1, (0, 0)))
        return near[1] if near[0] <= _CATCH else None

    def _move(self, line: tuple[int, int], to: float) -> None:
        k, end = line
        if k < 0:
            self.repeat = min(max(5.0, to), 3000.0)
        else:
            to = min(max(0.0, to), self.width_mm)
            self.bands[k] = (to, self.bands[k][1]) if end == 0 else (self.bands[k][0], to)
        self._tell()

    def _tell(self) -> None:
        self.changed.emit()
        self.update()

    def _x(self, along: float) -> float:
        return self.to_px(Point(along / self.mm_per_dot, 0)).x()

    def _y(self, across: float) -> float:
        return self.to_px(Point(0, across / self.mm_per_dot)).y()

    def _paint_over(self, painter: QPainter) -> None:
        at = self.place
        painter.setClipRect(at)
        if self.repeat:
            apart = self._x(self.repeat) - self._x(0)
            count = int(at.width() / apart) + 1 if apart >= _APART else 2  # too many would hide the print
            for j in range(count):
                x = self._x(self.offset + j * self.repeat)
                self._paint_line(painter, QLineF(x, at.top(), x, at.bottom()), (-1, 0), dashed=True)
        for k, band in enumerate(self.bands):
            top, bottom = self._y(min(band)), self._y(max(band))
            painter.fillRect(QRectF(at.left(), top, at.width(), bottom - top), theme.colour("accent", 40))
            for end in (0, 1):
                y = self._y(band[end])
                self._paint_line(painter, QLineF(at.left(), y, at.right(), y), (k, end))
        painter.setClipping(False)

    def _paint_line(self, painter: QPainter, line: QLineF, which: tuple[int, int], *, dashed: bool = False) -> None:
        for token, width in (("tissue", 4.0), ("accent", 3.0 if which == self.chosen else 1.6)):
            drawn_with = QPen(theme.colour(token), width)
            if dashed and token == "accent":
                drawn_with.setStyle(Qt.PenStyle.DashLine)
            painter.setPen(drawn_with)
            painter.drawLine(line)
