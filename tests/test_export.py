"""Everything that is exported, read back at true scale by tools that are not ours."""

import io
import xml.etree.ElementTree as ElementTree
from pathlib import Path

import ezdxf
import numpy as np
import pypdf
import pytest
import resvg_py
import svgpathtools
from briefs import bodies, brief
from PIL import Image
from reading_back import page_sizes, seen_on

from studio.brief import Brief
from studio.brief.records import Paper
from studio.export import export
from studio.paper import KINDS
from studio.paper.sizes import paper_size
from studio.trouble import Trouble
from studio.workroom import Docket, make_up

POINT = 25.4 / 72
TITLE = {"title": "Test skirt"}


def exported(folder: Path, one: Brief, *kinds: str) -> Docket:
    """Export a brief; every step is run through."""
    docket = make_up(one)
    list(export(docket, folder, kinds or KINDS, "cm"))
    return docket


def boxes(page: pypdf.PageObject) -> list[tuple[float, float]]:
    """Size of each painted path, mm."""
    return [s.size for s in seen_on(page)]


def wide_of(svg: Path) -> float:
    """Width of an SVG page, mm."""
    return float(ElementTree.parse(svg).getroot().get("width", "").removesuffix("mm"))


@pytest.mark.paints
def test_what_is_written(tmp_path: Path):
    """One file for each piece and one with all, in every format; sheets, booklet and lay plan in PDF."""
    docket = exported(tmp_path, brief(**TITLE))
    pieces = {p.id for p in docket.pieces}
    for kind in KINDS:
        names = {p.stem.removeprefix("test-skirt-") for p in tmp_path.glob(f"*.{kind}")}
        more = {"sheets-a4", "booklet", "lay-plan"} if kind == "pdf" else set()
        assert (pieces | {"all"} | more if kind not in ("booklet", "lay") else set()) == names


@pytest.mark.paints
@pytest.mark.parametrize("size", ["A4", "A3", "US Letter", "roll"])
def test_sheets_have_the_papers_exact_size(tmp_path: Path, size: str):
    """Each page is the paper, upright or lying, to 0.01 mm (ISO 216; 8.5 by 11 in)."""
    exported(tmp_path, brief(**TITLE, paper__size=size), "pdf")
    paper = paper_size(Paper(size=size))
    for wide, high in page_sizes(next(tmp_path.glob("*-sheets-*.pdf"))):
        if size == "roll":
            assert 914.4 == pytest.approx(wide, abs=0.01)
            assert high <= 5080
        else:
            assert sorted((paper.width, paper.height)) == pytest.approx(sorted((wide, high)), abs=0.01)


@pytest.mark.paints
@pytest.mark.parametrize("size", ["A4", "A3", "US Letter", "roll"])
def test_squares_on_the_first_page(tmp_path: Path, size: str):
    """The 5 cm square is 50.00, the 2 in square 50.80, within 0.01 mm."""
    exported(tmp_path, brief(**TITLE, paper__size=size), "pdf")
    sizes = boxes(pypdf.PdfReader(next(tmp_path.glob("*-sheets-*.pdf"))).pages[0])
    for side in (50.0, 50.8):
        assert any(abs(w - side) < 0.01 and abs(h - side) < 0.01 for w, h in sizes), side


@pytest.mark.paints
@pytest.mark.parametrize("cut", ["along", "across"])
def test_pieces_in_the_pdf_are_true(tmp_path: Path, cut: str):
    """Each piece's own PDF holds its cut line at true size, to 0.01 mm."""
    docket = exported(tmp_path, brief(**TITLE, skirt__cut=cut), "pdf")
    for piece in docket.pieces:
        page = pypdf.PdfReader(tmp_path / f"test-skirt-{piece.id}.pdf").pages[0]
        box = piece.cut_line.box
        assert any(abs(w - box.width) < 0.01 and abs(h - box.height) < 0.01 for w, h in boxes(page))


@pytest.mark.paints
@pytest.mark.parametrize("panels", ["template", "whole"])
def test_sheets_put_together_show_the_pieces(tmp_path: Path, panels: str):
    """Laid where their names say, the sheets carry the whole outline: every sheet draws it in the same place."""
    docket = exported(tmp_path, brief(**TITLE, paper__panels=panels), "pdf")
    reader = pypdf.PdfReader(next(tmp_path.glob("*-sheets-*.pdf")))
    band = docket.draft.piece("waistband").cut_line.box
    live = (297 - 37, 210 - 37) if float(reader.pages[2].mediabox.width) * POINT > 250 else (210 - 37, 297 - 37)
    corners = []
    for page in reader.pages[2:]:
        for seen in seen_on(page):
            wide, high = seen.size
            if abs(wide - band.width) < 0.05 and abs(high - band.height) < 0.05:
                corners.append(((seen.corner[0] - 15) % live[0], (seen.corner[1] - 15) % live[1]))
    assert len(corners) >= 3
    assert np.ptp(np.array(corners), axis=0) == pytest.approx([0, 0], abs=0.05)


def test_svg_is_true(tmp_path: Path):
    """svgpathtools reads the cut line at its length; resvg draws the page at its size in mm."""
    docket = exported(tmp_path, brief(**TITLE), "svg")
    for piece in docket.pieces:
        there = tmp_path / f"test-skirt-{piece.id}.svg"
        paths, _ = svgpathtools.svg2paths(str(there))
        lengths = [p.length() for p in paths]
        assert any(abs(length - piece.cut_line.length) < 0.01 for length in lengths)
        root = ElementTree.parse(there).getroot()
        assert root.get("width", "").endswith("mm")
        left, top, wide, high = (float(v) for v in root.get("viewBox", "").split())
        assert (0, 0, root.get("width"), root.get("height")) == (left, top, f"{wide:g}mm", f"{high:g}mm")
        names = {g.get("data-name") for g in root.iter() if g.tag.endswith("}g")}
        assert {"cut", "grain"} <= names
    text = (tmp_path / "test-skirt-skirt.svg").read_text(encoding="utf-8")
    with Image.open(io.BytesIO(bytes(resvg_py.svg_to_bytes(svg_string=text, dpi=96)))) as image:
        assert image.width == pytest.approx(wide_of(tmp_path / "test-skirt-skirt.svg") * 96 / 25.4, abs=1)


@pytest.mark.paints
def test_png_is_true(tmp_path: Path):
    """A picture's size in dots and its density give the page's size in mm."""
    exported(tmp_path, brief(**TITLE), "png", "svg")
    with Image.open(tmp_path / "test-skirt-waistband.png") as image:
        dots, density = image.width, image.info["dpi"][0]
    assert wide_of(tmp_path / "test-skirt-waistband.svg") == pytest.approx(dots / density * 25.4, abs=0.3)


def test_dxf_is_true(tmp_path: Path):
    """ezdxf's own auditor finds nothing, units are mm, and the cut layer spans the piece."""
    docket = exported(tmp_path, brief(**TITLE), "dxf")
    there = ezdxf.readfile(tmp_path / "test-skirt-waistband.dxf")
    assert [] == there.audit().errors
    assert 4 == there.header["$INSUNITS"]
    xs = [v.x for e in there.modelspace() if e.dxf.layer == "cut" for v in (e.dxf.start, e.dxf.end)]
    assert docket.draft.piece("waistband").cut_line.box.width == pytest.approx(max(xs) - min(xs), abs=1e-6)


def worn_by(body: dict[str, float]) -> Brief:
    """A skirt for somebody."""
    return brief(**TITLE, **{path.replace(".", "__"): v for path, v in body.items()})


def test_every_body_exports(tmp_path: Path):
    """Each of 254 people's skirts is written as SVG, one file for each piece and one for all."""
    for k, body in enumerate(bodies()):
        pieces = exported(tmp_path / str(k), worn_by(body), "svg").pieces
        assert len(pieces) + 1 == len(list((tmp_path / str(k)).glob("*.svg")))


@pytest.mark.paints
def test_every_kind_of_body_prints(tmp_path: Path):
    """Every fiftieth of those people's skirts comes as sheets too."""
    for k, body in enumerate(bodies()[::50]):
        exported(tmp_path / str(k), worn_by(body), "pdf")
        assert any((tmp_path / str(k)).glob("*-sheets-a4.pdf"))


@pytest.mark.paints
def test_stopping_leaves_whole_files_only(tmp_path: Path):
    """An export that is stopped leaves the files that were finished, and none half-written."""
    steps = export(make_up(brief(**TITLE)), tmp_path, ("pdf",), "cm")
    next(steps)
    next(steps)
    steps.close()
    assert [] == list(tmp_path.iterdir())


@pytest.mark.parametrize("kind", ["svg", "dxf", *(pytest.param(k, marks=pytest.mark.paints) for k in ("pdf", "png"))])
@pytest.mark.parametrize("number", [13, 28, 30])
def test_a_folder_that_takes_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, number: int, kind: str):
    """A full disk or a folder without permission is one sentence, and nothing half-written stays."""

    def refuse(*_: object) -> None:
        raise OSError(number, "no")

    monkeypatch.setattr("os.fsync", refuse)
    with pytest.raises(Trouble):
        list(export(make_up(brief(**TITLE)), tmp_path, (kind,), "cm"))
    assert [] == list(tmp_path.iterdir())


def test_a_file_in_place_of_the_folder(tmp_path: Path):
    """Where the folder's name is taken by a file, that is said."""
    (tmp_path / "taken").write_text("mine")
    with pytest.raises(Trouble):
        list(export(make_up(brief(**TITLE)), tmp_path / "taken", ("svg",), "cm"))
    assert "mine" == (tmp_path / "taken").read_text()


@pytest.mark.paints
def test_a_very_wide_skirt_still_prints(tmp_path: Path):
    """A skirt too wide for a PDF page comes as sheets; what no page can hold is left out of PDF, not of SVG."""
    exported(tmp_path, brief(**TITLE, body__waist=1500.0, body__hip=1600.0, skirt__fullness=4.0), "pdf", "svg")
    assert (tmp_path / "test-skirt-sheets-a4.pdf").exists()
    assert (tmp_path / "test-skirt-skirt.svg").exists()
    assert not (tmp_path / "test-skirt-skirt.pdf").exists()


@pytest.mark.parametrize(
    "title", ["../../etc/passwd", "", "\u0000\u202e", "CON", "Ida’s meadow skirt", "é" * 80, "</text><script>"]
)
def test_names_of_files_are_plain(tmp_path: Path, title: str):
    """Whatever a skirt is called, its files lie in the folder, under a plain name."""
    exported(tmp_path / "out", brief(title=title), "svg")
    assert ["out"] == [p.name for p in tmp_path.iterdir()]
    assert all(p.name.isprintable() and p.suffix == ".svg" for p in (tmp_path / "out").iterdir())


@pytest.mark.paints
def test_the_lay_plan_alone(tmp_path: Path):
    """Chosen alone, the plan is the one file; where a piece does not fit the cloth, nothing is written, and it is said."""
    exported(tmp_path / "plan", brief(**TITLE), "lay")
    (there,) = (tmp_path / "plan").iterdir()
    assert "Cut in this order" in pypdf.PdfReader(there).pages[0].extract_text()
    with pytest.raises(Trouble, match="does not fit the cloth, so there is no plan to print"):
        exported(tmp_path / "none", brief(cloth__width=600.0), "svg", "lay")
    assert not (tmp_path / "none").exists()
