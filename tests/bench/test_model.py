"""What is made up on every keystroke, and what is printed."""

import itertools
from pathlib import Path

import pytest
from conftest import median, plain_work, tell

from studio.brief.skirt_file import dump, load
from studio.paper.pattern import Said
from studio.paper.pdf import write_pdf
from studio.paper.printed import printed
from studio.styles import rack
from studio.workroom import make_up

LINED = {"pockets.kind": "in seam", "lining.kind": "straight"}
WAYS = [(style, {}, 2.0) for style in rack.RACK if style != "straight"]
WAYS += [("straight", {}, 4.0), ("straight", LINED, 4.0)]


@pytest.mark.parametrize(("style", "more", "bound"), WAYS)
def test_make_up(benchmark, style: str, more: dict[str, str], bound: float):
    """Each skirt is made up in less than twice 50 000 additions (2 ms where the bound was set), a straight one with
    lining and pockets in four times that many. The waist changes each time, so that nothing is remembered.
    """
    start = rack.edit(rack.usual("cm", style), more)
    waists = itertools.cycle([rack.edit(start, {"body.waist": 650.0 + k / 4}) for k in range(800)])
    floor = median(plain_work)
    benchmark(lambda: make_up(next(waists)))
    figure = median(lambda: make_up(next(waists)), 200)
    tell(f"make_up, {style}{', lined' if more else ''}", figure, floor, bound)
    assert figure <= bound * floor


def test_make_up_across(benchmark):
    """The same, cut across in five panels with everything wrong."""
    brief = rack.edit(
        rack.usual(), {"skirt.cut": "across", "skirt.fullness": 5.0, "body.hip": 1200.0, "fastening.count": 6}
    )
    floor = median(plain_work)
    benchmark(make_up, brief)
    figure = median(lambda: make_up(brief), 200)
    tell("make_up, five panels", figure, floor, 1.0)
    assert figure <= floor


def test_sheets(benchmark, tmp_path: Path, qapp):
    """Tiled sheets of the sample on A4 take at most 150 times as long as 50 000 additions (300 ms)."""
    docket = make_up(rack.usual())

    def sheets() -> None:
        list(
            write_pdf(
                tmp_path / "sheets.pdf", printed(docket.pieces, docket.notions, Said(docket.brief, "cm")), "bench"
            )
        )

    floor = median(plain_work)
    benchmark.pedantic(sheets, rounds=5, warmup_rounds=1)
    figure = median(sheets, 7)
    tell("sheets as PDF", figure, floor, 150)
    assert figure <= 150 * floor


def test_file(benchmark):
    """A skirt is written and read in a twentieth of it."""
    brief = rack.usual()
    floor = median(plain_work)
    benchmark(lambda: load(dump(brief), rack.RECORDS))
    figure = median(lambda: load(dump(brief), rack.RECORDS), 200)
    tell("write and read a skirt", figure, floor, 0.05)
    assert figure <= 0.05 * floor
