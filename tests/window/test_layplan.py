"""The lay plan in the window: bettered while one works, moved by hand, never worse."""

import itertools
from pathlib import Path

import pypdf
import pytest
from hypothesis import given
from hypothesis import strategies as st
from opening import drag_band, settle, shut, to_view, type_in
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtTest import QTest
from pytestqt.qtbot import QtBot

from studio.brief import Held, PrintBand
from studio.geometry import Point
from studio.shopping import to_buy
from studio.units import spell
from studio.window import theme
from studio.window.buy_sheet import BuySheet
from studio.window.layplan import LayPlan
from studio.window.layplan.lengths import clear_middle
from studio.window.shop import Shop
from studio.words import phrase

PATIENCE = 60_000
"""Longest wait for an event (ms); none of these tests counts time."""


def to_lay(shop: Shop) -> LayPlan:
    """Choose the view by its word."""
    to_view(shop, "lay")
    return shop.window.table.canvas.lay


def spot(view: LayPlan, piece: str) -> QPoint:
    """Where a piece is seen, near its upper left corner, px."""
    one = next(d for d in view.table.pieces if d.placed.piece.id == piece)
    box = one.cut.boundingRect()
    at = view.table.view.px(Point(box.left() + 25, box.top() + 25))
    return QPoint(round(at.x), round(at.y))


def test_the_plan_is_there_at_once(shop: Shop):
    """Chosen, the view shows every piece on the cloth and says that this plan cannot be bettered."""
    view = to_lay(shop)
    docket = shop.desk.docket
    assert {(p.piece.id, p.copy) for p in docket.lay.placed} == {d.key for d in view.table.pieces}
    assert docket.lay.proven
    assert "the best possible" in view.says.text()
    assert not view.planner.running


def test_better_plans_come_while_one_works(shop: Shop, qtbot: QtBot):
    """Gores nest: shorter plans come in, each shorter than the last, and the cloth to buy follows."""
    shop.desk.edit("skirt.style", "gored")
    settle(shop)
    at_once = shop.desk.docket.lay.length
    view, seen = to_lay(shop), []
    view.planner.better.connect(lambda _docket, lay: seen.append(lay.length))
    with qtbot.waitSignal(view.planner.better, timeout=PATIENCE):
        pass
    qtbot.waitUntil(lambda: shop.desk.docket.lay.length < at_once, timeout=PATIENCE)
    settle(shop)
    assert shop.desk.docket.lay.length == shop.desk.docket.lay.length <= min(seen)
    assert all(later <= earlier + 1e-3 for earlier, later in itertools.pairwise(seen))
    assert shop.desk.docket.fact("cloth_needed") < at_once
    view.look.click()
    assert not view.planner.running


def test_nothing_is_left_behind(shop: Shop, qtbot: QtBot):
    """With another view chosen the planner's process is gone, to be begun once more for a short while; with the window
    shut, nothing runs.
    """
    shop.desk.edit("skirt.style", "gored")
    view = to_lay(shop)
    qtbot.waitUntil(lambda: view.planner._search is not None, timeout=PATIENCE)
    worker = view.planner._search._worker  # type: ignore[union-attr, attr-defined]
    assert worker.poll() is None
    shop.window.table.canvas.choose("pieces")
    assert worker.poll() is not None
    qtbot.waitUntil(lambda: view.planner._search is not None, timeout=PATIENCE)
    aside = view.planner._search._worker  # type: ignore[union-attr, attr-defined]
    shut(qtbot, shop)
    assert aside.poll() is not None
    assert not view.planner.running


@pytest.mark.parametrize("name", ["pieces", "sewing"])
def test_the_cloth_to_buy_is_no_first_plans(shop: Shop, qtbot: QtBot, name: str):
    """With another view seen a shorter plan is looked for too: the number follows, and so does the list that lies open;
    the lay plan itself need not be looked at.
    """
    shop.desk.edit("skirt.style", "gored")
    to_view(shop, name)
    at_once, lay = shop.desk.docket.fact("cloth_needed"), shop.window.table.canvas.lay
    shop.window.do.buy.trigger()
    sheet, figure = shop.leaf, shop.window.table.strip.cloth
    assert isinstance(sheet, BuySheet)
    qtbot.waitUntil(lambda: shop.desk.docket.fact("cloth_needed") < at_once, timeout=PATIENCE)
    settle(shop)
    assert not lay.isVisible()
    assert to_buy(shop.desk.docket, "cm") == [label.text() for label in sheet.lines]
    assert spell(phrase("{b:buy}", b=shop.desk.docket.fact("cloth_needed")), "cm") in figure.accessibleName()
    sheet.reject()


def test_at_the_first_sheet_nothing_is_looked_for(shop: Shop):
    """Where no table is laid out, no plan is bettered."""
    shop.desk.edit("skirt.style", "gored")
    settle(shop)
    planner = shop.window.table.canvas.lay.planner
    assert planner.running
    shop.window.show_start(can_go_back=True)
    assert not planner.running
    shop.window.show_table()
    assert planner.running


def test_an_edit_that_moves_no_line_keeps_the_plan(shop: Shop, qtbot: QtBot):
    """While a plan is looked for, another button is chosen: what was found stays, and so does the search."""
    shop.desk.edit("skirt.style", "gored")
    settle(shop)
    at_once, view = shop.desk.docket.lay.length, to_lay(shop)
    qtbot.waitUntil(lambda: shop.desk.docket.lay.length < at_once, timeout=PATIENCE)
    found, search = shop.desk.docket.lay.length, view.planner._search
    type_in(shop, "fastening.button_diameter", "2.2")
    assert shop.desk.docket.lay.length <= found
    assert search is view.planner._search


def test_a_piece_is_dragged_and_held(shop: Shop):
    """Dragged, a piece stays where it was dropped, to the millimetre; the rest is planned round it; undo takes it back."""
    view = to_lay(shop)
    table, start = view.table, spot(view, "waistband")
    before = next(d.placed for d in table.pieces if d.placed.piece.id == "waistband")
    QTest.mousePress(table, Qt.MouseButton.LeftButton, pos=start)
    QTest.mouseMove(table, start + QPoint(30, 0))
    QTest.mouseMove(table, start + QPoint(60, 0))
    QTest.mouseRelease(table, Qt.MouseButton.LeftButton, pos=start + QPoint(60, 0))
    settle(shop)
    (held,) = shop.desk.brief.cloth.held
    assert ("waistband", 0) == (held.piece, held.copy)
    assert held.x == pytest.approx(before.at.x + 60 / table.view.scale, abs=40)
    laid = next(p for p in shop.desk.docket.lay.placed if p.piece.id == "waistband")
    assert (held.x, held.y) == (laid.at.x, laid.at.y)
    assert view.release.isEnabled()
    shop.window.do.undo.trigger()
    settle(shop)
    assert () == shop.desk.brief.cloth.held


def test_keys_do_what_the_pointer_does(shop: Shop):
    """Enter chooses a piece, arrows move it, R turns it half round, Delete lets it go, Escape puts it down."""
    view = to_lay(shop)
    table = view.table
    table.setFocus()
    QTest.keyClick(table, Qt.Key.Key_Return)
    assert table.chosen is not None
    place = next(d.placed for d in table.pieces if d.key == table.chosen)
    QTest.keyClick(table, Qt.Key.Key_Right)
    QTest.keyClick(table, Qt.Key.Key_Right, Qt.KeyboardModifier.ShiftModifier)
    settle(shop)
    (held,) = shop.desk.brief.cloth.held
    assert held.x == round(place.at.x) + 11
    QTest.keyClick(table, Qt.Key.Key_R)
    settle(shop)
    assert (place.turn + 180) % 360 == shop.desk.brief.cloth.held[0].turn
    QTest.keyClick(table, Qt.Key.Key_Delete)
    settle(shop)
    assert () == shop.desk.brief.cloth.held
    QTest.keyClick(table, Qt.Key.Key_Escape)
    assert table.chosen is None


def test_the_tools_of_looking_work_on_the_cloth(shop: Shop):
    """Larger, smaller and fit act on the view that shows, and the scale is its own."""
    view = to_lay(shop)
    scale, do = view.table.view.scale, shop.window.do
    do.larger.trigger()
    assert view.table.view.scale > scale
    assert shop.window.table.canvas.foot.scale.text() == view.table.scale_words
    do.fit.trigger()
    assert view.table.view.scale == pytest.approx(scale)
    assert not do.lines.isEnabled()


def test_inches_and_voice_reach_the_plan(shop: Shop):
    """In inches, neither the line above nor what is read aloud speaks of centimetres; every piece is named."""
    view = to_lay(shop)
    shop.window.do.unit_chosen.emit("in")
    settle(shop)
    assert " cm" not in view.says.text() + view.table.accessibleDescription()
    assert "Waistband" in view.table.accessibleDescription()


def test_what_does_not_fit_is_said(shop: Shop):
    """On cloth too narrow, the line names what does not fit, and nothing is looked for."""
    shop.desk.edit("cloth.width", 600.0)
    view = to_lay(shop)
    assert "does not fit" in view.says.text()
    assert not view.look.isEnabled()


def test_what_is_held_badly_is_not_called_good(shop: Shop):
    """Two panels held at one place: the line says so, nothing is looked for, and no share of the best is named."""
    both = (Held("skirt", 0, 0.0, 15.0), Held("skirt", 1, 0.0, 15.0))
    for path, value in (("skirt.cut", "along"), ("skirt.panels", 2), ("cloth.width", 715.0), ("cloth.held", both)):
        shop.desk.edit(path, value)
    view = to_lay(shop)
    assert "held off the cloth or on each other" in view.says.text()
    assert "best possible" not in view.says.text()
    assert not view.planner.running
    assert not view.look.isEnabled()


def test_the_print_shows_under_the_pieces(shop: Shop):
    """With bands, the board paints the cloth under each piece: a broader border fills more of it, but lies on its hem
    wherever it runs.
    """
    board = shop.window.table.canvas.board

    def picture(start: float, wide: float) -> bytes:
        shop.desk.edit("cloth.bands", (PrintBand(start, start + wide),))
        settle(shop)
        return bytes(board.grab().toImage().constBits())

    plain = bytes(board.grab().toImage().constBits())
    narrow, broad = picture(100.0, 150.0), picture(100.0, 250.0)
    assert len({plain, narrow, broad}) == 3
    assert narrow == picture(130.0, 150.0)


def test_bands_are_drawn_at_the_edge(shop: Shop):
    """On a plain strip a band is drawn by hand, one of its ends moved, and it is gone once it comes to nothing; each is
    a step to undo.
    """
    view = to_lay(shop)
    table = view.table

    slack = 1.5 / table.view.scale
    drag_band(shop, 60, 260)
    (band,) = shop.desk.brief.cloth.bands
    assert (60, 260) == pytest.approx((band.start, band.end), abs=slack)
    assert "skirt" == band.holds
    drag_band(shop, 260, 200)
    (band,) = shop.desk.brief.cloth.bands
    assert (60, 200) == pytest.approx((band.start, band.end), abs=slack)
    drag_band(shop, 200, 60)
    assert () == shop.desk.brief.cloth.bands
    shop.window.do.undo.trigger()
    settle(shop)
    assert 1 == len(shop.desk.brief.cloth.bands)


def test_the_plan_that_is_shown_is_printed(shop: Shop, qtbot: QtBot, tmp_path: Path):
    """While better plans are looked for, the one that is seen is printed where she says, and the foot names the file."""
    shop.desk.edit("skirt.style", "gored")
    settle(shop)
    at_once, view = shop.desk.docket.lay.length, to_lay(shop)
    qtbot.waitUntil(lambda: shop.desk.docket.lay.length < at_once, timeout=PATIENCE)
    asked: list[Path] = []
    shop.choose_plan = lambda parent, start: asked.append(start) or tmp_path / "plan.pdf"  # type: ignore[func-returns-value]
    shown = shop.desk.docket
    view.print.click()
    assert asked[0].name.endswith("-lay-plan.pdf")
    takes = spell(phrase("takes {l}", l=shown.lay.length), "cm")
    assert takes in pypdf.PdfReader(tmp_path / "plan.pdf").pages[0].extract_text()
    assert "Saved “plan.pdf”" == shop.window.table.canvas.foot.note.text()
    view.look.click()


def test_what_cannot_be_printed_is_said(shop: Shop, tmp_path: Path):
    """A folder that is gone is said in a sentence, thinking better of it changes nothing, and a plan with a piece that
    does not fit is not offered.
    """
    view = to_lay(shop)
    shop.choose_plan = lambda parent, start: None
    view.print.click()
    assert shop.window.notice.isHidden()
    shop.choose_plan = lambda parent, start: tmp_path / "gone" / "plan.pdf"
    view.print.click()
    assert "“plan.pdf” cannot be found" in shop.window.notice.words.text()
    shop.desk.edit("cloth.width", 600.0)
    settle(shop)
    assert not view.print.isEnabled()


def test_every_piece_has_its_number(shop: Shop):
    """On narrow cloth, seen small, each copy bears the number that the board gives its piece, on what is cut of it; a
    roomy one its name too, and a waistband long enough.
    """
    shop.desk.edit("skirt.style", "circle")
    for width in (600.0, 1500.0):
        shop.desk.edit("cloth.width", width)
        view = to_lay(shop)
        board = {int(n.name.split()[0]) for n in shop.window.table.canvas.board.scene.names}
        table, pieces = view.table, [p.id for p in shop.desk.docket.pieces]
        for one in table.pieces:
            name = table._name(one)
            number = int(name.name.split()[0])
            assert number in board
            assert one.placed.piece.id == pieces[number - 1]
            at = name.box.centre
            assert one.cut.contains(QPointF(at.x / table.view.scale, at.y / table.view.scale))
        view.planner.halt()
    assert {"1 Waistband", "2 Skirt"} == {table._name(one).name for one in table.pieces}


def test_where_the_cloth_on_hand_ends(shop: Shop):
    """A plan longer than the cloth on hand: a line across the cloth and words say where the washed cloth ends, read
    aloud too; on cloth that suffices there is none.
    """
    for path, value in (("skirt.style", "circle"), ("cloth.width", 1500.0), ("cloth.shrinkage", 0.1)):
        shop.desk.edit(path, value)

    def ends(on_hand: float) -> set[int]:
        """At which lengths (cm) the line is seen."""
        shop.desk.edit("cloth.on_hand", on_hand)
        table = to_lay(shop).table
        settle(shop)
        image, colour = table.grab().toImage(), theme.colour("stop").rgb()
        top, high = round(table.view.y), round(shop.desk.docket.lay.width * table.view.scale)
        seen = {x for x in range(image.width()) for y in range(top, top + high) if image.pixel(x, y) == colour}
        return {round((x + 0.5 - table.view.x) / table.view.scale / 10) for x in seen}

    assert any(abs(cm - 180) <= 2 for cm in ends(2000.0))
    aloud = shop.window.table.canvas.lay.table.accessibleDescription()
    assert "On hand 200.0 cm, washed 180.0 cm: ends here." in aloud
    assert set() == ends(4000.0)
    aloud = shop.window.table.canvas.lay.table.accessibleDescription()
    assert "On hand 400.0 cm, washed 360.0 cm." in aloud


@pytest.mark.parametrize("unit", ["cm", "in"])
def test_what_is_said_is_not_cut_short(shop: Shop, unit: str):
    """At 1280 px the words over the plan and the hint under it are read whole, while better plans are looked for."""
    shop.window.do.unit_chosen.emit(unit)
    shop.desk.edit("skirt.style", "circle")
    view, hint = to_lay(shop), shop.window.table.canvas.foot.hint
    settle(shop)
    assert "at least" in view.says.text()
    for words in (view.says, hint):
        assert words.text() == words.shown()


@given(st.floats(-200, 900), st.floats(0, 900), st.floats(0, 120), st.floats(10, 200))
def test_what_the_plan_takes_stands_clear(start: float, long: float, far: float, wide: float):
    """However short the plan, what it takes is not written over the name of the selvedge, nor over the line that ends
    it.
    """
    end, free = start + long, start + far
    middle = clear_middle(start, end, free, wide)
    left, right = middle - wide / 2, middle + wide / 2
    assert left >= free - 1e-9
    assert right <= end + 1e-9 or left >= end
