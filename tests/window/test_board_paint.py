"""What is painted on the board, and that no more than needs to be is painted again."""

import pytest
from board_bench import RULER, Table, differing
from briefs import any_brief
from hypothesis import HealthCheck, given, settings
from PySide6.QtGui import QImage
from PySide6.QtWidgets import QWidget
from pytestqt.qtbot import QtBot

from studio.brief import Brief
from studio.geometry import Box, Point
from studio.window import theme
from studio.window.board import Board
from studio.window.board.scene import changed
from studio.workroom import make_up


@pytest.fixture
def table(qtbot: QtBot, bench: QWidget) -> Table:
    """The usual skirt on a board."""
    return Table(qtbot, bench)


def near(table: Table, path: str) -> list[Box]:
    """Where something that a path governs is painted, with its halo, px."""
    board = table.board
    assert board.scene is not None
    boxes = []
    for one, shape in zip(board.scene.laid, board.scene.shapes, strict=True):
        at = board.view.px(one.at)
        for drawn in shape.drawn:
            if path in drawn.governs:
                for line in drawn.path.toSubpathPolygons():
                    r = line.boundingRect()
                    boxes.append(Box(r.left(), r.top(), r.right(), r.bottom()).moved(*at).grown(7))
    for d in board.scene.dimensions:
        if d.path == path:
            boxes.append(d.span.joined(d.box).moved(board.view.x, board.view.y).grown(8))
    boxes += [Box(*board.view.px(g.at), *board.view.px(g.at)).grown(16) for g in board.scene.grips if g.path == path]
    return boxes


@pytest.mark.parametrize("path", ["skirt.length", "waistband.extension", "opening.zip_stop", "seams.first_turn"])
def test_light_touches_only_what_is_governed(table: Table, path: str):
    """Lighting a number changes the lines it moves, its dimension and its handle, and not one pixel elsewhere."""
    before = table.picture()
    table.board.light(path)
    places = near(table, path)
    pixels = differing(before, table.picture())
    assert len(pixels) > 50
    assert not [p for p in pixels if not any(b.meets(Box(*p, p[0] + 1, p[1] + 1)) for b in places)]
    table.board.light("")
    assert not differing(before, table.picture())


def test_light_is_the_accent(table: Table):
    """A lit hem line is drawn in the accent, and it is not there before."""
    at = table.board.view.px(Point(300, 210 + 620))

    def shades() -> set[str]:
        image = table.picture()
        return {
            image.pixelColor(x, y).name()
            for x in range(round(at.x) - 20, round(at.x) + 20)
            for y in range(round(at.y) - 3, round(at.y) + 4)
        }

    assert theme.colour("accent").name() not in shades()
    table.board.light("skirt.length")
    assert theme.colour("accent").name() in shades()


EXTREMES = [
    {"waistband__extension": 0.0},
    {"skirt__length": 1500.0, "skirt__fullness": 4.0},
    {"body__waist": 400.0, "skirt__fullness": 1.0, "skirt__length": 150.0},
    {"skirt__cut": "across", "skirt__panels": 24, "gathers__rows": 4},
    {"fastening__count": 3, "waistband__width": 80.0, "waistband__interfacing": "none"},
]


@pytest.mark.qt_log_level_fail("WARNING")
@pytest.mark.qt_log_ignore("propagateSizeHints")  # what a platform without windows cannot do
@pytest.mark.parametrize("wish", ["light", "dark"])
@pytest.mark.parametrize("skirt", EXTREMES, ids=str)
def test_the_extremes_are_painted(qtbot: QtBot, bench: QWidget, skirt: dict, wish: theme.Wish):
    """Very small, large and many pieces are painted in either theme, near and far, and Qt complains of nothing."""
    try:
        theme.wear(wish)
        table = Table(qtbot, bench, (1250, 880), **skirt)
        paint_all_ways(table)
        assert len(set(rows(table.picture()))) > 100
    finally:
        theme.wear("light")


@pytest.mark.qt_log_level_fail("WARNING")
@settings(max_examples=25, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(one=any_brief())
def test_anything_typed_is_painted(qtbot: QtBot, one: Brief):
    """Whatever the form allows is painted, and Qt complains of nothing."""
    board = Board()
    board.resize(690, 550)
    board.show_docket(make_up(one))
    board.grab()
    board.close()


def paint_all_ways(table: Table) -> None:
    """Paint at life size, very small, in inches, and fitted again with a number lit."""
    board = table.board
    board.life_size()
    table.picture()
    for _ in range(30):
        board.zoom_out()
    table.picture()
    board.set_unit("in")
    board.light("skirt.length")
    board.fit()


def rows(image: QImage) -> list[bytes]:
    """The rows of a picture."""
    return [bytes(image.constScanLine(y)) for y in range(image.height())]


EDITS = [
    {"skirt__length": 640.0},
    {"skirt__fullness": 1.9},
    {"waistband__width": 34.0},
    {"waistband__extension": 55.0},
    {"opening__zip_stop": 150.0},
    {"gathers__rows": 3},
    {"fastening__count": 2},
    {"seams__allowance": 12.0},
    {"waistband__interfacing": "none"},
    {"skirt__cut": "across"},
    {"cloth__width": 1200.0},
]


@pytest.mark.parametrize("edit", EDITS, ids=str)
def test_what_an_edit_repaints_is_all_that_it_changes(table: Table, edit: dict):
    """Every pixel that an edit changes lies where the board asks to be painted again."""
    board = table.board
    board.hold(True)  # a fit would paint everything
    before, scene, legend = table.picture(), board.scene, board.scene.meanings
    table.show(**edit)
    pixels = differing(before, table.picture())
    box = changed(scene, board.scene)
    if box is None:
        assert not pixels
        return
    assert legend == board.scene.meanings
    place = box.moved(round(board.view.x), round(board.view.y))
    assert pixels
    assert not [(x, y) for x, y in pixels if not place.meets(Box(x, y, x + 1, y + 1))]


def test_the_ring_and_its_bubble_leave_nothing_behind(table: Table):
    """What a drag has painted is gone when it is given up."""
    before = table.picture()
    start = table.handle("skirt.fullness")
    table.press(start)
    table.move(start.__class__(start.x() - 60, start.y()))
    assert len(differing(before, table.picture())) > 3000
    table.release(start.__class__(start.x() - 60, start.y()))
    table.show(skirt__fullness=2.0)
    table.move(start.__class__(600, 30))
    assert not differing(before, table.picture())


def test_the_cut_line_is_where_the_scale_says(table: Table):
    """The left cut edge of the skirt is inked at its millimetre, and the tissue begins behind it."""
    image = table.picture()
    at = table.board.view.px(Point(-15, 500))
    x = round(at.x)
    dark = min(range(x - 3, x + 3), key=lambda k: image.pixelColor(k, round(at.y)).lightness())
    assert abs(dark + 0.5 - at.x) <= 1
    assert image.pixelColor(x + 9, round(at.y)).name() == theme.colour("tissue").name()


@pytest.mark.parametrize("unit", ["cm", "in"])
def test_rulers_carry_a_tick_at_each_figure(table: Table, unit: str):
    """At life size the ruler has a long tick at every whole centimetre or inch of the table."""
    board = table.board
    board.set_unit(unit)
    board.life_size()
    image = table.picture()
    one = 10.0 if unit == "cm" else 25.4
    first = int(board.view.mm(Point(60, 0)).x / one) + 1
    for k in range(first, first + 4):
        x = round(board.view.x) + round(k * one * board.view.scale)
        assert image.pixelColor(x, RULER - 8).lightness() < theme.colour("chrome").lightness() - 40


def test_light_and_dark(qtbot: QtBot, table: Table):
    """Another theme changes ground, tissue and lines at once."""
    try:
        theme.wear("light")
        light = table.picture()
        theme.wear("dark")
        dark = table.picture()
        assert _shade(light, 300, 320) == theme.LIGHT.tissue.lower()
        assert _shade(dark, 300, 320) == theme.DARK.tissue.lower()
    finally:
        theme.wear("light")


def _shade(image: QImage, x: int, y: int) -> str:
    return image.pixelColor(x, y).name()


def test_the_legend_can_be_put_away(table: Table):
    """Without the legend the pieces have its room too."""
    scale = table.board.view.scale
    table.board.legend = False
    assert not table.board.legend
    assert table.board.view.scale >= scale
    table.board.legend = True
    assert table.board.view.scale == scale


def test_where_it_was_stays_dotted(table: Table):
    """While a hem is dragged, the old hem line stays, dotted."""
    start = table.handle("skirt.length")
    before = table.picture()
    table.press(start)
    table.move(start.__class__(start.x(), start.y() + 40))
    image, y = table.picture(), start.y()
    row = [image.pixelColor(x, y).lightness() for x in range(start.x() + 60, start.x() + 160)]
    was = [before.pixelColor(x, y).lightness() for x in range(start.x() + 60, start.x() + 160)]
    assert min(row) < 230
    assert row != was
    table.release(start.__class__(start.x(), start.y() + 40))


@pytest.mark.parametrize(("unit", "words"), [("cm", "62.0"), ("in", "24 3/8")])
def test_measured_lines_are_in_the_makers_unit(table: Table, unit: str, words: str):
    """A length reads in centimetres to the millimetre, or in inches to the nearest eighth: 620 mm is 24.41 in."""
    table.board.set_unit(unit)
    assert words in {d.words for d in table.board.scene.dimensions if d.path == "skirt.length"}
