"""What stands where on the board."""

import itertools
import math

import pytest
from briefs import any_brief, brief
from hypothesis import HealthCheck, given, settings
from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QImage, QPainter, QPainterPath
from pytestqt.qtbot import QtBot

from studio.brief import Brief
from studio.drawing.arrange import arrange
from studio.geometry import Arc, Box, Cubic, Line, Path, Point
from studio.window.board.dimensions import OUT
from studio.window.board.drag import Drag, Grip
from studio.window.board.fitting import Place, fitted
from studio.window.board.heads import add_head
from studio.window.board.meanings import WORDS
from studio.window.board.pens import LINES, pen
from studio.window.board.samples import SAMPLE, paint_sample
from studio.window.board.scene import Scene, set_scene
from studio.window.board.view import View, drafting_scale
from studio.window.paths import painter_path
from studio.workroom import make_up

BRIEFS = {
    "usual": brief(),
    "across": brief(skirt__cut="across"),
    "four panels, two buttons": brief(skirt__cut="across", skirt__panels=4, fastening__count=2, waistband__width=60.0),
    "seven panels, hook": brief(skirt__cut="across", skirt__panels=7, fastening__kind="hook and bar"),
    "short and wide": brief(skirt__length=150.0, skirt__fullness=4.0, seams__hem=80.0),
    "narrow": brief(body__waist=450.0, skirt__fullness=1.0, waistband__extension=0.0),
}
SCALES = (0.05, 0.2, 0.37, 0.7, 2.0, 8.0)


def scene_of(one: Brief, scale: float, unit: str = "cm", before: Scene | None = None) -> Scene:
    """The scene of a brief at a scale."""
    return set_scene(arrange(make_up(one).pieces), scale, unit, before)


def overlap(one: Box, other: Box) -> bool:
    """Whether two boxes share any area."""
    return (
        min(one.right, other.right) - max(one.left, other.left) > 1e-6
        and min(one.bottom, other.bottom) - max(one.top, other.top) > 1e-6
    )


def check_words(scene: Scene) -> None:
    """No words stand on other words, nor on a piece they do not belong to."""
    names, dimensions = [n.box for n in scene.names], scene.dimensions
    for one, other in itertools.combinations([*names, *(d.box for d in dimensions)], 2):
        assert not overlap(one, other)
    for k in range(len(scene.shapes)):
        piece = scene.box(k)
        assert not any(overlap(d.box, piece) for d in dimensions if not d.inside)
    for one, other in itertools.permutations(dimensions, 2):
        assert not overlap(one.box, other.reach)
    for words, one in itertools.product([*names, *(d.box for d in dimensions)], dimensions):
        assert words == one.box or not any(overlap(words, lead.grown(0.5)) for lead in one.leads)


@pytest.mark.parametrize("scale", SCALES)
@pytest.mark.parametrize("name", BRIEFS)
def test_words_keep_clear_of_each_other(qtbot: QtBot, name: str, scale: float):
    """Names and dimensions can be read at any scale: none stands on another or on a strange piece."""
    for unit in ("cm", "in"):
        check_words(scene_of(BRIEFS[name], scale, unit))


@settings(max_examples=60, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(any_brief())
def test_words_keep_clear_whatever_is_typed(qtbot: QtBot, one: Brief):
    """The same for anything the form allows."""
    check_words(scene_of(one, 0.4))


@pytest.mark.parametrize("name", BRIEFS)
def test_every_dimension_is_shown_when_there_is_room(qtbot: QtBot, name: str):
    """At a large scale nothing is left out."""
    scene = scene_of(BRIEFS[name], 2.0)
    assert len(scene.dimensions) == sum(len(one.piece.dimensions) for one in scene.laid)
    assert len(scene.names) == len(scene.laid)


def test_dimensions_stand_off_on_their_side(qtbot: QtBot):
    """A measured line stands 20 px off its piece on the side it is said to, as long as what it measures."""
    scene = scene_of(brief(), 0.5)
    waist = next(d for d in scene.dimensions if d.path == "body.waist")
    band = scene.box(0)
    assert band.top - waist.start.y == pytest.approx(20, abs=1)
    assert waist.end.x - waist.start.x == pytest.approx(710 * 0.5, abs=1)
    assert set(OUT) == {"above", "below", "left", "right", "inside"}


def test_two_on_one_side_are_stacked(qtbot: QtBot):
    """Two dimensions over the same stretch lie one outside the other, the longer outside."""
    one = arrange(make_up(brief()).pieces)
    piece = one[0].piece
    long = piece.dimensions[0]
    short = type(long)("waistband.ease", Point(100, 0), Point(500, 0), "above", long.words)
    twice = type(piece)(**{f: getattr(piece, f) for f in piece.__struct_fields__} | {"dimensions": (long, short)})
    scene = set_scene((type(one[0])(twice, one[0].at),), 1.0, "cm", None)
    at = {d.path: d.start.y for d in scene.dimensions}
    assert at["body.waist"] < at["waistband.ease"] - 15


def test_unchanged_pieces_keep_their_paths(qtbot: QtBot):
    """An edit draws anew only the pieces it changes; another scale draws all of them."""
    first = scene_of(brief(), 0.4)
    longer = scene_of(brief(skirt__length=640.0), 0.4, before=first)
    kept = {s.piece.id: s is t for s, t in zip(first.shapes, longer.shapes, strict=True)}
    assert kept == {"waistband": True, "skirt": False, "interfacing": True}
    larger = scene_of(brief(), 0.5, before=first)
    assert not any(s is t for s, t in zip(first.shapes, larger.shapes, strict=True))


def test_small_marks_stay_to_be_seen(qtbot: QtBot):
    """However small the drawing, a notch is 5 px long, a button 8 px wide and a hole 9 px."""
    skirt = brief()
    for scale in (0.05, 0.3):
        band = scene_of(skirt, scale).shapes[0]
        by_ink = {d.ink: d.path.boundingRect() for d in band.drawn if d.ink != "notch"}
        assert by_ink["button"].width() == pytest.approx(max(8, 18 * scale))
        assert by_ink["hole"].width() == pytest.approx(max(9, 21 * scale), abs=0.1)
        notch = next(d for d in band.drawn if d.ink == "notch").path
        a, b = (QPointF(notch.elementAt(k).x, notch.elementAt(k).y) for k in (0, 1))
        assert math.hypot(b.x() - a.x(), b.y() - a.y()) == pytest.approx(max(5, 6 * scale))


def test_gather_rows_run_together_when_small(qtbot: QtBot):
    """Below 0.6 px for each mm gather rows are one pale band; above it they are drawn row by row."""
    assert scene_of(brief(), 0.59).shapes[1].band > 0
    assert scene_of(brief(), 0.6).shapes[1].band == 0


def test_the_legend_explains_what_is_there(qtbot: QtBot):
    """The legend has each kind of line and mark in this view, and no other."""
    lines = ("cut", "seam", "fold", "centre", "grain", "gather", "row stop", "zip stop", "notch")
    assert (*lines, "button", "buttonhole") == scene_of(brief(), 0.4).meanings
    assert (*lines, "hook") == scene_of(brief(fastening__kind="hook and bar"), 0.4).meanings


def test_each_meaning_has_a_sample_of_its_own(qtbot: QtBot):
    """No two samples in the legend look alike, and none is empty."""
    seen = set[bytes]()
    for meaning in WORDS:
        image = QImage(SAMPLE + 2, 18, QImage.Format.Format_RGB32)
        image.fill(Qt.GlobalColor.white)
        blank = bytes(image.constBits())
        with QPainter(image) as painter:
            paint_sample(painter, meaning, 1, 9.5)
        assert blank != bytes(image.constBits())
        seen.add(bytes(image.constBits()))
    assert len(WORDS) == len(seen)


def test_curves_stay_curves():
    """Arcs and cubics are painted as curves: a circle's length is 2 pi r, a cubic's that of the draft."""
    r = 100.0
    circle = painter_path([Path((Arc(Point(50, 50), r, 30, 360),))], 2.0)
    assert circle.length() == pytest.approx(2 * math.pi * r * 2, rel=5e-4)
    assert circle.boundingRect().center().x() == pytest.approx(100, abs=0.1)
    quarter = painter_path([Path((Arc(Point(0, 0), r, 0, 90),))], 1.0)
    end = quarter.currentPosition()
    assert (end.x(), end.y()) == pytest.approx((0, 100), abs=1e-9)  # clockwise on the page: down
    cubic = Cubic(Point(0, 0), Point(40, 0), Point(60, 100), Point(100, 100))
    drawn = painter_path([Path((cubic, Line(Point(100, 100), Point(0, 0))))], 1.0)
    assert drawn.length() == pytest.approx(cubic.length + math.hypot(100, 100), rel=1e-3)
    assert drawn.elementCount() == 5


@pytest.mark.parametrize("ink", LINES)
def test_dashes_are_counted_in_pixels(qtbot: QtBot, ink):
    """A dash is as long as the table of lines says, whatever the pen's width, lit or not."""
    for lit in (False, True):
        drawn = pen(ink, lit)
        assert [d * drawn.widthF() for d in drawn.dashPattern()] == pytest.approx(list(LINES[ink].dashes))
    assert pen(ink, True).widthF() > pen(ink).widthF()


def test_arrow_heads_are_thirty_degrees():
    """Heads are closed, 8 px long and 30 degrees wide (ISO 129-1, from memory: 15 or 30 degrees where filled)."""
    heads = QPainterPath()
    add_head(heads, Point(10, 10), Point(100, 10))
    tip, left, right = (QPointF(heads.elementAt(k).x, heads.elementAt(k).y) for k in range(3))
    assert (tip.x(), tip.y()) == (10, 10)
    angle = math.degrees(
        math.atan2(left.y() - tip.y(), left.x() - tip.x()) - math.atan2(right.y() - tip.y(), right.x() - tip.x())
    )
    assert abs(angle) == pytest.approx(30)
    assert left.x() - tip.x() == pytest.approx(8)


def test_scales_are_written_as_in_drafting():
    """Reductions are 1:n, life size 1:1, enlargements n:1 (the form of ISO 5455)."""
    life = 96 / 25.4
    assert [drafting_scale(life / k, life) for k in (10.8, 5, 2.5, 1, 0.5)] == ["1:11", "1:5", "1:2.5", "1:1", "2:1"]


def test_fitted_pieces_are_in_the_room_and_clear_of_the_legend():
    """Fitted, every piece and its words lie in the room, and away from what stands in the corner."""
    boxes = [Box(0, 0, 780, 90), Box(0, 200, 1450, 870), Box(0, 990, 750, 1056)]
    room, aside = Box(22, 22, 704, 554), Box(420, 450, 680, 540)

    def hem(scale: float) -> list[Box]:
        return [Box(1450 * scale + 20, 870 * scale, 1450 * scale + 40, 870 * scale + 50)]

    view = fitted(boxes, Place(room, aside), hem)
    for box in (*(view.box(b) for b in boxes), *(b.moved(view.x, view.y) for b in hem(view.scale))):
        assert box.joined(room) == room
        assert not overlap(box, aside)
    assert fitted(boxes, Place(room), hem).scale >= view.scale
    assert fitted(boxes, Place(room, aside), lambda _: []).scale >= view.scale


def test_words_that_nothing_helps_do_not_shrink_the_pieces():
    """Words too long for the board are lost, and the pieces are as large as they would be without them."""
    boxes, room = [Box(0, 0, 700, 600)], Box(22, 22, 704, 554)
    assert fitted(boxes, Place(room), lambda _: []) == fitted(boxes, Place(room), lambda _: [Box(0, 0, 2000, 12)])


def test_zoom_and_back():
    """Px to mm and back is where it began."""
    view = View(0.37, 12.5, -80).zoomed(1.9, Point(100, 200))
    at = view.mm(Point(321, 123))
    assert (321, 123) == pytest.approx(tuple(view.px(at)))


def test_a_drag_along_its_way_only():
    """A handle that goes up and down does not answer to a hand that goes sideways."""
    drag = Drag(Grip("skirt", "skirt.length", Point(0, 0), "y", 1.0, 620.0), Point(50, 50), 620.0, 100, 1500)
    assert drag.value(Point(90, 50), 0.5, "cm") == 620.0
    assert drag.value(Point(90, 60), 0.5, "cm") == 640.0
