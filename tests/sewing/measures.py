"""A measure on the drafted pieces for every sentence of the sewing order that speaks a length.

Lengths of the trade stand in `TRADE` as they are to be read (common practice, no source).
"""

import re
from collections.abc import Callable
from string import Formatter
from typing import Any

import pytest
from ruler import Ruler, beyond, copies, has, line_of, lines_of, middle

from studio.draft import Piece
from studio.words import Phrase

Measure = Callable[[Ruler, Phrase], dict[str, float | list[float]]]

TRADE: dict[str, float] = {
    "Trim the allowances in steps and clip them every {c}.": 15.0,
    "Press them to the facing and stitch it to them, {u} from the seam.": 2.0,
    "Lay the ends {j} over each other, pin, and try the skirt on.": 20.0,
    "Leave thread ends of {t}, and do not stitch back.": 100.0,
    "Stitch a long row {e} from the raw edge, and draw the fullness in by it.": 6.0,
    "Stitch {e} from the upper fold, or slip-stitch for a hem unseen.": 2.0,
    "Close what gap is left by hand, {h} at the most.": 15.0,
    "Press bag and allowances outwards, and stitch the bag to them, {e} from the seam.": 2.0,
    "Stitch {e} from the edge, with a small triangle at both upper corners.": 2.0,
    "Stitch {e} from the inner fold, from waist to hem.": 2.0,
    "From the right side stitch {f} from the middle on both sides, down to the stop.": 6.0,
    "Lay the lap over to the seam line and stitch it {l} from its fold.": 12.0,
    "Press the under edge {u} past the seam line, the lap on it.": 3.0,
    "Cut it off {b} below the tack.": 20.0,
    "Catch it to the side seams at the hem with thread chains of {c}.": 50.0,
    "They lie {b} below the edge.": 6.0,
    "The ends meet. Sew the hook inside one end, {i} back from its edge.": 3.0,
    "Sew the eye inside the other end, so that it stands {o} out.": 3.0,
    "It reaches {c} past the seam lines, so that the stitching holds it.": 3.0,
    "{p:word}: break them into {n:count} parts, {b} short of each break.": 3.0,
}
"""One length each."""


def _named(r: Ruler, says: Phrase) -> Piece:
    return next(p for p in r.draft.pieces if p.name == says.values["p"])


def _rows(r: Ruler, says: Phrase) -> dict[str, float | list[float]]:
    """Rows from the raw edge, on the panels of the ring that is gathered."""
    piece = next(p for p in r.panels if any(m.role == "gather" for m in p.lines))
    top = next(e for e in piece.edges if e.name in ("waist", "top"))
    on = {round(m.path.start.y - middle(top.path).y, 6) for m in piece.lines if m.role == "gather"}
    if not all(abs(m.path.box.height) < 1e-6 for m in piece.lines if m.role == "gather"):  # round a circle
        rows = {round(top.path.nearest(middle(m.path))[1], 3) for m in piece.lines if m.role == "gather"}
        on = {-max(rows), max(rows)} if len(rows) == 1 else {0.0}
    return {"": sorted(y + r.allowance for y in on)}


def _stretch(r: Ruler, says: Phrase) -> dict[str, float | list[float]]:
    """A stretch of a row that is drawn: one of those of a panel, from its left cut edge."""
    panels = [_named(r, says)] if "p" in says.values and "{p:word}" in says.text else r.panels
    drawn = [
        (m.path.box.left - p.cut_line.box.left, m.path.box.right - p.cut_line.box.left)
        for p in panels for m in p.lines if m.role == "gather"
    ]  # fmt: skip
    a, b = min(drawn, key=lambda ab: abs(ab[0] - float(says.values["a"])) + abs(ab[1] - float(says.values["b"])))  # type: ignore[arg-type]
    return {"a": a, "b": b}


def _flat_end(r: Ruler, says: Phrase) -> dict[str, float | list[float]]:
    piece = next(p for p in r.tops if any(m.role == "row stop" for m in p.lines))
    waist = piece.edge("waist").path
    along = waist.nearest(middle(line_of(piece, "row stop").path))[0]
    return {"g": min(along, waist.length - along)}


def _tier(r: Ruler, says: Phrase) -> dict[str, float | list[float]]:
    """The flat ring whose top is drawn up, and the foot of the ring above it."""
    rings: dict[int, tuple[float, float]] = {}
    for p in r.panels:
        top, foot = (
            sum(e.path.length for e in p.edges if e.name in names) * copies(p) for names in (("top",), ("foot",))
        )
        before = rings.get(p.row, (0.0, 0.0))
        rings[p.row] = before[0] + top, before[1] + foot
    row = min((row for row in rings if row > 1), key=lambda k: abs(rings[k][0] - float(says.values["f"])))  # type: ignore[arg-type]
    return {"f": rings[row][0], "s": rings[row - 1][1]}


def _pleats(r: Ruler, says: Phrase) -> dict[str, float | list[float]]:
    """Faces and folds, at the hem and at the waist, between the lines that are drawn."""
    lines = [m.path for m in lines_of(r.tops[0], "pleat fold", "placement")[:3]]
    foot, top = [p.end.x for p in lines], [p.start.x for p in lines]
    return {"d": (foot[2] - foot[1]) / 2, "s": foot[1] - foot[0], "w": top[1] - top[0]}


def _underlay(r: Ruler, says: Phrase) -> dict[str, float | list[float]]:
    piece = r.draft.piece("skirt")
    marks = lines_of(piece, "pleat fold", "placement")
    wide = piece.edge("waist").path.length
    return {"d": marks[0].path.start.x if says.values["end"] == "plain end" else wide - marks[-1].path.start.x}


def _seam(r: Ruler, says: Phrase) -> dict[str, float | list[float]]:
    """A side from the waist down that ends as the words say."""
    return {"l": _nearest(_sides(r, says, above=True), says)}


def _below(r: Ruler, says: Phrase) -> dict[str, float | list[float]]:
    """A side at the opening from its end down."""
    return {"l": _nearest(_sides(r, says, above=False), says)}


def _nearest(found: list[float], says: Phrase) -> float:
    return min(found, key=lambda x: abs(x - float(says.values["l"])))  # type: ignore[arg-type]


def _sides(r: Ruler, says: Phrase, *, above: bool) -> list[float]:
    """The sides of panels that end in a slit, where the words say so, and else of those that do not; what lies above a
    stop counted in or left out, a corner that is pieced on counted in.
    """
    slit, found = "slit" in str(says.values["to"]), []
    for p in r.panels:
        for side in ("left", "right"):
            cut = side == "right" and (has(p, "right slit") or has(p, "vent top"))
            edges = [e for e in p.edges if e.name == side or (above and e.name == f"{side} opening")]
            opens = any(e.name == f"{side} opening" for e in p.edges)
            if edges and not edges[0].fold and cut == slit and (above or opens) and not p.id.endswith("-corner"):
                corner = next((q for q in r.panels if q.id == f"{p.id}-corner" and has(q, side)), None)
                more = corner.edge(side).path.length if corner else 0.0
                found.append(sum(e.path.length for e in edges) + more)
    return found


def _through_tiers(r: Ruler, says: Phrase) -> dict[str, float | list[float]]:
    return {"l": r.length() - r.stop()}


def _longest(r: Ruler, says: Phrase) -> dict[str, float | list[float]]:
    sides = []
    for p in r.panels:
        for side in ("left", "right"):
            long = sum(e.path.length for e in p.edges if e.name.split(" ")[0] == side)
            sides.append(long)
    return {"l": max(sides) + r.allowance + r.hem()}


def _dart(r: Ruler, says: Phrase) -> dict[str, float | list[float]]:
    """One of the darts of that panel: across its legs' ends, and from half way between them to its point."""
    sizes = []
    for m in lines_of(_named(r, says), "dart"):
        tip = max((c.end for c in m.path.curves), key=lambda p: p.y)
        a, b = m.path.start, m.path.end
        sizes.append((a.distance(b), a.towards(b, 0.5).distance(tip)))
    w, l = min(sizes, key=lambda wl: abs(wl[0] - float(says.values["w"])) + abs(wl[1] - float(says.values["l"])))  # type: ignore[arg-type]  # noqa: E741
    return {"w": w, "l": l}


def _mouth(r: Ruler, says: Phrase) -> dict[str, float | list[float]]:
    """Where the pocket's bars cross the side, along it from the waist."""
    piece = next(p for p in r.tops if any(m.role == "pocket" for m in p.lines))
    bars = lines_of(piece, "pocket")
    sides = [r.side(piece, s) for s in ("left", "right") if not any(e.name == s and e.fold for e in piece.edges)]
    side = min(sides, key=lambda path: path.nearest(middle(bars[0].path))[1])
    near = sorted(path for m in bars if (path := side.nearest(middle(m.path)))[1] < 0.1)
    return {"t": near[0][0], "f": near[1][0]}


def _size(r: Ruler, says: Phrase) -> dict[str, float | list[float]]:
    box = r.draft.pieces[int(says.values["n"]) - 1].cut_line.box  # type: ignore[arg-type]
    return {"w": box.width, "h": box.height}


def _patch_top(r: Ruler, says: Phrase) -> dict[str, float | list[float]]:
    """From the waist seam down to the top of the place for the patch."""
    piece = next(p for p in r.tops if any(m.role == "pocket" for m in p.lines))
    waist = piece.edge("waist").path
    return {"t": min(waist.nearest(c.at(0.5))[1] for c in line_of(piece, "pocket").path.curves)}


def _strip(r: Ruler, says: Phrase) -> dict[str, float | list[float]]:
    piece = r.draft.piece("placket-under" if "inside" in says.text else "placket")
    return {
        "a": beyond(piece, "facing"),
        "w": piece.edge("facing").path.nearest(middle(piece.edge("seam").path))[1] / 2,
    }


def _down_placket(r: Ruler, says: Phrase) -> dict[str, float | list[float]]:
    strip = r.draft.piece("placket-under")
    downs = sorted(s.at.y - strip.edge("top").path.start.y for s in strip.spots)
    steps = [b - a for a, b in zip([0.0, *downs], downs, strict=False)]
    assert max(steps) == pytest.approx(min(steps))
    return {"s": steps[0]}


def _overlap(r: Ruler, says: Phrase) -> dict[str, float | list[float]]:
    return {"o": r.waist() - r.girth()}


def _lining(r: Ruler, says: Phrase) -> dict[str, float | list[float]]:
    front = r.draft.piece("lining-front")
    return {"s": r.length() - r.side(front, "right").length}


def _facing_depth(r: Ruler, says: Phrase) -> dict[str, float | list[float]]:
    facing = r.piece("facing-")
    return {"d": facing.edge("left").path.length}


def _hem_facing(r: Ruler, says: Phrase) -> dict[str, float | list[float]]:
    facing = r.piece("hem-facing-")
    return {"d": facing.edge("upper").path.nearest(middle(facing.edge("hem").path))[1]}


def _notion(what: str, size: str) -> Callable[[Ruler], float]:
    return lambda r: float(next(n for n in r.draft.notions if n.what == what).sizes[size])


ZIP, TACK = _notion("zip", "length"), _notion("zip", "bar_tack")
ELASTIC, WIDE = _notion("elastic", "length"), _notion("elastic", "width")


def _elastic(r: Ruler) -> float:
    """The ring of elastic is as much shorter than the waist as was asked."""
    return r.brief.body.waist - r.brief.waistband.elastic_less


def _one(**measures: Callable[[Ruler], Any]) -> Measure:
    return lambda r, _: {name: of(r) for name, of in measures.items()}


def _allowance(r: Ruler) -> float:
    return r.allowance


def _edge(start: str, edge: str) -> Callable[[Ruler], float]:
    return lambda r: beyond(r.piece(start), edge)


_STOP = _one(r=Ruler.stop_below_raw_edge, s=Ruler.stop)
_A = _one(a=_allowance)
_END = _one(a=_edge("waistband", "plain end"))
_BINDING = _one(b=Ruler.high)
_PINS: Measure = lambda r, _: {"": r.pins()}  # noqa: E731
_NOTCHES: Measure = lambda r, says: {"": r.notches(_named(r, says))}  # noqa: E731
_HOLES: Measure = lambda r, _: {"": sorted(r.below_top(m.path.end) for m in lines_of(r.band, "buttonhole"))}  # noqa: E731
_ROLES = ("hook", "bar", "snap")
_HOOKS: Measure = lambda r, _: {"": sorted({round(r.below_top(s.at), 6) for s in r.held(*_ROLES)})}  # noqa: E731

MEASURED: dict[str, Measure] = {
    "band|Sew {a} from the edge, gathers upwards.": _one(a=_edge("waistband", "waist")),
    "band|Sew {a} from the edge.": _A,
    "seams|Sew {a} from the edge.": _A,
    "opening seam|Right sides together, sew {a} from the edge.": _A,
    "tier|Sew {a} from the edge, gathers upwards.": lambda r, _: {"a": beyond(r.panel("top"), "top")},
    "placket|Sew {a} from the edge, as far as the end of the opening.": _one(a=_edge("placket", "seam")),
    "band|All of it now measures {b}.": _one(b=Ruler.waist),
    "band|Lay a tape of {l} on the seam line, so that it cannot stretch.": _one(l=Ruler.waist),
    "pleats|Tack from waist to hem, and across the waist, which now measures {b}.": _one(b=Ruler.waist),
    "band|Pin the notches {lengths} from its plain end.": _PINS,
    "band|Pin the notches {lengths} on from there, to the right as seen from outside.": _PINS,
    "band|Sew {b} from the binding’s edge, {a} from the skirt’s.": _one(b=_edge("waistband", "waist"), a=_allowance),
    "band|Trim the skirt’s allowance to {b}: it fills the binding.": lambda r, _: {"b": min(r.high(), r.allowance)},
    "band|{x} of the band goes on past the opening, {where:word}.":
        lambda r, _: {"x": r.band.edge("extension").path.length},
    "band ends|At the extension sew its {x} of lower edge too, as far as the opening.":
        lambda r, _: {"x": r.band.edge("extension").path.length},
    "band ends|Fold the band along its fold, right sides in, and sew both ends, {a} from the edge.": _END,
    "band ends|Fold the facing back over the band, right sides in; sew both ends, {a} from the edge.": _END,
    "band ring|Sew its two ends together, right sides in, {a} from the edge, and press the seam open.":
        _one(a=_edge("waistband", "extension end")),
    "band ring|Sew the two ends of each together, right sides in, {a} from the edge; press open.": _END,
    "band top|Right sides together, sew band and facing along the top, {a} from the edge.":
        _one(a=_edge("waistband-facing", "top")),
    "band turned|Fold {a} in at both ends, level with the opening.": _END,
    "band turned|It shows {b} wide. Slip-stitch it to the seam inside.": _BINDING,
    "band turned|Turn the binding over the edge, and its own edge {b} under.": _one(b=_edge("waistband", "facing")),
    "band turned|The band stands {w} high.": _one(w=Ruler.high),
    "band turned|Turn the facing in, {d} deep, the seam rolled just inside.": _facing_depth,
    "band turned|Turn the inside edge under by {a} and lay it just over the waist seam.": _A,
    "casing|Fold the casing along its fold, so that {w} shows, its free edge turned under {a}.":
        _one(w=Ruler.high, a=_edge("waistband", "facing")),
    "casing|Leave {g} open, beginning {b} from the casing’s own seam.": lambda r, _: {
        "g": line_of(r.band, "slit").path.length,
        "b": r.band.edge("plain end").path.nearest(line_of(r.band, "slit").path.start)[1],
    },
    "cut|Snip notches no deeper than {d}.":
        lambda r, _: {"d": max(s.size for p in r.draft.pieces for s in p.spots if s.role == "notch")},
    "cut|{n:count} {p:word}: {cut:word}, {w} × {h}.": _size,
    "darts|{p:word}: {n:count} darts, {w} wide at the waist and {l} long.": _dart,
    "darts|{p:word}: one dart, {w} wide at the waist and {l} long.": _dart,
    "elastic|Cut the elastic {l} long; it is {w} wide.": _one(l=ELASTIC, w=WIDE),
    "elastic|Sew the ends in a square: the ring measures {r}.": _one(r=_elastic),
    "facings|Right sides together, join the facings at their sides, {a} from the edge.":
        lambda r, _: {"a": next(beyond(p, e.name) for p in r.draft.pieces for e in p.edges
                                if p.id.startswith("facing-") and e.sews_to.startswith("facing-"))},
    "fastening|Balls go under the {end:word}, their middles {i} from that end.": _one(i=Ruler.pull),
    "fastening|Bars go outside on the {end:word}, {b} from that end.": _one(b=Ruler.counterpart),
    "fastening|Sockets go outside on the {end:word}, {b} from that end.": _one(b=Ruler.counterpart),
    "fastening|Hooks go under the {end:word}, {i} back from its edge.": _one(i=Ruler.pull),
    "fastening|Close the waist and measure it: {c}.": _one(c=Ruler.closed),
    "fastening|Its other half lies inside, {p} from the plain end.":
        lambda r, _: {"p": r.girth() + 10 if not r.banded else
                      max(r.from_plain_end(s.at) for s in r.held("snap") if r.from_other_end(s.at) > 11)},
    "fastening|One more snap holds the under end: its middle {i} from that end.":
        lambda r, _: {"i": min(r.from_plain_end(s.at) for s in r.held("snap")) if r.banded else 10.0},
    "fastening|Sew a button of {d} to the {end:word}, {b} from that end.":
        _one(d=lambda r: r.held("button")[0].size, b=Ruler.counterpart),
    "fastening|Sew {n:count} buttons of {d} to the {end:word}, {b} from that end.":
        _one(d=lambda r: r.held("button")[0].size, b=Ruler.counterpart),
    "fastening|Their middles lie {y} below the top edge.":
        lambda r, _: {"y": max(r.below_top(s.at) for s in r.held(*_ROLES))},
    "fastening|They lie {lengths} below the top edge.": _HOOKS,
    "gather|Beside the opening start and stop {g} from the seam line: that stays flat.": _flat_end,
    "gather|From the left cut edge, right side up: start at {a}, stop at {b}.": _stretch,
    "gather|{p:word}, from the left cut edge, right side up: start at {a}, stop at {b}.": _stretch,
    "tier|From the left cut edge, right side up: start at {a}, stop at {b}.": _stretch,
    "tier|{p:word}, from the left cut edge, right side up: start at {a}, stop at {b}.": _stretch,
    "gather|It runs {lengths} below the raw edge.": _rows,
    "gather|They run {lengths} below the raw edge.": _rows,
    "tier|They run {lengths} below the raw edge.": _rows,
    "tier|Draw {f} up to {s}, and spread the fullness evenly.": _tier,
    "godets|Sew from the point to the hem, {l} to the hem line, {a} from the edge.":
        lambda r, _: {"l": r.panel("left godet").edge("left godet").path.length, "a": beyond(r.piece("godet"), "left")},
    "hem|All round it is {s}.": _one(s=Ruler.sweep),
    "hem|Fold there, then once more {h}, and stitch {e} from the inner fold.":
        lambda r, _: {"h": r.hem() / 2, "e": min(2.0, r.hem() / 4)},
    "hem|Stitch round {h} above the raw edge.": lambda r, _: {"h": r.hem() / 2},
    "hem|Join the facing’s ends, then sew it to the hem, right sides together, {a} from the edge.":
        _one(a=_edge("hem-facing-", "hem")),
    "hem|Press {t} under at the raw edge, then {r} up to the hem line.":
        lambda r, _: dict(zip(("t", "r"), r.turn(), strict=True)),
    "hem|Turn the facing in, {d} deep, roll the seam inside, press.": _hem_facing,
    "hem|Turn {h} up along the hem line and press.": _one(h=Ruler.hem),
    "holes|It runs along the band, and begins {i} from that end.": _one(i=Ruler.pull),
    "holes|They run along the band, and begin {i} from that end.": _one(i=Ruler.pull),
    "holes|Its middle lies {y} below the top edge.": lambda r, _: {"y": r.below_top(r.hole().end)},
    "holes|They lie {lengths} below the top edge.": _HOLES,
    "holes|Work a buttonhole {h} long in the {end:word}.": lambda r, _: {"h": r.hole().length},
    "holes|Work {n:count} buttonholes, each {h} long, in the {end:word}.": lambda r, _: {"h": r.hole().length},
    "level|On the wearer, chalk a level line up from the floor, {l} below the waist seam at the side.":
        _one(l=Ruler.length),
    "level|Trim level, {h} below the line.": _one(h=Ruler.hem),
    "lining|Leave the opening’s seam open to {s} below the waist seam.": lambda r, _: {"s": max(
        e.path.length for p in r.draft.pieces if p.cloth == "lining" for e in p.edges if e.name.endswith(" opening")
    )},
    "lining|Sew the lining’s seams, {a} from the edge.": _one(a=_edge("lining-back", "left")),
    "lining hem|Its hem line lies {s} above the skirt’s.": _lining,
    "lining hem|Turn {h} up, the raw edge under first, and stitch.": _one(h=_edge("lining-front", "hem")),
    "mark|End of the opening: {r} below the raw edge, {s} below the seam line.": _STOP,
    "mark|Zip stop: {r} below the raw edge, {s} below the seam line.": _STOP,
    "mark|Hem line: {h} above the raw edge.": _one(h=Ruler.hem),
    "mark|{p:word}: notches {lengths} from the cut plain end.": _NOTCHES,
    "mark|{p:word}: notches {lengths} from the left cut edge, right side up.": _NOTCHES,
    "neaten|Side edges of the panels: {n:count}, the longest about {l}.": _longest,
    "opening seam|Start {start:word}: {r} below the raw edge.": _one(r=Ruler.stop_below_raw_edge),
    "opening seam|Sew {l} through all tiers, join on join, {to:word}.": _through_tiers,
    "opening seam|Sew {l} {to:word}.": _below,
    "seams|Sew {l} {to:word}.": _seam,
    "seams|There are {n:count} such seams, each {l} {to:word}.": _seam,
    "seams|{names:word}, one seam: {l} {to:word}.": _seam,
    "seams|{names:word}, {n:count} seams: each {l} {to:word}.": _seam,
    "placket|Sew a strip, {w} × {h}, to each edge of the opening, right sides together.": lambda r, _: {
        "w": r.draft.piece("placket").cut_line.box.width, "h": r.draft.piece("placket").cut_line.box.height,
    },
    "placket|That lies {r} below the raw edge, {s} below the seam line.": _STOP,
    "placket|Turn its free edge under {a} and stitch it down: it lies {w} deep inside, behind the buttons.": _strip,
    "placket|Turn its free edge under {a} and stitch it down: it stands out {w} past the seam line.": _strip,
    "placket fastening|Balls go under the over strip, sockets on the under edge, each {m} from the seam.":
        lambda r, _: {"m": (s := r.draft.piece("placket")).edge("seam").path.nearest(s.spots[0].at)[1]},
    "placket fastening|{n:count} down the placket, {s} apart, the first {s} below the waist seam.": _down_placket,
    "placket fastening|Buttons go on the under edge, {b} in from it, through skirt and strip.":
        lambda r, _: {"b": (s := r.draft.piece("placket-under")).edge("seam").path.nearest(s.spots[0].at)[1]},
    "placket fastening|Holes stand upright in the over strip, each beginning {a} above its button.": lambda r, _: {
        "a": r.draft.piece("placket-under").spots[0].at.y - line_of(r.draft.piece("placket"), "buttonhole").path.start.y
    },
    "pleats|Above the hip line the folds deepen, until faces measure {w} at the waist.": _pleats,
    "pleats|Each fold is {d} deep and each face {s}.": _pleats,
    "pleats|At the opening the edge at the band’s {end:word} goes on {d} under the other.": _underlay,
    "pleats down|Stitch each fold to what lies under it, {e} down from the waist seam, close to its edge.":
        lambda r, _: {"e": r.tops[0].edge("waist").path.nearest(middle(line_of(r.tops[0], "stitching").path))[1]},
    "pockets|Pin it to its place, the top {t} below the waist seam.": _patch_top,
    "pockets|Press {a} under along sides and foot: it measures {w:bare} × {d}.": lambda r, _: {
        "a": beyond(r.draft.piece("pocket"), "foot"), "w": r.draft.piece("pocket").edge("top").path.length,
        "d": r.draft.piece("pocket").seam_line.box.height,
    },
    "pockets|Sew {s} from the edge: just outside the seam line.":
        lambda r, _: {"s": max(beyond(r.draft.piece("pocket-bag"), "seam") - 2, 2.0)},
    "pockets|The hand goes in from {t} to {f} below the waist seam.": _mouth,
    "pockets|Turn in {t} at the top of each pocket and stitch it down.": _one(t=_edge("pocket", "top")),
    "slit|Press {t} under along both edges and catch it by hand.":
        lambda r, _: {"t": beyond(r.panel("right slit"), "right slit")},
    "slit|The seam ends {l} above the hem line; fasten it there.":
        lambda r, _: {"l": r.panel("right slit").edge("right slit").path.length},
    "slit|The seam ends {l} above the hem line; sew on across the tops of the extensions.":
        lambda r, _: {"l": line_of(r.panel("vent top"), "slit").path.length},
    "stay|Before you lift the panels: stitch round the waist, {d} from the raw edge.":
        lambda r, _: {"d": r.allowance - 3},
    "stay|It is cut {r} higher than the circle; it stretches to its place as the band goes on.":
        lambda r, _: {"r": r.brief.skirt.bias_relief},  # type: ignore[attr-defined]
    "wear|Measure once more: waist {c}, length {l}.": lambda r, _: {"c": _worn(r), "l": r.length()},
    "wrap edges|Both free edges: press {t} under, then {r}, along the seam line.":
        lambda r, _: {"t": 10.0, "r": next(beyond(p, e.name) for p in r.tops for e in p.edges
                                           if e.name.endswith(" opening")) - 10},
    "wrap edges|The edges lie {o} over each other at the waist.": _overlap,
    "zip|Its top lies {a} below the raw edge.": _A,
    "zip|Lay the zip face down on the allowances, its top {a} below the raw edge.": _A,
    "zip|Stitch the under fold close to the teeth, tape top {a} below the raw edge.": _A,
    "zip|Sew from the top to the stop, {r} below the raw edge, {s} below the seam line.": _STOP,
    "zip|Stitch across at the stop, {r} below the raw edge, {s} below the seam line.": _STOP,
    "zip|The stop lies {r} below the raw edge, {s} below the seam line.": _STOP,
    "zip|The zip is {l} long.": _one(l=ZIP),
    "zip|The zip is {l} long: bar-tack it at {t}.": _one(l=ZIP, t=TACK),
}  # fmt: skip


def _worn(r: Ruler) -> float:
    if r.brief.waistband.kind == "elastic":
        return _elastic(r)
    if r.brief.waistband.kind == "faced" or not r.held("button", "hook", "snap"):
        return r.girth()
    return r.closed()


def lengths(says: Phrase) -> dict[str, float]:
    """The lengths in a sentence, by name."""
    found = ((name, kind) for _, name, kind, _ in Formatter().parse(says.text) if name)
    return {name: float(says.values[name]) for name, kind in found if kind in ("", "bare")}  # type: ignore[arg-type]


def template(says: Phrase) -> str:
    """A sentence with one place for lengths in a row."""
    row = r"\{at0(:bare)?\}(, \{at\d+(:bare)?\})*( and \{at\d+\})?"
    return re.sub(row, "{lengths}", says.text)
