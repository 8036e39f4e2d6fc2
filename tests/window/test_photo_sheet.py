"""A photograph becomes the cloth: opened, its corners put right, read, used; and the shelf of cloths."""

import sys
from pathlib import Path

import pytest
from opening import settle
from PIL import Image
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QImage, QPainter
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from studio.brief import Cloth, PrintBand
from studio.geometry import Point
from studio.window.cloth import pictures
from studio.window.cloth.print import paint_print
from studio.window.photo.becomes import as_bands, cloth_of, ill_laid
from studio.window.photo.sheet import PhotoSheet
from studio.window.shelf import ShelfSheet
from studio.window.shop import Shop

sys.path.insert(0, str(Path(__file__).parents[1] / "cloth" / "photo"))
from cloths import cloth

PATIENCE = 60_000


@pytest.fixture(autouse=True)
def kept(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """Pictures and cloths are kept in a folder of the test's own."""
    monkeypatch.setattr(pictures, "folder", lambda: tmp_path / "cloths")
    monkeypatch.setattr("studio.window.shop.shelf_folder", lambda: tmp_path / "shelf")
    pictures.sizes.cache_clear()
    return tmp_path


@pytest.fixture
def photograph(tmp_path: Path) -> Path:
    """A made-up cloth with a border, as a JPEG."""
    picture, _ = cloth(7)
    path = tmp_path / "cloth.jpg"
    Image.fromarray(picture).save(path, quality=92)
    return path


def opened(shop: Shop, qtbot: QtBot, path: Path) -> PhotoSheet:
    """The sheet with a photograph on it."""
    shop.show_photo(path)
    sheet = shop.leaf
    assert isinstance(sheet, PhotoSheet)
    qtbot.waitUntil(
        lambda: bool(sheet.corners.view.corners) or (not sheet.lead.isEnabled() and bool(sheet.says.text())),
        timeout=PATIENCE,
    )
    qtbot.waitUntil(lambda: sheet.work is None or not sheet.work.running, timeout=PATIENCE)
    settle(shop)
    return sheet


def test_a_photograph_becomes_the_cloth(shop: Shop, qtbot: QtBot, photograph: Path):
    """Opened, read and used: the cloth has its bands, repeat and picture, in one step to undo."""
    before = shop.desk.brief.cloth
    sheet = opened(shop, qtbot, photograph)
    assert 4 == len(sheet.corners.view.corners)
    sheet.lead.click()
    qtbot.waitUntil(lambda: sheet.pages.currentIndex() == 1, timeout=PATIENCE)
    repeat = sheet.print.view.repeat
    assert repeat is not None and sheet.print.view.bands
    sheet.print.double.click()
    assert 2 * repeat == pytest.approx(sheet.print.view.repeat)
    sheet.print.halve.click()
    sheet.lead.click()
    settle(shop)
    now = shop.desk.brief.cloth
    assert now.repeat == pytest.approx(repeat)
    assert len(now.bands) >= 1
    assert not pictures.picture(now.photo).isNull()
    assert now.width == pytest.approx(before.width, abs=0.1)
    shop.window.do.undo.trigger()
    settle(shop)
    assert before == shop.desk.brief.cloth


def test_a_big_photograph_is_made_smaller_once(monkeypatch: pytest.MonkeyPatch):
    """However often and at whatever zoom the cloth is painted, its picture is fetched and shrunk a single time."""
    fetched: list[str] = []
    fetch = pictures.picture

    def count(name: str) -> QImage:
        fetched.append(name)
        return fetch(name)

    monkeypatch.setattr(pictures, "picture", count)
    big = QImage(2400, 1000, QImage.Format.Format_RGB888)
    big.fill(Qt.GlobalColor.darkRed)
    cloth_of = Cloth(photo=pictures.keep(big), width=1000.0)
    page = QImage(300, 200, QImage.Format.Format_RGB32)
    for zoom in range(1, 60):
        with QPainter(page) as painter:
            painter.scale(zoom / 40, zoom / 40)
            paint_print(painter, cloth_of, 0.0, 500.0, zoom / 40)
    assert 1 == len(fetched)
    assert page.pixelColor(20, 20).red() == pytest.approx(128, abs=3) and page.pixelColor(20, 20).green() < 4
    heights = [image.height() for image in pictures.sizes(cloth_of.photo)]
    assert [1000, 500, 250, 125, 62] == heights
    for wanted, got in ((2000, 1000), (1000, 1000), (999, 1000), (500, 500), (130, 250), (1, 62)):
        assert got == pictures.scaled(cloth_of.photo, wanted).height()
    assert (
        sum(i.sizeInBytes() for i in pictures.sizes(cloth_of.photo))
        < 1.4 * pictures.sizes(cloth_of.photo)[0].sizeInBytes()
    )
    assert pictures.scaled("nothere", 100).isNull()


def test_the_picture_shrinks_as_the_cloth_does():
    """What lies halfway along the picture lies halfway along the washed cloth, whatever is lost across."""
    half = QImage(200, 100, QImage.Format.Format_RGB888)
    half.fill(Qt.GlobalColor.white)
    with QPainter(half) as painter:
        painter.fillRect(100, 0, 100, 100, Qt.GlobalColor.black)
    cloth_shown = Cloth(photo=pictures.keep(half), width=1000.0, shrinkage=0.1, shrinkage_across=0.02)
    page = QImage(190, 50, QImage.Format.Format_RGB32)
    with QPainter(page) as painter:
        painter.scale(0.1, 0.1)
        paint_print(painter, cloth_shown, 0.0, 1900.0, 0.1)
    shades = [page.pixelColor(x, 20).red() for x in range(190)]
    assert next(x for x, shade in enumerate(shades) if shade < 128) == pytest.approx(90, abs=1)
    assert next(x for x in range(100, 190) if shades[x] > 128) == pytest.approx(180, abs=1)


def test_corners_and_lines_are_moved_by_hand(shop: Shop, qtbot: QtBot, photograph: Path):
    """A corner follows the pointer and the keys; a band is drawn, moved and taken away."""
    sheet = opened(shop, qtbot, photograph)
    view = sheet.corners.view
    start = view.to_px(view.corners[0]).toPoint()
    QTest.mousePress(view, Qt.MouseButton.LeftButton, pos=start)
    QTest.mouseMove(view, start + QPoint(12, 9))
    QTest.mouseRelease(view, Qt.MouseButton.LeftButton, pos=start + QPoint(12, 9))
    moved = view.corners[0]
    assert view.to_dot(view.to_px(moved)) == pytest.approx(view.to_dot((start + QPoint(12, 9)).toPointF()), abs=2)
    QTest.keyClick(view, Qt.Key.Key_3)
    third = view.corners[2]
    QTest.keyClick(view, Qt.Key.Key_Left, Qt.KeyboardModifier.ShiftModifier)
    assert third.x - 10 == pytest.approx(view.corners[2].x, abs=0.01)
    sheet.lead.click()
    qtbot.waitUntil(lambda: sheet.pages.currentIndex() == 1, timeout=PATIENCE)
    strip = sheet.print.view
    strip.bands = []
    a, b = (strip.to_px(Point(300, y / strip.mm_per_dot)).toPoint() for y in (300.0, 420.0))
    QTest.mousePress(strip, Qt.MouseButton.LeftButton, pos=a)
    QTest.mouseMove(strip, b)
    QTest.mouseRelease(strip, Qt.MouseButton.LeftButton, pos=b)
    assert (300.0, 420.0) == pytest.approx(strip.bands[0], abs=3)
    while strip.chosen != (0, 0):
        QTest.keyClick(strip, Qt.Key.Key_N)
    start_of = strip.bands[0][0]
    QTest.keyClick(strip, Qt.Key.Key_Down)
    assert start_of + 1 == pytest.approx(strip.bands[0][0])
    QTest.keyClick(strip, Qt.Key.Key_Delete)
    assert [] == strip.bands


def test_what_is_no_picture_is_said_in_a_sentence(shop: Shop, qtbot: QtBot, tmp_path: Path):
    """A broken file leaves the sheet with one sentence and nothing to read."""
    path = tmp_path / "broken.jpg"
    path.write_bytes(b"\xff\xd8\xff\xe0 no picture at all")
    shop.show_photo(path)
    sheet = shop.leaf
    assert isinstance(sheet, PhotoSheet)
    qtbot.waitUntil(lambda: "broken.jpg" in sheet.says.text(), timeout=PATIENCE)
    assert not sheet.lead.isEnabled()
    sheet.reject()


def test_reading_can_be_stopped(shop: Shop, qtbot: QtBot, photograph: Path):
    """Cancelled while it reads, the sheet stays with its corners; cancelled again it goes, and nothing has changed."""
    before = shop.desk.brief
    sheet = opened(shop, qtbot, photograph)
    sheet.lead.click()
    sheet.reject()
    assert 0 == sheet.pages.currentIndex()
    assert sheet.lead.isEnabled()
    sheet.reject()
    settle(shop)
    assert before == shop.desk.brief


def test_a_distance_between_two_points_gives_the_scale(shop: Shop, qtbot: QtBot, photograph: Path):
    """Two points are dragged to what was measured and its length is typed: the cloth's width follows from it, and a
    length that makes no cloth is refused in a sentence.
    """
    sheet = opened(shop, qtbot, photograph)
    page, view = sheet.corners, sheet.corners.view
    width = shop.desk.brief.cloth.width
    page.known.click()
    assert not page.width_box.isEnabled()
    sheet.lead.click()
    assert 0 == sheet.pages.currentIndex() and sheet.work is None  # nothing was typed
    a, b, c, d = view.corners
    ends = (a.towards(b, 0.5), d.towards(c, 0.5))  # straight across, so the whole width apart
    for k, end in enumerate(ends):
        start = view.to_px(view.between[k]).toPoint()
        QTest.mousePress(view, Qt.MouseButton.LeftButton, pos=start)
        QTest.mouseMove(view, view.to_px(end).toPoint())
        QTest.mouseRelease(view, Qt.MouseButton.LeftButton, pos=view.to_px(end).toPoint())
    view.setFocus()
    QTest.keyClick(view, Qt.Key.Key_6)
    foot = view.between[1]
    QTest.keyClick(view, Qt.Key.Key_Up)
    assert foot.y - 1 == pytest.approx(view.between[1].y, abs=0.01)
    assert [a, b, c, d] == view.corners
    page.apart_box.setText("1 cm")
    sheet.lead.click()
    assert "between 5" in sheet.says.text()
    page.apart_box.setText("10 cm")
    sheet.lead.click()
    qtbot.waitUntil(lambda: "by that distance" in sheet.says.text(), timeout=PATIENCE)
    assert 0 == sheet.pages.currentIndex() and sheet.lead.isEnabled()
    page.apart_box.setText(f"{width / 2:.0f} mm")
    sheet.lead.click()
    qtbot.waitUntil(lambda: sheet.pages.currentIndex() == 1, timeout=PATIENCE)
    sheet.lead.click()
    settle(shop)
    assert shop.desk.brief.cloth.width == pytest.approx(width / 2, rel=0.02)


def test_bands_over_each_other_are_refused(shop: Shop, qtbot: QtBot, photograph: Path):
    """Bands that their rows would refuse are refused on the sheet, in the same words, and may be put right there."""
    sheet = opened(shop, qtbot, photograph)
    sheet.lead.click()
    qtbot.waitUntil(lambda: sheet.pages.currentIndex() == 1, timeout=PATIENCE)
    sheet.print.view.bands = [(100.0, 300.0), (250.0, 400.0)]
    before = shop.desk.brief.cloth
    sheet.lead.click()
    settle(shop)
    assert "over the band from" in sheet.says.text()
    assert before == shop.desk.brief.cloth
    sheet.print.view.bands = [(100.0, 250.0), (250.0, 400.0)]
    sheet.lead.click()
    settle(shop)
    assert 2 == len(shop.desk.brief.cloth.bands)


def test_what_the_wash_takes_is_taken_off():
    """A photograph shows the cloth as it is bought: bands, repeat and first motif come as the first wash leaves them,
    so a border along the far selvedge still ends with the cloth.
    """
    bought = Cloth(width=1500.0, shrinkage=0.05, shrinkage_across=0.02)
    now = cloth_of(bought, 1400.0, [(1200.0, 1400.0)], 300.0, 40.0)
    assert 1400.0 == now.width
    assert (1176.0, 1372.0) == pytest.approx((now.bands[0].start, now.bands[0].end))
    assert now.washed == pytest.approx(now.bands[0].end)
    assert (285.0, 38.0) == pytest.approx((now.repeat, now.offset))
    assert ill_laid(now) is None
    assert ill_laid(cloth_of(bought, 1400.0, [(1200.0, 1405.0)], None, 0.0))


def test_the_broadest_band_is_for_the_skirt():
    """Bands are given to what usually shows them; one that is too broad for a waistband is for nothing yet."""
    made = as_bands([(1200.0, 1240.0), (0.0, 300.0), (500.0, 540.5)])
    assert ["skirt", "nothing", "waistband"] == [b.holds for b in made]
    assert ["skirt", "nothing"] == [b.holds for b in as_bands([(0.0, 300.0), (500.0, 700.0)])]


def test_a_cloth_is_kept_and_used_again(shop: Shop):
    """A named cloth is put on the shelf, found there by another skirt with all that it is, and taken off again; what is
    on hand and held stays with the skirt.
    """
    shop.desk.mend({"cloth.name": "Sprig & co", "cloth.bands": (PrintBand(0, 100),), "cloth.on_hand": 1800.0})
    shop.window.do.shelf.trigger()
    sheet = shop.leaf
    assert isinstance(sheet, ShelfSheet)
    assert 0 == sheet.list.count()
    sheet.keep.click()
    assert 1 == sheet.list.count()
    assert "Sprig & co" in sheet.list.item(0).text()
    sheet.reject()
    shop.desk.mend({"cloth.bands": (), "cloth.name": "", "cloth.on_hand": 900.0})
    settle(shop)
    shop.window.do.shelf.trigger()
    sheet = shop.leaf
    assert isinstance(sheet, ShelfSheet)
    assert not sheet.keep.isEnabled()
    sheet.lead.click()
    settle(shop)
    now = shop.desk.brief.cloth
    assert ("Sprig & co", (PrintBand(0, 100),), 900.0) == (now.name, now.bands, now.on_hand)
    shop.window.do.shelf.trigger()
    sheet = shop.leaf
    assert isinstance(sheet, ShelfSheet)
    sheet.off.click()
    assert 0 == sheet.list.count()
    sheet.reject()


def test_a_shelf_with_rubbish_on_it(shop: Shop, kept: Path):
    """Files that are no cloth are passed over, and stay."""
    folder = kept / "shelf"
    folder.mkdir()
    (folder / "odd.cloth").write_text("{", encoding="utf-8")
    shop.window.do.shelf.trigger()
    sheet = shop.leaf
    assert isinstance(sheet, ShelfSheet)
    assert 0 == sheet.list.count()
    assert (folder / "odd.cloth").exists()
    sheet.reject()
