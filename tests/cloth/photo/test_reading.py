"""The print of a made-up cloth, against the truth it was printed by."""

import subprocess
import sys

import numpy as np
import pytest
from cloths import cloth
from marks import mark

from studio.cloth.photo import Photo
from studio.cloth.photo.likeness import correlation
from studio.cloth.photo.reading import read
from studio.cloth.photo.smooth import heaps, peaks, running_mean

SEEDS = (0, 2, 3, 5, 8, 10, 13, 16, 20, 24, 27, 34)
"""A dozen cloths of every kind; two hundred fresh ones are in tests/bench."""


@pytest.mark.parametrize("seed", SEEDS)
def test_a_cloth_is_read(seed: int):
    """Repeat within 1 %, every border and no other, and whether it may be turned."""
    picture, truth = cloth(seed)
    found = read(Photo(picture), truth.scale)
    assert found is not None
    marks = mark(truth, found)
    assert (True, True, True) == (marks.repeat, marks.bands, marks.one_way)
    assert all(abs(off) < 12 for off in marks.edges)


def test_sureness_is_a_share():
    """Hints lie between 0 and 1, and the other lengths are half and twice."""
    picture, truth = cloth(2)
    found = read(Photo(picture), truth.scale)
    assert found is not None and found.repeat is not None
    hints = [found.repeat.sure, found.repeat.half, found.repeat.double, found.one_way_sure]
    hints += [s for b in found.bands for s in (b.sure, b.way_sure)]
    assert all(0 <= h <= 1 for h in hints)
    assert (found.repeat.length / 2, found.repeat.length * 2) == found.repeat.others
    assert 0 <= found.repeat.offset < found.repeat.length


def test_reading_can_be_stopped_at_every_step():
    """The maker who says stop gets nothing, and is not asked again; the share done only grows."""
    picture, truth = cloth(2, 900, 500)
    shares: list[float] = []

    def keep(share: float) -> bool:
        shares.append(share)
        return True

    assert read(Photo(picture), truth.scale, keep) is not None
    assert sorted(shares) == shares and (0.0, 1.0) == (shares[0], shares[-1])
    for stop in range(len(shares)):
        answers = iter([True] * stop + [False])
        assert read(Photo(picture), truth.scale, lambda _, left=answers: next(left)) is None  # type: ignore[misc]


@pytest.mark.parametrize("value", [0, 128, 255])
def test_a_bare_picture_has_no_print(value: int):
    """One colour all over: no repeat, no border, and it may be turned."""
    found = read(Photo(np.full((300, 500, 3), value, np.uint8)), 3.0)
    assert found is not None
    assert (None, (), (), False) == (found.repeat, found.bands, found.fields, found.one_way)


def test_noise_is_read_without_harm():
    """A picture of nothing at all, and a small one, give an answer and no crash."""
    random = np.random.default_rng(4)
    for high, wide in [(120, 120), (300, 900), (900, 130)]:
        assert read(Photo(random.integers(0, 256, (high, wide, 3), dtype=np.uint8)), 2.0) is not None


def test_likeness_is_numpy_s_correlation():
    """By the power spectrum as by numpy.correlate, move by move."""
    random = np.random.default_rng(2)
    rows = random.normal(0, 1, (4, 200)).astype(np.float32)
    sharp, _ = correlation(rows, (rows**2).sum(0), 120)
    for move in (0, 1, 7, 50, 119):
        products = sum(float(np.correlate(r, r, "full")[199 + move]) for r in rows)
        there, here = (rows[:, : 200 - move] ** 2).sum(), (rows[:, move:] ** 2).sum()
        assert products / np.sqrt(there * here) == pytest.approx(sharp[move], abs=1e-4)


def test_the_small_sums():
    """Running means, peaks and connected spots, each worked by hand."""
    line = np.array([0, 3, 3, 3, 5, 7, 9, 9], np.float32)
    assert [1, 2, 3, 11 / 3, 5, 7, 25 / 3, 9] == pytest.approx(running_mean(line, 3, 0).tolist())
    assert [9 / 7, 2, 3, 30 / 7, 39 / 7] == pytest.approx(running_mean(line, 7, 0).tolist()[:5])
    assert [2, 6] == peaks(np.array([0, 1, 5, 2, 3, 2.9, 9, 0]), 2.0)
    mask = np.array([[1, 0, 1, 0, 0], [1, 1, 1, 0, 1], [0, 0, 0, 0, 1]], bool)
    assert [(0, 2, 0, 3), (1, 3, 4, 5)] == sorted(heaps(mask))


def test_nothing_heavy_is_fetched_before_a_photograph_is_opened():
    """The window starts as fast as before: neither numpy nor Pillow comes with the names."""
    code = "import sys, studio.cloth.photo; sys.exit(any(n in sys.modules for n in ('numpy', 'PIL')))"
    assert 0 == subprocess.run([sys.executable, "-c", code], check=False).returncode
