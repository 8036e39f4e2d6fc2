"""A cloth bent flat."""

import math

import numpy as np
import pytest
from PIL import Image, ImageDraw

from studio.cloth.photo import Corners, Photo
from studio.cloth.photo.corners import find_corners
from studio.cloth.photo.flat import convex, homography, moved, shape_of, straighten
from studio.geometry import Point
from studio.trouble import Trouble

SQUARE = [Point(0.0, 0.0), Point(1.0, 0.0), Point(1.0, 1.0), Point(0.0, 1.0)]


def test_a_square_seen_in_perspective():
    """Worked by hand: x' = 2x/(1 + y), y' = 3y/(1 + y) takes the unit square to (0,0), (2,0), (1, 1.5), (0, 1.5)."""
    matrix = homography(SQUARE, [Point(0.0, 0.0), Point(2.0, 0.0), Point(1.0, 1.5), Point(0.0, 1.5)])
    assert matrix == pytest.approx(np.array([[2.0, 0, 0], [0, 3, 0], [0, 1, 1]]), abs=1e-12)
    middle = moved(matrix, Point(0.5, 0.5))
    assert (2 / 3, 1.0) == pytest.approx((middle.x, middle.y))


def test_pillow_bends_as_the_matrix_says():
    """A spot drawn on the photograph is found where the inverse matrix puts it (numpy.linalg, another hand)."""
    image = Image.new("RGB", (600, 400), "white")
    ImageDraw.Draw(image).ellipse((295, 215, 305, 225), fill="black")
    corners = (Point(60.0, 50.0), Point(540.0, 80.0), Point(500.0, 370.0), Point(90.0, 330.0))
    flat = straighten(Photo(np.asarray(image)), Corners(corners), 1000.0)
    y, x = np.nonzero(flat.photo.pixels[..., 0] < 128)
    expected = moved(np.linalg.inv(flat.to_photo), Point(300.5, 220.5))
    assert (expected.x, expected.y) == pytest.approx((x.mean() + 0.5, y.mean() + 0.5), abs=0.5)
    assert 1000.0 == pytest.approx(flat.mm_per_dot * flat.photo.height)


@pytest.mark.parametrize("ratio", [0.7, 1.5, 2.4])
def test_the_cloth_keeps_its_shape(ratio: float):
    """A cloth of known length and width, seen by a known camera from one side, has its shape back."""
    lean, turn, lens = math.radians(28), math.radians(11), 1100.0
    seen = []
    for x, y in [(-ratio / 2, -0.5), (ratio / 2, -0.5), (ratio / 2, 0.5), (-ratio / 2, 0.5)]:
        u, v = x * math.cos(turn) - y * math.sin(turn), x * math.sin(turn) + y * math.cos(turn)
        deep = 2.6 + v * math.sin(lean)
        seen.append(Point(700 + lens * u / deep, 500 + lens * v * math.cos(lean) / deep))
    assert ratio == pytest.approx(shape_of(seen, 1400, 1000), rel=1e-6)


def test_seen_from_above_the_sides_tell():
    """Without perspective the shape is length over width."""
    box = [Point(100.0, 100.0), Point(900.0, 100.0), Point(900.0, 500.0), Point(100.0, 500.0)]
    assert 2.0 == pytest.approx(shape_of(box, 1000, 600))


def test_any_known_distance_gives_the_scale():
    """Two points 200 mm apart do as well as the cloth's width."""
    photo = Photo(np.zeros((600, 1000, 3), np.uint8))
    box = Corners((Point(100.0, 100.0), Point(900.0, 100.0), Point(900.0, 500.0), Point(100.0, 500.0)))
    by_width = straighten(photo, box, 800.0)
    by_tape = straighten(photo, box, 200.0, (Point(300.0, 200.0), Point(400.0, 200.0)))
    assert by_width.mm_per_dot == pytest.approx(by_tape.mm_per_dot)
    assert 2.0 == pytest.approx(by_tape.mm_per_dot)


def test_corners_that_go_round_nothing_are_refused():
    """Crossed, dented and falling together: one sentence."""
    photo = Photo(np.zeros((600, 1000, 3), np.uint8))
    a, b, c, d = Point(100.0, 100.0), Point(900.0, 100.0), Point(900.0, 500.0), Point(100.0, 500.0)
    for wrong in [(a, c, b, d), (a, b, Point(200.0, 150.0), d), (a, a, c, d), (d, c, b, a)]:
        assert not convex(wrong)
        with pytest.raises(Trouble, match="do not go round the cloth"):
            straighten(photo, Corners(wrong), 1000.0)
    with pytest.raises(Trouble, match="lie on each other"):
        straighten(photo, Corners((a, b, c, d)), 1000.0, (a, a))


def test_the_corners_of_a_cloth_on_a_table_are_found():
    """Within two dots, on a table that is lighter at one side."""
    random = np.random.default_rng(3)
    truth = (Point(141.0, 95.0), Point(1262.0, 132.0), Point(1301.0, 822.0), Point(98.0, 771.0))
    image = Image.new("RGB", (1400, 900), (120, 96, 70))
    drawing = ImageDraw.Draw(image)
    drawing.polygon([(p.x, p.y) for p in truth], fill=(225, 220, 210))
    for x in range(220, 1200, 90):
        drawing.ellipse((x, 650, x + 50, 720), fill=(150, 40, 60))
    light = np.linspace(0.85, 1.1, 1400)[None, :, None]
    pixels = np.clip(np.asarray(image) * light + random.normal(0, 4, (900, 1400, 3)), 0, 255).astype(np.uint8)
    found = find_corners(Photo(pixels))
    assert found.sure > 0.8
    for expected, point in zip(truth, found.points, strict=True):
        assert math.dist(expected, point) < 2.0


def test_a_cloth_that_fills_the_picture_has_its_corners():
    """No table, no corners to look for; and it is not claimed to be sure."""
    pixels = np.full((400, 700, 3), 200, np.uint8)
    pixels[::20] = 90
    found = find_corners(Photo(pixels))
    assert [(0, 0), (700, 0), (700, 400), (0, 400)] == [(p.x, p.y) for p in found.points]
    assert found.sure < 0.5
