"""The band in hand: lit on the cloth, moved by keys alone, drawn and dragged on the lay plan."""

import pytest
from band_hands import FACE, HEM, bands, now, row, type_in, undo
from opening import drag_band, settle, to_view
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QImage
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget

from studio.brief import PrintBand
from studio.styles import rack
from studio.window.shop import Shop


def pictures(shop: Shop) -> tuple[QImage, QImage]:
    """What the pieces and the lay plan show now."""
    canvas = shop.window.table.canvas
    return canvas.board.grab().toImage(), canvas.lay.table.grab().toImage()


def test_the_band_in_hand_is_lit_everywhere(cloth: Shop):
    """While a row has the focus its plate, its band in the lay plan and its band under the pieces are lit, and the foot
    says what is in hand; a row beside it lights its own; put down, all is as before.
    """
    to_view(cloth, "lay")
    cloth.window.table.measurements.fields["title"].take_in_hand()
    settle(cloth)
    dark, lit = pictures(cloth), []
    for k in (0, 1):
        row(cloth, k).ends["start"].setFocus()
        row(cloth, k).picks["by"].setFocus()
        settle(cloth)
        assert f"cloth.bands.{k}" == cloth.window.table.lights.path
        assert [k == 0, k == 1] == [r.lit for r in bands(cloth).rows]
        assert cloth.window.table.canvas.foot.hint.text().startswith("The line of the piece")
        lit.append(pictures(cloth))
    for view in (0, 1):
        assert dark[view] != lit[0][view] != lit[1][view] != dark[view]
    cloth.window.table.measurements.fields["title"].take_in_hand()
    settle(cloth)
    assert dark == pictures(cloth)
    assert not any(r.lit for r in bands(cloth).rows)


def test_all_of_it_is_done_by_keys(cloth: Shop):
    """Tab comes to the button, Space adds a band, Tab goes through it in its order and on to the next field; Space on
    its cross takes it away and leaves the cursor close by.
    """
    cloth.desk.mend({"cloth.bands": ()})
    settle(cloth)
    cloth.window.table.construction.fields["cloth.offset"].controls[-1].setFocus()

    def press(key: Qt.Key, times: int = 1) -> QWidget:
        for _ in range(times):
            QTest.keyClick(QApplication.focusWidget(), key)
            settle(cloth)
        return QApplication.focusWidget()

    while QApplication.focusWidget() is not bands(cloth).add:
        press(Qt.Key.Key_Tab)
    press(Qt.Key.Key_Space)
    QTest.keyClicks(QApplication.focusWidget(), "0")
    press(Qt.Key.Key_Tab)
    QTest.keyClicks(QApplication.focusWidget(), "22")
    press(Qt.Key.Key_Tab)
    settle(cloth)
    assert (PrintBand(0, 220),) == now(cloth)
    seen = [QApplication.focusWidget().accessibleName()]
    seen += [press(Qt.Key.Key_Tab).accessibleName() for _ in range(5)]
    assert [
        "Band 1, For", "Band 1, Laid by", "Band 1, Motif", "Band 1, remove", "Bands, Add a band", "Match at seams",
    ] == seen  # fmt: skip
    assert bands(cloth).add is press(Qt.Key.Key_Backtab)
    press(Qt.Key.Key_Space)
    assert 2 == len(now(cloth))
    assert "Band 2, From, centimetres" == QApplication.focusWidget().accessibleName()
    assert row(cloth, 0).remove is press(Qt.Key.Key_Backtab)
    press(Qt.Key.Key_Space)
    assert 1 == len(now(cloth))
    assert row(cloth, 0).remove is QApplication.focusWidget()
    press(Qt.Key.Key_Space)
    assert () == now(cloth)
    assert bands(cloth).add is QApplication.focusWidget()


def test_escape_gives_the_band_back(cloth: Shop):
    """Escape while typing leaves the band as it was, as if nothing had been typed."""
    steps = len(cloth.desk.history.before)
    type_in(cloth, 0, "end", "22", Qt.Key.Key_Escape)
    assert (HEM, FACE) == now(cloth)
    assert "26.0" == row(cloth, 0).ends["end"].text()
    assert steps == len(cloth.desk.history.before)


def test_rows_follow_what_is_drawn_on_the_cloth(cloth: Shop):
    """A band drawn or dragged at the edge of the cloth is in its row at once, and stops at the band beside it."""
    to_view(cloth, "lay")
    table = cloth.window.table.canvas.lay.table

    drag_band(cloth, 400, 600)
    assert 3 == len(bands(cloth).rows)
    new = now(cloth)[1]
    assert (400, 600) == pytest.approx((new.start, new.end), abs=1.5 / table.view.scale)
    shown = [float(box.text()) * 10 for box in row(cloth, 1).ends.values()]
    assert shown == pytest.approx([new.start, new.end], abs=0.51)
    drag_band(cloth, 260, 800)
    assert now(cloth)[0].end == now(cloth)[1].start
    drag_band(cloth, 500, 900)
    assert 3 == len(now(cloth)), "a band is not drawn on a band"
    undo(cloth)
    undo(cloth)
    assert 2 == len(bands(cloth).rows)


def test_a_band_at_the_edge_of_the_cloth_lights_its_row(cloth: Shop):
    """With the pointer on the end of a band its row is lit, a click puts the cursor there, and nothing is moved."""
    to_view(cloth, "lay")
    table = cloth.window.table.canvas.lay.table
    at = QPoint(round(table.view.x - 10), round(table.view.y + 1330 * table.view.scale))
    QTest.mouseMove(table, at)
    settle(cloth)
    assert [False, True] == [r.lit for r in bands(cloth).rows]
    QTest.mouseClick(table, Qt.MouseButton.LeftButton, pos=at)
    settle(cloth)
    assert row(cloth, 1).ends["start"].hasFocus()
    assert "129.0" == row(cloth, 1).ends["start"].selectedText()
    assert (HEM, FACE) == now(cloth)
    QTest.mouseMove(table, at + QPoint(60, -60))
    row(cloth, 0).remove.setFocus()
    settle(cloth)
    assert [True, False] == [r.lit for r in bands(cloth).rows]


def test_bands_may_be_said_before_anything_is_known_of_the_print(shop: Shop):
    """On a plain cloth the first band added shows at once in the lay plan."""
    to_view(shop, "lay")
    before = pictures(shop)[1]
    shop.window.table.construction.open_sections(["cloth"])
    bands(shop).add.click()
    settle(shop)
    assert before != pictures(shop)[1]
    assert rack.usual().cloth.photo == shop.desk.brief.cloth.photo
