"""Stations of rectangles, against the piece's own geometry and against sums done by hand."""

import string
from itertools import pairwise

import pytest
from briefs import any_brief, brief
from hypothesis import given, settings
from shapely.geometry import LineString, Point, box

from studio.brief import Brief
from studio.draft import Piece
from studio.paper.stations import SAME, letters, stations
from studio.workroom import make_up

NEAR = SAME + 1e-6


def rectangles(one: Brief) -> list[Piece]:
    """The band and the panels of a brief."""
    return [p for p in make_up(one).pieces if p.cloth == "main" and p.rectangular]


def listed(piece: Piece) -> tuple[list[tuple[str, float, str]], list[tuple[str, float, str]]]:
    """The stations as they are read."""
    found = stations(piece)
    along, down = ([(s.name, s.distance, s.what) for s in line] for line in (found.along, found.down))
    return along, down


def test_a_single_panel_opens_at_both_ends():
    """The usual skirt, by hand: (70 + 1) × 2 = 142 between the back seams, 145 cut; 1.5 + 62 + 4 = 67.5 down."""
    along, down = listed(make_up(brief()).draft.piece("skirt"))
    assert [
        ("A", 0.0, "cut edge"),
        ("B", 15.0, "opening seam"),
        ("C", 35.0, "rows start"),
        ("D", 370.0, "side, notch"),
        ("E", 725.0, "centre front, notch; rows break"),
        ("F", 1080.0, "side, notch"),
        ("G", 1415.0, "rows stop"),
        ("H", 1435.0, "opening seam"),
        ("J", 1450.0, "cut edge"),
    ] == along
    assert [
        ("1", 0.0, "waist, raw edge"),
        ("2", 10.0, "gather row"),
        ("3", 15.0, "seam, to the band"),
        ("4", 20.0, "gather row"),
        ("5", 215.0, "zip stop, at B and H"),
        ("6", 635.0, "hem fold"),
        ("7", 665.0, "first turn"),
        ("8", 675.0, "hem, raw edge"),
    ] == down


def test_the_band_carries_its_fastening():
    """The usual band, by hand: 71 + 4 + 3 = 78 cut; the hole ends 1.5 from the extension's end, the button at 2.5."""
    along, down = listed(make_up(brief()).draft.piece("waistband"))
    assert [
        ("A", 0.0, "cut edge"),
        ("B", 15.0, "seam, plain end"),
        ("C", 40.0, "button"),
        ("D", 192.5, "side, notch"),
        ("E", 370.0, "centre front, notch"),
        ("F", 547.5, "side, notch"),
        ("G", 725.0, "centre back, notch"),
        ("H", 729.0, "buttonhole, inner end"),
        ("J", 750.0, "buttonhole, outer end"),
        ("K", 765.0, "seam, extension"),
        ("L", 780.0, "cut edge"),
    ] == along
    assert [
        ("1", 0.0, "facing, raw edge"),
        ("2", 15.0, "seam, turned in"),
        ("3", 45.0, "fold, top edge"),
        ("4", 60.0, "buttonhole H to J, button at C"),
        ("5", 75.0, "seam, to the skirt"),
        ("6", 90.0, "waist, raw edge"),
    ] == down


def test_hooks_and_several_buttons():
    """A hook and its bar are named where they lie; of three buttons each has its own height."""
    hooked = stations(make_up(brief(fastening__kind="hook and bar")).draft.piece("waistband"))
    assert {"hook", "bar"} <= {s.what for s in hooked.along}
    names = {s.what: s.name for s in hooked.along}
    assert f"hook at {names['hook']}, bar at {names['bar']}" in {s.what for s in hooked.down}
    three = stations(make_up(brief(fastening__count=3, waistband__width=60.0)).draft.piece("waistband"))
    assert [90.0, 105.0, 120.0] == [s.distance for s in three.down if "button at C" in s.what]


def test_panels_of_a_ring():
    """The back panel opens at the left and joins at the right, a middle one joins twice, the front meets its mirror."""
    pieces = {p.id: stations(p) for p in make_up(brief(skirt__panels=6)).pieces}
    back, side, front = (pieces[name] for name in ("skirt", "skirt-side-1", "skirt-across"))
    assert ["opening seam", "panel seam; rows stop"] == [s.what for s in back.along if "seam" in s.what]
    assert ["panel seam; rows start", "panel seam; rows stop"] == [s.what for s in side.along if "seam" in s.what]
    assert ["panel seam; rows start", "seam across from the opening; rows stop"] == [
        s.what for s in front.along if "seam" in s.what
    ]
    assert "zip stop, at B" in {s.what for s in back.down}
    assert not any("zip" in s.what for s in (*side.down, *front.down))
    alone = stations(make_up(brief(skirt__panels=3)).draft.piece("skirt-across"))
    assert ["panel seam; rows start", "panel seam; rows stop"] == [s.what for s in alone.along if "seam" in s.what]


def test_letters_leave_out_what_chalk_confuses():
    """No I and no O, and after Z the letters double."""
    names = [letters(k) for k in range(60)]
    assert [c for c in string.ascii_uppercase if c not in "IO"] == names[:24]
    assert ["AA", "AB"] == names[24:26]
    assert len(set(names)) == len(names)


def places(piece: Piece, axis: int) -> list[float]:
    """Every coordinate that the piece's edges, lines and spots have, from the corner of its cut line."""
    corner = (piece.cut_line.box.left, piece.cut_line.box.top)[axis]
    paths = [e.path for e in piece.edges] + [m.path for m in piece.lines] + [piece.cut_line]
    points = [p for path in paths for p in path.flat()] + [s.at for s in piece.spots]
    ends = [path.at(path.length / 2) for path in paths]
    return sorted({(p.x, p.y)[axis] - corner for p in (*points, *ends)})


def near(distance: float, of: list[float]) -> bool:
    """Whether any of those lies at the distance."""
    return any(abs(distance - x) <= NEAR for x in of)


@settings(max_examples=120)
@given(any_brief())
def test_every_distance_is_the_pieces_own(one: Brief):
    """Nothing is chalked that is not drafted: each station lies on a mark, or in the middle of a break of the rows."""
    for piece in rectangles(one):
        found = stations(piece)
        known = (places(piece, 0), places(piece, 1))
        for s in found.along:
            broken = "break" in s.what and near(s.distance - 3, known[0]) and near(s.distance + 3, known[0])
            assert near(s.distance, known[0]) or broken, s
        assert all(near(s.distance, known[1]) for s in found.down)


@settings(max_examples=120)
@given(any_brief())
def test_every_mark_has_its_station(one: Brief):
    """Nothing that is drafted on the piece is left out of the list."""
    for piece in rectangles(one):
        found = stations(piece)
        corner = piece.cut_line.box
        along, down = ([s.distance for s in line] for line in (found.along, found.down))
        on = box(*piece.cut_line.box)
        for e in piece.edges:
            (x0, y0), (x1, _) = e.path.start, e.path.end
            if x0 == x1:
                assert near(x0 - corner.left, along)
            elif not e.hem:
                assert near(y0 - corner.top, down)
        for spot in piece.spots:
            if on.buffer(1e-6).covers(Point(spot.at)):
                assert near(spot.at.x - corner.left, along), spot
                assert spot.role == "notch" or near(spot.at.y - corner.top, down), spot
        for mark in piece.lines:
            if not on.intersects(LineString([mark.path.start, mark.path.end])):
                continue
            if mark.role in ("fold", "hem", "first turn", "zip stop", "gather"):
                assert near(mark.path.start.y - corner.top, down), mark
            elif mark.role in ("centre", "quarter", "row stop"):
                assert near(mark.path.start.x - corner.left, along), mark


@settings(max_examples=60)
@given(any_brief())
def test_stations_come_in_order_and_prove_the_square(one: Brief):
    """Distances rise from A1 to the far edges, and the diagonal is the rectangle's (measured by shapely)."""
    for piece in rectangles(one):
        found = stations(piece)
        for line, size in ((found.along, found.width), (found.down, found.height)):
            assert 0 == pytest.approx(line[0].distance, abs=1e-9)
            assert size == pytest.approx(line[-1].distance, abs=1e-9)
            assert all(a.distance < b.distance for a, b in pairwise(line))
            assert all(s.what for s in line)
        left, top, right, bottom = box(*piece.cut_line.box).bounds
        assert Point(left, top).distance(Point(right, bottom)) == pytest.approx(found.diagonal, abs=1e-6)
