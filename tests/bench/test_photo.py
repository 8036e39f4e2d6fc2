"""Two hundred made-up cloths that nothing was tuned on."""

import statistics
import sys
import time
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[1] / "cloth" / "photo"))

from cloths import cloth
from marks import mark

from studio.cloth.photo import Photo
from studio.cloth.photo.reading import read

FRESH = range(5000, 5200)
"""Seeds kept for this table. What was looked at while the reading was written lies below 2000."""
LONGEST = 0.8
"""Seconds for an image, in the middle."""


def test_two_hundred_cloths():
    """Repeat within 1 % on 98 of 100, all bands on 93, edges within 2 mm (half of them) and 6 mm (95 of 100), one-way
    on 97, in 0.8 s each.
    """
    rows, taken = [], []
    for seed in FRESH:
        picture, truth = cloth(seed)
        start = time.perf_counter()
        found = read(Photo(picture), truth.scale)
        taken.append(time.perf_counter() - start)
        assert found is not None
        rows.append(mark(truth, found))
    edges = sorted(abs(e) for r in rows for e in r.edges)
    ways = [w for r in rows for w in r.ways]
    table = [
        ("repeat within 1 %", 100 * statistics.mean(r.repeat for r in rows), "at least 98"),
        ("all bands right", 100 * statistics.mean(r.bands for r in rows), "at least 93"),
        ("band edges, median, mm", statistics.median(edges), "at most 2"),
        ("band edges, 95th percentile, mm", edges[int(0.95 * len(edges))], "at most 6"),
        ("one-way right", 100 * statistics.mean(r.one_way for r in rows), "at least 97"),
        ("which way a band stands, a hint only", 100 * statistics.mean(ways), "no bound"),
        ("seconds an image, median", statistics.median(taken), f"at most {LONGEST}"),
    ]
    for name, figure, bound in table:
        print(f"\n{name}: {figure:.2f} ({bound})")
    reached = [
        f >= float(b.split()[-1]) if "least" in b else f <= float(b.split()[-1])
        for _, f, b in table
        if "bound" not in b
    ]
    assert all(reached)
