"""A docket as plain values, for other programs: what `draft --json` and `lay --json` print.  Lengths in mm."""

from collections.abc import Iterable
from typing import Any, TypeAlias

from studio.check import Finding
from studio.cloth.placed import Lay, Placed
from studio.draft import Edge, Notion, Piece
from studio.geometry import Path, Point
from studio.styles.rack import style_of
from studio.units import Unit, spell
from studio.workroom import Docket

FORMAT = 1
FLAT = 0.05
"""Curves are listed as chords within this (mm)."""

Listed: TypeAlias = dict[str, Any]


def listed(docket: Docket, unit: Unit) -> Listed:
    """The whole docket; sentences are in the maker's unit, numbers in mm."""
    return {
        "format": FORMAT,
        "style": style_of(docket.brief),
        "pieces": [_piece(p) for p in docket.pieces],
        "facts": {f.name: _round(f.value) for f in docket.facts},
        "notions": [_notion(n, unit) for n in docket.notions],
        "findings": [listed_finding(f, unit) for f in docket.findings],
    }


def listed_lay(docket: Docket) -> Listed:
    """The lay plan: x along the cloth from its cut end, y across it from the first selvedge."""
    lay: Lay = docket.lay
    return {
        "format": FORMAT,
        "width": _round(lay.width),
        "folded": lay.folded,
        "length": _round(lay.length),
        "bound": _round(lay.bound),
        "proven": lay.proven,
        "buy": _round(docket.fact("cloth_estimate")),
        "placed": [_placed(p) for p in lay.placed],
    }


def listed_finding(finding: Finding, unit: Unit) -> Listed:
    """One finding, with its words and its remedy."""
    return {
        "rule": finding.rule,
        "weight": finding.weight,
        "says": spell(finding.says, unit),
        "where": finding.where,
        "piece": finding.piece,
        "remedy": dict(finding.remedy) if finding.remedy is not None else None,
    }


def _piece(piece: Piece) -> Listed:
    box = piece.cut_line.box
    return {
        "id": piece.id,
        "name": piece.name,
        "cut": piece.cut,
        "mirrored": piece.mirrored,
        "on_fold": piece.on_fold,
        "cloth": piece.cloth,
        "cut_line": _flat(piece.cut_line),
        "seam_line": _flat(piece.seam_line),
        "size": [_round(box.width), _round(box.height)],
        "edges": [_edge(e) for e in piece.edges],
        "lines": [{"role": m.role, "points": _flat(m.path)} for m in piece.lines],
        "points": [{"role": s.role, "at": _point(s.at)} for s in piece.spots],
        "grain": _points(piece.grain),
    }


def _edge(edge: Edge) -> Listed:
    return {
        "name": edge.name,
        "length": _round(edge.path.length),
        "allowance": _round(edge.allowance),
        "sews_to": edge.sews_to,
        "ratio": round(edge.ratio, 6),
    }


def _notion(notion: Notion, unit: Unit) -> Listed:
    sizes = {name: _round(v) if isinstance(v, float) else v for name, v in notion.sizes.items()}
    return {"what": notion.what, **sizes, "words": spell(notion.words, unit)}


def _placed(placed: Placed) -> Listed:
    outline = [placed.on_cloth(p) for p in placed.outline.flat(FLAT)]
    return {
        "piece": placed.piece.id,
        "copy": placed.copy,
        "at": _point(placed.at),
        "turn": placed.turn,
        "mirrored": placed.mirrored,
        "layers": placed.layers,
        "outline": _points(outline),
    }


def _flat(path: Path) -> list[list[float]]:
    return _points(path.flat(FLAT))


def _points(points: Iterable[Point]) -> list[list[float]]:
    return [_point(p) for p in points]


def _point(p: Point) -> list[float]:
    return [_round(p.x), _round(p.y)]


def _round(value: float) -> float:
    return round(float(value), 4) + 0.0
