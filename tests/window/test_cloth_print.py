"""The print as it is painted: one phase for the lay plan, for the pieces, for bands and for a photograph."""

from pathlib import Path

import pytest
from briefs import brief
from PySide6.QtCore import QRectF
from PySide6.QtGui import QColor, QImage, QPainter, QPainterPath

from studio.brief import Cloth
from studio.drawing.motif import starts
from studio.geometry import Point
from studio.window.cloth import pictures
from studio.window.cloth.print import paint_print
from studio.window.cloth.under import prints
from studio.window.paths import painter_path
from studio.workroom import make_up

REPEAT, MOTIF, WIDE = 300.0, 100.0, 1400
"""A motif of 100 mm every 300, in a picture with a dot a millimetre, of a cloth 1400 mm wide."""


@pytest.fixture(autouse=True)
def _own_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """Pictures are kept in a folder of the test's own."""
    monkeypatch.setattr(pictures, "folder", lambda: tmp_path)


def photograph(at: float, dots: int = 1000) -> QImage:
    """A picture of the cloth, red where a motif lies; the first starts so many dots along."""
    image = QImage(dots, WIDE, QImage.Format.Format_RGB32)
    image.fill(QColor("white"))
    with QPainter(image) as painter:
        for k in range(-1, dots // 300 + 1):
            painter.fillRect(QRectF(at + k * REPEAT, 0, MOTIF, WIDE), QColor("red"))
    return image


def red(image: QImage, x: float, y: float) -> bool:
    """Whether a motif is painted there."""
    at = image.pixelColor(round(x), round(y))
    return at.red() - at.green() > 40


def on_motif(cloth: Cloth, x: float) -> bool | None:
    """Whether a motif lies there by its repeat and the first motif's place; None within 8 mm of its ends."""
    along = (x - cloth.offset) % REPEAT
    near = min(abs(along - end) for end in (0.0, MOTIF, REPEAT))
    return None if near < 8 else along < MOTIF


@pytest.mark.parametrize("begins", [0.0, 70.0, 250.0])
@pytest.mark.parametrize("offset", [0.0, 70.0, 190.0, 1234.0])
def test_first_motif_is_where_it_is_painted(begins: float, offset: float):
    """Wherever the picture was begun, and wherever the first motif is said to lie: on the cloth and under every piece,
    the motif is painted there.
    """
    name = pictures.keep(pictures.begun(photograph(begins), begins, REPEAT))
    changes = {"cloth__photo": name, "cloth__repeat": REPEAT, "cloth__offset": offset, "cloth__width": float(WIDE)}
    made = make_up(brief("straight", **changes))
    cloth = made.brief.cloth
    table = QImage(1000, WIDE, QImage.Format.Format_RGB32)
    with QPainter(table) as painter:
        paint_print(painter, cloth, 0, 1000, 1.0)
    wanted = [(x, on_motif(cloth, x)) for x in range(0, 1000, 7)]
    assert [] == [x for x, want in wanted if want is not None and want != red(table, x, 700)]
    under, seen = prints(made), 0
    assert under is not None
    for id, placed in under.placed.items():
        box = placed.piece.as_cut.box
        image = QImage(int(box.width) + 1, int(box.height) + 1, QImage.Format.Format_RGB32)
        with QPainter(image) as painter:
            painter.translate(-box.left, -box.top)
            under.paint(painter, id, painter_path([placed.piece.as_cut], 1), QPainterPath(), 1.0)
        inside = painter_path([placed.piece.as_cut], 1)
        for j, k in ((j, k) for j in range(1, 40) for k in range(1, 12)):
            p = Point(box.left + box.width * k / 12, box.top + box.height * j / 40)
            want = on_motif(cloth, placed.on_cloth(p).x)
            if want is not None and inside.contains(QRectF(p.x - 2, p.y - 2, 4, 4)):
                seen += 1
                assert want == red(image, p.x - box.left, p.y - box.top), (id, p)
    assert seen > 500


def test_bands_and_pictures_start_anew_at_one_phase():
    """Motifs of a band and repeats of a picture begin at the first motif and go on both ways from there."""
    cloth = Cloth(repeat=300.0, offset=1000.0)
    assert [-200.0, 100.0, 400.0] == list(starts(cloth, 300.0, 0.0, 500.0))
    assert [-200.0, 400.0] == list(starts(cloth, 600.0, 0.0, 500.0))


def test_a_picture_goes_on_as_the_print_does():
    """Begun at a motif, the picture is as long as before and has its motifs at every repeat; one without a whole repeat
    is left alone.
    """
    turned = pictures.begun(photograph(70.0), 70.0 + 3 * REPEAT, REPEAT)
    assert (1000, WIDE) == (turned.width(), turned.height())
    cloth = Cloth(repeat=REPEAT)
    wanted = [(x, on_motif(cloth, x)) for x in range(0, 1000, 7)]
    assert [] == [x for x, want in wanted if want is not None and want != red(turned, x, 700)]
    short = photograph(70.0, 250)
    assert short == pictures.begun(short, 70.0, REPEAT)
    assert short == pictures.begun(short, 70.0, None)
