"""Pages painted by Qt: into a PDF here, into a picture in png.py. Marks are translated; nothing is decided."""

import pathlib
from collections.abc import Iterable, Iterator
from functools import lru_cache

from PySide6.QtCore import QMarginsF, QPointF, QRectF, QSizeF, Qt
from PySide6.QtGui import (
    QColor,
    QFont,
    QFontDatabase,
    QFontMetricsF,
    QGuiApplication,
    QPageLayout,
    QPageSize,
    QPainter,
    QPainterPath,
    QPdfWriter,
    QPen,
)

from studio.drawing import COLOURS, PENS, Face, Mark, Stroke, Words
from studio.drawing.lettering import ABOVE, BELOW, font_file, printable
from studio.files import beside
from studio.geometry import Arc, Box, Line, Path
from studio.trouble import Trouble
from studio.units import spell
from studio.words import phrase, tr

from .curves import cubics
from .page import Page, Size
from .pdf_boxes import mend
from .reach import boxed, seen
from .sizes import LONGEST

CREATOR = "Skirtwright"

_RESOLUTION = 1200
_EM = 100
_PATCH = 0.6


def write_pdf(path: pathlib.Path, pages: Iterable[Page], title: str) -> Iterator[int]:
    """Write pages at true scale, yielding how many are done after each, so that a caller can show it and stop.

    Nothing is written unless it is run through. The file appears when the last page is in it; closing the iterator
    before that leaves the old file, or none. Raises `Trouble` for a page that is too long, `OSError` for the disk.
    """
    application()
    with beside(path) as fresh:
        sizes: list[Size] = []
        writer = QPdfWriter(str(fresh))
        writer.setResolution(_RESOLUTION)
        writer.setTitle(printable(title))
        writer.setCreator(CREATOR)
        painter = QPainter()
        try:
            for page in pages:
                _turn_to(writer, page.size)
                if not (writer.newPage() if sizes else painter.begin(writer)):
                    raise Trouble(tr("The PDF cannot be written; is the disk full?"))
                sizes.append(page.size)
                painter.resetTransform()
                painter.scale(_RESOLUTION / 25.4, _RESOLUTION / 25.4)
                paint(painter, page.drawing, page.box)
                yield len(sizes)
        finally:
            if painter.isActive():
                painter.end()
            del writer
        if not sizes:
            raise Trouble(tr("There is no page to print."))
        mend(fresh, sizes, printable(title), CREATOR)


def _turn_to(writer: QPdfWriter, size: Size) -> None:
    if max(size) > LONGEST:
        says = phrase("A page of {l} is too long for a PDF; {m} is the most.", l=max(size), m=LONGEST)
        raise Trouble(spell(says, "cm"))
    upright = QPageSize(
        QSizeF(min(size), max(size)), QPageSize.Unit.Millimeter, "", QPageSize.SizeMatchPolicy.ExactMatch
    )
    lies = QPageLayout.Orientation.Landscape if size.width > size.height else QPageLayout.Orientation.Portrait
    writer.setPageLayout(QPageLayout(upright, lies, QMarginsF(0, 0, 0, 0), QPageLayout.Unit.Millimeter))


def application() -> QGuiApplication:
    """The running Qt application; one without a screen where there is none yet."""
    running = QGuiApplication.instance()
    if isinstance(running, QGuiApplication):
        return running
    return _without_screen()


@lru_cache(maxsize=1)
def _without_screen() -> QGuiApplication:
    return QGuiApplication(["skirtwright", "-platform", "offscreen"])


def paint(painter: QPainter, drawing: Iterable[Mark], room: Box) -> None:
    """Paint what `room` shows of a drawing; the painter counts in mm."""
    for mark in seen(boxed(drawing), room):
        _paint(painter, mark, room)


def _paint(painter: QPainter, mark: Mark, room: Box) -> None:
    if isinstance(mark, Stroke):
        _stroke(painter, mark)
    elif isinstance(mark, Words):
        _words(painter, mark)
    elif mark.clip is None:
        for inner in mark.marks:
            _paint(painter, inner, room)
    else:
        painter.save()
        painter.setClipRect(QRectF(*mark.clip[:2], mark.clip.width, mark.clip.height), Qt.ClipOperation.IntersectClip)
        paint(painter, mark.marks, mark.clip)
        painter.restore()


def _stroke(painter: QPainter, stroke: Stroke) -> None:
    painter.setPen(Qt.PenStyle.NoPen if stroke.bare else _pen(stroke))
    painter.setBrush(_colour(COLOURS[stroke.fill]) if stroke.fill else Qt.BrushStyle.NoBrush)
    painter.drawPath(_run(stroke.path))


def _pen(stroke: Stroke) -> QPen:
    pen = QPen(_colour(COLOURS[stroke.line_colour]), stroke.line_width)
    pen.setCapStyle(Qt.PenCapStyle.FlatCap)
    pen.setJoinStyle(Qt.PenJoinStyle.MiterJoin)
    if pattern := PENS[stroke.ink].pattern:
        pen.setDashPattern([float(p) for p in pattern])
    return pen


@lru_cache(maxsize=16)
def _colour(name: str) -> QColor:
    return QColor(name)


def _run(path: Path) -> QPainterPath:
    """The path as Qt has it; arcs as cubics of our own, since Qt's arcs miss by 0.27 mm on a radius of 1 m."""
    run = QPainterPath(QPointF(*path.start))
    for curve in path.curves:
        if isinstance(curve, Line):
            run.lineTo(*curve.end)
            continue
        for c in cubics(curve) if isinstance(curve, Arc) else (curve,):
            run.cubicTo(*c.leave, *c.arrive, *c.end)
    if path.closed:
        run.closeSubpath()
    return run


def _words(painter: QPainter, words: Words) -> None:
    """One line of words: set at 100 units an em and scaled, since points would follow the resolution."""
    text, scale = printable(words.text), words.height / _EM
    font, metrics = _font(words.face)
    wide = metrics.horizontalAdvance(text)
    left = {"left": 0.0, "centre": -wide / 2, "right": -wide}[words.align]
    painter.save()
    painter.translate(*words.at)
    painter.rotate(words.turn)
    painter.scale(scale, scale)
    if words.patch:
        aside = _PATCH / scale
        painter.fillRect(
            QRectF(left - aside, -ABOVE * _EM, wide + 2 * aside, (ABOVE + BELOW) * _EM), _colour(COLOURS["white"])
        )
    painter.setFont(font)
    painter.setPen(_colour(COLOURS[words.letter_colour]))
    painter.drawText(QPointF(left, 0), text)
    painter.restore()


@lru_cache(maxsize=8)
def _font(face: Face) -> tuple[QFont, QFontMetricsF]:
    families = QFontDatabase.applicationFontFamilies(QFontDatabase.addApplicationFont(str(font_file(face))))
    font = QFont(families)
    font.setPixelSize(_EM)
    font.setItalic(face == "italic")
    weights = {"semibold": QFont.Weight.DemiBold, "serif": QFont.Weight.DemiBold, "bold": QFont.Weight.Bold}
    font.setWeight(weights.get(face, QFont.Weight.Normal))
    font.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    font.setFeature(QFont.Tag("liga"), 0)  # a ligature cannot be read back as its letters
    return font, QFontMetricsF(font)
