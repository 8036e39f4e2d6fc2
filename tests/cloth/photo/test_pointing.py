"""Small motifs that all point one way, and small motifs that do not."""

import numpy as np
import pytest
from cloths import cloth

from studio.cloth.photo import Photo
from studio.cloth.photo.pointing import FEWEST, common_departure, turned_likeness
from studio.cloth.photo.reading import read
from studio.cloth.photo.squares import squares, squares_between
from studio.cloth.photo.tile import Tile

LEAVES = (20048, 20071, 20089, 20298)
"""Little leaves, all one way, on a cloth that is otherwise the same when it is turned."""
TURNING = (20073, 20111, 20326, 20386)
"""As many small motifs and leaves, printed from both selvedges, so that the cloth may be turned."""


@pytest.mark.parametrize("seed", [*LEAVES, *TURNING])
def test_little_leaves_that_point_one_way_are_seen(seed: int):
    """Small leaves make a cloth one-way; the same leaves printed from both selvedges do not."""
    picture, truth = cloth(seed)
    found = read(Photo(picture), truth.scale)
    assert found is not None
    assert (seed in LEAVES) == truth.one_way == found.one_way


@pytest.mark.parametrize(("turned", "wanted"), [(False, True), (True, False)])
def test_triangles_drawn_here_point_or_do_not(turned: bool, wanted: bool):
    """Rows of small triangles, the lower half turned or not, whatever the noise of the two halves of the copies."""
    random = np.random.default_rng(1)
    print_ = np.zeros((3, 240, 160), np.float32)
    for row in range(4):
        for column in range(8):
            y, x = 20 + 28 * row, 10 + 20 * column + (row % 2) * 9
            for k in range(7):
                print_[:, y + k, x - k // 2 : x + k // 2 + 1] = -0.5
    half = print_[:, :120]
    print_[:, 120:] = half[:, ::-1, ::-1] if turned else half
    even, odd = (print_ + random.normal(0, 0.05, print_.shape).astype(np.float32) for _ in range(2))
    tile = Tile((even + odd) / 2, even, odd, 2)
    assert wanted == (turned_likeness(tile, [(10.0, 230.0)], 1.0) < 0.7)


def test_few_motifs_tell_nothing():
    """A single copy, or fewer motifs than can have a manner in common, is left to the rest of the reading."""
    bare = np.zeros((3, 200, 120), np.float32)
    bare[:, 60:66, 30:36] = 1.0
    for copies in (1, 2):
        assert common_departure(Tile(bare, bare, bare, copies), [(0.0, 200.0)], 1.0) is None
        assert 1.0 == turned_likeness(Tile(bare, bare, bare, copies), [(0.0, 200.0)], 1.0)
    assert FEWEST > 1


def test_squares_between_dots_follow_a_parabola():
    """Cubic convolution gives back any polynomial of the second degree exactly (Keys 1981, from memory)."""
    y, x = np.mgrid[0:40, 0:50].astype(np.float64) / 10
    tile = np.stack([1 + x + y * y, x * x - y, x * y], 0).astype(np.float32)
    cut = squares_between(tile, np.array([10.3, 4.0]), np.array([20.75, 6.5]), 5)
    for n, (top, left) in enumerate([(10.3, 20.75), (4.0, 6.5)]):
        v, u = ((np.arange(5) + at) / 10 for at in (top, left))
        v, u = v[:, None], u[None, :]
        assert np.stack([1 + u + v * v, u * u - v, u * v], 0) == pytest.approx(cut[n], abs=1e-5)
    whole = squares(tile, np.array([2, 38]), np.array([48, 3]), 3)
    assert tile[0, 2, [48, 49, 0]].tolist() == whole[0, 0, 0].tolist()
    assert (tile[1, 39, 3], tile[1, 39, 3]) == (whole[1, 1, 1, 0], whole[1, 1, 2, 0])
