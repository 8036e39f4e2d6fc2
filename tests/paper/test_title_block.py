"""The title block of a piece."""

from itertools import pairwise

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from studio.drawing import Words
from studio.drawing.lettering import words_box
from studio.geometry import Box
from studio.paper.reach import boxed
from studio.paper.title_block import HEIGHT, LEAST, MOST, USUAL, title_block

CELLS = (("cloth", "main"), ("for", "Nell, waist 68.5"), ("allowance", "1.5, included"), ("grain", "along"))
SOME = st.text("abcdefghij klmnop", min_size=1, max_size=80)


def test_what_is_read_from_standing_height_is_large():
    """Number, name and "cut n" can be read at 80 cm: at least 7 mm; facts at least 4 mm."""
    words = {m.text: m for m in title_block("1", "Waistband", "cut 1", CELLS).marks if isinstance(m, Words)}
    assert all(words[t].height >= 7 for t in ("1", "Waistband", "cut 1"))
    assert all(words[t].height >= 4 for _, t in CELLS)
    assert {"cloth", "for", "allowance", "grain"} <= set(words)


@example("Waistband", [("for", "a very long name " * 4), ("allowance", "1.5, hem 4: included " * 3)], USUAL)
@example("A very long name for a piece " * 2, [("cloth", "main")], MOST)
@given(SOME, st.lists(st.tuples(SOME, SOME), min_size=1, max_size=5), st.sampled_from((USUAL, MOST)))
def test_nothing_runs_out_of_it(name, cells, room):
    """However long the names, the block keeps its size and its cells apart."""
    block = title_block("12", name, "cut 12", cells, room=room)
    box = boxed((block,))[0].box
    assert LEAST <= box.width <= room + 3
    assert box.height == pytest.approx(HEIGHT, abs=3)
    inside = Box(0, 0, box.width - 1.5, HEIGHT)
    words = [words_box(m) for m in block.marks if isinstance(m, Words) and m.text.strip()]
    assert all(b.left >= inside.left and b.right <= inside.right for b in words)
    rows: dict[float, list[Box]] = {}
    for m, b in zip((m for m in block.marks if isinstance(m, Words) and m.text.strip()), words, strict=True):
        rows.setdefault(m.at.y, []).append(b)
    for row in rows.values():
        row.sort()
        assert all(a.right <= b.left for a, b in pairwise(row))
