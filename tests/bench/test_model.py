"""What is made up on every keystroke, and what is printed."""

from pathlib import Path

from conftest import median, plain_work, tell

from studio.brief.skirt_file import dump, load
from studio.paper.pattern import Said
from studio.paper.pdf import write_pdf
from studio.paper.printed import printed
from studio.styles import rack
from studio.workroom import make_up


def test_make_up(benchmark):
    """A brief is made up in less time than 50 000 additions take (2 ms where the bound was set)."""
    brief = rack.usual()
    floor = median(plain_work)
    benchmark(make_up, brief)
    figure = median(lambda: make_up(brief), 200)
    tell("make_up", figure, floor, 1.0)
    assert figure <= floor


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
