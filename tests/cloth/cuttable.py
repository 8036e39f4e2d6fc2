"""Whether a lay plan can be cut: shapely lays every copy anew."""

import itertools

from shapely.geometry import Polygon, box

from studio.brief import Cloth
from studio.cloth.placed import Lay

FINE = 0.002
"""Curves are checked as chords within this (mm); in a hollow they reach a little past the piece."""


def check(lay: Lay, cloth: Cloth, slack: float = 1e-6) -> None:
    """Nothing overlaps or comes nearer than the gap, nothing lies on a selvedge or past the length, every copy is
    there, the bound is true. `slack` (mm) is for curves that were laid as chords.
    """
    shapes = [Polygon([p.on_cloth(q) for q in p.outline.flat(FINE)]) for p in lay.placed]
    near, far = (0.0 if lay.folded else cloth.selvedge), lay.width - cloth.selvedge
    room = box(0, near, lay.length, far).buffer(slack)
    assert all(room.covers(s) for s in shapes)
    for a, b in itertools.combinations(shapes, 2):
        assert a.buffer(-slack).intersection(b.buffer(-slack)).area < 1e-3
        assert a.distance(b) >= cloth.gap - 2 * slack
    there = [(p.piece.id, p.copy + k) for p in lay.placed for k in range(1 if p.half else p.layers)]
    assert len(there) == len(set(there))
    for p in lay.placed:
        copies = {copy for name, copy in there if name == p.piece.id}
        assert copies == set(range(p.piece.cut)) or (p.layers == 2 and copies == set(range(p.piece.cut + 1)))
    assert lay.bound <= lay.length + 1e-9
    assert not lay.proven or lay.length <= lay.bound + 0.011  # no shears cut finer
    assert lay.bound >= sum(s.area for s in shapes) / (far - near) - FINE * sum(s.length for s in shapes) / (far - near)
