"""The sewing order in the window: chosen, ticked, kept up to date."""

from pathlib import Path

from opening import open_shop, settle, shut, to_view, type_in
from PySide6.QtCore import Qt
from PySide6.QtGui import QColor
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication
from pytestqt.qtbot import QtBot

from studio.brief.skirt_file import save
from studio.sewing import sewing_order
from studio.styles import rack
from studio.window import theme
from studio.window.settings import TICKED, Settings
from studio.window.sewing import SewingView
from studio.window.shop import Shop
from studio.window.widgets.views import ViewSwitch


def to_sewing(shop: Shop) -> SewingView:
    """Choose the view by its word."""
    to_view(shop, "sewing")
    return shop.window.table.canvas.sewing


def test_choosing_the_view_shows_the_steps(shop: Shop):
    """Sewing order in place of the board: every step of this skirt, in order, under its number."""
    canvas = shop.window.table.canvas
    assert not canvas.sewing.steps  # nothing is worked out before it is asked for
    view = to_sewing(shop)
    assert view.isVisible()
    assert not canvas.board.isVisible()
    docket = shop.desk.docket
    wanted = [(str(n), m.title) for n, m in enumerate(sewing_order(docket.brief, docket.draft), 1)]
    assert wanted == [(row.number.text(), row.title.text()) for row in view.in_order()]


def test_arrow_keys_reach_the_view_and_back(shop: Shop):
    """The switch is worked by keys alone; the board's own tools rest while it is away."""
    switch = shop.window.toolbar.heading
    assert isinstance(switch, ViewSwitch)
    switch.word("pieces").setFocus()
    QTest.keyClick(switch.word("pieces"), Qt.Key.Key_Right)
    QTest.keyClick(switch.word("lay"), Qt.Key.Key_Right)
    settle(shop)
    assert shop.window.table.canvas.sewing.isVisible()
    assert not shop.window.do.fit.isEnabled()
    QTest.keyClick(switch.word("sewing"), Qt.Key.Key_Left)
    QTest.keyClick(switch.word("lay"), Qt.Key.Key_Left)
    settle(shop)
    assert shop.window.table.canvas.board.isVisible()
    assert shop.window.do.fit.isEnabled()


def test_ticks_stay_after_an_edit(shop: Shop):
    """A step ticked with the space bar stays ticked while numbers change, and its words follow them."""
    view = to_sewing(shop)
    row = view.steps["cut"]
    row.tick.setFocus()
    QTest.keyClick(row.tick, Qt.Key.Key_Space)
    before = row.says.text()
    type_in(shop, "body.waist", "80")
    assert view.steps["cut"] is row
    assert row.tick.isChecked()
    assert before != row.says.text()
    assert [row] == [r for r in view.in_order() if r.tick.isChecked()]


def test_steps_follow_the_style(shop: Shop):
    """Another style brings its own steps; what both have keeps its tick."""
    view = to_sewing(shop)
    QTest.mouseClick(view.steps["prepare"].title, Qt.MouseButton.LeftButton)  # the title belongs to its box
    shop.desk.edit("skirt.style", "pleated")
    settle(shop)
    assert "pleats" in view.steps
    assert "gather" not in view.steps
    assert view.steps["prepare"].tick.isChecked()


def test_a_hidden_view_rests(shop: Shop):
    """While the board shows, edits cost the sewing order nothing; seen again it is up to date."""
    view = to_sewing(shop)
    shop.window.table.canvas.choose("pieces")
    words = view.steps["cut"].says.text()
    type_in(shop, "body.waist", "80")
    assert words == view.steps["cut"].says.text()
    shop.window.table.canvas.choose("sewing")
    assert words != view.steps["cut"].says.text()


def test_each_skirt_has_its_own_ticks(shop: Shop, tmp_path: Path):
    """Another skirt starts without ticks; back at the first, its ticks are there again."""
    one, other = tmp_path / "one.skirt", tmp_path / "other.skirt"
    for path in (one, other):
        save(path, rack.usual())
    view = to_sewing(shop)
    for path, tick in ((one, True), (other, False), (one, True)):
        shop.files.open_path(path)
        settle(shop)
        row = view.steps["cut"]
        if path == one and not row.tick.isChecked() and not view.done:
            row.tick.click()
        assert tick == row.tick.isChecked()
    assert {"cut"} == view.done


def test_ticks_are_there_again_another_day(qtbot: QtBot, settings: Settings, tmp_path: Path):
    """What was ticked of a saved skirt is ticked when the window opens again; it is no edit that wants saving."""
    path = tmp_path / "one.skirt"
    save(path, rack.usual())
    shop = open_shop(qtbot, settings, path)
    view = to_sewing(shop)
    for key in ("prepare", "opening seam"):
        view.steps[key].tick.click()
    assert shop.desk.clean
    shut(qtbot, shop)
    again = open_shop(qtbot, settings, path)
    view = to_sewing(again)
    assert ["prepare", "opening seam"] == [row.key for row in view.in_order() if row.tick.isChecked()]
    view.steps["prepare"].tick.click()
    assert {"opening seam"} == settings.ticks(path)
    shut(qtbot, again)


def test_ticks_go_along_into_the_file(shop: Shop, tmp_path: Path):
    """Ticks of a skirt that was never saved are kept from its first save on."""
    to_sewing(shop).steps["cut"].tick.click()
    shop.files.choose_save = lambda *_: tmp_path / "new.skirt"
    assert shop.files.save()
    assert {"cut"} == shop.settings.ticks(tmp_path / "new.skirt")


def test_so_many_skirts_keep_their_ticks(settings: Settings):
    """The latest forty; a skirt whose ticks are all cleared takes no place."""
    for k in range(TICKED + 5):
        settings.keep_ticks(Path(f"{k} a\tb.skirt"), {"cut", "tier/2"})
    assert [set()] * 5 == [settings.ticks(Path(f"{k} a\tb.skirt")) for k in range(5)]
    assert all({"cut", "tier/2"} == settings.ticks(Path(f"{k} a\tb.skirt")) for k in range(5, TICKED + 5))
    settings.keep_ticks(Path("9 a\tb.skirt"), ())
    assert set() == settings.ticks(Path("9 a\tb.skirt"))


def test_inches_reach_the_steps(shop: Shop):
    """In inches, no step speaks of centimetres."""
    view = to_sewing(shop)
    shop.window.do.unit_chosen.emit("in")
    settle(shop)
    assert not any(" cm" in row.says.text() for row in view.in_order())


def test_tab_goes_down_the_boxes(shop: Shop):
    """From box to box by Tab, in the order of the steps."""
    view = to_sewing(shop)
    first, second = view.in_order()[:2]
    first.tick.setFocus()
    QTest.keyClick(first.tick, Qt.Key.Key_Tab)
    assert second.tick is QApplication.focusWidget()


def test_pictures_wear_the_theme(shop: Shop):
    """By day and by night the cloth is painted in the colours worn: its tint on the ground of the forms."""
    view = to_sewing(shop)
    box = view.steps["mark"].picture
    for wish in ("light", "dark"):
        theme.wear(wish)
        settle(shop)
        image = box.grab().toImage()
        shades = {image.pixelColor(x, image.height() // 2).name() for x in range(image.width())}
        assert QColor(theme.current().board).name() in shades
    theme.wear("light")


def test_nothing_is_cut_off_in_a_narrow_window(shop: Shop):
    """In the smallest window every row is as wide as there is room, its picture whole."""
    shop.desk.edit("skirt.style", "tiered")
    shop.window.resize(1100, 700)
    view = to_sewing(shop)
    room = view.viewport().width()
    for row in view.in_order():
        right = row.picture.mapTo(view.viewport(), row.picture.rect().topRight()).x()
        assert right < room, row.key
