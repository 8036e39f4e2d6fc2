"""What is asked of every docket: its outlines, seams, notches, corners, joins, marks and findings."""

import pytest
from shapely.geometry import Point as ShapelyPoint
from shapely.geometry import Polygon

from studio.draft import Edge, Piece, notches, walked
from studio.geometry import Line, Path
from studio.styles import rack
from studio.workroom import Docket


def ring(path: Path) -> Polygon:
    """A closed path as shapely sees it; ends that meet to a millionth of a millimetre are one point."""
    return Polygon(dict.fromkeys((round(x, 6), round(y, 6)) for x, y in path.flat(0.005)))


def polygon(piece: Piece) -> Polygon:
    """The cut line as shapely sees it."""
    return ring(piece.cut_line)


def seam_polygon(piece: Piece) -> Polygon:
    """The seam line as shapely sees it."""
    return ring(piece.seam_line)


def slack(piece: Piece) -> float:
    """How truly shapely sees a piece, mm: straight lines as they are, curves within how finely they are flattened."""
    straight = all(isinstance(c, Line) for path in (piece.cut_line, piece.seam_line) for c in path.curves)
    return 1e-4 if straight else 0.02


def check_outlines(docket: Docket) -> None:
    """Outlines close and do not cross themselves; the cut line holds the seam line at the allowance."""
    for piece in docket.pieces:
        assert piece.cut_line.closed, piece.id
        assert piece.seam_line.closed, piece.id
        assert polygon(piece).is_valid, piece.id
        assert seam_polygon(piece).is_valid, piece.id
        assert polygon(piece).buffer(slack(piece)).covers(seam_polygon(piece)), piece.id
        for e in piece.edges:
            check_allowance(piece, e)


def check_allowance(piece: Piece, e: Edge) -> None:
    """Half way along an edge, and away from corners of its own, the cut line lies its allowance away."""
    middle, way = e.path.at(e.path.length / 2), e.path.direction(e.path.length / 2).outward()
    if len(e.path.runs) > 1:
        return
    near, cut = slack(piece), polygon(piece)
    assert cut.covers(ShapelyPoint(middle.along(way, e.allowance - near))), (piece.id, e.name)
    assert not cut.covers(ShapelyPoint(middle.along(way, e.allowance + near))), (piece.id, e.name)


def check_walks(docket: Docket) -> None:
    """Joined seams agree to 0.1 mm once gathers are drawn up, and pleats and darts closed."""
    pieces = {p.id: p for p in docket.pieces}
    for seam in docket.draft.seams:
        assert walked(seam.one, pieces) == pytest.approx(walked(seam.other, pieces), abs=0.1), seam


def ends(seam_side: tuple, pieces: dict[str, Piece]) -> list[float]:
    """Where the edges of one side of a seam meet, once sewn."""
    return [walked(seam_side[:k], pieces) for k in range(len(seam_side) + 1)]


def check_notches(docket: Docket) -> None:
    """Every notch of a seam round the waist, between tiers or between panels meets a notch or a join on the other side;
    those of a pocket meet its bag's.
    """
    pieces = {p.id: p for p in docket.pieces}
    for seam in docket.draft.seams:
        if seam.name not in ("waist", "tier", "join"):
            continue
        both = [(seam.one, seam.other), (seam.other, seam.one)]
        for side, other in both:
            there = [*notches(other, pieces, "pockets.top"), *ends(other, pieces)]
            for n in notches(side, pieces, "pockets.top"):
                assert min(abs(n - t) for t in there) < 0.1, (seam.name, n)


def check_pieces(docket: Docket) -> None:
    """Every piece has its name, its number to cut, its grain, an allowance on each edge, and all marks on it."""
    for piece in docket.pieces:
        assert piece.name
        assert piece.cut >= 1
        assert piece.grain[0].distance(piece.grain[1]) > 0
        assert all(e.allowance >= 0 for e in piece.edges)
        assert len({e.name for e in piece.edges}) == len(piece.edges)
        box = piece.cut_line.box.grown(0.01)
        for mark in piece.lines:
            if mark.role != "buttonhole":
                assert box.meets(mark.path.box), (piece.id, mark.role)
        check_corners(piece)
    ids = [p.id for p in docket.pieces]
    assert len(set(ids)) == len(ids)


def check_corners(piece: Piece) -> None:
    """Beyond what lies along its edges, an upright rectangle has its four corners and no more."""
    if piece.rectangular and all(len(e.path.curves) == 1 for e in piece.edges):
        along = sum(e.path.length * e.allowance for e in piece.edges)
        corners = polygon(piece).area - seam_polygon(piece).area - along
        assert -0.01 <= corners <= 4 * max(e.allowance for e in piece.edges) ** 2 + 0.01, piece.id


def check_joins(docket: Docket) -> None:
    """The edges of a join have one allowance, and each says what it is sewn to: an edge of the other side, or, on a
    piece that opens on one of its copies only, the seam beside the opening.
    """
    pieces = {p.id: p for p in docket.pieces}
    partners: dict[tuple[str, str], set[str]] = {}
    for seam in docket.draft.seams:
        if seam.name not in ("join", "facing join"):
            continue
        parts = (*seam.one, *seam.other)
        assert 1 == len({pieces[p.piece].edge(p.edge).allowance for p in parts}), seam
        for side, other in ((seam.one, seam.other), (seam.other, seam.one)):
            for p in side:
                partners.setdefault((p.piece, p.edge), set()).update(f"{o.piece}/{o.edge}" for o in other)
    for (id, name), there in partners.items():
        edge = pieces[id].edge(name)
        alike = name.endswith(" opening") and edge.words is not None and edge.words.text.startswith("seam; ")
        assert edge.sews_to in there or alike, (id, name, edge.sews_to, there)


def check_spots(docket: Docket) -> None:
    """Every notch stands on the cut line, at an edge that its piece has."""
    for piece in docket.pieces:
        cut = polygon(piece).exterior
        for spot in piece.spots:
            if spot.role == "notch":
                edge = piece.edge(spot.on)
                assert edge.allowance == pytest.approx(edge.path.nearest(spot.at)[1], abs=0.05), (piece.id, spot.on)
                assert cut.distance(ShapelyPoint(*spot.at)) < 0.05, (piece.id, spot.on)


def check_sews_to(docket: Docket) -> None:
    """What an edge says it is sewn to is there."""
    names = {f"{p.id}/{e.name}" for p in docket.pieces for e in p.edges} | {p.id for p in docket.pieces}
    for piece in docket.pieces:
        for e in piece.edges:
            assert e.sews_to in names | {"", "zip"}, (piece.id, e.name, e.sews_to)


def check_findings(docket: Docket) -> None:
    """Every finding points at a number that is shown, or at the choice that hides it."""
    known = rack.declarations(docket.brief)
    for finding in docket.findings:
        assert finding.where in known, finding
        assert rack.applies(docket.brief, known[finding.where]), finding


CHECKS = (
    check_outlines,
    check_walks,
    check_notches,
    check_pieces,
    check_sews_to,
    check_joins,
    check_spots,
    check_findings,
)
