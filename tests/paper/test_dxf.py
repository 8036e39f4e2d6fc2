"""The DXF, read back and audited by ezdxf; its lengths measured by svgpathtools and by hand."""

import math
from pathlib import Path
from typing import Any

import ezdxf
import pytest
from hostile import HOSTILE

from studio.drawing import PENS, Group, Stroke, Words
from studio.geometry import Arc, Cubic, Point, circle, line, rectangle
from studio.geometry import Path as Run
from studio.paper.dxf import write_dxf


def read(path: Path, *marks) -> Any:
    """The file, written, opened and audited."""
    write_dxf(path, marks, "A skirt")
    document = ezdxf.readfile(path)
    audit = document.audit()
    assert ([], []) == (audit.errors, audit.fixes)
    return document


def test_it_says_millimetres(tmp_path: Path):
    """A drawing program opens it at true size ($INSUNITS 4, $MEASUREMENT 1; AutoCAD DXF reference, R2010)."""
    document = read(tmp_path / "p.dxf", Stroke(rectangle(20, 30, 120, 130), "cut"))
    assert ("AC1024", 4, 1) == (document.dxfversion, document.header["$INSUNITS"], document.header["$MEASUREMENT"])
    lines = document.modelspace().query("LINE")
    assert [100.0] * 4 == pytest.approx([e.dxf.start.distance(e.dxf.end) for e in lines])
    assert {(20, -30), (120, -30), (120, -130), (20, -130)} == {(e.dxf.start.x, e.dxf.start.y) for e in lines}


def test_curves_are_true_curves(tmp_path: Path):
    """Arcs are ARC and CIRCLE, cubics exact SPLINE: no polygon stands for a curve."""
    cubic = Cubic(Point(10, 10), Point(60, 0), Point(90, 80), Point(150, 100))
    space = read(
        tmp_path / "p.dxf", Stroke(Run((cubic,)), "seam"), Stroke(circle(Point(50, 60), 30), "button")
    ).modelspace()
    (spline,) = space.query("SPLINE")
    assert 3 == spline.dxf.degree
    curve = spline.construction_tool()
    for share in (0, 0.3, 0.5, 1):
        x, y, _ = curve.point(share * curve.max_t)
        assert tuple(cubic.at(share)) == pytest.approx((x, -y), abs=1e-9)
    arcs = space.query("ARC")
    assert 2 * math.pi * 30 == pytest.approx(
        sum(a.dxf.radius * math.radians((a.dxf.end_angle - a.dxf.start_angle) % 360) for a in arcs)
    )


@pytest.mark.parametrize("sweep", [-300, -90, 45, 180, 270])
def test_arcs_turn_the_right_way(tmp_path: Path, sweep: float):
    """With y turned round, every arc still goes through its own middle."""
    arc = Arc(Point(100, 100), 50, 30, sweep)
    (entity,) = read(tmp_path / "p.dxf", Stroke(Run((arc,)), "cut")).modelspace().query("ARC")
    curve = entity.construction_tool()
    middle = curve.start_angle + ((curve.end_angle - curve.start_angle) % 360) / 2
    x = 100 + 50 * math.cos(math.radians(middle))
    y = -100 + 50 * math.sin(math.radians(middle))
    assert tuple(arc.at(0.5)) == pytest.approx((x, -y), abs=1e-9)
    ends = {tuple(round(v, 6) for v in (p.x, -p.y)) for p in (curve.start_point, curve.end_point)}
    assert {tuple(round(v, 6) for v in p) for p in (arc.start, arc.end)} == ends


def test_each_ink_has_its_layer(tmp_path: Path):
    """A cutter takes the layer of cut lines and leaves the rest; widths and dashes go with the layer."""
    document = read(
        tmp_path / "p.dxf", Group("Waistband", (Stroke(line(0, 0, 50, 0), "gather"), Words("hem", Point(5, 5), 4)))
    )
    assert set(PENS) <= {layer.dxf.name for layer in document.layers}
    gather = document.layers.get("gather")
    assert (50, "gather") == (gather.dxf.lineweight, gather.dxf.linetype)
    (row,) = document.modelspace().query("LINE")
    assert "gather" == row.dxf.layer
    tags = [t.value for t in document.linetypes.get("gather").pattern_tags.tags if t.code in (40, 49)]
    assert [7.0, 4.0, -3.0] == pytest.approx(tags)


def test_words_are_placed_and_turned(tmp_path: Path):
    """Words keep their place and turn; their height is that of a capital."""
    words = Words("hem", Point(50, 60), 4, turn=-90, align="centre", face="semibold")
    (text,) = read(tmp_path / "p.dxf", words).modelspace().query("TEXT")
    align, place, _ = text.get_placement()
    assert ("CENTER", (50, -60)) == (align.name, (place.x, place.y))
    assert (90.0, "semibold") == (text.dxf.rotation, text.dxf.style)
    assert 4 * 0.66 == pytest.approx(text.dxf.height)


def test_hostile_words_do_no_harm(tmp_path: Path):
    """Whatever was typed, the file opens and the words are the same."""
    (text,) = read(tmp_path / "p.dxf", Words(HOSTILE, Point(20, 30), 5)).modelspace().query("TEXT")
    assert "</text><script>alert(1)</script> 🧵 שלום %%d ^I" in text.plain_text()
