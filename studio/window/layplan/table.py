"""The lay plan as it is seen: the cloth with its print, each piece where it is cut, how far the cloth is used."""

from typing import Final

from msgspec.structs import replace
from PySide6.QtCore import QPointF, QRectF, QSize, Qt
from PySide6.QtGui import QPainter, QPainterPath, QPaintEvent, QPen
from PySide6.QtWidgets import QWidget

from studio.brief import PrintBand
from studio.brief.bands import bands_at
from studio.cloth.which import which_copy, which_layers
from studio.geometry import Box, Point
from studio.units import spell
from studio.words import phrase, tr
from studio.workroom import Docket

from .. import theme
from ..board.names import Name
from ..board.pens import advance, face, pen
from ..board.surface import Surface
from ..board.view import View
from ..cloth.print import paint_lit, paint_print, veil
from ..tokens import SIZE
from .laid import Drawn, drawn
from .lengths import clear_middle, ends_before, on_hand_words, washed
from .names import named, paint_label

_PADS: Final = Box(112, 52, 48, 52)
"""Room for what is written round the cloth, px."""
_BEYOND: Final = 120.0
"""Cloth is drawn on so far past what is used (mm), where more is to be bought."""
_TOOTH: Final = 7.0  # px of the torn end
_CASING: Final = 5.0


class ClothTable(Surface):
    """The cloth lies along the rulers; y is counted from its first edge, or from the fold."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.docket: Docket | None = None
        self.pieces: tuple[Drawn, ...] = ()
        self.chosen: tuple[str, int] | None = None
        self.bands: tuple[PrintBand, ...] | None = None  # while one is being drawn
        self._lit = ""
        self._names: dict[tuple[str, int], tuple[tuple[Drawn, str, float], Name]] = {}
        self.setAccessibleName(tr("Lay plan"))

    def show_docket(self, docket: Docket) -> None:
        """Show a docket's lay; the view stays unless the cloth would leave it."""
        before, self.docket = self.docket, docket
        self.pieces = tuple(drawn(p) for p in docket.lay.placed)
        if before is None or self._fitted or before.lay.width != docket.lay.width:
            self.fit()
        self.setAccessibleDescription(self._read_aloud(docket))
        self.update()

    def light(self, path: str) -> None:
        """Light the bands of the print that a path speaks of."""
        if path != self._lit:
            self._lit = path
            self.update()

    @property
    def length(self) -> float:
        """How much cloth is drawn, mm: what is on hand, or somewhat more than the plan takes."""
        assert self.docket is not None
        have, takes = washed(self.docket.brief.cloth), self.docket.lay.length
        return max(have or 0.0, takes + (0 if have is not None and takes <= have else _BEYOND), 300.0)

    def fit(self) -> None:
        if self.docket is None:
            return
        room, wide, high = self._room(), self.length, self.docket.lay.width
        inner = Box(room.left + _PADS.left, room.top + _PADS.top, room.right - _PADS.right, room.bottom - _PADS.bottom)
        scale = max(0.004, min(max(40.0, inner.width) / wide, max(40.0, inner.height) / high))
        x, y = inner.left, inner.top + max(0.0, (inner.height - high * scale) / 2)
        self._look(View(scale, x, y), fitted=True)

    def at(self, px: Point) -> Drawn | None:
        """The piece that lies there, the one on top first."""
        mm = self.view.mm(px)
        return next((d for d in reversed(self.pieces) if d.cut.contains(QPointF(mm.x, mm.y))), None)

    def paintEvent(self, event: QPaintEvent) -> None:
        with QPainter(self) as painter:
            painter.setRenderHint(QPainter.RenderHint.Antialiasing)
            size, density = self.size(), self.devicePixelRatioF()
            self._ground.paint_dots(painter, event.rect(), size, density, self.view, self.unit)
            if self.docket is not None:
                self._paint_cloth(painter, self.docket)
                self._paint_words(painter, self.docket)
            self._ground.paint_rulers(painter, size, theme.px(SIZE.ruler), density, self.view, self.unit)
            if self._ring and self.hasFocus():
                painter.setPen(QPen(theme.colour("accent"), 2))
                painter.setBrush(Qt.BrushStyle.NoBrush)
                painter.drawRect(QRectF(self.rect()).adjusted(1, 1, -1, -1))

    def _paint_cloth(self, painter: QPainter, docket: Docket) -> None:
        cloth, lay, k = docket.brief.cloth, docket.lay, self.view.scale
        painter.save()
        painter.translate(self.view.x, self.view.y)
        painter.scale(k, k)
        edge = self._edge(lay.width)
        painter.setClipPath(edge)
        self._paint_print(painter)
        painter.fillPath(edge, veil())
        inside = QPainterPath()
        inside.setFillRule(Qt.FillRule.WindingFill)
        for one in self.pieces:
            inside.addPath(one.cut)
        painter.setClipPath(inside, Qt.ClipOperation.IntersectClip)
        self._paint_print(painter)
        painter.setClipPath(edge)
        self._paint_lit(painter)
        painter.setClipping(False)
        self._paint_selvedges(painter, cloth.selvedge, lay.width, lay.folded)
        painter.strokePath(edge, _thin("edge", 1.1 / k))
        for one in self.pieces:
            self._paint_piece(painter, one, k)
        painter.restore()

    def _paint_print(self, painter: QPainter) -> None:
        assert self.docket is not None
        cloth, (start, end) = self.docket.brief.cloth, self._seen()
        painter.save()
        painter.translate(0, -self._drop)
        paint_print(painter, replace(cloth, bands=self._bands), start, end, self.view.scale)
        painter.restore()

    def _paint_lit(self, painter: QPainter) -> None:
        """The bands in hand, the pieces on them too."""
        painter.save()
        painter.translate(0, -self._drop)
        paint_lit(painter, bands_at(self._lit, self._bands), *self._seen())
        painter.restore()

    @property
    def _bands(self) -> tuple[PrintBand, ...]:
        """The bands of the print, one that is being drawn among them."""
        assert self.docket is not None
        return self.docket.brief.cloth.bands if self.bands is None else self.bands

    @property
    def _drop(self) -> float:
        """How far its first edge lies on the far side of the fold, mm."""
        assert self.docket is not None
        return self.docket.lay.width if self.docket.lay.folded else 0.0

    def _seen(self) -> tuple[float, float]:
        """From where to where the cloth is in view, mm along it."""
        return max(0.0, self.view.mm(Point(0, 0)).x), min(self.length, self.view.mm(Point(self.width(), 0)).x)

    def _edge(self, width: float) -> QPainterPath:
        """The edge of the cloth, its far end torn, mm."""
        tooth, end = _TOOTH / self.view.scale, self.length
        path = QPainterPath(QPointF(0, 0))
        path.lineTo(end, 0)
        count = max(2, round(width / (2 * tooth)))
        for j in range(count):
            path.lineTo(end - tooth * 0.7, width * (j + 0.5) / count)
            path.lineTo(end, width * (j + 1) / count)
        path.lineTo(0, width)
        path.closeSubpath()
        return path

    def _paint_selvedges(self, painter: QPainter, deep: float, width: float, folded: bool) -> None:
        if deep <= 0:
            return
        hatch = theme.colour("quiet", 90)
        for top in (width - deep,) if folded else (0.0, width - deep):
            painter.fillRect(QRectF(0, top, self.length, deep), hatch)

    def _paint_piece(self, painter: QPainter, one: Drawn, k: float) -> None:
        """Outlines are cased, so that they read on any print."""
        chosen = one.key == self.chosen
        painter.strokePath(one.cut, _thin("tissue", _CASING / k))
        painter.strokePath(one.cut, _thin("accent" if chosen else "ink", (2.6 if chosen else 1.8) / k))
        for path, ink in ((one.seam, "seam"), (one.folds, "fold")):
            drawn_with = QPen(pen("fold" if ink == "fold" else "seam"))
            drawn_with.setWidthF(drawn_with.widthF() / k)
            painter.strokePath(path, drawn_with)

    def _paint_words(self, painter: QPainter, docket: Docket) -> None:
        """Names on the pieces, the line where the cloth is used up, the bands, and what is on hand."""
        v, lay = self.view, docket.lay
        self._paint_on_hand(painter, docket, v.y + lay.width * v.scale)
        painter.save()
        painter.translate(v.x, v.y)
        for one in self.pieces:
            paint_label(painter, self._name(one))
        painter.restore()
        x, top, bottom = lay.length * v.scale + v.x, v.y - 26, v.y + lay.width * v.scale
        painter.setPen(QPen(theme.colour("accent"), 2))
        painter.drawLine(QPointF(x, top), QPointF(x, bottom + 10))
        far = tr("fold") if lay.folded else tr("first selvedge")
        self._paint_plate(painter, far, v.x + advance(far, "small") / 2 + 6, v.y - 12, "quiet")
        takes = spell(phrase("takes {l}", l=lay.length), self.unit)
        middle = clear_middle(v.x, x, v.x + advance(far, "small") + 16, advance(takes, "small") + 12)
        self._paint_plate(painter, takes, middle, top + 6, "accent")
        if not lay.folded:
            lit = bands_at(self._lit, self._bands)
            for band in self._bands:
                self._paint_bracket(painter, band, band in lit)

    def _paint_on_hand(self, painter: QPainter, docket: Docket, bottom: float) -> None:
        """How much cloth there is; where the plan takes more, a line across it where it ends."""
        cloth, takes, v = docket.brief.cloth, docket.lay.length, self.view
        if (have := washed(cloth)) is None:
            return
        says = spell(on_hand_words(cloth, takes), self.unit)
        if not ends_before(cloth, takes):
            self._paint_plate(painter, says, v.x + have * v.scale / 2, bottom + 22, "quiet")
            return
        x = v.x + have * v.scale
        painter.setPen(QPen(theme.colour("stop"), 2, Qt.PenStyle.DashLine))
        painter.drawLine(QPointF(x, v.y - 6), QPointF(x, bottom + 14))
        self._paint_plate(painter, says, max(x, v.x + advance(says, "small") / 2 + 6), bottom + 24, "stop")

    def _paint_bracket(self, painter: QPainter, band: PrintBand, lit: bool) -> None:
        v, start, end = self.view, band.start, band.end
        x, a, b = v.x - 14, v.y + start * v.scale, v.y + end * v.scale
        painter.setPen(QPen(theme.colour("accent" if lit else "quiet"), 2 if lit else 1))
        painter.drawPolyline([QPointF(x + 6, a), QPointF(x, a), QPointF(x, b), QPointF(x + 6, b)])
        painter.setFont(face("small"))
        wide = spell(phrase("{w:bare} wide", w=end - start), self.unit)
        for says, down in ((tr(band.holds), -3), (wide, 11)):
            painter.drawText(QPointF(x - 6 - advance(says, "small"), (a + b) / 2 + down), says)

    def _name(self, one: Drawn) -> Name:
        """The name of a piece where it stands; found once for each scale, not for every pull of the cloth."""
        assert self.docket is not None
        kept, more = self._names.get(one.key), self._more(one)
        asked = (one, more, self.view.scale)
        if kept is None or kept[0] != asked:
            number = 1 + [p.id for p in self.docket.pieces].index(one.placed.piece.id)
            kept = asked, named(one, f"{number} {tr(one.placed.piece.name)}", number, more, self.view.scale)
            self._names[one.key] = kept
        return kept[1]

    def _more(self, one: Drawn) -> str:
        """Which copy, and what is particular about it."""
        assert self.docket is not None
        placed = one.placed
        parts = []
        if copy := which_copy(placed):
            parts.append(spell(copy, self.unit))
        if layers := which_layers(placed, folded=self.docket.lay.folded):
            parts.append(layers)
        if placed.mirrored and placed.piece.mirrored:
            parts.append(tr("turned over"))
        if any((h.piece, h.copy) == one.key for h in self.docket.brief.cloth.held):
            parts.append(tr("held"))
        return ", ".join(parts)

    def _paint_plate(self, painter: QPainter, words: str, x: float, y: float, token: str) -> None:
        wide = advance(words, "small") + 12
        plate = QRectF(x - wide / 2, y - 9, wide, 18)
        painter.setPen(Qt.PenStyle.NoPen)
        painter.setBrush(theme.colour("plate" if token == "accent" else "board"))
        painter.drawRoundedRect(plate, 4, 4)
        painter.setBrush(Qt.BrushStyle.NoBrush)
        painter.setPen(theme.colour("accent_deep" if token == "accent" else token))
        painter.setFont(face("small"))
        painter.drawText(plate, Qt.AlignmentFlag.AlignCenter, words)

    def _read_aloud(self, docket: Docket) -> str:
        """The plan in words, for who cannot see it."""
        parts = [spell(phrase("The plan takes {l} of cloth.", l=docket.lay.length), self.unit)]
        if docket.brief.cloth.on_hand is not None:
            says = spell(on_hand_words(docket.brief.cloth, docket.lay.length), self.unit)
            parts.append(f"{says[:1].upper()}{says[1:]}.")
        for one in self.pieces:
            at = phrase(
                "{p:word}: {x} along, {y} across.", p=one.placed.piece.name, x=one.placed.at.x, y=one.placed.at.y
            )
            parts.append(spell(at, self.unit))
        return " ".join(parts)

    def sizeHint(self) -> QSize:
        return QSize(690, 550)


def _thin(token: str, width: float) -> QPen:
    drawn_with = QPen(theme.colour(token), width)
    drawn_with.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    return drawn_with
