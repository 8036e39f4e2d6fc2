"""The ground: dots and crosses on the table, and the rulers along its edges.

A row of dots is painted once and laid down for every row of the table; rulers are kept until the view changes.
"""

import math
from collections.abc import Callable, Hashable
from typing import Final

from PySide6.QtCore import QLineF, QPointF, QRect, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPen, QPixmap, QTransform

from studio.units import Unit

from .. import theme
from .pens import advance, face
from .view import View

ONE: Final[dict[Unit, float]] = {"cm": 10.0, "in": 25.4}
_CROSSES: Final[dict[Unit, int]] = {"cm": 10, "in": 6}  # every so many units a cross
_DOTS: Final[dict[Unit, tuple[int, ...]]] = {"cm": (1, 5, 10), "in": (1, 2, 3, 6)}
_FIGURES: Final[dict[Unit, tuple[int, ...]]] = {
    "cm": (1, 5, 10, 20, 50, 100, 200, 500, 1000),
    "in": (1, 2, 6, 12, 36, 72, 180, 360),
}
_TICKS: Final[dict[Unit, tuple[float, ...]]] = {
    "cm": (0.1, 0.5, 1, 5, 10, 50, 100, 500),
    "in": (0.125, 0.25, 0.5, 1, 2, 3, 6, 12, 36, 180),
}
_DOTS_APART, _FIGURES_APART, _TICKS_APART = 9.0, 34.0, 5.0  # least px
_ARM: Final = 4  # px of a cross


class Kept:
    """A picture that is painted again only when its key changes; the theme and the screen's density are part of it."""

    def __init__(self) -> None:
        self._key: Hashable = None
        self._picture = QPixmap()

    def picture(self, key: Hashable, size: QSize, density: float, paint: Callable[[QPainter], None]) -> QPixmap:
        """The picture, `size` px large."""
        key = (key, size.width(), size.height(), density, theme.current().name)
        if key != self._key:
            self._key = key
            self._picture = QPixmap(size * density)
            self._picture.setDevicePixelRatio(density)
            self._picture.fill(Qt.GlobalColor.transparent)
            with QPainter(self._picture) as painter:
                painter.setRenderHint(QPainter.RenderHint.Antialiasing)
                paint(painter)
        return self._picture


class Ground:
    """Dots, crosses and rulers of one board."""

    def __init__(self) -> None:
        self._dots, self._crosses, self._top, self._left = Kept(), Kept(), Kept(), Kept()

    def paint_dots(self, painter: QPainter, area: QRect, size: QSize, density: float, view: View, unit: Unit) -> None:
        """Fill the area with the table: dots where they have room, crosses always."""
        painter.fillRect(area, theme.colour("board"))
        cross = _CROSSES[unit]
        gap = ONE[unit] * view.scale
        if gap * cross < _DOTS_APART:
            return
        every = next(k for k in _DOTS[unit] if k * gap >= _DOTS_APART or k == cross)
        ox, oy = round(view.x), round(view.y)
        strip = QSize(size.width(), 2 * _ARM + 1)
        key = (ox, gap, unit)
        columns = range(math.floor(-ox / gap / every) * every, math.ceil((size.width() - ox) / gap) + 1, every)
        xs = [(ox + round(k * gap), k % cross == 0) for k in columns]
        dots = self._dots.picture(key, strip, density, lambda p: _row(p, [(x, False) for x, _ in xs]))
        crosses = self._crosses.picture(key, strip, density, lambda p: _row(p, xs))
        for k in range(
            math.floor((area.top() - oy) / gap / every) * every, math.ceil((area.bottom() - oy) / gap) + every, every
        ):
            painter.drawPixmap(0, oy + round(k * gap) - _ARM, crosses if k % cross == 0 else dots)

    def paint_rulers(self, painter: QPainter, size: QSize, wide: int, density: float, view: View, unit: Unit) -> None:
        """Rulers along the top and the left, `wide` px."""
        x, y = round(view.x), round(view.y)
        across = self._top.picture(
            (x, view.scale, unit), QSize(size.width(), wide), density,
            lambda p: _ruler(p, size.width(), wide, x, view.scale, unit),
        )  # fmt: skip
        down = self._left.picture(
            (y, view.scale, unit), QSize(wide, size.height()), density,
            lambda p: _ruler(p, size.height(), wide, y, view.scale, unit, upright=True),
        )  # fmt: skip
        painter.drawPixmap(0, 0, across)
        painter.drawPixmap(0, 0, down)
        corner = QRectF(0, 0, wide - 1, wide - 1)
        painter.fillRect(corner, theme.colour("chrome"))
        painter.setPen(theme.colour("quiet"))
        painter.setFont(face("ruler"))
        painter.drawText(corner, Qt.AlignmentFlag.AlignCenter, unit)


def _row(painter: QPainter, places: list[tuple[int, bool]]) -> None:
    """A row of dots, and of crosses where the flag says so, along the middle of a strip."""
    colour = theme.colour("dot")
    middle = _ARM + 0.5
    painter.setPen(QPen(colour, 1.6, c=Qt.PenCapStyle.RoundCap))
    painter.drawPoints([QPointF(x + 0.5, middle) for x, cross in places if not cross])
    painter.setPen(QPen(colour, 1, c=Qt.PenCapStyle.FlatCap))
    for x in (x + 0.5 for x, cross in places if cross):
        painter.drawLine(QLineF(x - _ARM - 0.5, middle, x + _ARM + 0.5, middle))
        painter.drawLine(QLineF(x, 0, x, 2 * _ARM + 1))


def _ruler(
    painter: QPainter, long: int, wide: int, origin: int, scale: float, unit: Unit, upright: bool = False
) -> None:  # fmt: skip
    """A ruler along the x axis, its ticks on the lower edge; or along the y axis, its ticks on the right."""
    if upright:
        painter.setTransform(QTransform(0, 1, 1, 0, 0, 0))  # x and y change places
    one = ONE[unit] * scale
    step = next((k for k in _FIGURES[unit] if k * one >= _FIGURES_APART), _FIGURES[unit][-1])
    tick = next((k for k in _TICKS[unit] if k * one >= _TICKS_APART and (step / k).is_integer()), step)
    painter.fillRect(QRectF(0, 0, long, wide), theme.colour("chrome"))
    each = round(step / tick)
    half = each / 2 if each % 2 == 0 else each
    first, last = math.floor((wide - origin) / one / tick), math.ceil((long - origin) / one / tick)
    ticks, figures = list[QLineF](), list[tuple[float, int]]()
    for k in range(first, last + 1):
        x = origin + round(k * tick * one) + 0.5
        if x < wide:
            continue
        high = 9 if k % each == 0 else 6 if k % half == 0 else 4
        ticks.append(QLineF(x, wide - high, x, wide))
        if k % each == 0:
            figures.append((x, round(k * tick)))
    painter.setPen(QPen(theme.colour("edge"), 1, c=Qt.PenCapStyle.FlatCap))
    painter.drawLines(ticks)
    painter.setPen(QPen(theme.colour("hair"), 1, c=Qt.PenCapStyle.FlatCap))
    painter.drawLine(QLineF(wide, wide - 0.5, long, wide - 0.5))
    painter.setPen(theme.colour("quiet"))
    painter.setFont(face("ruler"))
    for x, figure in figures:
        words = str(figure).replace("-", "−")
        if upright:  # read from the right
            if x - 2.5 - advance(words, "ruler") > wide:
                painter.setTransform(QTransform().translate(wide - 12, x - 2.5).rotate(-90))
                painter.drawText(QPointF(0, 0), words)
        else:
            painter.drawText(QPointF(x + 2.5, wide - 12), words)
